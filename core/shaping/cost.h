// What a schedule costs. The unit is one line to say: a schedule may be a line longer where that
// saves more than 1. The weights stand in the one table below; they are the outcome of trials on
// the survey's bodies (tests/bench), not of any source: the drawn shape before all steps and lines,
// those before the seam's 2 mm and its measures. What must not be is dear rather than forbidden, so
// that an odd design still gets the best that can be had.
#pragma once

#include "shaping/runs.h"

#include <algorithm>
#include <cmath>

namespace scye {

struct ShapingPrices {
  // What the fidelity control moves: at 0.5 both are as in the table.
  double line = 1; // a run that has to be told
  double off = 1;  // a stitch off the curve

  [[nodiscard]] static ShapingPrices at(double fidelity) {
    return {.line = 0.1 + 1.8 * (1 - fidelity), .off = 0.1 + 1.8 * fidelity};
  }

  // A price that grows: so much a unit from the start, and past each limit once more and steeper.
  struct Steps {
    double each = 0;
    double first = 0, once = 0, more = 0;      // past `first`: `once`, and `more` a unit
    double second = 0, again = 0, steeper = 0; // past `second`: `again`, and `steeper` a unit
    [[nodiscard]] constexpr double operator()(double amount) const {
      constexpr double kRounding = 1e-9;
      double price = each * amount;
      if (amount > first + kRounding) price += once + more * (amount - first);
      if (amount > second + kRounding) price += again + steeper * (amount - second);
      return price;
    }
    [[nodiscard]] constexpr Steps times(double factor) const {
      return {factor * each, first,          factor * once,   factor * more,
              second,        factor * again, factor * steeper};
    }
  };

  // clang-format off
  //                                  each  first once  more  second again  steeper
  static constexpr Steps kCapOff     {0,    1,    154,  8,    1.5,  300,   250}; // stitches, beside `off`
  static constexpr Steps kArmholeOff {0,    1,    34,   8,    1.5,  2000,  0}; // stitches, beside `off`
  static constexpr Steps kCrown      {0.5,  1,    180,  8,    2,    60,    0}; // stitches from the wanted
  static constexpr Steps kHeight     {0,    2,    20,   2,    4,    60,    0}; // rows from the curve's
  static constexpr Steps kDraftHeight{0.2,  1.5,  4,    10,   4,    8,     0}; // rows from the draft's, see height()
  static constexpr Steps kSeam       {0.1,  2,    10,   6,    3.4,  250,   150}; // mm, the worse side
  static constexpr Steps kSpread     {0,    4,    0,    1,    5,    60,    0}; // mm between the measures, see spread()
  static constexpr double kSingle = 0.5;         // a run of a single decrease
  static constexpr double kWideStep = 11;        // a cm of each bind-off in a run over the style's plainStep()
  static constexpr double kCoarseStep = 8;       // over its maxStep
  static constexpr double kOtherWidth = 0.25;    // a sleeve of the second nearest width
  static constexpr double kWrongSideCrown = 0.5;
  static constexpr double kUnderarmMoved = 2;    // a stitch
  static constexpr double kPrinted = -1;         // an armhole of "1 on every RS row" alone
  static constexpr double kFurtherBindOff = 36;  // of an armhole, past those allowed
  static constexpr double kFurtherLine = 72;     // past capLines()
  // clang-format on

  // Lines of a cap: the finer the stitches, the more.
  [[nodiscard]] static double capLines(const StitchSize& size) {
    const double perTen = 10 / size.width;
    return perTen < 25 ? 5 : perTen < 32 ? 6 : 7;
  }

  // Of a knitted cap so many rows over its curve's height. The smooth draft's height is another: it
  // changes little from one design to the next, where whole stitches and rows jump. Knitted caps
  // stand a row above it, for their last two rows are flat.
  [[nodiscard]] static double height(double overCurve, double overDraft) {
    return kHeight(std::abs(overCurve)) + kDraftHeight(std::abs(overDraft - 1));
  }
  // The coarser the stitches, the fewer steps a seam is made of and the farther the measures part;
  // the finer, the more caps leave their curve by a stitch. As in the table for stitches of 4 mm.
  [[nodiscard]] static Steps spread(const StitchSize& size) {
    constexpr double kUsual = 0.4, kGrows = 1.34; // cm
    return kSpread.times(std::pow(size.width / kUsual, kGrows));
  }
  [[nodiscard]] double capOff(double stitches) const { return off * stitches + kCapOff(stitches); }
  [[nodiscard]] double armholeOff(double stitches) const {
    return off * stitches + kArmholeOff(stitches);
  }
  // What a run costs to say, without what a single decrease costs more.
  [[nodiscard]] double told(const Run& run, const ShapingStyle& style,
                            const StitchSize& size) const {
    const bool bindOff = run.kind == ShapingKind::BindOff && run.stitches > Stitches(2);
    const int over = bindOff ? std::max(0, run.stitches.value() - style.plainStep(size)) : 0;
    const bool coarse = bindOff && run.stitches.value() * size.width > style.maxStep + 1e-9;
    return line + kWideStep * over * size.width + (coarse ? kCoarseStep : 0);
  }
  [[nodiscard]] static double single(const Run& run) {
    return run.times == 1 && run.kind == ShapingKind::Decrease ? kSingle : 0;
  }
};

} // namespace scye
