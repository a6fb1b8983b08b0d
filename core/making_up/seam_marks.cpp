#include "making_up/seam_marks.h"

#include "knit/on_stitches.h"

#include <algorithm>
#include <cmath>

namespace scye {

EdgeChain::EdgeChain(const KnittedEdge& edge, const StitchSize& size) {
  Vec2 at(0, 0);
  const auto reach = [&](Rows row) {
    if (!points_.empty()) {
      const double step = (at - points_.back()).norm();
      if (step <= 0) return;
      along_.push_back(along_.back() + step);
    } else {
      along_.push_back(0);
    }
    points_.push_back(at);
    rows_.push_back(row.value());
  };
  reach(edge.begin);
  const auto height = [&](Rows row) { return size.up(row - edge.begin); };
  std::size_t i = 0;
  if (!edge.events.empty() && edge.events.front().kind == EventKind::Underarm) {
    at.x() += size.across(edge.events.front().change);
    reach(edge.begin);
    i = 1;
  }
  at.y() = height(i < edge.events.size() ? edge.events[i].row : edge.end);
  reach(i < edge.events.size() ? edge.events[i].row : edge.end);
  for (; i < edge.events.size(); ++i) {
    const Rows next = i + 1 < edge.events.size() ? edge.events[i + 1].row : edge.end;
    at += Vec2(size.across(edge.events[i].change), 0);
    at.y() = height(next);
    reach(next);
  }
  flatFrom_ = along_.back();
  at.x() += edge.flatTop * size.width;
  reach(edge.end);
}

std::pair<std::size_t, double> EdgeChain::find(double s) const {
  if (points_.size() < 2) return {0, 0.0};
  const auto end = std::lower_bound(along_.begin() + 1, along_.end() - 1, s);
  const std::size_t i = std::size_t(end - along_.begin()) - 1;
  const double span = along_[i + 1] - along_[i];
  return {i, span > 0 ? std::clamp((s - along_[i]) / span, 0.0, 1.0) : 0.0};
}

double EdgeChain::rowAt(double s) const {
  const auto [i, t] = find(s);
  return points_.size() < 2 ? rows_[0] : rows_[i] + t * (rows_[i + 1] - rows_[i]);
}

Vec2 EdgeChain::pointAt(double s) const {
  const auto [i, t] = find(s);
  return points_.size() < 2 ? points_[0] : Vec2(points_[i] + t * (points_[i + 1] - points_[i]));
}

namespace {

// One side of one armhole while its marks are placed.
struct SewnEdges {
  const SeamWalk& walk;
  const EdgeChain &armhole, &cap;
  Rows armholeBegin, capBegin; // rows of the underarm bind-offs
  Stitches underarm, selvedge;
  double stitchWidth; // of the cap
  LetIn letIn;

  // What is let in is told by the mean of an edge's measures, the cap's chain goes by chords: its
  // curve is so many times as long as the told one, the crown is alike. Under the arm stitch is
  // sewn to stitch, whatever their widths.
  double stretch;

