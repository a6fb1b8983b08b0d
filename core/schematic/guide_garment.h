// The garment of the measuring guide: a jumper with set-in sleeves laid flat, drawn by us.
// Centimetres from its cast-on edge, x = 0 at its middle; both sides alike. Sizes near the
// published ones (common practice).
#pragma once

#include "schematic/guide_figure.h"

namespace scye {

// Its places on the side x > 0.
struct GarmentPlaces {
  Vec2 neckPoint, tip, underarm, crease; // crease: on the armhole seam, halfway up
  Vec2 frontNeck, backNeck;              // in the middle, inside the band
  double band = 0;                       // width of the neckband
  double waist = 0, hip = 0;             // heights where the body's waist and hip would lie
  Path side, armhole, shoulder;          // hem to underarm; underarm to tip; neck point to tip
  Path fold, seam;                       // of the sleeve: tip to cuff edge, underarm to cuff edge
};
[[nodiscard]] GarmentPlaces garmentPlaces(Figure figure);

[[nodiscard]] std::vector<Stroke> garmentStrokes(Figure figure, GuideView view);

} // namespace scye
