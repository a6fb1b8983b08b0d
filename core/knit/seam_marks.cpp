#include "knit/seam_marks.h"

#include <algorithm>
#include <cmath>

namespace scye {

EdgeChain::EdgeChain(const KnittedEdge& edge, const StitchSize& size) {
  Vec2 at(0, 0);
  const auto reach = [&](double row) {
    if (!points_.empty()) {
      const double step = (at - points_.back()).norm();
      if (step <= 0) return;
      along_.push_back(along_.back() + step);
    } else {
      along_.push_back(0);
    }
    points_.push_back(at);
    rows_.push_back(row);
  };
  reach(edge.begin);
  const auto height = [&](int row) { return (row - edge.begin) * size.height; };
  std::size_t i = 0;
  if (!edge.events.empty() && edge.events.front().kind == EventKind::Underarm) {
    at.x() += edge.events.front().change.value() * size.width;
    reach(edge.begin);
    i = 1;
  }
  at.y() = height(i < edge.events.size() ? edge.events[i].row : edge.end);
  reach(i < edge.events.size() ? edge.events[i].row : edge.end);
  for (; i < edge.events.size(); ++i) {
    const int next = i + 1 < edge.events.size() ? edge.events[i + 1].row : edge.end;
    at += Vec2(edge.events[i].change.value() * size.width, 0);
    at.y() = height(next);
    reach(next);
  }
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

// The marks of one side: where the drafted seam has its notches, measured along the knitted edges.
std::vector<SeamMark> marksOf(const SeamWalk& walk, const EdgeChain& armhole, int armholeBegin,
                              const EdgeChain& cap, int capBegin, double capLength, double underarm) {
  std::vector<SeamMark> marks;
  // The flat underarm is known in stitches; the rest of the drafted way is stretched to the knitted one.
  const double draftedRest = walk.armhole().length() - walk.underarm();
  const double scale = draftedRest > 0 ? (armhole.length() - underarm) / draftedRest : 1;
  const double ease = capLength - armhole.length();
  double letIn = 0;
  for (const double drafted : walk.notches()) {
    SeamMark m;
    m.armhole = underarm + (drafted - walk.underarm()) * scale;
    const double length = armhole.length() - underarm;
    const double share = easeShare(length > 0 ? (m.armhole - underarm) / length : 0);
    m.cap = m.armhole + ease * share;
    m.ease = ease * share - letIn;
    letIn = ease * share;
    m.key = drafted <= walk.underarm() + 1e-9             ? "underarm"
            : std::abs(drafted - walk.curveEnd()) < 1e-9   ? "curveEnd"
            : drafted >= walk.armhole().length() - 1e-9    ? "shoulder"
                                                           : "between";
    m.armholeRow = int(std::lround(armhole.rowAt(m.armhole)));
    m.capRow = int(std::lround(cap.rowAt(m.cap)));
    m.armholeUp = m.armholeRow - armholeBegin;
    m.capUp = m.capRow - capBegin;
    marks.push_back(std::move(m));
  }
  return marks;
}

} // namespace

std::vector<SeamMarks> seamMarks(const GarmentDraft& draft, const KnitGarment& knit) {
  std::vector<SeamMarks> out;
  if (!knit.capKnitted) return out;
  const Lattice& l = knit.lattice;
  const Stitches selvedge(l.selvedge);
  for (const bool left : {false, true}) {
    const ArmholeFit& fit = left ? knit.left : knit.right;
    for (const BodySide side : {BodySide::Back, BodySide::Front}) {
      const bool back = side == BodySide::Back;
      // The back's left edge is the wearer's left; a front's is the wearer's right.
      const EdgeSide bodyEdge = back == left ? EdgeSide::Left : EdgeSide::Right;
      // The left sleeve has the front at its left edge, the right sleeve at its right.
      const EdgeSide capEdge = back == left ? EdgeSide::Right : EdgeSide::Left;
      const Schedule& armhole = (back ? knit.backArmhole : knit.frontArmhole).schedule;
      const Schedule& cap = capEdge == EdgeSide::Right ? fit.capRight : fit.capLeft;
      const KnittedEdge a = knittedEdge(armhole, bodyEdge, l.underarmRow);
      const KnittedEdge c = knittedEdge(cap, capEdge, l.sleeveUnderarmRow, selvedge);
      const EdgeChain armholeChain(a, l.size), capChain(c, l.size);
      // Each side gets its share of what the whole cap is longer, as the shoulder mark is set.
      const double ease = fit.cap - fit.armhole;
      const double capLength = armholeChain.length() * (1 + ease / fit.armhole);
      const double underarm = armhole.underarm.value() * l.size.width;
      out.push_back({side, left,
                     marksOf(SeamWalk(draft, side), armholeChain, a.begin, capChain, c.begin, capLength, underarm)});
    }
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
