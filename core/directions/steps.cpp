#include "directions/steps.h"

#include <algorithm>
#include <limits>

namespace scye {
namespace {

// A single repeat after more even rows than this is told as even rows with their height, then a
// row.
constexpr int kFarApart = 8;

struct ShapedRow {
  int row = 0;
  std::vector<Action> actions;
};

std::vector<ShapedRow> shapedRows(const Section& section) {
  std::vector<ShapedRow> rows;
  for (const Act& a : section.acts) {
    const int row = a.row.value();
    if (rows.empty() || rows.back().row != row) rows.push_back({row, {}});
    rows.back().actions.push_back({a.kind, a.side, a.stitches, a.shapes, a.from});
  }
  return rows;
}

bool oneByOne(const Action& a) {
  return a.kind == ActKind::Increase || a.kind == ActKind::Decrease;
}
bool oneByOne(const ShapedRow& r) {
  return std::all_of(r.actions.begin(), r.actions.end(),
                     [](const Action& a) { return oneByOne(a); });
}

bool aboveBody(Shapes s) {
  return s == Shapes::Underarm || s == Shapes::Armhole || s == Shapes::Cap || s == Shapes::Crown;
}
bool aboutNeck(Shapes s) {
  return s == Shapes::Neck || s == Shapes::Shoulder;
}

template <class Is>
int firstRow(const Section& section, Is is) {
  for (const Act& a : section.acts)
    if (is(a.shapes)) return a.row.value();
  return std::numeric_limits<int>::max();
}

bool isSleeve(PieceId id) {
  return id == PieceId::Sleeve || id == PieceId::LeftSleeve;
}

// What the knitter calls it: the underarm belongs to the armhole or cap, the crown to the cap.
Shapes named(Shapes s, PieceId piece) {
  if (s == Shapes::Underarm) return isSleeve(piece) ? Shapes::Cap : Shapes::Armhole;
  return s == Shapes::Crown ? Shapes::Cap : s;
}

// The rows of one part made into steps.
class PartSteps {
public:
  PartSteps(const std::vector<ShapedRow>& rows, const Section& section, const RowLine* lines)
      : rows_(rows), section_(section.id), first_(section.first.value()), lines_(lines) {}

  std::vector<Step> steps(int first, int last) {
    next_ = first, last_ = last;
    const auto before = [](const ShapedRow& r, int row) { return r.row < row; };
    i_ = std::size_t(std::lower_bound(rows_.begin(), rows_.end(), first, before) - rows_.begin());
    end_ =
        std::size_t(std::lower_bound(rows_.begin(), rows_.end(), last + 1, before) - rows_.begin());
    while (i_ < end_) {
      if (repeat()) continue;
      if (const int gap = rows_[i_].row - next_; gap > 0) add(StepKind::Even, rows_[i_].row - 1);
      if (!bindOffRows() && !bindOffEvery()) single();
    }
    if (next_ <= last_) add(StepKind::Even, last_);
    return std::move(steps_);
  }

private:
  Step& add(StepKind kind, int last) {
    Step step;
    step.kind = kind;
    step.section = section_;
    step.first = next_, step.last = last;
    step.stitches = lines_[last - first_].stitches();
    step.waiting = lines_[last - first_].waiting;
    next_ = last + 1;
    steps_.push_back(std::move(step));
    return steps_.back();
  }

  bool tight(std::size_t i) const {
    return isTight(rows_[i].actions, lines_[rows_[i].row - first_].stitches());
  }
  // The same actions, told in the same words.
  bool alike(std::size_t i, std::size_t j) const {
    return rows_[i].actions == rows_[j].actions && tight(i) == tight(j);
  }

  // How often the actions of row i, worked first `every` rows after `row`, come again at that
  // distance.
  int timesAt(std::size_t i, int row, int every) const {
    int times = 0;
    for (std::size_t j = i; j < end_ && alike(i, j); ++j, ++times)
      if (rows_[j].row != row + (times + 1) * every) break;
    return times;
  }

  bool comesAgain(std::size_t i) const {
    return i + 1 < end_ && oneByOne(rows_[i]) && alike(i, i + 1) &&
           (rows_[i + 1].row - rows_[i].row <= kFarApart || againAfter(i) > 1);
  }
  int againAfter(std::size_t i) const {
    return timesAt(i + 1, rows_[i].row, rows_[i + 1].row - rows_[i].row);
  }

  bool repeat() {
    if (steps_.empty() || i_ == 0 || rows_[i_ - 1].row != next_ - 1 || !comesAgain(i_ - 1))
      return false;
    const Step& before = steps_.back();
    const int like = before.kind == StepKind::Repeat ? before.like : before.first;
    const int every = rows_[i_].row - rows_[i_ - 1].row, times = againAfter(i_ - 1);
    Step& step = add(StepKind::Repeat, rows_[i_ - 1].row + times * every);
    step.actions = rows_[i_].actions;
    step.every = every, step.times = times, step.like = like;
    i_ += std::size_t(times);
    return true;
  }

