#include "progress/diary.h"

#include "model/plain_text.h"

#include <algorithm>
#include <array>
#include <chrono>

namespace scye {
namespace {

struct Counted {
  Reading count, over;
  const char* phrase;
};
constexpr std::array kCounted{
    Counted{Reading::StitchCount, Reading::Across, "diary.stitches"},
    Counted{Reading::RowCount, Reading::Along, "diary.rows"},
};
constexpr std::array kLengths{Reading::Armhole, Reading::Width, Reading::Cross, Reading::Depth,
                              Reading::Length};

// The swatch of the design, and further ones.
void addSwatches(std::vector<DiaryLine>& lines, const Design& design, const Phrases& phrases,
                 LengthUnit unit) {
  const auto add = [&](std::optional<double> stitches, double width, std::optional<double> rows,
                       double height) {
    std::vector<std::string> parts;
    const auto part = [&](const char* phrase, std::optional<double> count, double over) {
      if (count)
        parts.push_back(
            phrases.say(phrase, {numberParam("n", *count), lengthParam("over", over)}, unit));
    };
    part("diary.stitches", stitches, width);
    part("diary.rows", rows, height);
    if (!parts.empty())
      lines.push_back(
          {{}, phrases.say("diary.swatch", {textParam("text", phrases.rules().commas(parts))})});
  };
  add(design.given(Field::SwatchStitches), design.given(Field::SwatchWidth).value_or(kCountedOver),
      design.given(Field::SwatchRows), design.given(Field::SwatchHeight).value_or(kCountedOver));
  for (const SwatchReading& s : design.swatches)
    add(s.stitches > 0 ? std::optional(s.stitches) : std::nullopt, s.width,
        s.rows > 0 ? std::optional(s.rows) : std::nullopt, s.height);
}

} // namespace

std::string entryText(const DiaryEntry& entry, const Phrases& phrases, LengthUnit unit) {
  using Kind = DiaryEntry::Kind;
  std::string key = "diary." + std::string(kDiaryKeys[entry.kind]);
  // What is written by hand may be about one piece.
  const bool byHand = entry.kind == Kind::Decision || entry.kind == Kind::Swatch ||
                      entry.kind == Kind::Measured || entry.kind == Kind::Seam ||
                      entry.kind == Kind::Refit;
  if (byHand && entry.piece) key += ".piece";
  if (entry.kind == Kind::Strayed && entry.to < 0) key += ".less";
  const std::string piece = entry.piece ? workPieceName(phrases, *entry.piece) : std::string();
  std::string text =
      phrases.say(key,
                  {textParam("piece", piece), numberParam("row", entry.row),
                   numberParam("to", entry.kind == Kind::Strayed ? std::abs(entry.to) : entry.to),
                   textParam("text", plainLine(entry.text))},
                  unit);
  while (!text.empty() && text.back() == ' ')
    text.pop_back();
  return text;
}

std::vector<DiaryLine> diaryLines(const Design& design, const Work& work, const Phrases& phrases,
                                  LengthUnit unit) {
  std::vector<DiaryLine> lines;
  addSwatches(lines, design, phrases, unit);
  int n = 0;
  for (const DiaryEntry& entry : work.diary)
    lines.push_back({plainLine(entry.on), entryText(entry, phrases, unit), n++});
  for (const PieceWork& piece : work.pieces)
    for (const RowNote& note : piece.notes)
      lines.push_back(
          {{},
           phrases.say("diary.note",
                       {textParam("piece", workPieceName(phrases, piece.piece)),
                        numberParam("row", note.row), textParam("text", plainLine(note.text))})});
  return lines;
}

std::string lineText(const DiaryLine& line) {
  return (line.on.empty() ? "" : line.on + "  ") + line.text;
}

std::string diaryText(const Design& design, const Work& work, const Phrases& phrases,
                      LengthUnit unit) {
  std::string text =
      phrases.say("diary.title", {textParam("title", plainLine(design.title))}) + "\n\n";
  for (const DiaryLine& line : diaryLines(design, work, phrases, unit))
    text += lineText(line) + "\n";
  if (work.diary.empty()) text += phrases.say("diary.none") + "\n";
  return text;
}

bool isDate(std::string_view text) {
  constexpr std::string_view kForm = "dddd-dd-dd";
  if (text.size() != kForm.size()) return false;
  std::array<int, 3> parts{};
  std::size_t part = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (kForm[i] == '-') {
      if (text[i] != '-') return false;
      ++part;
    } else {
      if (text[i] < '0' || text[i] > '9') return false;
      parts[part] = 10 * parts[part] + (text[i] - '0');
    }
  }
  using namespace std::chrono;
  return year_month_day(year(parts[0]), month(unsigned(parts[1])), day(unsigned(parts[2]))).ok();
}

