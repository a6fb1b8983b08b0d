// The figure of the measuring guide, drawn by us: head to thigh, from the front or the back, the
// arms a little away from the body. Centimetres from the floor, x = 0 at the middle; both sides
// alike. Heights, cross-shoulder and arm lengths of woman and man are the means of the 1988 survey
// (body/survey.h); widths follow from its girths as of ellipses half as wide again as deep (common
// practice); head and hand lengths from memory. Child (about 8 years) and baby (about 1): six and
// four heads high (common practice of figure drawing), the rest in proportion, from memory.
#pragma once

#include "model/field.h"
#include "schematic/guide_shape.h"
#include "schematic/picture.h"

namespace scye {

enum class GuideView : std::uint8_t { Front, Back };

// A height and half the width there.
struct HalfWidth {
  double y = 0, half = 0;
};

struct Proportions {
  double crown, chin, headHalf;
  double hair;         // half width with the hair at the brow, over headHalf's there
  double neckHalf;     // at its narrowest
  Vec2 neckPoint, tip; // side neck point, shoulder tip
  double nape;
  HalfWidth armpit, bust, underBust, waist, hip, cut; // cut: where the drawing ends
  double crotch;
  double upperArm, foreArm, hand; // lengths: tip to elbow, elbow to wrist, wrist to finger tip
  double tilt, foreTilt;          // of the arm from the plumb, degrees
  double armHalf, elbowHalf, foreArmHalf, wristHalf, handHalf;
};
[[nodiscard]] const Proportions& proportions(Figure figure);

// The drawn figure's places on the side x > 0; the other side is its mirror image.
struct FigurePlaces {
  Vec2 nape, neckPoint, tip, armpit,
      crease; // crease: where body and arm part, halfway up the armhole
  Frame upperArm, foreArm, hand;
  Path outside, inside;       // neck to finger tips; thumb to armpit
  Path side;                  // of the body, from the armpit down
  Path shoulder;              // neck point to tip, as it lies
  Path armOutside, armInside; // shoulder tip and armpit to wrist
  Path head;                  // the half that lies at x > 0
};
[[nodiscard]] FigurePlaces figurePlaces(const Proportions& p);

// Outline for the body, Fabric and Pair for the vest and shorts it wears, Ghost (filled) for hair.
[[nodiscard]] std::vector<Stroke> figureStrokes(Figure figure, GuideView view);

// Its head: hair, face and ears.
[[nodiscard]] std::vector<Stroke> headStrokes(Figure figure, GuideView view, const Proportions& p,
                                              const FigurePlaces& f);

} // namespace scye
