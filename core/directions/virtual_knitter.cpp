#include "directions/virtual_knitter.h"

#include <optional>
#include <utility>

namespace scye {
namespace {

// The edges of what is on the needle, or on the holder.
struct Span {
  double left = 0, right = 0;
  [[nodiscard]] int count() const { return int(right - left); }
};

class Knitter {
public:
  explicit Knitter(double castOnLeft) : castOnLeft_(castOnLeft) {}

  void follow(const Step& step) {
    if (step.section != section_) turnTo(step);
    if (step.first != next_) snag(Snag::RowMissing, step.first);
    for (int row = step.first; row <= step.last; ++row)
      work(step, row);
    next_ = step.last + 1;
    if (step.stitches.value() != needle_.count() || step.waiting.value() != waiting())
      snag(Snag::CountDiffers, step.last);
  }

  Knitted finished() { return std::move(out_); }

private:
  // A section starts where the body ended; its first row takes up what it is knitted from.
  void turnTo(const Step& step) {
    section_ = step.section;
    next_ = divided_.value_or(next_);
    divided_ = next_;
  }

  void work(const Step& step, int row) {
    RowLine line{section_, Rows(row), 0, 0, {}, {}};
    reached_ = false;
    for (const Action& action : step.actions) {
      if (!isWorked(step, row)) continue;
      Action now = action;
      if (step.kind == StepKind::BindOffRows) now.side = startOf(row);
      perform(now, row);
      line.acts.push_back({line.row, now.kind, now.side, now.stitches, now.shapes, now.from});
    }
    if (!castOn_) snag(Snag::NotCastOn, row);
    line.leftEdge = needle_.left, line.rightEdge = needle_.right;
    if (!reached_ && waitingAt(endOf(row)) > 0) snag(Snag::OverWaiting, row);
    line.waiting = Stitches(waiting());
    out_.rows.push_back(std::move(line));
  }

  static bool isWorked(const Step& step, int row) {
    const int at = row - step.first; // rows into the step
    switch (step.kind) {
    case StepKind::Hem:
    case StepKind::RibRow:
    case StepKind::RibOn:
    case StepKind::Facing:
    case StepKind::Fold:
    case StepKind::Even:
      return false;
    case StepKind::CastOn:
    case StepKind::Row:
      return at == 0;
    case StepKind::Repeat:
      return (at + 1) % step.every == 0 && (at + 1) / step.every <= step.times;
    case StepKind::BindOffRows:
      return true;
    case StepKind::BindOffEvery:
      return at % 2 == 0 && at / 2 < step.times;
    }
    return false;
  }

  // The edge at which a row starts: right-side rows are knitted from right to left.
  static EdgeSide startOf(int row) { return row % 2 == 1 ? EdgeSide::Right : EdgeSide::Left; }
  static EdgeSide endOf(int row) { return startOf(row + 1); }

  int& waitingAt(EdgeSide side) { return side == EdgeSide::Right ? waitRight_ : waitLeft_; }
  [[nodiscard]] int waiting() const { return waitRight_ + waitLeft_; }

  void perform(const Action& action, int row) {
    const int k = action.stitches.value(), before = needle_.count();
    switch (action.kind) {
    case ActKind::CastOn:
      needle_ = {castOnLeft_, castOnLeft_ + k};
      castOn_ = true;
      return;
    case ActKind::Increase:
      shape(action.side, k, row);
      return;
    case ActKind::BindOff:
    case ActKind::Close:
    case ActKind::Hold:
      if (action.side != startOf(row)) snag(Snag::NotAtStart, row);
      [[fallthrough]];
    case ActKind::Decrease:
      if (k > needle_.count()) snag(Snag::TooFew, row);
      if (action.kind == ActKind::Close && k != needle_.count()) snag(Snag::CountDiffers, row);
      shape(action.side, -k, row);
      return;
    case ActKind::Rest:
      if (k >= needle_.count()) snag(Snag::TooFew, row);
      if (action.from.value() != waitLeft_) snag(Snag::CountDiffers, row);
      held_ = Span{needle_.left, needle_.left + k};
      heldWaiting_ = std::exchange(waitLeft_, 0);
      needle_.left += k;
      return;
    case ActKind::Rejoin:
      if (!held_ || held_->count() != k) snag(Snag::NothingHeld, row);
      if (held_) needle_ = *held_;
      if (action.from.value() != heldWaiting_ || waitRight_ != 0) snag(Snag::CountDiffers, row);
      waitLeft_ = std::exchange(heldWaiting_, 0);
      held_.reset();
      return;
    case ActKind::Wait:
    case ActKind::TakeUp:
      turnOrReach(action, row);
      return;
    case ActKind::IncreaseEvenly:
      if (k >= needle_.count()) snag(Snag::TooFew, row);
      needle_.left -= action.from == Stitches(0)      ? (k + 1) / 2
                      : action.side == EdgeSide::Left ? k
                                                      : 0;
      needle_.right = needle_.left + before + k;
      return;
    case ActKind::Buttonhole:
      // A stitch before it and one after it hold it.
      if (action.from < Stitches(1) || action.from.value() + k >= needle_.count())
        snag(Snag::TooFew, row);
      return;
    }
  }

  // The end of a short row: before the edge, or up to it over all that waited.
  void turnOrReach(const Action& action, int row) {
    const int k = action.stitches.value();
    int& waiting = waitingAt(action.side);
    reached_ = true;
    if (action.side == startOf(row)) snag(Snag::NotAtEnd, row);
    if (action.kind == ActKind::Wait) {
      if (k >= needle_.count()) snag(Snag::TooFew, row);
      if (action.from.value() != waiting) snag(Snag::CountDiffers, row);
      waiting += k;
      move(action.side, -k);
    } else {
      if (k != waiting) snag(Snag::NothingHeld, row);
      waiting = 0;
      move(action.side, k);
    }
  }

  void shape(EdgeSide side, int outward, int row) {
    if (waitingAt(side) > 0) snag(Snag::OverWaiting, row);
    move(side, outward);
  }

  void move(EdgeSide side, int outward) {
    if (side == EdgeSide::Right)
      needle_.right += outward;
    else
      needle_.left -= outward;
  }

  void snag(Snag what, int row) { out_.snags.push_back({what, section_, row}); }

  double castOnLeft_;
  Span needle_;
  std::optional<Span> held_;
  int waitRight_ = 0, waitLeft_ = 0; // beyond the turns
  bool reached_ = false;             // the row in work turns, or takes up what waits at its end
  int heldWaiting_ = 0;              // at the left edge of what is held
  SectionId section_ = SectionId::Undivided;
  std::optional<int> divided_; // the row in which the body was divided
  int next_ = 0;
  bool castOn_ = false;
  Knitted out_;
};

} // namespace

Knitted knit(const std::vector<Step>& steps, double castOnLeft) {
  Knitter knitter(castOnLeft);
  for (const Step& step : steps)
    knitter.follow(step);
  return knitter.finished();
}

Knitted knit(const PieceSteps& piece) {
  Knitter knitter(piece.castOnLeft);
  for (const Part& part : piece.parts)
    for (const Step& step : part.steps)
      knitter.follow(step);
  return knitter.finished();
}

} // namespace scye