  [[nodiscard]] double capUnderarm() const { return underarm.value() * stitchWidth; }
  [[nodiscard]] double crownFrom() const {
    return letIn.from + (cap.flatFrom() - capUnderarm()) / stretch;
  }
  [[nodiscard]] double onChain(double s) const {
    if (s <= letIn.from) return letIn.from > 0 ? s * capUnderarm() / letIn.from : s;
    return s >= crownFrom() ? cap.flatFrom() + s - crownFrom()
                            : capUnderarm() + (s - letIn.from) * stretch;
  }
};

// The sizes of a stitch along one armhole and its cap.
struct Stitch {
  StitchSize back, front, cap;
};
Stitch stitchAlong(const KnitGarment& knit, const ArmholeFit& fit) {
  const auto of = [&](const StitchSize& own) { return own.width > 0 ? own : knit.lattice.size; };
  return {of(fit.backStitch), of(fit.frontStitch), of(fit.capStitch)};
}

// See SewnEdges::stretch; of both sides of one armhole together.
double stretchOf(const KnitGarment& knit, const ArmholeFit& fit) {
  const Stitch stitch = stitchAlong(knit, fit);
  const Stitches back = knit.backArmhole.schedule.underarm;
  const Stitches front = knit.frontArmhole.schedule.underarm;
  const double crown =
      2 * stitch.cap.width * crownHalfStitches(fit.capRight.crown, knit.lattice.selvedge);
  const double told = fit.armhole.chord + (fit.cap - fit.armhole).mean() -
                      stitch.back.across(back) - stitch.front.across(front) - crown;
  const double knitted = fit.cap.chord - stitch.cap.across(back + front) - crown;
  return told > 0 ? knitted / told : 1;
}

bool onUnderarm(const SewnEdges& side, double s) {
  return side.underarm.value() > 0 && s <= side.letIn.from + 1e-9;
}

PinPlace onArmhole(const SewnEdges& side, double s) {
  PinPlace place{s, int(std::lround(side.armhole.rowAt(s))), 0, Flat::None, 0};
  place.up = place.row - side.armholeBegin.value();
  if (onUnderarm(side, s)) place.flat = Flat::Underarm, place.stitches = side.underarm.value();
  return place;
}

PinPlace onCap(const SewnEdges& side, double s) {
  const double at = side.onChain(s);
  PinPlace place{s, int(std::lround(side.cap.rowAt(at))), 0, Flat::None, 0};
  place.up = place.row - side.capBegin.value();
  if (at > side.cap.flatFrom() + 1e-9) {
    place.flat = Flat::Crown;
    place.stitches =
        side.selvedge.value() + int(std::lround((at - side.cap.flatFrom()) / side.stitchWidth));
  } else if (onUnderarm(side, s)) {
    place.flat = Flat::Underarm, place.stitches = side.underarm.value();
  }
  return place;
}

// Where the drafted seam has its notches, measured along the knitted edges.
std::vector<SeamMark> marksOf(const SewnEdges& side) {
  std::vector<SeamMark> marks;
  // The flat underarm is known in stitches; the rest of the drafted way is stretched to the knitted
  // one.
  const double draftedRest = side.walk.armhole().length() - side.walk.underarm();
  const double scale = draftedRest > 0 ? (side.letIn.to - side.letIn.from) / draftedRest : 1;
  double before = 0;
  for (const Notch& notch : side.walk.notches()) {
    // Gathers keep their width; all else is stretched.
    const double s = notch.kind == NotchKind::GathersBegin
                         ? side.letIn.gathersFrom
                         : side.letIn.from + (notch.s - side.walk.underarm()) * scale;
    SeamMark m;
    m.kind = notch.kind;
    m.letIn = side.letIn.upTo(s);
    m.ease = m.letIn - before, before = m.letIn;
    m.armhole = onArmhole(side, s);
    m.cap = onCap(side, s + m.letIn);
    marks.push_back(m);
  }
  return marks;
}

SeamMarks sideMarks(const GarmentDraft& draft, const KnitGarment& knit, ArmholeHalf half,
                    bool left) {
  const Lattice& l = knit.lattice;
  const ArmholeFit& fit = left ? knit.left : knit.right;
  const bool back = half == ArmholeHalf::Back;
  // The back's left edge is the wearer's left; a front's is the wearer's right.
  const EdgeSide bodyEdge = back == left ? EdgeSide::Left : EdgeSide::Right;
  // The left sleeve has the front at its left edge, the right sleeve at its right.
  const EdgeSide capEdge = back == left ? EdgeSide::Right : EdgeSide::Left;
  const Schedule& armhole = (back ? knit.backArmhole : knit.frontArmhole).schedule;
  const Schedule& cap = capEdge == EdgeSide::Right ? fit.capRight : fit.capLeft;
  const Stitches selvedge = l.selvedge;
  const Rows underarmRow = l.underarmRow + (back ? l.back : l.front).longer;
  const KnittedEdge a = knittedEdge(armhole, bodyEdge, underarmRow);
  const KnittedEdge c = knittedEdge(cap, capEdge, l.sleeveUnderarmRow, selvedge);
  const Stitch stitch = stitchAlong(knit, fit);
  const StitchSize& body = back ? stitch.back : stitch.front;
  const EdgeChain armholeChain(a, body), capChain(c, stitch.cap);
  const SeamWalk walk(draft, half);
  // Each side gets its share of what the whole cap is longer, as the shoulder mark is set.
  const double capEase = (fit.cap - fit.armhole).mean();
  const double ease = armholeChain.length() * capEase / fit.armhole.chord;
  const double underarm = body.across(armhole.underarm);
  const LetIn let = letIn(draft, underarm, armholeChain.length(), ease, capEase);
  const SewnEdges side{walk,    armholeChain,        capChain, a.begin,
                       c.begin, armhole.underarm,    selvedge, stitch.cap.width,
                       let,     stretchOf(knit, fit)};
  return {half, left, let, side.crownFrom(), marksOf(side)};
}

// The shoulder lies in one place: what the back's side has of the crown, the front's has not.
void shareCrown(SeamMark& back, SeamMark& front, int crown) {
  if (back.cap.flat == Flat::Crown) {
    back.cap.stitches = std::clamp(back.cap.stitches, 0, crown);
    front.cap.flat = Flat::Crown, front.cap.stitches = crown - back.cap.stitches,
    front.cap.row = back.cap.row;
  } else if (front.cap.flat == Flat::Crown) {
    front.cap.stitches = std::clamp(front.cap.stitches, 0, crown);
    back.cap.flat = Flat::Crown, back.cap.stitches = crown - front.cap.stitches,
    back.cap.row = front.cap.row;
  }
}

} // namespace

std::vector<SeamMarks> seamMarks(const GarmentDraft& draft, const KnitGarment& knit) {
  std::vector<SeamMarks> out;
  if (!knit.capKnitted) return out;
  const GarmentDraft drawn = onStitches(draft, knit); // the pictures' notches
  for (const bool left : {false, true}) {
    SeamMarks back = sideMarks(drawn, knit, ArmholeHalf::Back, left);
    SeamMarks front = sideMarks(drawn, knit, ArmholeHalf::Front, left);
    shareCrown(back.marks.back(), front.marks.back(),
               (left ? knit.left : knit.right).capRight.crown.value());
    out.push_back(std::move(back));
    out.push_back(std::move(front));
  }
  return out;
}

BetweenMarks betweenMarks(const SeamMarks& side, std::size_t from, std::size_t to) {
  const SeamMark &a = side.marks[std::min(from, to)], &b = side.marks[std::max(from, to)];
  const double armhole = b.armhole.along - a.armhole.along;
  return {armhole, armhole + b.letIn - a.letIn, b.letIn - a.letIn};
}

DrawnIn drawnIn(const SeamMarks& back, const SeamMarks& front) {
  DrawnIn out;
  for (const SeamMarks* side : {&back, &front}) {
    const LetIn& let = side->letIn;
    const double top = let.to + let.ease();
    out.armhole += let.to - let.gathersFrom;
    out.cap += top - let.onCap(let.gathersFrom);
    out.crown += top - side->crownFrom;
    out.crownDrawn += let.to - let.onArmhole(side->crownFrom);
  }
  return out;
}

std::pair<int, int> smallestRatio(double ratio, double tolerance) {
  constexpr int kLargest = 40;
  for (int q = 1; q <= kLargest; ++q) {
    const int p = std::max(1, int(std::lround(ratio * q)));
    if (std::abs(double(p) / q - ratio) <= tolerance * ratio) return {p, q};
  }
  return {std::max(1, int(std::lround(ratio * kLargest))), kLargest};
}

} // namespace scye
