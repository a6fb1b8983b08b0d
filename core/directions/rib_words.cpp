#include "directions/rib_words.h"

#include "model/plain_text.h"

#include <algorithm>

namespace scye {
namespace {

// Stitches of one kind beside each other.
struct Column {
  int stitches = 0;
  bool knit = true; // as it is worked in this row
};

struct RowPlan {
  Column first, a, b; // first, then a and b over and over
  int repeats = 0;
  std::vector<Column> last;
};

RowPlan planOf(const RibStitch& rib, const RibEnds& ends, int stitches, bool rightSide) {
  RowPlan row;
  if (rib.kind == RibKind::Seed) {
    // Of an even number a wrong-side row begins with what the right-side row ended with.
    const bool odd = stitches % 2 == 1, knitFirst = rightSide || odd;
    row.a = {1, knitFirst}, row.b = {1, !knitFirst};
    row.repeats = stitches / 2;
    if (odd) row.last = {{1, knitFirst}};
    return row;
  }
  int begin = ends.start.value(), end = ends.end.value();
  if (!rightSide) std::swap(begin, end);
  row.first = {begin, rightSide};
  row.a = {rib.purl, !rightSide}, row.b = {rib.knit, rightSide};
  row.repeats = (stitches - begin - end - rib.purl) / rib.multiple;
  if (end == rib.knit) {
    ++row.repeats;
  } else {
    row.last = {row.a};
    if (end > 0) row.last.push_back({end, rightSide});
  }
  return row;
}

std::string columnText(const Words& words, const Column& column) {
  return words.say(column.knit ? "rib.knit" : "rib.purl", {countParam("n", column.stitches)});
}

std::string joined(const Words& words, const std::vector<Column>& columns) {
  std::string text;
  for (const Column& column : columns) {
    std::string one = columnText(words, column);
    text = text.empty() ? std::move(one)
                        : words.say("row.join", {textParam("a", text), textParam("b", one)});
  }
  return text;
}

} // namespace

std::string ribRowText(const Words& words, const RibStitch& rib, const RibEnds& ends,
                       Stitches stitches, bool rightSide) {
  const RowPlan row = planOf(rib, ends, stitches.value(), rightSide);
  std::vector<Column> before, after = row.last;
  if (row.first.stitches > 0) before.push_back(row.first);
  if (row.repeats == 0) {
    before.insert(before.end(), after.begin(), after.end());
    return joined(words, before);
  }
  int left = 0;
  for (const Column& column : after)
    left += column.stitches;
  std::string repeat =
      words.say(left > 0 ? "rib.repeatToLast" : "rib.repeat",
                {textParam("a", columnText(words, row.a)), textParam("b", columnText(words, row.b)),
                 countParam("n", left), textParam("last", joined(words, after))});
  if (before.empty()) return repeat;
  return words.say("row.join", {textParam("a", joined(words, before)), textParam("b", repeat)});
}

std::string ribName(const Words& words, const RibStitch& rib) {
  if (rib.kind == RibKind::Own)
    return rib.name.empty() ? words.say("rib.own")
                            : words.say("rib.named", {textParam("name", plainLine(rib.name))});
  return words.say("rib." + std::string(info(Choice::Rib).options.begin()[int(rib.kind)]));
}

} // namespace scye
