#include "schematic/chart.h"

#include <algorithm>

namespace scye {
namespace {

constexpr double kBeside = 4; // letters' heights: the numbers beside a chart belong to their row

std::string actText(const Act& a, bool bothEnds, const Phrases& phrases) {
  const Params count{numberParam("stitches", a.stitches.value())};
  switch (a.kind) {
  case ActKind::Increase:
    return phrases.say(bothEnds                    ? "chart.act.increaseBoth"
                       : a.side == EdgeSide::Right ? "chart.act.increaseRight"
                                                   : "chart.act.increaseLeft",
                       count);
  case ActKind::Decrease:
    return phrases.say(bothEnds                    ? "chart.act.decreaseBoth"
                       : a.side == EdgeSide::Right ? "chart.act.decreaseRight"
                                                   : "chart.act.decreaseLeft",
                       count);
  case ActKind::BindOff:
    return phrases.say("chart.act.bindOff", count);
  case ActKind::Close:
    return phrases.say("chart.act.close", count);
  case ActKind::Rest:
    return phrases.say("chart.act.rest", count);
  case ActKind::Rejoin:
    return phrases.say("chart.act.rejoin", count);
  case ActKind::CastOn:
    return phrases.say("chart.castOn", count);
  case ActKind::Wait:
    return phrases.say("chart.act.wait", count);
  case ActKind::TakeUp:
    return phrases.say("chart.act.takeUp", count);
  case ActKind::Hold:
    return phrases.say("chart.act.hold", count);
  case ActKind::IncreaseEvenly:
    return phrases.say("chart.act.spread", count);
  case ActKind::Buttonhole:
    return phrases.say("chart.act.buttonhole", count);
  }
  return {};
}

} // namespace

std::optional<ChartPlace> chartPlaceAt(const Chart& chart, const Vec2& at) {
  const double beside = kBeside * chart.picture.textHeight;
  if (at.x() < -beside || at.x() > chart.columns.end() + beside) return std::nullopt;
  const std::optional<int> item = chart.rows.itemAt(at.y());
  if (!item) return std::nullopt;
  const auto lines = chart.grid.in(*item + 1);
  if (lines.empty()) return std::nullopt;
  // Between the two sides of a neck the nearer one.
  const auto away = [&](const ChartLine* l) {
    return std::max(
        {chart.columns.at(l->cells.from) - at.x(), at.x() - chart.columns.at(l->cells.to), 0.0});
  };
  const ChartLine& line = **std::min_element(
      lines.begin(), lines.end(), [&](const auto* a, const auto* b) { return away(a) < away(b); });
  ChartPlace place{line.section,   line.row, line.row, Stitches(line.kept.size()), 0,
                   line.told->acts};
  if (const Span* cut = chart.rows.cutAt(*item)) place.row = cut->from + 1, place.lastRow = cut->to;
  const std::optional<int> column = chart.columns.itemAt(at.x());
  if (column && line.cells.has(*column) && !chart.columns.cutAt(*column) &&
      place.row == place.lastRow)
    place.stitch = place.rightSide() ? line.cells.to - *column : *column - line.cells.from + 1;
  return place;
}

std::string placeText(const ChartPlace& place, const Phrases& phrases) {
  std::string what;
  const auto& acts = place.acts;
  for (std::size_t i = 0; i < acts.size(); ++i) {
    const auto twin = [&](const Act& a) {
      return a.kind == acts[i].kind && a.stitches == acts[i].stitches && a.side != acts[i].side;
    };
    const bool shaping = acts[i].kind == ActKind::Increase || acts[i].kind == ActKind::Decrease;
    if (shaping && std::any_of(acts.begin(), acts.begin() + std::ptrdiff_t(i), twin)) continue;
    const bool both = shaping && std::any_of(acts.begin(), acts.end(), twin);
    const std::string act = actText(acts[i], both, phrases);
    what =
        what.empty() ? act : phrases.say("chart.acts", {textParam("a", what), textParam("b", act)});
  }
  if (what.empty()) what = phrases.say("chart.act.even");
  const Params params{numberParam("row", place.row), numberParam("last", place.lastRow),
                      phraseParam("side", place.rightSide() ? "chart.rs" : "chart.ws"),
                      numberParam("stitches", place.stitches.value()), textParam("what", what)};
  const bool neck = place.section != SectionId::Undivided;
  std::string text =
      phrases.say(place.row == place.lastRow ? "chart.place" : "chart.places", params);
  if (neck)
    text = phrases.say(place.section == SectionId::Left ? "chart.leftSide" : "chart.rightSide",
                       {textParam("place", text)});
  return text;
}

} // namespace scye