  // A bind-off at the beginning of row i, and nothing else, that leaves stitches on the needle.
  bool stepsOff(std::size_t i) const {
    if (i >= end_ || rows_[i].actions.size() != 1) return false;
    const ShapedRow& r = rows_[i];
    return r.actions[0].kind == ActKind::BindOff &&
           (r.actions[0].side == EdgeSide::Right) == (r.row % 2 == 1) &&
           lines_[r.row - first_].stitches() > Stitches(0);
  }
  bool sameStep(std::size_t i, std::size_t j) const {
    const Action &a = rows_[i].actions[0], &b = rows_[j].actions[0];
    return a.stitches == b.stitches && a.shapes == b.shapes;
  }

  bool bindOffRows() {
    if (!stepsOff(i_)) return false;
    std::size_t j = i_ + 1;
    while (stepsOff(j) && rows_[j].row == rows_[j - 1].row + 1 && sameStep(i_, j))
      ++j;
    if (j - i_ < 2) return false;
    add(StepKind::BindOffRows, rows_[j - 1].row).actions = rows_[i_].actions;
    i_ = j;
    return true;
  }

  bool bindOffEvery() {
    if (!stepsOff(i_)) return false;
    std::size_t j = i_ + 1;
    while (stepsOff(j) && rows_[j].row == rows_[j - 1].row + 2 && sameStep(i_, j))
      ++j;
    if (j - i_ < 2) return false;
    const int times = int(j - i_), lastOff = rows_[j - 1].row;
    const bool evenAfter = lastOff < last_ && (j == end_ || rows_[j].row > lastOff + 1);
    Step& step = add(StepKind::BindOffEvery, lastOff + (evenAfter ? 1 : 0));
    step.actions = rows_[i_].actions;
    step.every = 2, step.times = times;
    i_ = j;
    return true;
  }

  void single() {
    const int row = rows_[i_].row, after = i_ + 1 < end_ ? rows_[i_ + 1].row : last_ + 1;
    // Where the piece is divided or the row counted out the sentence is long enough already.
    const std::vector<Action>& actions = rows_[i_].actions;
    const bool isLong = std::any_of(actions.begin(), actions.end(), [](const Action& a) {
      return a.kind == ActKind::Rest || a.kind == ActKind::Rejoin ||
             a.kind == ActKind::IncreaseEvenly || a.kind == ActKind::Buttonhole;
    });
    const bool oneEven = after == row + 2 && !comesAgain(i_) && !isLong;
    add(StepKind::Row, oneEven ? row + 1 : row).actions = rows_[i_].actions;
    ++i_;
  }

  const std::vector<ShapedRow>& rows_;
  SectionId section_;
  int first_;            // row of the section
  const RowLine* lines_; // of it
  std::size_t i_ = 0, end_ = 0;
  int next_ = 0, last_ = 0;
  std::vector<Step> steps_;
};

// What an action at the edge is told by; what is worked within the piece belongs to no edge.
bool atAnEdge(const Action& a) {
  return a.kind != ActKind::CastOn && a.kind != ActKind::IncreaseEvenly &&
         a.kind != ActKind::Buttonhole && a.shapes != Shapes::Bust;
}

// What is shaped, and whether the edges are shaped for different ends.
void describe(Part& part, PieceId piece) {
  std::vector<Shapes> right, left;
  const auto note = [](std::vector<Shapes>& in, Shapes s) {
    if (std::find(in.begin(), in.end(), s) == in.end()) in.push_back(s);
  };
  for (const Step& step : part.steps)
    for (const Action& a : step.actions) {
      if (!atAnEdge(a)) continue;
      const Shapes s = named(a.shapes, piece);
      note(part.shapes, s);
      if (a.kind == ActKind::Rest || a.kind == ActKind::Rejoin) continue;
      if (step.kind == StepKind::BindOffRows || a.side == EdgeSide::Right) note(right, s);
      if (step.kind == StepKind::BindOffRows || a.side == EdgeSide::Left) note(left, s);
    }
  for (std::vector<Shapes>* all : {&part.shapes, &right, &left})
    std::sort(all->begin(), all->end());
  part.together =
      !right.empty() && !left.empty() &&
      std::find_first_of(right.begin(), right.end(), left.begin(), left.end()) == right.end();
  if (part.together) part.right = right, part.left = left;
}

class PieceTeller {
public:
  PieceTeller(const KnitPiece& piece, const StitchSize& size)
      : piece_(piece), height_(size.height) {
    out_.id = piece.id;
    for (const Section& s : piece.sections)
      for (const Act& a : s.acts) {
        if (!aboveBody(a.shapes)) continue;
        underarm_ = std::min(underarm_, a.row.value());
        if (a.side == EdgeSide::Left) leftUnderarm_ = std::min(leftUnderarm_, a.row.value());
      }
  }

