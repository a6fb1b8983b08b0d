#include "schematic/comparison_text.h"

#include <cmath>

namespace scye {
namespace {

// Figures that are set against one another have their tenths always.
std::string figure(double cm, const Phrases& phrases, LengthUnit unit, bool sign) {
  std::string text;
  if (unit == LengthUnit::Inch) {
    text = phrases.length(std::abs(cm), unit);
  } else {
    text = phrases.number(std::abs(cm), 1);
    if (std::lround(10 * std::abs(cm)) % 10 == 0) {
      const std::string half = phrases.number(0.5, 1); // for the sign between
      text += half.substr(1, half.size() - 2) + "0";
    }
  }
  if (!sign) return text;
  return (cm < -0.05 ? "\u2212" : "+") + text;
}

// The highest mark below which next to nothing is let in; 0: it begins below the first.
int markBelowEase(const SeamWalk& walk) {
  constexpr double kNothing = 0.05; // of the ease
  int number = 0, last = 0;
  for (const Notch& notch : walk.notches()) {
    ++number;
    if (notch.kind == NotchKind::Shoulder) break;
    if (std::abs(walk.onCap(notch.s) - notch.s) <= kNothing * std::abs(walk.ease())) last = number;
  }
  return last;
}

} // namespace

std::string sideCaption(const SeamWalk& walk, ArmholeHalf side, const SchematicOptions& o,
                        const Phrases& phrases) {
  double armhole = walk.armhole().length(), cap = walk.cap().length();
  if (o.curves && o.curves->capKnitted) {
    // To the shoulder mark the knitted cap goes as far along the crown as the drawn one.
    const KnitGarment& k = *o.curves;
    const bool back = side == ArmholeHalf::Back;
    const double drawnCap = cap, half = capEdge(back ? k.cap.referenceBack : k.cap.referenceFront,
                                                k.cap.referenceHeight)
                                            .first;
    armhole = (back ? k.backArmhole.right : k.frontArmhole.left).mean();
    cap = (back ? k.cap.backLeft : k.cap.frontRight).mean() + drawnCap - half;
  }
  return phrases.say("fit.caption",
                     {textParam("armhole", figure(armhole, phrases, o.unit, false)),
                      textParam("cap", figure(cap, phrases, o.unit, false)),
                      textParam("ease", figure(cap - armhole, phrases, o.unit, true))},
                     o.unit);
}

SideFit sideFit(const GarmentDraft& draft, const SeamWalk& walk) {
  if (walk.ease() < -0.05) return SideFit::TooShort;
  const bool smooth = !draft.sizes.style.capDrawnIn();
  return smooth && draft.cap.ease() > draft.sizes[Field::LimitCapEase] + 1e-9 ? SideFit::TooLong
                                                                              : SideFit::LetIn;
}

std::string comparisonText(const GarmentDraft& draft, const Phrases& phrases, LengthUnit unit) {
  std::string all;
  for (const ArmholeHalf side : {ArmholeHalf::Back, ArmholeHalf::Front}) {
    const SeamWalk walk(draft, side);
    const SideFit fit = sideFit(draft, walk);
    const int mark = fit == SideFit::LetIn && walk.ease() > 0.05 ? markBelowEase(walk) : 0;
    const char* key = fit == SideFit::TooShort  ? "fit.told.short"
                      : fit == SideFit::TooLong ? "fit.told.long"
                      : walk.ease() <= 0.05     ? "fit.told.even"
                      : mark > 0                ? "fit.told.above"
                                                : "fit.told.easeIn";
    if (!all.empty()) all += "; ";
    all += phrases.say(key,
                       {phraseParam("side", side == ArmholeHalf::Back ? "side.back" : "side.front"),
                        lengthParam("ease", std::abs(walk.ease())), numberParam("mark", mark)},
                       unit);
  }
  return all;
}

} // namespace scye
