#include "directions/step_words.h"

#include "directions/rib_words.h"
#include "shaping/even_shaping.h"

#include <algorithm>

namespace scye {
namespace {

// Even rows from this number on tell how far the piece has come.
constexpr int kMeasured = 6;

bool isRightSide(int row) {
  return row % 2 == 1;
}
std::string sideKey(int row) {
  return isRightSide(row) ? "RS" : "WS";
}
Param sideParam(const Words& words, int row) {
  return textParam("side", words.say("term." + sideKey(row)));
}
// "an RS"
Param aSideParam(const Words& words, int row) {
  return textParam("a_side", words.say("a." + sideKey(row)));
}
EdgeSide startOf(int row) {
  return isRightSide(row) ? EdgeSide::Right : EdgeSide::Left;
}

bool isSleeve(PieceId id) {
  return id == PieceId::Sleeve || id == PieceId::LeftSleeve;
}

std::string shapeKey(Shapes s) {
  switch (s) {
  case Shapes::Hem:
  case Shapes::Side:
    return "side";
  case Shapes::Underarm:
  case Shapes::Armhole:
    return "armhole";
  case Shapes::Shoulder:
    return "shoulder";
  case Shapes::Neck:
    return "neck";
  case Shapes::Sleeve:
    return "sleeve";
  case Shapes::Bust:
    return "bust";
  case Shapes::Cuff:
    return "cuff";
  case Shapes::Opening:
    return "opening";
  case Shapes::Cap:
  case Shapes::Crown:
    break;
  }
  return "cap";
}

// A row's words in the order in which they are worked.
class RowWords {
public:
  RowWords(const Words& words, const std::vector<Action>& actions, int row, Stitches after)
      : words_(words), actions_(actions), row_(row), after_(after.value()),
        tight_(isTight(actions, after)) {
    for (const Action& a : actions)
      if (a.kind == ActKind::Rest) rest_ = (a.stitches + a.from).value();
  }

  std::string text() {
    for (const Action& a : actions_)
      if (a.kind == ActKind::Rejoin)
        join(words_.say("row.rejoin", {countParam("k", a.stitches + a.from)}));
    for (const Action& a : actions_)
      if (isBindOff(a)) join(bindOff(a));
    if (after_ == 0) return text_;
    for (const Action& a : actions_)
      if (oneByOne(a) && a.side == startOf(row_)) join(shaping(a, "start"));
    for (const Action& a : actions_)
      if (a.kind == ActKind::IncreaseEvenly) join(evenly(a));
    if (const Action* a = find(ActKind::Buttonhole)) {
      const Stitches k = a->stitches;
      join(a->side == startOf(row_) ? words_.say("row.work", {countParam("n", a->from)})
                                    : toLast((a->from + k).value()));
      join(words_.say("row.buttonhole", {countParam("k", k)}));
    }
    if (const Action* a = find(ActKind::Wait)) {
      const int n = a->stitches.value();
      join(a->from > Stitches(0) ? words_.say("row.toWrapped", {countParam("n", n)}) : toLast(n));
      join(words_.say("row.wrapTurn"));
      return text_;
    }
    if (find(ActKind::TakeUp)) {
      join(words_.say("row.takeUp"));
      return text_;
    }
    const auto last = std::find_if(actions_.begin(), actions_.end(), [&](const Action& a) {
      return oneByOne(a) && a.side != startOf(row_);
    });
    join(middle(last == actions_.end() ? nullptr : &*last));
    if (last != actions_.end()) join(shaping(*last, "end"));
    return rest_ > 0 ? words_.say("row.turn", {textParam("row", text_), countParam("k", rest_)})
                     : text_;
  }

private:
  static bool oneByOne(const Action& a) {
    return a.kind == ActKind::Increase || a.kind == ActKind::Decrease;
  }
  static bool isBindOff(const Action& a) {
    return a.kind == ActKind::BindOff || a.kind == ActKind::Close || a.kind == ActKind::Hold;
  }

  [[nodiscard]] const Action* find(ActKind kind) const {
    const auto is = [&](const Action& a) { return a.kind == kind; };
    const auto at = std::find_if(actions_.begin(), actions_.end(), is);
    return at == actions_.end() ? nullptr : &*at;
  }

  std::string evenly(const Action& a) const {
    std::string text;
    for (const EvenIncrease& run : evenIncreases(Stitches(after_) - a.stitches, a.stitches)) {
      const char* key = run.times == 1   ? "row.spread.once"
                        : run.after == 1 ? "row.spread.each"
                                         : "row.spread";
      std::string part = words_.say(key, {countParam("a", run.after), countParam("n", run.times)});
      text = text.empty()
                 ? std::move(part)
                 : words_.say("row.spread.then", {textParam("a", text), textParam("b", part)});
    }
    return text;
  }

  void join(const std::string& more) {
    text_ = text_.empty() ? more
                          : words_.say("row.join", {textParam("a", text_), textParam("b", more)});
  }