  PieceSteps told() {
    const RowLine* lines = piece_.rows.data();
    for (const Section& section : piece_.sections) {
      tell(section, lines);
      lines += (section.last - section.first).value() + 1;
    }
    return std::move(out_);
  }

private:
  void tell(const Section& section, const RowLine* lines) {
    const std::vector<ShapedRow> rows = shapedRows(section);
    const int begin = section.first.value(), end = section.last.value() + 1;
    int first = begin;
    if (section.id == SectionId::Undivided) first = hem(section, rows, lines);
    // An armhole that began below a divided neck goes on beside it.
    const bool begun = section.id != SectionId::Undivided && underarm_ < begin;
    const int above = begun ? begin : firstRow(section, aboveBody),
              neck = firstRow(section, aboutNeck);
    for (const int start : {std::min(above, neck), std::max(above, neck), end}) {
      if (start <= first || start > end) continue;
      Part part;
      part.kind = first < std::min(above, neck) ? PartKind::Main : PartKind::Upper;
      part.steps = PartSteps(rows, section, lines).steps(first, start - 1);
      add(std::move(part), section.id);
      first = start;
    }
  }

  // Cast-on and rib; returns the row after them.
  int hem(const Section& section, const std::vector<ShapedRow>& rows, const RowLine* lines) {
    Part part;
    part.kind = PartKind::Hem;
    out_.castOnLeft = lines->leftEdge;
    Step castOn;
    castOn.kind = StepKind::CastOn;
    castOn.actions = rows.front().actions;
    castOn.stitches = lines->stitches();
    const Stitches castOnStitches = castOn.stitches;
    part.steps.push_back(std::move(castOn));
    int last = std::min(piece_.hemRows, section.last).value();
    if (rows.size() > 1) last = std::min(last, rows[1].row - 1);
    const auto even = [&](StepKind kind, int from, int to) {
      if (to < from) return;
      Step step;
      step.kind = kind;
      step.first = from, step.last = to;
      step.stitches = lines[to].stitches();
      part.steps.push_back(std::move(step));
    };
    if (const int fold = piece_.foldRow.value(); fold > 0 && fold <= last) {
      out_.edge = piece_.edge;
      even(StepKind::Facing, 1, fold - 1);
      even(StepKind::Fold, fold, fold);
      even(StepKind::Even, fold + 1, last);
    } else {
      edge(even, last, castOnStitches);
    }
    add(std::move(part), section.id);
    return last + 1;
  }

  // Rib and seed stitch are written out where they fit.
  template <class Even>
  void edge(Even even, int last, Stitches castOn) {
    out_.edge = last > 0 ? piece_.edge : EdgeMade::Plain;
    out_.rib = piece_.rib;
    out_.ribEnds = fittedEnds(piece_.rib, piece_.sides, piece_.selvedge, castOn);
    if (out_.edge != EdgeMade::Ribbed || !canWriteOut(out_.rib, out_.ribEnds, castOn))
      return even(StepKind::Hem, 1, last);
    for (int row = 1; row <= std::min(last, 2); ++row)
      even(StepKind::RibRow, row, row);
    even(StepKind::RibOn, 3, last);
  }

  void add(Part part, SectionId section) {
    part.section = section;
    describe(part, piece_.id);
    part.height = height_ * (part.last() - std::max(part.first(), 1) + 1);
    // Of a divided piece's left half the armhole is the left edge, which begins a row later.
    const int underarm = section == SectionId::Left ? leftUnderarm_ : underarm_;
    for (Step& step : part.steps) {
      step.fromCastOn = height_ * step.last;
      if (piece_.foldRow > Rows(0))
        step.fromFold = height_ * std::max(0, step.last - (piece_.foldRow.value() - 1));
      step.fromUnderarm = height_ * std::max(0, step.last - (underarm - 1));
    }
    out_.parts.push_back(std::move(part));
  }

  const KnitPiece& piece_;
  double height_;                                      // cm, of a row
  int underarm_ = std::numeric_limits<int>::max();     // the first row of an armhole or cap
  int leftUnderarm_ = std::numeric_limits<int>::max(); // of one at the left edge
  PieceSteps out_;
};

} // namespace

bool isTight(const std::vector<Action>& actions, Stitches after) {
  int wanted = 0,
      left = after.value(); // stitches the shaping asks for, and what is there when it starts
  for (const Action& a : actions) {
    if (a.kind == ActKind::BindOff || a.kind == ActKind::Hold) ++wanted;
    if (a.kind == ActKind::Decrease) wanted += 3, left += a.stitches.value();
    if (a.kind == ActKind::Increase) ++wanted, left -= a.stitches.value();
  }
  return left < wanted;
}

PieceSteps stepsOf(const KnitPiece& piece, const StitchSize& size) {
  if (piece.rows.empty()) {
    PieceSteps none;
    none.id = piece.id;
    return none;
  }
  return PieceTeller(piece, piece.size.height > 0 ? piece.size : size).told();
}

} // namespace scye
