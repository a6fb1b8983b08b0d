#include "core/directions/reader_page.h"

#include <algorithm>
#include <array>

namespace scye::reader {

namespace {

constexpr std::array<std::string_view, 5> kEdges = {"neck edge", "armhole edge", "side edge",
                                                    "shoulder", "cap edge"};

std::string_view takeEdge(Finger& finger) {
  const auto edge = std::find_if(kEdges.begin(), kEdges.end(),
                                 [&](std::string_view name) { return finger.take(name); });
  return edge == kEdges.end() ? std::string_view{} : *edge;
}

// "Armhole, neck and shoulder"
bool readPartName(Finger name, PartHeading& heading) {
  bool first = true;
  do {
    if (name.take(first ? "Armhole" : "armhole") || name.take(first ? "Sleeve cap" : "sleeve cap"))
      heading.upper = true;
    else if (first &&
             (name.take("Hem") || name.take("Cuff") || name.take("Body") || name.take("Sleeve")))
      return name.done();
    else if (!name.take(first ? "Side" : "side") && !name.take(first ? "Neck" : "neck") &&
             !name.take(first ? "Shoulder" : "shoulder"))
      return false;
    first = false;
  } while (name.take(", ") || name.take(" and "));
  return name.done();
}

} // namespace

std::optional<PartHeading> partHeading(std::string_view text) {
  PartHeading heading;
  std::string_view name = text;
  if (const std::size_t colon = text.find(": "); colon != text.npos) {
    name = text.substr(0, colon);
    Finger finger(text.substr(colon + 2));
    int rows = 0;
    heading.hasRows = true;
    if (finger.take("row #", {&heading.first}))
      heading.last = heading.first;
    else if (!finger.take("rows # to #", {&heading.first, &heading.last}))
      return {};
    if (!finger.take(" (~, ", {&rows}) || !finger.takeLength(heading.length, heading.inches) ||
        !finger.take(")") || !finger.done() || rows != heading.last - heading.first + 1)
      return {};
  }
  for (const auto& [ending, section] :
       {std::pair{", right-hand side", "right"}, std::pair{", left-hand side", "left"}})
    if (name.ends_with(ending)) {
      name.remove_suffix(std::string_view(ending).size());
      heading.section = section;
    }
  if (!readPartName(Finger(name), heading)) return {};
  return heading;
}

std::optional<EdgeNames> atTheSameTime(std::string_view text) {
  Finger finger(text);
  EdgeNames names;
  const auto several = [&](std::vector<std::string_view>& edges) {
    do {
      edges.push_back(takeEdge(finger));
      if (edges.back().empty()) return false;
    } while (finger.take(", ") || finger.take(" and "));
    return true;
  };
  // "..., at their end" comes after a comma too.
  if (!finger.take("At the same time: at the beginning of RS rows the ")) return {};
  do {
    names.right.push_back(takeEdge(finger));
    if (names.right.back().empty()) return {};
    if (finger.take(", at their end the ")) break;
    if (!finger.take(", ") && !finger.take(" and ")) return {};
  } while (true);
  if (!several(names.left) || !finger.take(". Both are in the lines below, row by row.") ||
      !finger.done())
    return {};
  if (std::find_first_of(names.right.begin(), names.right.end(), names.left.begin(),
                         names.left.end()) != names.right.end())
    return {};
  return names;
}

std::optional<RowsNamed> takeRows(Finger& finger) {
  RowsNamed rows;
  bool more = false; // an edge is named
  if (finger.take("Row # (", {&rows.first})) {
    rows.last = rows.first;
    if (finger.take("RS"))
      rows.side = WorkSide::Right;
    else if (finger.take("WS"))
      rows.side = WorkSide::Wrong;
    else
      return {};
    more = finger.take(", ");
    if (!more && !finger.take("): ")) return {};
  } else {
    const bool two = finger.take("Rows # and #", {&rows.first, &rows.last});
    if (!two && !finger.take("Rows # to #", {&rows.first, &rows.last})) return {};
    if (two ? rows.last != rows.first + 1 : rows.last < rows.first + 2) return {};
    more = finger.take(" (");
    if (!more && !finger.take(": ")) return {};
  }
  if (!more) return rows;
  do {
    rows.edges.push_back(takeEdge(finger));
    if (rows.edges.back().empty()) return {};
  } while (finger.take(" and "));
  if (!finger.take("): ")) return {};
  return rows;
}

std::optional<std::vector<bool>> takeRib(Finger& finger, int stitches) {
  std::vector<bool> row;
  const auto column = [&](std::vector<bool>& to) {
    int n = 0;
    const bool knit = finger.take("k#", {&n});
    if ((!knit && !finger.take("p#", {&n})) || n < 1 || n > stitches) return false;
    to.insert(to.end(), std::size_t(n), knit);
    return true;
  };
  while (column(row))
    if (!finger.take(", ")) return int(row.size()) == stitches ? std::optional(row) : std::nullopt;
  std::vector<bool> again, after;
  if (!finger.take("*") || !column(again) || !finger.take(", ") || !column(again)) return {};
  int last = 0;
  if (!finger.take("; repeat from * to end")) {
    if (finger.take("; repeat from * to last st, "))
      last = 1;
    else if (!finger.take("; repeat from * to last # sts, ", {&last}) || last < 2)
      return {};
    do
      if (!column(after)) return {};
    while (finger.take(", "));
  }
  const int repeated = stitches - int(row.size()) - last;
  if (int(after.size()) != last || repeated < 1 || repeated % int(again.size()) != 0) return {};
  for (int i = 0; i < repeated; i += int(again.size()))
    row.insert(row.end(), again.begin(), again.end());
  row.insert(row.end(), after.begin(), after.end());
  return row;
}

std::optional<int> takeEvery(Finger& finger) {
  int every = 0;
  if (finger.take("every row")) return 1;
  if (!finger.take("every #", {&every}) || every < 2) return {};
  const int tens = every / 10 % 10, ones = every % 10;
  const std::string_view ordinal = tens == 1   ? "th"
                                   : ones == 1 ? "st"
                                   : ones == 2 ? "nd"
                                   : ones == 3 ? "rd"
                                               : "th";
  if (!finger.take(ordinal) || !finger.take(" row")) return {};
  return every;
}

} // namespace scye::reader
