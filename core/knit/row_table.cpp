#include "knit/row_table.h"

#include "model/enum_keys.h"

#include <cmath>

namespace scye {
namespace {

void work(const Act& act, RowLine& line) {
  const int k = act.stitches.value();
  const bool right = act.side == EdgeSide::Right;
  if (act.kind == ActKind::Wait) line.waiting += act.stitches;
  if (act.kind == ActKind::TakeUp) line.waiting -= act.stitches;
  switch (act.kind) {
  case ActKind::CastOn:
    break; // the section starts with these stitches
  case ActKind::Increase:
    right ? line.rightEdge += k : line.leftEdge -= k;
    break;
  case ActKind::Decrease:
  case ActKind::BindOff:
  case ActKind::Hold:
    right ? line.rightEdge -= k : line.leftEdge += k;
    break;
  case ActKind::Close:
    right ? line.rightEdge = line.leftEdge : line.leftEdge = line.rightEdge;
    break;
  case ActKind::Wait:
    right ? line.rightEdge -= k : line.leftEdge += k;
    break;
  case ActKind::TakeUp:
    right ? line.rightEdge += k : line.leftEdge -= k;
    break;
  case ActKind::IncreaseEvenly: {
    const int atRight = act.addedAtRight().value();
    line.rightEdge += atRight, line.leftEdge -= k - atRight;
    break;
  }
  case ActKind::Rest:
  case ActKind::Rejoin:
  case ActKind::Buttonhole:
    break;
  }
}

} // namespace

Stitches Act::addedAtRight() const {
  if (from == Stitches(0)) return stitches / 2;
  return side == EdgeSide::Right ? stitches : Stitches(0);
}

std::string_view sectionKey(SectionId id) {
  static constexpr EnumKeys<SectionId, SectionId::Left> kKeys{
      {{SectionId::Undivided, "body"}, {SectionId::Right, "right"}, {SectionId::Left, "left"}}};
  return kKeys[id];
}

Stitches RowLine::stitches() const {
  return Stitches(int(std::lround(rightEdge - leftEdge)));
}

RowTable workedRows(const std::vector<Section>& sections) {
  RowTable table;
  for (const Section& s : sections) {
    RowLine line{s.id, s.first, s.leftEdge, s.rightEdge, {}, s.waiting};
    auto next = s.acts.begin();
    for (line.row = s.first; line.row <= s.last; ++line.row) {
      line.acts.clear();
      for (; next != s.acts.end() && next->row == line.row; ++next) {
        work(*next, line);
        line.acts.push_back(*next);
      }
      table.push_back(line);
    }
  }
  return table;
}

std::string actionText(const RowLine& line) {
  static constexpr EnumKeys<ActKind, ActKind::Buttonhole> kNames{{
      {ActKind::CastOn, "cast on"},
      {ActKind::Increase, "increase"},
      {ActKind::Decrease, "decrease"},
      {ActKind::BindOff, "bind off"},
      {ActKind::Close, "close"},
      {ActKind::Rest, "rest"},
      {ActKind::Rejoin, "rejoin"},
      {ActKind::Wait, "wait"},
      {ActKind::TakeUp, "take up"},
      {ActKind::IncreaseEvenly, "spread"},
      {ActKind::Hold, "hold"},
      {ActKind::Buttonhole, "buttonhole"},
  }};
  std::string text;
  for (const Act& act : line.acts) {
    if (!text.empty()) text += ", ";
    text += kNames[act.kind];
    if (act.kind != ActKind::CastOn && act.kind != ActKind::Rest && act.kind != ActKind::Rejoin &&
        act.kind != ActKind::IncreaseEvenly)
      text += act.side == EdgeSide::Right ? " right" : " left";
    if (act.stitches > Stitches(0)) text += " " + std::to_string(act.stitches.value());
    if (act.kind == ActKind::Buttonhole) text += " from " + std::to_string(act.from.value());
  }
  return text.empty() ? "work even" : text;
}

} // namespace scye
