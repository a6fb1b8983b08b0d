// What the measurements of a body that were not taken probably are. Pure; lengths in cm.
//   adults    the survey's estimates (estimate.h); beyond its reach they give way to the published
//             sizes, from 3 standard deviations of any known measure to none of the survey at 6.
//             Or, if that is chosen, the published size at the bust.
//   children  the published size at the bust; what it does not print by rules, see the source
// The back waist length that is filled in is the dressmakers' (survey.h). A published "cross back"
// runs shoulder to shoulder, 2 cm or so over the survey's breadths at the same bust, and a
// published armhole depth holds ease: as a size both are taken as printed, beyond the survey's
// reach less that. The width between the arms is printed nowhere and always the survey's.
#pragma once

#include "body/estimate.h"
#include "model/sizes.h"

namespace scye {

struct LikelyMeasure {
  double value = 0;
  Origin origin = Origin::Estimate;
  std::optional<Likely> likely; // adults: where 90 of 100 such bodies lie
};

struct LikelyBody {
  std::map<Field, LikelyMeasure> measures;
  std::string tableSize;
  double reach = 0; // 1: within the survey's, 0: far beyond it, or a child
  bool beyondSurvey = false;
  double depthHolds = 0;   // ease that the armhole depth holds already, where it is a printed one
  double shoulderFall = 0; // from the side of the neck down to the shoulder tip

  [[nodiscard]] double operator[](Field f) const { return measures.at(f).value; }
};

// `known`: what was measured on the body, its bust at least. `napeOverTip`: the garment's shoulder
// drop - back neck drop, since a published armhole depth hangs from a garment's shoulder tip.
// `population`: whom a figure's bodies are like, surveyMoments(figure) or a part of that survey.
[[nodiscard]] LikelyBody likelyBody(Figure figure, FillFrom from, const Body& known,
                                    double napeOverTip, const Moments* population);

// A body's shoulder, side of the neck to tip, falls away; so far it runs across.
[[nodiscard]] double shoulderRun(double length, double fall);

// Width of a body's neck at its base, of the girth there (1988 survey: lateral neck points).
[[nodiscard]] double bodyNeckShare(Figure figure);

} // namespace scye
