#include "progress/place.h"

#include "directions/rib_words.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr int kTimed = 10;           // rows, before a pace is told
constexpr double kLongest = 15 * 60; // seconds for one row

// The steps of a piece, and the one that holds a row.
class Told {
public:
  explicit Told(const KnitPiece& piece) : steps_(stepsOf(piece, {0.5, 0.4})) {}

  [[nodiscard]] const Step* at(SectionId section, int row) const {
    for (const Part& part : steps_.parts)
      for (const Step& step : part.steps)
        if (step.section == section && step.first <= row && row <= step.last) return &step;
    return nullptr;
  }
  [[nodiscard]] const PieceSteps& piece() const { return steps_; }

private:
  PieceSteps steps_; // heights are not looked at
};

RowToWork toWork(const KnitPiece& piece, int line, const Told& told) {
  const RowLine& here = piece.rows[std::size_t(line)];
  RowToWork row{here.section, here.row.value(), {}, Stitches(0), here.stitches(), here.waiting};
  for (const Act& a : here.acts)
    row.actions.push_back({a.kind, a.side, a.stitches, a.shapes, a.from});
  for (const Section& s : piece.sections)
    if (s.id == here.section && s.first == here.row)
      row.before = Stitches(here.row == Rows(0) ? 0 : int(std::lround(s.rightEdge - s.leftEdge)));
  if (line > 0 && piece.rows[std::size_t(line - 1)].section == here.section)
    row.before = piece.rows[std::size_t(line - 1)].stitches();
  if (const Step* step = told.at(here.section, row.row)) row.step = step->kind;
  row.edge = told.piece().edge, row.rib = told.piece().rib, row.ribEnds = told.piece().ribEnds;
  return row;
}

std::optional<RepeatPlace> repeatAt(const Step* step, int row) {
  if (!step || step->times < 2) return std::nullopt;
  if (step->kind == StepKind::Repeat) {
    const int from = step->last - step->times * step->every; // the row before the first time
    if (row <= from) return std::nullopt;
    const int in = row - from - 1;
    return RepeatPlace{in / step->every + 1, step->times, in % step->every + 1, step->every};
  }
  if (step->kind == StepKind::BindOffEvery) {
    const int in = row - step->first;
    return RepeatPlace{std::min(in / 2 + 1, step->times), step->times, in % 2 + 1, 2};
  }
  return std::nullopt;
}

// A row of the lower edge that is not shaped.
std::string edgeRowText(const Words& words, const RowToWork& row) {
  if (row.edge == EdgeMade::Garter || row.rib.kind == RibKind::Garter)
    return words.sayPlain("place.hem.garter");
  if (row.rib.kind == RibKind::Plain) return words.say("even.one");
  if (canWriteOut(row.rib, row.ribEnds, row.after))
    return ribRowText(words, row.rib, row.ribEnds, row.after, row.rightSide());
  return words.sayPlain("place.hem", {textParam("rib", ribName(words, row.rib))});
}

// Whether something but plain knitting is worked, or another kind of fabric begins.
bool isEvent(const RowToWork& row, const std::optional<RowToWork>& before) {
  if (!row.actions.empty()) return true;
  if (row.step == StepKind::Fold) return true;
  const auto hem = [](const RowToWork& r) {
    return r.step == StepKind::Hem || r.step == StepKind::RibRow || r.step == StepKind::RibOn ||
           r.step == StepKind::Facing || r.step == StepKind::CastOn;
  };
  return before && hem(*before) && !hem(row);
}

} // namespace

Place placeOf(const KnitPiece& piece, int worked) {
  Place place;
  place.lines = int(piece.rows.size());
  place.line = std::clamp(worked, 0, place.lines);
  long all = 0, done = 0;
  for (int i = 0; i < place.lines; ++i) {
    const int stitches = piece.rows[std::size_t(i)].stitches().value();
    all += stitches;
    if (i < place.line) done += stitches;
  }
  place.share = all > 0 ? double(done) / double(all) : 0;
  place.stitchesLeft = all - done;
  if (place.line == place.lines) return place;
  const Told told(piece);
  place.now = toWork(piece, place.line, told);
  for (int i = place.line + 1; i < place.lines && i <= place.line + 3; ++i)
    place.next.push_back(toWork(piece, i, told));
  place.repeat = repeatAt(told.at(place.now->section, place.now->row), place.now->row);
  std::optional<RowToWork> before;
  if (place.line > 0) before = toWork(piece, place.line - 1, told);
  for (int i = place.line; i < place.lines; ++i) {
    RowToWork row = toWork(piece, i, told);
    if (isEvent(row, before)) {
      place.toEvent = i - place.line;
      place.event = std::move(row);
      break;
    }
    before = std::move(row);
  }
  return place;
}

