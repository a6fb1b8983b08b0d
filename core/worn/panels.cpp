#include "worn/panels.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

class Divider {
public:
  Divider(double spacing, std::array<int, kDivided>& parts) : spacing_(spacing), parts_(parts) {}

  int operator()(Divided which, double length, int least = 1) {
    int& n = parts_[std::size_t(which)];
    if (n == 0) n = std::max(least, int(std::lround(length / spacing_)));
    const double step = length / n;
    constexpr double kShort = 0.45, kLong = 1.9; // of the spacing, where there are several parts
    if (n > least && (step < kShort * spacing_ || step > kLong * spacing_)) even_ = false;
    if (n == least && step > kLong * spacing_) even_ = false;
    return n;
  }
  [[nodiscard]] bool even() const { return even_; }

private:
  double spacing_;
  std::array<int, kDivided>& parts_;
  bool even_ = true;
};

Line sampled(const Line& line, const std::vector<double>& s) {
  Line out;
  for (const double at : s)
    out.push_back(pointAt(line, at));
  return out;
}

SeamPlaces placesAlong(const Sewn& seam, Divider& divide, Divided flat, Divided rest) {
  SeamPlaces out;
  const LetIn& let = seam.letIn;
  if (let.from > 1e-6) {
    const int n = divide(flat, let.from);
    for (int i = 0; i < n; ++i)
      out.s.push_back(let.from * i / n);
  }
  const int n = divide(rest, let.to - let.from, 4);
  const std::size_t first = out.s.size();
  for (int i = 0; i <= n; ++i)
    out.s.push_back(let.from + (let.to - let.from) * i / n);
  std::vector<std::size_t> fixed{first};
  for (const double notch : seam.notches) {
    const auto near = std::min_element(
        out.s.begin() + std::ptrdiff_t(first), out.s.end(),
        [&](double a, double b) { return std::abs(a - notch) < std::abs(b - notch); });
    const std::size_t i = std::size_t(near - out.s.begin());
    if (i > first && i + 1 < out.s.size()) out.s[i] = notch, fixed.push_back(i);
    out.notch.push_back(int(i));
  }
  // The places between them evenly again: short edges make slivers.
  fixed.push_back(out.s.size() - 1);
  std::ranges::sort(fixed);
  for (std::size_t k = 1; k < fixed.size(); ++k) {
    const std::size_t from = fixed[k - 1], to = fixed[k];
    for (std::size_t i = from + 1; i < to; ++i)
      out.s[i] = out.s[from] + (out.s[to] - out.s[from]) * double(i - from) / double(to - from);
  }
  return out;
}

// Up the side, divided where the wedge of the other piece is sewn.
struct SideLines {
  Line low, high;
};
SideLines sideLines(const Line& side, double at) {
  SideLines out;
  if (at <= 0) return {side, {}};
  double before = 0, crossing = -1;
  for (std::size_t i = 1; i < side.size() && crossing < 0; ++i) {
    const double step = (side[i] - side[i - 1]).norm();
    if (side[i].y() >= at && side[i].y() > side[i - 1].y())
      crossing = before + step * (at - side[i - 1].y()) / (side[i].y() - side[i - 1].y());
    before += step;
  }
  const double length = lengthOf(side);
  crossing = std::clamp(crossing, 0.02 * length, 0.98 * length);
  const Vec2 corner = pointAt(side, crossing);
  out.low.push_back(side.front());
  double s = 0;
  for (std::size_t i = 1; i < side.size(); ++i) {
    s += (side[i] - side[i - 1]).norm();
    (s < crossing - 1e-9 ? out.low : out.high).push_back(side[i]);
  }
  out.low.push_back(corner);
  if ((out.high.front() - corner).norm() > 1e-9) out.high.insert(out.high.begin(), corner);
  return out;
}

Line raised(Line line, double by) {
  for (Vec2& p : line)
    p.y() += by;
  return line;
}