  std::string bindOff(const Action& a) const {
    const char* key = a.kind == ActKind::Hold    ? (after_ == 0 ? "row.hold" : "row.holdFirst")
                      : a.kind == ActKind::Close ? "row.close"
                      : after_ == 0              ? "row.bindOffLast"
                                                 : "row.bindOff";
    return words_.say(key, {countParam("k", a.stitches.value())});
  }

  std::string shaping(const Action& a, const std::string& place) const {
    const std::string key = "row." + sideKey(row_) +
                            (a.kind == ActKind::Decrease ? ".decrease." : ".increase.") + place;
    return words_.say(tight_ && words_.has(key + ".edge") ? key + ".edge" : key);
  }

  // Up to the shaping at the end, or to the end.
  std::string middle(const Action* last) const {
    const bool decrease = last && last->kind == ActKind::Decrease;
    const int kept = !last ? 0 : decrease ? (tight_ ? 2 : 3) : 1;
    if (rest_ > 0) { // what is on the right needle before the last stitches are worked
      const int worked = !last ? 0 : decrease ? kept - 1 : 2;
      // From the beginning of the row they can be counted off; what waits on that needle then does
      // no harm.
      return words_.say(text_.empty() ? "row.worked" : "row.until",
                        {countParam("n", after_ - worked)});
    }
    return kept == 0 ? words_.say("row.toEnd") : toLast(kept);
  }

  std::string toLast(int n) const { return words_.say("row.toLast", {countParam("n", n)}); }

