#include "curve/arc.h"

#include <algorithm>
#include <cmath>

namespace scye {

ArcWalk::ArcWalk(Path path) : path_(std::move(path)) {
  double sum = 0;
  for (const Cubic& c : path_.segments())
    ends_.push_back(sum += scye::length(c));
}

ArcWalk::Place ArcWalk::at(double s) const {
  Place place;
  place.point = path_.start();
  if (ends_.empty()) return place;
  place.s = std::clamp(s, 0.0, length());
  const auto end = std::lower_bound(ends_.begin(), ends_.end(), place.s);
  place.segment = std::min(std::size_t(end - ends_.begin()), ends_.size() - 1);
  const Cubic& c = path_.segments()[place.segment];
  const double before = place.segment == 0 ? 0 : ends_[place.segment - 1];
  const double span = ends_[place.segment] - before, want = place.s - before;
  double t = span > 0 ? std::clamp(want / span, 0.0, 1.0) : 0;
  if (!c.isStraight()) {
    double low = 0, high = 1;
    for (int i = 0; i < 40; ++i) {
      const double off = scye::length(c, 0, t) - want;
      if (std::abs(off) <= 1e-10) break;
      (off > 0 ? high : low) = t;
      const double speed = c.derivative(t).norm();
      double next = speed > 0 ? t - off / speed : 0.5 * (low + high);
      if (!(next > low && next < high)) next = 0.5 * (low + high);
      t = next;
    }
  }
  place.t = t;
  place.point = c.at(t);
  Vec2 d = c.derivative(t);
  if (d.norm() < 1e-12) d = c.end() - c.start();
  if (d.norm() > 0) place.tangent = d.normalized();
  return place;
}

} // namespace scye
