#include "draft/starting.h"

#include "draft/neckline.h"
#include "model/garment_style.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// What a depth that is 1 cm deeper adds to the armhole's edge, back and front together.
constexpr double kEdgePerDepth = 1.95;

} // namespace

bool isSmall(Figure figure) {
  return figure == Figure::Child || figure == Figure::Baby;
}

double startingWidth(double crossShoulder, double crossBack, Garment garment, double reach) {
  const bool jacket = garment == Garment::Jacket;
  const double within = jacket ? 3.5 : 2.5;
  const double most = reach * within + (1 - reach) * std::max(within, crossShoulder / 9);
  const double wanted = crossBack + (jacket ? kJacketBackRoom : kBackRoom) - crossShoulder;
  return crossShoulder + std::clamp(wanted, 0.0, most);
}

double startingUnderarm(double away, double share, double most) {
  const double low = std::min(1.0, 0.6 * away);
  return std::max(0.0, std::clamp(share * away, std::max(0.0, low), most));
}

double startingRise(double away, double underarm, double depth, double beyond) {
  return std::clamp((1.4 + 0.6 * beyond) * (away - underarm) / depth, 0.35, 0.65);
}

double startingScoop(double beyond) {
  return kScoop + (kScoopBeyond - kScoop) * beyond;
}

double startingFrontScoop(double curve) {
  return std::clamp(0.01 * (curve - 4), 0.0, 0.05);
}

DepthEase startingDepthEase(Figure figure, Garment garment) {
  const bool jacket = garment == Garment::Jacket;
  if (figure == Figure::Baby) return {2, 8, 0.5, 2};
  if (figure == Figure::Child) return {2.5, jacket ? 10.0 : 8.0, 0.5, 2.5};
  const double first = figure == Figure::Man ? 2.6 : 2;
  return {jacket ? first + 0.8 : first, jacket ? 10.0 : 8.0, 0.5, 4.5};
}

StartingFullness startingFullness(CapRise rise, Figure figure) {
  if (rise == CapRise::Shallow) return {0.4, 0.45};
  if (rise == CapRise::High) return {0.3, 0.4};
  return isSmall(figure) ? StartingFullness{0.35, 0.45} : StartingFullness{};
}

double depthEaseFor(const DepthEase& rule, double edge, double scyeGirth, bool halfTrusted) {
  const double step = (scyeGirth + rule.room - edge) / kEdgePerDepth;
  return std::clamp(rule.first + (halfTrusted ? 0.5 : 1) * step, rule.low, rule.high);
}

double startingNeck(const NeckAsk& ask) {
  const NecklineTraits& neck = traitsOf(ask.neckline);
  const double usual = neck.ofGirth.of(ask.backNeck) * ask.neckBase;
  if (!ask.shoulderLength) {
    if (isSmall(ask.figure)) return neck.ofCrossSmall.of(ask.backNeck) * ask.crossBack;
    return neck.ofCrossGrown > 0 ? neck.ofCrossGrown * ask.crossBack : usual;
  }
  // A body's shoulder ends at the side of the neck, and the garment's neck lies as far outside of
  // that as usual. Half of what the neck is then wider or narrower than its girth says: a slip of
  // the tape counts twice in this difference, and bodies differ less in it.
  const double run = shoulderRun(*ask.shoulderLength, ask.shoulderFall.value_or(0));
  const double bodyNeck = ask.crossShoulder - 2 * run;
  return usual + 0.5 * (bodyNeck - bodyNeckShare(ask.figure) * ask.neckBase);
}

double neckEdge(const NeckOpening& neck) {
  const NeckHalf front{0, 0.5 * neck.width, -neck.frontDrop, 0};
  const bool straight = neck.backNeck == BackNeck::Straight;
  const NeckHalf back{0, 0.5 * neck.width, straight ? 0 : -neck.backDrop, 0};
  return 2 * (frontNeck(neck.neckline, front).length() + backNeck(back).length());
}

double widthForEdge(NeckOpening neck, double edge, double most) {
  double low = 0, high = most;
  for (int i = 0; i < 20; ++i) {
    neck.width = 0.5 * (low + high);
    (neckEdge(neck) < edge ? low : high) = neck.width;
  }
  return high;
}

} // namespace scye