  const Words& words_;
  const std::vector<Action>& actions_;
  int row_, after_, rest_ = 0;
  bool tight_;
  std::string text_;
};

std::string actText(const Words& words, const std::vector<Action>& actions) {
  const auto all = [&](ActKind kind) {
    return std::all_of(actions.begin(), actions.end(),
                       [&](const Action& a) { return a.kind == kind; });
  };
  return words.say(all(ActKind::Decrease)   ? "act.decrease"
                   : all(ActKind::Increase) ? "act.increase"
                                            : "act.shape");
}

std::string evenText(const Words& words, const Step& step, PieceId piece) {
  if (step.rows() == 1) return words.say("even.one");
  const bool above = step.fromUnderarm > 0;
  const char* key = "even.rows";
  if (step.rows() >= kMeasured)
    key = !above            ? (step.fromFold > 0 ? "even.fold" : "even.piece")
          : isSleeve(piece) ? "even.cap"
                            : "even.armhole";
  const double height = above               ? step.fromUnderarm
                        : step.fromFold > 0 ? step.fromFold
                                            : step.fromCastOn;
  return words.say(key, {countParam("n", step.rows()), aSideParam(words, step.last),
                         lengthParam("height", height)});
}

std::string repeatText(const Words& words, const Step& step) {
  const char* key = step.every == 1 ? (step.times == 1 ? "repeat.eachOnce" : "repeat.each")
                                    : (step.times == 1 ? "repeat.once" : "repeat");
  const int n = step.times == 1 ? step.every - 1 : step.times;
  std::string what =
      words.say(key, {textParam("act", actText(words, step.actions)), countParam("like", step.like),
                      countParam("n", n), countParam("every", step.every)});
  // Some of the rows may be seen from the other side than the row that is named.
  bool otherSide = false;
  for (int row = step.last; row > step.last - step.times * step.every; row -= step.every)
    otherSide |= isRightSide(row) != isRightSide(step.like);
  if (!otherSide) return what;
  const int other = step.like + 1;
  return words.say("repeat.other",
                   {textParam("what", what), sideParam(words, other),
                    textParam("row", rowText(words, step.actions, other, step.stitches))});
}

std::string edgeText(const Words& words, const Step& step, const PieceSteps& piece) {
  const Param aSide = aSideParam(words, step.last);
  if (piece.edge == EdgeMade::Garter || piece.rib.kind == RibKind::Garter)
    return words.say("hem.garter", {aSide});
  if (piece.rib.kind == RibKind::Plain) return words.say("hem.plain", {aSide});
  if (piece.rib.kind != RibKind::Own)
    return words.say("hem", {aSide, textParam("rib", ribName(words, piece.rib))});
  return words.say("hem.own",
                   {aSide, textParam("rib", ribName(words, piece.rib)),
                    countParam("m", piece.rib.multiple), countParam("start", piece.ribEnds.start),
                    countParam("end", piece.ribEnds.end)});
}

std::string whatText(const Words& words, const Step& step, const PieceSteps& piece) {
  const auto offParams = [&](int n) {
    return Params{countParam("k", step.actions[0].stitches.value()), countParam("n", n),
                  sideParam(words, step.first)};
  };
  switch (step.kind) {
  case StepKind::CastOn:
    break;
  case StepKind::Hem:
    return edgeText(words, step, piece);
  case StepKind::RibRow:
    return ribRowText(words, piece.rib, piece.ribEnds, step.stitches, isRightSide(step.first));
  case StepKind::RibOn:
    return words.say(step.rows() == 1 ? "rib.on.one" : "rib.on", {aSideParam(words, step.last)});
  case StepKind::Facing:
    return words.say("facing", {aSideParam(words, step.last)});
  case StepKind::Fold:
    return words.say("fold");
  case StepKind::Even:
    return evenText(words, step, piece.id);
  case StepKind::Row: {
    const std::string row = rowText(words, step.actions, step.first, step.stitches);
    if (step.last == step.first) return row;
    return words.say("row.then", {textParam("row", row), countParam("last", step.last)});
  }
  case StepKind::Repeat:
    return repeatText(words, step);
  case StepKind::BindOffRows:
    return words.say("bindOff.rows", offParams(step.rows()));
  case StepKind::BindOffEvery:
    return words.say("bindOff.every", offParams(step.times));
  }
  return {};
}

bool shapesAnEdge(ActKind kind) {
  return kind != ActKind::Rest && kind != ActKind::Rejoin && kind != ActKind::IncreaseEvenly &&
         kind != ActKind::Buttonhole;
}

// The edges that a step shapes, the one at the beginning of its row first; empty when it shapes
// none.
std::string edgesText(const Words& words, const Step& step) {
  std::vector<std::string> names;
  const EdgeSide start = startOf(step.kind == StepKind::Repeat ? step.like : step.first);
  for (const bool atStart : {true, false})
    for (const Action& a : step.actions) {
      if (!shapesAnEdge(a.kind) || (a.side == start) != atStart) continue;
      std::string name = words.say("edge." + shapeKey(a.shapes));
      if (std::find(names.begin(), names.end(), name) == names.end())
        names.push_back(std::move(name));
    }
  return words.phrases().list(names);
}

std::string atText(const Words& words, const Step& step, const Part& part) {
  const std::string edges = part.together ? edgesText(words, step) : "";
  const bool one = step.first == step.last || step.kind == StepKind::Row;
  const std::string rows = one ? "at.row" : step.rows() == 2 ? "at.two" : "at.rows";
  return words.say(edges.empty() ? rows : rows + "Edge",
                   {countParam("first", step.first), countParam("last", step.last),
                    sideParam(words, step.first), textParam("edge", edges)});
}

// "Armhole, neck and shoulder"
std::string shapesText(const Words& words, std::vector<Shapes> shapes) {
  const auto neck = std::find(shapes.begin(), shapes.end(), Shapes::Neck);
  const auto shoulder = std::find(shapes.begin(), neck, Shapes::Shoulder);
  if (neck != shapes.end()) std::rotate(shoulder, neck, neck + 1); // the neck is named first
  std::vector<std::string> names;
  for (const Shapes shape : shapes)
    names.push_back(words.say("shape." + shapeKey(shape)));
  return words.phrases().rules().capitalised(words.phrases().list(names));
}

} // namespace

std::string rowText(const Words& words, const std::vector<Action>& actions, int row,
                    Stitches after) {
  return RowWords(words, actions, row, after).text();
}

std::string stepText(const Words& words, const Step& step, const Part& part,
                     const PieceSteps& piece) {
  const Param count = countParam("count", step.stitches.value());
  if (step.kind == StepKind::CastOn)
    return words.say("castOn", {countParam("k", step.stitches.value()), count});
  return words.say(step.waiting > Stitches(0) ? "line.waiting" : "line",
                   {textParam("at", atText(words, step, part)),
                    textParam("what", whatText(words, step, piece)), count,
                    countParam("waiting", step.waiting.value())});
}

std::string partText(const Words& words, const Part& part, PieceId piece) {
  const bool sleeve = isSleeve(piece);
  std::string title;
  switch (part.kind) {
  case PartKind::Hem:
    title = words.say(sleeve ? "part.cuff" : "part.hem");
    break;
  case PartKind::Main:
    title = words.say(sleeve ? "part.sleeve" : "part.body");
    break;
  case PartKind::Upper:
    title = shapesText(words, part.shapes);
    break;
  }
  if (part.section != SectionId::Undivided)
    title = words.say(part.section == SectionId::Right ? "part.right" : "part.left",
                      {textParam("title", title)});
  const int first = std::max(part.first(), 1), rows = part.last() - first + 1;
  if (rows < 1) return title;
  std::string range =
      words.say("part.range", {countParam("first", first), countParam("last", part.last())});
  if (rows == 1) range = words.phrases().number(first);
  return words.say("part", {textParam("title", title), textParam("range", range),
                            countParam("rows", rows), lengthParam("height", part.height)});
}

std::string togetherText(const Words& words, const Part& part) {
  const auto edges = [&](const std::vector<Shapes>& shapes) {
    std::vector<std::string> names;
    for (const Shapes shape : shapes)
      names.push_back(words.say("edge." + shapeKey(shape)));
    return words.phrases().list(names);
  };
  return words.say("together",
                   {textParam("right", edges(part.right)), textParam("left", edges(part.left))});
}

} // namespace scye
