// What a schedule comes to, recomputed the slow and obvious way: the piece is knitted row by row
// into the columns left_edge and right_edge of a row table, and lengths and deviations are read off
// those columns alone. Shares nothing with the searches.
#pragma once

#include "curve/path.h"
#include "shaping/runs.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>
#include <vector>

namespace scye::checks {

// Positions in stitches from x = 0 as they stand after the row before the schedule's start (index
// 0), after its row 0 (index 1), and so on; the crown row and the shoulder rows are not included.
struct Columns {
  std::vector<double> right, left;
  int rightEnd = 0, leftEnd = 0; // rows from the start in which the edges end
};

inline Columns knit(const Schedule& s, double halfWidth) {
  std::map<int, int> rightChange, leftChange; // by row
  rightChange[0] += s.underarm.value();
  leftChange[1] += s.underarm.value();
  int row = 0;
  for (const Run& run : s.runs)
    for (int i = 0; i < run.times; ++i) {
      row += run.every.value() + (i == 0 ? run.rest.value() : 0);
      const int change = run.kind == ShapingKind::Increase ? -1 : run.stitches.value();
      rightChange[row] += change;
      leftChange[run.kind == ShapingKind::BindOff ? row + 1 : row] += change;
    }
  Columns out;
  out.rightEnd = s.rows.value();
  out.leftEnd = s.rows.value() + (s.crown > Stitches(0) ? 0 : 1);
  double right = halfWidth, left = -halfWidth;
  out.right.push_back(right), out.left.push_back(left);
  for (int r = 0; r < std::max(out.rightEnd, out.leftEnd); ++r) {
    out.right.push_back(right -= rightChange[r]);
    out.left.push_back(left += leftChange[r]);
  }
  return out;
}

// The three lengths of one column's edge; `column[i]` stands after row i - 1. Each is the length of
// a chain of points: the outer corners of the steps, the inner corners, the middles of the treads.
struct Lengths {
  double chord = 0, corner = 0, middle = 0;
  [[nodiscard]] double mean() const { return (chord + corner + middle) / 3; }
};
inline Lengths lengths(const std::vector<double>& column, int underarmRow, int end, double w,
                       double h) {
  const auto along = [&](double outer) { // share of the outer corner in the point that is taken
    double sum = std::abs(column[underarmRow + 1] - column[underarmRow]) * w;
    double x = column[underarmRow + 1], y = underarmRow;
    const auto to = [&](double nextX, double nextY) {
      sum += std::sqrt((nextX - x) * (nextX - x) * w * w + (nextY - y) * (nextY - y) * h * h);
      x = nextX, y = nextY;
    };
    for (int row = underarmRow + 1; row < end; ++row)
      if (column[row + 1] != column[row])
        to(outer * column[row] + (1 - outer) * column[row + 1], row);
    to(column[end], end);
    return sum;
  };
  return {along(1), along(0), along(0.5)};
}

// x of a path that never falls, at a height above its start, by bisection; its end's x beyond.
inline double across(const std::vector<Cubic>& path, double y) {
  for (const Cubic& c : path) {
    if (c.p[3].y() < y) continue;
    double lo = 0, hi = 1;
    for (int i = 0; i < 60; ++i) {
      const double t = 0.5 * (lo + hi), u = 1 - t;
      const double at = u * u * u * c.p[0].y() + 3 * u * u * t * c.p[1].y() +
                        3 * u * t * t * c.p[2].y() + t * t * t * c.p[3].y();
      (at < y ? lo : hi) = t;
    }
    const double t = lo, u = 1 - t;
    return u * u * u * c.p[0].x() + 3 * u * u * t * c.p[1].x() + 3 * u * t * t * c.p[2].x() +
           t * t * t * c.p[3].x();
  }
  return path.back().p[3].x();
}

// x between the bottom and the top of each two-row step: {least, most}.
using Intervals = std::vector<std::pair<double, double>>;
inline Intervals intervals(const std::vector<Cubic>& path, int steps, double h) {
  Intervals out;
  for (int j = 0; j < steps; ++j) {
    std::pair<double, double> x{1e9, -1e9};
    for (int i = 0; i <= 8; ++i) {
      const double at = across(path, path.front().p[0].y() + (2 * j + i / 4.0) * h);
      x.first = std::min(x.first, at), x.second = std::max(x.second, at);
    }
    out.push_back(x);
  }
  return out;
}

// Largest distance in stitches between an edge as it stands in the second row of each step and the
// step's interval. `inward` is what the edge has moved since its underarm bind-off, after each row.
inline double deviation(const std::vector<double>& inward, const Intervals& curve, double foot,
                        double w) {
  double worst = 0;
  for (std::size_t row = 0; row < inward.size(); row += 2) {
    const double x = foot - inward[std::min(row + 1, inward.size() - 1)] * w;
    const auto [least, most] = curve[row / 2];
    worst = std::max({worst, (least - x) / w, (x - most) / w});
  }
  return worst;
}

inline std::vector<double> rightInward(const Schedule& s) {
  const Columns c = knit(s, 0);
  std::vector<double> inward;
  for (int row = 0; row < c.rightEnd; ++row)
    inward.push_back(-c.right[row + 1] - s.underarm.value());
  return inward;
}

inline double rightDeviation(const Schedule& s, const std::vector<Cubic>& path, double w,
                             double h) {
  const std::vector<double> inward = rightInward(s);
  const int steps = int(inward.size() + 1) / 2;
  return deviation(inward, intervals(path, steps, h), path.front().p[0].x(), w);
}

inline Lengths withFlat(Lengths l, double flat) {
  return {l.chord + flat, l.corner + flat, l.middle + flat};
}
inline Lengths rightLengths(const Schedule& s, double w, double h, double flatTop = 0) {
  const Columns c = knit(s, 0);
  return withFlat(lengths(c.right, 0, c.rightEnd, w, h), flatTop * w);
}
inline Lengths leftLengths(const Schedule& s, double w, double h, double flatTop = 0) {
  const Columns c = knit(s, 0);
  return withFlat(lengths(c.left, s.underarm > Stitches(0) ? 1 : 0, c.leftEnd, w, h), flatTop * w);
}

// How steep a run is: stitches a row.
inline double rate(const Run& run) {
  return double(run.stitches.value()) / run.every.value();
}

} // namespace scye::checks