void writeDown(Work& work, DiaryEntry entry) {
  const auto at =
      std::upper_bound(work.diary.begin(), work.diary.end(), entry,
                       [](const DiaryEntry& a, const DiaryEntry& b) { return a.on < b.on; });
  work.diary.insert(at, std::move(entry));
}

void writeDownStep(Work& work, PieceId piece, int before, const std::string& on) {
  const PieceWork* p = work.find(piece);
  if (!p || p->worked <= before) return;
  const bool finished = p->finished() && before < int(p->plan.rows.size());
  if (before == 0) writeDown(work, {.on = on, .kind = DiaryEntry::Kind::Begun, .piece = piece});
  if (finished) writeDown(work, {.on = on, .kind = DiaryEntry::Kind::Finished, .piece = piece});
}

std::string measuredText(const Measured& measured, const Phrases& phrases, LengthUnit unit) {
  std::vector<std::string> parts;
  for (const Counted& c : kCounted)
    if (const auto n = measured[c.count])
      parts.push_back(phrases.say(
          c.phrase,
          {numberParam("n", *n), lengthParam("over", measured[c.over].value_or(kCountedOver))},
          unit));
  for (const Reading reading : kLengths)
    if (const auto cm = measured[reading])
      parts.push_back(
          phrases.say("diary.length",
                      {phraseParam("what", "reading." + std::string(kReadingKeys[reading])),
                       lengthParam("cm", *cm)},
                      unit));
  if (parts.empty()) return {};
  return phrases.say("diary.readings." + std::string(kMeasuredAsKeys[measured.as]),
                     {textParam("readings", phrases.rules().commas(parts))});
}

void writeDownLastSeam(Work& work, double off, const std::string& on, const Phrases& phrases,
                       LengthUnit unit) {
  const auto entryOf = [&](double cm) {
    const char* key = std::abs(cm) < 0.05 ? "diary.lastSeam.fits"
                      : cm > 0            ? "diary.lastSeam"
                                          : "diary.lastSeam.short";
    return DiaryEntry{.on = on,
                      .kind = DiaryEntry::Kind::Seam,
                      .text = phrases.say(key, {lengthParam("cm", std::abs(cm))}, unit)};
  };
  if (work.lastSeam) std::erase(work.diary, entryOf(*work.lastSeam));
  work.lastSeam = off;
  writeDown(work, entryOf(off));
}

DiaryEntry refitEntry(const Refit& refit, const std::string& on, const Phrases& phrases,
                      LengthUnit unit) {
  DiaryEntry entry{.on = on, .kind = DiaryEntry::Kind::Refit};
  for (const std::string& line : refitText(refit, phrases, unit))
    entry.text += (entry.text.empty() ? "" : " ") + line;
  return entry;
}

void writeDownMeasured(Work& work, PieceId piece, const Measured& before, const std::string& on,
                       const Phrases& phrases, LengthUnit unit) {
  const PieceWork* p = work.find(piece);
  if (!p || p->measured == before) return;
  DiaryEntry entry{.on = on,
                   .kind = DiaryEntry::Kind::Measured,
                   .piece = piece,
                   .text = measuredText(p->measured, phrases, unit)};
  DiaryEntry last = entry;
  last.text = measuredText(before, phrases, unit);
  const auto there = std::find(work.diary.rbegin(), work.diary.rend(), last);
  if (there != work.diary.rend()) work.diary.erase(std::next(there).base());
  if (!entry.text.empty()) writeDown(work, std::move(entry));
}

} // namespace scye
