// Starting values of the armhole and the neck: rules that choose what nobody has set yet, so that a
// garment can be worn. Lengths in cm. Fitted on the 1988 survey's bodies; what they reach stands in
// DEVELOPERS.md and is tested in tests/reference/armhole_room.cpp.
#pragma once

#include "body/likely_body.h"
#include "draft/armhole.h"

namespace scye {

// How wide a garment is cut over the shoulders, back and front alike: the body's shoulders, widened
// toward the cross-back and a little room, so that the seam hangs over the tip rather than the back
// pulls. `reach` as in LikelyBody: beyond the survey the widening may grow to a ninth.
[[nodiscard]] double startingWidth(double crossShoulder, double crossBack, Garment garment,
                                   double reach);
inline constexpr double kBackRoom = 1, kJacketBackRoom = 2; // over the cross-back

// `away` = half bust width minus half cross width: what the armhole takes away. A share of it is
// bound off: half, for a child 45 %; 1 to `most` cm.
[[nodiscard]] double startingUnderarm(double away, double share = 0.5, double most = 5);
// 0.35 to 0.65 of the depth: about a stitch on every right-side row. `beyond`: 1 - reach; there the
// long curve is drawn out, which keeps the edge shorter.
[[nodiscard]] double startingRise(double away, double underarm, double depth, double beyond);

[[nodiscard]] bool isSmall(Figure figure); // a child or a baby

// How deep an armhole is scooped, `beyond` = 1 - reach. A little less than the quarter ellipse's
// 0.55, which begins so flat that where much is taken away its first steps are over 1.5 cm wide, or
// the curve is left; with it 84 % of garments keep such steps from 22 stitches up, with this 92
// (tests/bench/shaping). A small armhole keeps the ellipse, and files up to
// version 4 do.
inline constexpr double kScoop = 0.48, kScoopBeyond = 0.42, kSmallScoop = 0.55;
[[nodiscard]] double startingScoop(double beyond);

// How much deeper a woman's front is scooped than the back, where `curve`, the width that the front
// still takes away after its underarm bind-off, is more than 4 cm: a hundredth for each further
// one, a twentieth at most. The larger the bust over the shoulders, the further out the curve
// begins and the more fabric it leaves before the fold of the arm, where it creases; behind it is
// wanted for reaching. Judgement: nobody's table prints it, and below 4 cm it would come to no
// stitch.
[[nodiscard]] double startingFrontScoop(double curve);

// How full the cap is drawn, below and above: shares of its half's width. A fuller curve is longer
// and so needs less height, a leaner one more. By these the steps of nearly all caps stay within
// 1.5 cm from 22 stitches up, and the edges of cap and armhole are as long by one measure as by
// another (tests/bench/shaping). What files up to version 3 start with, 0.45 and 0.55, asks for
// wider steps at the foot, or leaves its curve; 0.35 and 0.45, with which files of versions 4 and 5
// start and small garments still do, for they keep their caps low, parts the measures oftener.
struct StartingFullness {
  double lower = 0.37, upper = 0.42;
};
[[nodiscard]] StartingFullness startingFullness(CapRise rise, Figure figure);

// Armhole depth ease: one step from a first value toward an edge that lies `room` over the girth
// round the armhole. Where the depth was measured and the girth only estimated the step is half.
struct DepthEase {
  double first = 2, room = 8, low = 0.5, high = 4.5;
};
[[nodiscard]] DepthEase startingDepthEase(Figure figure, Garment garment);
[[nodiscard]] double depthEaseFor(const DepthEase& rule, double edgeAtFirst, double scyeGirth,
                                  bool halfTrusted);

// Finished neck width, inside the band.
struct NeckAsk {
  Figure figure = Figure::Woman;
  Neckline neckline = Neckline::Round;
  BackNeck backNeck = BackNeck::Shaped;
  double neckBase = 0;                                               // girth
  double crossBack = 0;                                              // finished
  double crossShoulder = 0;                                          // of the body
  std::optional<double> shoulderLength, shoulderFall = std::nullopt; // of the body, if measured
};
[[nodiscard]] double startingNeck(const NeckAsk& ask);

// Finished edge of the neck, front and back.
struct NeckOpening {
  Neckline neckline = Neckline::Round;
  BackNeck backNeck = BackNeck::Shaped;
  double width = 0, frontDrop = 0, backDrop = 0;
};
[[nodiscard]] double neckEdge(const NeckOpening& neck);
// The least width, up to `most`, at which the edge is so long.
[[nodiscard]] double widthForEdge(NeckOpening neck, double edge, double most);

} // namespace scye