std::optional<int> lineOf(const KnitPiece& piece, int row, std::optional<SectionId> section,
                          int from) {
  std::optional<int> first;
  for (int i = 0; i < int(piece.rows.size()); ++i) {
    const RowLine& line = piece.rows[std::size_t(i)];
    if (line.row.value() != row || (section && line.section != *section)) continue;
    if (i >= from) return i;
    if (!first) first = i;
  }
  return first;
}

std::string doText(const Words& words, const RowToWork& row) {
  if (row.row == 0)
    return words.sayPlain("place.castOn", {numberParam("k", double(row.after.value()))});
  if (!row.actions.empty()) return rowText(words, row.actions, row.row, row.after);
  switch (row.step) {
  case StepKind::Hem:
  case StepKind::RibRow:
  case StepKind::RibOn:
    return edgeRowText(words, row);
  case StepKind::Facing:
    return words.sayPlain("place.facing");
  case StepKind::Fold:
    return words.say("fold");
  default:
    return words.say("even.one");
  }
}

std::string edgeText(const Words& words, const RowToWork& row) {
  bool right = false, left = false;
  for (const Action& a : row.actions) {
    if (a.kind == ActKind::CastOn || a.kind == ActKind::IncreaseEvenly ||
        a.kind == ActKind::Close || a.kind == ActKind::Rest || a.kind == ActKind::Rejoin ||
        a.kind == ActKind::Buttonhole)
      continue;
    (a.side == EdgeSide::Right ? right : left) = true;
  }
  if (!right && !left) return {};
  if (right && left) return words.sayPlain("place.edge.both");
  return words.sayPlain(right == row.rightSide() ? "place.edge.start" : "place.edge.end");
}

std::string rowName(const Words& words, const RowToWork& row) {
  if (row.row == 0) return words.sayPlain("place.row.castOn");
  const std::string side = words.say(row.rightSide() ? "term.RS" : "term.WS");
  const char* key = row.section == SectionId::Right  ? "place.row.right"
                    : row.section == SectionId::Left ? "place.row.left"
                                                     : "place.row";
  return words.sayPlain(key, {numberParam("row", row.row), textParam("side", side)});
}

std::optional<double> secondsLeft(const PieceWork& work) {
  if (work.pace.rows < kTimed || work.finished()) return std::nullopt;
  // Rows are not alike: their stitches are what takes the time.
  const Place place = placeOf(work.plan, work.worked);
  if (place.line == 0 || place.share <= 0) return std::nullopt;
  return work.pace.seconds / work.pace.rows * place.line * (1 - place.share) / place.share;
}

YarnLeft yarnLeft(const Place& place, const YarnNeed& garment) {
  YarnLeft left;
  if (!(garment.stitches > 0)) return left;
  const double share = double(place.stitchesLeft) / garment.stitches;
  const auto of = [&](const YarnRange& all) {
    return YarnRange{share * all.low, share * all.high};
  };
  if (garment.grams.any())
    left.grams = of(garment.grams);
  else
    left.metres = of(garment.metres);
  return left;
}

std::string yarnLeftText(const Phrases& phrases, const YarnLeft& left) {
  const YarnRange& range = left.grams.any() ? left.grams : left.metres;
  if (!range.any()) return {};
  const double low = std::round(range.low), high = std::round(range.high);
  return phrases.say(
      std::string(left.grams.any() ? "progress.yarn.grams" : "progress.yarn.metres") +
          (high > low ? ".range" : ""),
      {numberParam("low", low), numberParam("high", high)});
}

void keepPace(Pace& pace, double seconds) {
  if (!(seconds > 0) || seconds > kLongest) return;
  ++pace.rows;
  pace.seconds += seconds;
}

} // namespace scye
