// The choices of a design as types, resolved once, and what each means for the garment: traits that
// draft, knitting, making up and words ask for, instead of asking which option it was. An option of
// neckline, edge or sleeve is one entry of traitsOf() in garment_style.cpp; its outline is drawn in
// draft/ (neckline.h, side.h).
#pragma once

#include "model/design.h"

namespace scye {

// A starting value for children and babies, and for grown people.
struct BySize {
  double small = 0, grown = 0;
  [[nodiscard]] double of(bool isSmall) const { return isSmall ? small : grown; }
};

// With a back neck that is shaped; or straight across, which lacks the length of its curve.
struct ByBackNeck {
  double shaped = 0, straight = 0;
  [[nodiscard]] double of(BackNeck back) const {
    return back == BackNeck::Straight ? straight : shaped;
  }
};

struct NecklineTraits {
  bool straight = false;   // one line from the neck point to the middle: its decreases lie evenly
  bool corner = false;     // meets its level bottom at a corner, where a band is mitred
  bool stands = false;     // its band stands up: it takes nothing from the opening
  bool withFronts = false; // the bands of a jacket's fronts are picked up in one with it
  // Starting values (common practice). The finished width: of the neck's girth; where no shoulder
  // was measured a small one of the finished cross back, and so a grown one where `ofCrossGrown`
  // is more than nothing.
  ByBackNeck ofGirth{0.375, 0.405}, ofCrossSmall{0.36, 0.39};
  double ofCrossGrown = 0;
  BySize dropShare{}; // front neck drop: of the armhole's depth,
  BySize drop{};      //   and cm more
  BySize band{};      // cm
};
[[nodiscard]] const NecklineTraits& traitsOf(Neckline neckline);

struct EdgeTraits {
  bool ribbed = false; // from the cast-on up; nothing is shaped in it
  bool folded = false; // a facing, folded in along a purled row
  BySize depth{};      // cm, a starting value
  [[nodiscard]] bool hasDepth() const { return ribbed || folded; }
};
[[nodiscard]] const EdgeTraits& traitsOf(HemMade edge);

struct SleeveTraits {
  bool ownCuff = false;  // the width of its edge is set, not taken from arm or wrist
  bool flares = false;   // widens down to its edge, without a cuff that is worked even
  bool gathered = false; // widened above a cuff that it is gathered into
  bool atElbow = false;  // follows the elbow
};
[[nodiscard]] const SleeveTraits& traitsOf(SleeveLine line);

struct GarmentStyle {
  Figure figure{};
  Garment garment{};
  Neckline neckline{};
  BackNeck backNeck{};
  SideSeam sideSeam{};
  SleeveLine sleeveLine{};
  SleeveFrom sleeveFrom{};
  CapLean capLean{};
  CapTop capTop{};
  CapRise capRise{};
  WorkedOut workedOut{};
  BandMade bandMade{};
  ShoulderWork shoulderWork{};
  HemMade hemMade{};
  BodyLength bodyLength{};
  BustShaping bustShaping{};
  ButtonSide buttonSide{};
  FillFrom fillFrom{};
  RibKind rib{};
  RibChange ribChange{};
  PlainEdge plainEdge{};
  ShoulderJoin shoulderJoin{};

  [[nodiscard]] const NecklineTraits& neck() const { return traitsOf(neckline); }
  [[nodiscard]] const EdgeTraits& hem() const { return traitsOf(hemMade); }
  [[nodiscard]] const SleeveTraits& sleeve() const { return traitsOf(sleeveLine); }
  [[nodiscard]] bool small() const { return figure == Figure::Child || figure == Figure::Baby; }
  [[nodiscard]] bool jacket() const { return garment == Garment::Jacket; }
  [[nodiscard]] bool bandPickedUp() const { return jacket() && bandMade == BandMade::PickedUp; }
  [[nodiscard]] bool bandKnittedOn() const { return jacket() && bandMade == BandMade::KnittedOn; }
  [[nodiscard]] bool waisted() const { return sideSeam == SideSeam::Shaped; }
  [[nodiscard]] bool straightBackNeck() const { return backNeck == BackNeck::Straight; }
  [[nodiscard]] bool bustShortRows() const { return bustShaping == BustShaping::ShortRows; }
  [[nodiscard]] bool capDrawnIn() const { return capTop != CapTop::Smooth; } // gathers or pleats
  [[nodiscard]] bool threeNeedles() const {
    return shoulderWork == ShoulderWork::ShortRows && shoulderJoin == ShoulderJoin::ThreeNeedles;
  }
  [[nodiscard]] bool pleated() const { return capTop == CapTop::Pleated; }
};
[[nodiscard]] GarmentStyle styleOf(const Design& design);

// Whether a value or a choice of the design has any bearing on a garment of this style: a button
// band has none on a pullover.
[[nodiscard]] bool matters(Field field, const GarmentStyle& style);
[[nodiscard]] bool matters(Choice choice, const GarmentStyle& style);

} // namespace scye
