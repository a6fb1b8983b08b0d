#include "work_command.h"

#include "arguments.h"
#include "command_line.h"
#include "garment/derived.h"
#include "io/design_file.h"
#include "io/files.h"
#include "io/measured_setting.h"
#include "io/outputs.h"
#include "io/setting.h"
#include "progress/diary.h"
#include "read_design.h"
#include "terminal.h"

#include <CLI/CLI.hpp>
#include <array>
#include <charconv>

namespace scye {
namespace {

const Phrases& phrases() {
  return environmentPhrases();
}

struct Written {
  std::string file, unit = "cm", terms = "us";
  std::optional<std::string> piece, row, section;
  std::vector<std::string> settings;
  bool save = false;
  [[nodiscard]] LengthUnit lengths() const {
    return unit == "in" ? LengthUnit::Inch : LengthUnit::Centimetre;
  }
  [[nodiscard]] Wording wording() const { return {phrases(), terms, lengths()}; }
};

std::optional<int> parsed(CLI::App& app, Written& written, std::span<const std::string> arguments) {
  app.add_option("FILE.scye", written.file);
  app.add_option("--unit", written.unit);
  app.add_option("--terms", written.terms);
  if (const auto code = parseArguments(app, arguments)) return code;
  if (written.file.empty()) return usage("cli.noFile", {});
  const auto pick = [](const char* name, const std::string& value, const char* a,
                       const char* b) -> std::optional<int> {
    if (value == a || value == b) return std::nullopt;
    return usage("cli.option", {textParam("option", name), textParam("value", value),
                                textParam("options", std::string(a) + ", " + b)});
  };
  if (auto code = pick("--unit", written.unit, "cm", "in")) return code;
  return pick("--terms", written.terms, "us", "uk");
}

std::optional<int> save(const Written& written, const Design& design, const Work& work) {
  if (const auto problem = writeWhole(written.file, designToJson(design, work)))
    return unwritten(written.file, *problem);
  return std::nullopt;
}

std::string joinedKeys(const std::vector<PieceId>& pieces) {
  std::vector<std::string> keys;
  for (const PieceId piece : pieces)
    keys.emplace_back(pieceKey(piece));
  return phrases().rules().commas(keys);
}

// The piece that is named, if one is; or why not.
std::optional<int> pieceAsked(const Written& written, const KnitGarment& garment,
                              std::optional<PieceId>& piece) {
  if (!written.piece) return std::nullopt;
  const std::vector<PieceId> all = piecesToKnit(garment);
  piece = pieceByKey(*written.piece);
  if (piece && std::find(all.begin(), all.end(), *piece) != all.end()) return std::nullopt;
  return failed(kUsage, phrases().say("place.noPiece", {textParam("piece", *written.piece),
                                                        textParam("pieces", joinedKeys(all))}));
}

void tellPlace(const Derived& derived, const Work& work, PieceId id, const Written& written) {
  const PieceWork* p = work.find(id);
  const KnitPiece& plan = p ? p->plan : *plannedPiece(derived.knit, id);
  const int worked = p ? p->worked : 0;
  const Words words(written.wording());
  const Place place = placeOf(plan, worked);
  const std::string name = workPieceName(phrases(), id);
  if (!place.now) {
    tellLine(phrases().say("place.finished", {textParam("piece", name)}));
    return;
  }
  const RowToWork& now = *place.now;
  tellLine(phrases().say(now.row == 0              ? "place.line.castOn"
                         : now.before == now.after ? "place.line.same"
                                                   : "place.line",
                         {textParam("piece", name), textParam("row", rowName(words, now)),
                          textParam("what", phrases().rules().capitalised(doText(words, now))),
                          numberParam("before", now.before.value()),
                          numberParam("after", now.after.value())}));
  if (const std::string edges = edgeText(words, now); !edges.empty())
    tellLine("  " + phrases().say("place.edges", {textParam("edge", edges)}));
  if (place.repeat)
    tellLine("  " + phrases().rules().capitalised(repeatText(phrases(), *place.repeat)) + ".");
  tellLine("  " + phrases().rules().capitalised(toEventText(words, place)) + ".");
  tellLine("  " + phrases().say("place.left", {numberParam("rows", place.rowsLeft()),
                                               percentParam("share", place.share)}));
  const std::string yarn =
      yarnLeftText(phrases(), yarnLeft(place, derived.directions.materials.yarn));
  if (!yarn.empty()) tellLine("  " + phrases().rules().capitalised(yarn) + ".");
  if (const auto seconds = p ? secondsLeft(*p) : std::nullopt)
    tellLine("  " +
             phrases().rules().capitalised(phrases().say(
                 "progress.time", {textParam("time", timeText(phrases(), *seconds))})) +
             ".");
  if (p)
    for (const RowNote& note : p->notes)
      if (note.section == now.section && note.row == now.row)
        tellLine("  " + phrases().say("diary.note",
                                      {textParam("piece", name), numberParam("row", note.row),
                                       textParam("text", note.text)}));
}

// A row as it was written, as a line of the plan; or why not.
std::optional<int> lineAsked(const Written& written, const PieceWork& p, int& line) {
  int row = 0;
  const char* end = written.row->data() + written.row->size();
  const auto read = std::from_chars(written.row->data(), end, row);
  std::optional<SectionId> section;
  for (const SectionId id : {SectionId::Undivided, SectionId::Right, SectionId::Left})
    if (written.section == sectionKey(id)) section = id;
  if (written.section && !section)
    return usage("cli.option",
                 {textParam("option", "--section"), textParam("value", *written.section),
                  textParam("options", "body, right, left")});
  std::optional<int> found;
  if (read.ec == std::errc() && read.ptr == end) {
    found = lineOf(p.plan, row, section, p.worked);
    if (!found && row == p.plan.lastRow().value() + 1) found = int(p.plan.rows.size());
  }
  if (found) return line = *found, std::nullopt;
  return failed(kUsage,
                phrases().say("place.noRow", {textParam("piece", workPieceName(phrases(), p.piece)),
                                              textParam("row", *written.row),
                                              numberParam("last", p.plan.lastRow().value()),
                                              numberParam("past", p.plan.lastRow().value() + 1)}));
}

std::optional<int> setPlace(const Written& written, const Derived& derived, PieceId id) {
  Work work = derived.work;
  PieceWork* p = workOn(work, derived.knit, designedIn(derived), id);
  const int before = p->worked;
  if (auto code = lineAsked(written, *p, p->worked)) return code;
  writeDownStep(work, id, before, today());
  if (auto code = save(written, derived.draft.design, work)) return code;
  tellPlace(derived, work, id, written);
  return std::nullopt;
}

} // namespace

int runPlace(std::span<const std::string> arguments) {
  CLI::App app;
  Written written;
  app.add_option("--piece", written.piece);
  app.add_option("--row", written.row);
  app.add_option("--section", written.section);
  if (const auto code = parsed(app, written, arguments)) return *code;
  Design design;
  Work knitted;
  if (const auto code = readDesign(written.file, {}, design, &knitted)) return *code;
  const Derived derived = derive(design, LengthUnit::Centimetre, knitted);
  const std::vector<PieceId> all = piecesToKnit(derived.knit);
  std::vector<PieceId> asked = all;
  std::optional<PieceId> one;
  if (const auto code = pieceAsked(written, derived.knit, one)) return *code;
  if (one) asked = {*one};
  if (written.row && !written.piece)
    return usage("cli.rowOfWhich", {textParam("pieces", joinedKeys(all))});
  if (written.row) return setPlace(written, derived, asked.front()).value_or(kDrafted);
  for (const PieceId id : asked)
    tellPlace(derived, derived.work, id, written);
  return kDrafted;
}

int runRefit(std::span<const std::string> arguments) {
  CLI::App app;
  Written written;
  app.add_option("--with", written.settings)->allow_extra_args(false);
  app.add_flag("--save", written.save);
  if (const auto code = parsed(app, written, arguments)) return *code;
  Design design;
  Work knitted;
  if (const auto code = readDesign(written.file, {}, design, &knitted)) return *code;
  const Derived derived = derive(design, LengthUnit::Centimetre, knitted);
  Work work = derived.work;
  for (const std::string& setting : written.settings) {
    if (!isMeasuredSetting(setting))
      return failed(kUsage, phrases().say("measured.unknown", {textParam("name", setting)}));
    if (auto problem = applyMeasured(work, derived, setting, phrases()))
      return failed(kUsage, *problem);
  }
  const Refit again = refit(derived.draft, designedIn(derived), work);
  for (const std::string& line : refitText(again, phrases(), written.lengths()))
    tellLine(line);
  for (const GaugeWarning& warning : gaugeWarnings(derived.draft, designedIn(derived), work))
    for (const std::string& line : gaugeWarningText(warning, phrases(), written.lengths()))
      tellLine(line);
  if (!written.save) return kDrafted;
  Work kept = again.work;
  for (const PieceWork& p : again.work.pieces) {
    const PieceWork* before = knitted.find(p.piece);
    writeDownMeasured(kept, p.piece, before ? before->measured : Measured{}, today(), phrases(),
                      written.lengths());
  }
  if (!again.changes.empty())
    writeDown(kept, refitEntry(again, today(), phrases(), written.lengths()));
  return save(written, design, kept).value_or(kDrafted);
}

int runDiary(std::span<const std::string> arguments) {
  CLI::App app;
  Written written;
  std::optional<std::string> on;
  std::array<std::pair<DiaryEntry::Kind, std::optional<std::string>>, 3> entries{
      {{DiaryEntry::Kind::Decision, {}},
       {DiaryEntry::Kind::Swatch, {}},
       {DiaryEntry::Kind::Measured, {}}}};
  for (auto& [kind, text] : entries)
    app.add_option("--" + std::string(kDiaryKeys[kind]), text);
  app.add_option("--piece", written.piece);
  app.add_option("--on", on);
  if (const auto code = parsed(app, written, arguments)) return *code;
  if (on && !isDate(*on)) return usage("cli.date", {textParam("value", *on)});
  Design design;
  Work knitted;
  if (const auto code = readDesign(written.file, {}, design, &knitted)) return *code;
  std::optional<PieceId> piece;
  if (const auto code = pieceAsked(written, knitGarment(draftGarment(design)), piece)) return *code;
  bool added = false;
  for (const auto& [kind, text] : entries) {
    if (!text) continue;
    writeDown(knitted, {.on = on.value_or(today()), .kind = kind, .piece = piece, .text = *text});
    added = true;
  }
  if (added)
    if (const auto code = save(written, design, knitted)) return *code;
  tell(diaryText(design, knitted, phrases(), written.lengths()));
  return kDrafted;
}

} // namespace scye