Panel bodicePanel(const BodicePattern& p, const BodicePattern::Wedge& wedge, bool hasWedge,
                  const SeamPlaces& places, Divider& divide, bool back) {
  Panel panel;
  const auto pick = [&](Divided ofBack, Divided ofFront) { return back ? ofBack : ofFront; };
  panel.add(RunName::CastOn,
            evenly(p.castOn,
                   divide(pick(Divided::BackCastOn, Divided::FrontCastOn), lengthOf(p.castOn), 3)));
  const SideLines side = sideLines(p.side, wedge.depth > 0 ? wedge.low : 0);
  const double up = hasWedge ? wedge.depth : 0;
  panel.add(RunName::SideLow, evenly(side.low, divide(Divided::SideLow, lengthOf(side.low), 2)));
  if (hasWedge) {
    const Vec2 corner = side.low.back(), point = corner + Vec2(-wedge.reach, 0.5 * up);
    const int n = divide(Divided::Dart, (point - corner).norm(), 2);
    panel.add(RunName::DartLow, evenly({corner, point}, n));
    panel.add(RunName::DartHigh, evenly({point, Vec2(corner + Vec2(0, up))}, n));
  }
  if (!side.high.empty())
    panel.add(RunName::SideHigh,
              evenly(raised(side.high, up), divide(Divided::SideHigh, lengthOf(side.high), 1)));
  panel.add(RunName::Armhole, sampled(p.armhole, places.s));
  panel.add(RunName::Shoulder,
            evenly(p.shoulder, divide(Divided::Shoulder, lengthOf(p.shoulder), 2)));
  panel.add(RunName::Neck, evenly(p.neck, divide(pick(Divided::BackNeck, Divided::FrontNeck),
                                                 lengthOf(p.neck), 3)));
  panel.add(RunName::Closing,
            evenly(p.closing, divide(pick(Divided::BackClosing, Divided::FrontClosing),
                                     lengthOf(p.closing), 3)));
  return panel;
}

Line onCap(const Line& cap, const Sewn& seam, const SeamPlaces& places) {
  std::vector<double> s;
  for (const double at : places.s)
    s.push_back(seam.letIn.onCap(at));
  return sampled(cap, s);
}

Panel sleevePanel(const WornPattern& p, const Panels& panels, Divider& divide) {
  Panel panel;
  const SleevePattern& s = p.sleeve;
  panel.add(RunName::CastOn,
            evenly(s.castOn, divide(Divided::SleeveCastOn, lengthOf(s.castOn), 6)));
  const Line seam = evenly(s.frontSeam, divide(Divided::SleeveSeam, lengthOf(s.frontSeam), 2));
  panel.add(RunName::FrontSeam, seam);
  Line front = onCap(s.cap, p.frontSeam, panels.frontSeam);
  Line back = onCap(reversed(s.cap), p.backSeam, panels.backSeam);
  front.front() = seam.back();
  back.front() = Vec2(-seam.back().x(), seam.back().y());
  back.back() = front.back(); // the shoulder mark
  panel.add(RunName::CapFront, front);
  panel.add(RunName::CapBack, reversed(back));
  Line other = reversed(seam);
  for (Vec2& q : other)
    q.x() = -q.x();
  panel.add(RunName::BackSeam, other);
  return panel;
}

} // namespace

int Panel::find(RunName name) const {
  const auto at = std::find(names.begin(), names.end(), name);
  return at == names.end() ? -1 : int(at - names.begin());
}

Panels panelsOf(const WornPattern& p, double spacing, std::array<int, kDivided>& parts,
                bool& even) {
  Divider divide(spacing, parts);
  Panels out;
  out.backSeam = placesAlong(p.backSeam, divide, Divided::BackUnderarm, Divided::BackArmhole);
  out.frontSeam = placesAlong(p.frontSeam, divide, Divided::FrontUnderarm, Divided::FrontArmhole);
  const BodicePattern::Wedge& wedge = p.front.wedge;
  out.back = bodicePanel(p.back, wedge, false, out.backSeam, divide, true);
  out.front = bodicePanel(p.front, wedge, wedge.depth > 0, out.frontSeam, divide, false);
  out.sleeve = sleevePanel(p, out, divide);
  even = divide.even();
  return out;
}

} // namespace scye
