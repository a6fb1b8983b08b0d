#include "garment/recipes.h"

#include <algorithm>

namespace scye {
namespace {

using enum Field;

template <class E>
Remedy::Pick to(E option) {
  return {OptionsOf<E>::kChoice, int(option)};
}
constexpr Remedy::Pick kEveryRow{Choice::EveryRow, int(YesNo::Yes)};

// Lengths that are knitted in rows; all others lie across, in stitches.
bool runsAlongRows(Field f) {
  static constexpr Field kAlong[] = {
      ArmholeDepth, EaseArmholeDepth, HemToUnderarm,   FrontNeckDrop, BackNeckDrop,
      BackOpening,  WaistHeight,      BustDepth,       SleeveLength,  CuffDepth,
      CapHeight,    HemDepth,         SleeveToUnderarm};
  return std::find(std::begin(kAlong), std::end(kAlong), f) != std::end(kAlong);
}

} // namespace

std::span<const Recipe> recipes() {
  static const std::vector<Recipe> all = {
      {1, "size.vanishes", "more.size", {}, 1},
      {1, "armhole.narrow", "more.bust", {EaseBust}, 1},
      {2, "armhole.narrow", "less.cross", {EaseCrossBack, EaseCrossFront}, -1},
      {1, "underarm.wide", "less.underarm", {UnderarmBack, UnderarmFront}, -1},
      {1, "armhole.shapingHigh", "less.rise", {RiseShare}, -1},
      {1, "underarm.low", "less.depth", {EaseArmholeDepth}, -1},
      {1, "armhole.tight", "more.depth", {EaseArmholeDepth}, 1},
      {2, "armhole.tight", "more.bust", {EaseBust}, 1},
      {1, "armhole.roomy", "less.depth", {EaseArmholeDepth}, -1},
      {2, "armhole.roomy", "less.bust", {EaseBust}, -1},
      {1, "cross.wider", "more.shoulder", {EaseCrossShoulder}, 1},
      {2, "cross.wider", "less.shown", {}, -1},
      {1, "depth.ease", "less.depth", {EaseArmholeDepth}, -1},
      {1, "cap.crownWide", "less.crown", {CrownWidth}, -1},
      {2, "cap.crownWide", "more.upperArm", {EaseUpperArm}, 1},
      {3, "cap.crownWide", "less.underarm", {UnderarmBack, UnderarmFront}, -1},
      {1, "match.tooWide", "more.depth", {EaseArmholeDepth}, 1},
      {2, "match.tooWide", "less.upperArm", {EaseUpperArm}, -1},
      {3, "match.tooWide", "less.cross", {EaseCrossBack, EaseCrossFront}, -1},
      {1, "match.unreachable", "more.capHeight", {CapHeight}, 1},
      {2, "match.unreachable", "less.capHeight", {CapHeight}, -1},
      {3, "match.unreachable", "workOut.capHeight", {}, 0, to(WorkedOut::CapHeight)},
      {1, "match.nowhere", "workOut.capHeight", {}, 0, to(WorkedOut::CapHeight)},
      {1, "upperArm.closed", "more.upperArm", {EaseUpperArm}, 1},
      {2, "upperArm.closed", "less.capHeight", {CapHeight}, -1},
      {3, "upperArm.closed", "workOut.capHeight", {}, 0, to(WorkedOut::CapHeight)},
      {1, "crown.wide", "less.crown", {CrownWidth}, -1},
      {2, "crown.wide", "more.capHeight", {CapHeight}, 1},
      {3, "crown.wide", "workOut.capHeight", {}, 0, to(WorkedOut::CapHeight)},
      {1, "pleats.small", "less.pleats", {Pleats}, -1},
      {2, "pleats.small", "more.capEase", {CapEase}, 1},
      {1, "gathers.nothing", "more.capEase", {CapEase}, 1},
      {2, "gathers.nothing", "capTop.smooth", {}, 0, to(CapTop::Smooth)},
      {1, "gathers.wide", "less.gatherWidth", {GatherWidth}, -1},
      {1, "gathers.thick", "more.gatherWidth", {GatherWidth}, 1},
      {2, "gathers.thick", "less.capEase", {CapEase}, -1},
      {1, "sleeve.notFull", "more.full", {FullGirth}, 1},
      {2, "sleeve.notFull", "less.cuff", {CuffGirth}, -1},
      {1, "waist.outside", "more.waistHeight", {WaistHeight}, 1},
      {2, "waist.outside", "less.waistHeight", {WaistHeight}, -1},
      {3, "waist.outside", "side.straight", {}, 0, to(SideSeam::Straight)},
      {1, "buttonholes.crowded", "less.buttons", {Buttons}, -1},
      {2, "buttonholes.crowded", "less.neckDrop", {FrontNeckDrop}, -1},
      {1, "buttonholes.narrow", "more.buttonBand", {ButtonBand}, 1},
      {2, "buttonholes.narrow", "band.pickedUp", {}, 0, to(BandMade::PickedUp)},
      {1, "bust.noRoom", "more.hemToUnderarm", {HemToUnderarm}, 1},
      {2, "bust.noRoom", "bust.none", {}, 0, to(BustShaping::None)},
      {1, "cap.low", "less.upperArm", {EaseUpperArm}, -1},
      {2, "cap.low", "more.capHeight", {CapHeight}, 1},
      {3, "cap.low", "more.depth", {EaseArmholeDepth}, 1},
      {1, "cap.high", "more.upperArm", {EaseUpperArm}, 1},
      {2, "cap.high", "less.capHeight", {CapHeight}, -1},
      {3, "cap.high", "more.crown", {CrownWidth}, 1},
      {1, "capEase.high", "less.capEase", {CapEase}, -1},
      {2, "capEase.high", "gathers", {}, 0, to(CapTop::Gathered)},
      {3, "capEase.high", "less.capHeight", {CapHeight}, -1},
      {1, "capEase.negative", "more.capEase", {CapEase}, 1},
      {2, "capEase.negative", "more.capHeight", {CapHeight}, 1},
      {1, "lean.notNow", "workOut.capHeight", {}, 0, to(WorkedOut::CapHeight)},
      {1, "halfCap.uneven", "lean", {}, 0, to(CapLean::Leaning)},
      {2, "halfCap.uneven", "more.crown", {CrownWidth}, 1},
      {1, "upperArm.tight", "more.upperArm", {EaseUpperArm}, 1},
      {2, "upperArm.tight", "less.capHeight", {CapHeight}, -1},
      {3, "upperArm.tight", "workOut.capHeight", {}, 0, to(WorkedOut::CapHeight)},
      {1, "wrist.hand", "more.wrist", {EaseWrist}, 1},
      {2, "wrist.hand", "more.cuff", {CuffGirth}, 1},
      {1, "sleeve.short", "less.cuffDepth", {CuffDepth}, -1},
      {1, "sleeve.cuffReach", "less.full", {FullGirth}, -1},
      {2, "sleeve.cuffReach", "more.sleeveLength", {SleeveLength}, 1},
      {3, "sleeve.cuffReach", "less.cuffDepth", {CuffDepth}, -1},
      {1, "neck.wide", "less.neckWidth", {NeckWidth}, -1},
      {1, "neck.armhole", "less.neckWidth", {NeckWidth}, -1},
      {2, "neck.armhole", "less.neckDrop", {FrontNeckDrop}, -1},
      {3, "neck.armhole", "more.crossFront", {EaseCrossFront}, 1},
      {1, "shoulder.short", "less.neckWidth", {NeckWidth}, -1},
      {1, "shoulder.long", "more.neckWidth", {NeckWidth}, 1},
      {1, "shoulder.differs", "less.neckWidth", {NeckWidth}, -1},
      {2, "shoulder.differs", "more.neckWidth", {NeckWidth}, 1},
      {1, "neck.deep", "less.neckDrop", {FrontNeckDrop}, -1},
      {1, "neck.head", "more.neckWidth", {NeckWidth}, 1},
      {2, "neck.head", "more.neckDrop", {FrontNeckDrop}, 1},
      {3, "neck.head", "more.opening", {BackOpening}, 1},
      {1, "neck.base", "more.neckWidth", {NeckWidth}, 1},
      {2, "neck.base", "more.neckDrop", {FrontNeckDrop}, 1},
      {1, "hip.tight", "more.hip", {EaseHip}, 1},
      {2, "hip.tight", "more.bust", {EaseBust}, 1},
      {1, "knit.noCapStitches", "less.crown", {CrownWidth}, -1},
      {2, "knit.noCapStitches", "more.upperArm", {EaseUpperArm}, 1},
      {3, "knit.noCapStitches", "less.underarm", {UnderarmBack, UnderarmFront}, -1},
      {1, "knit.noCap", "everyRow", {}, 0, kEveryRow},
      {2, "knit.noCap", "less.upperArm", {EaseUpperArm}, -1},
      {3, "knit.noCap", "more.depth", {EaseArmholeDepth}, 1},
      {1, "knit.mismatch", "everyRow", {}, 0, kEveryRow},
      {2, "knit.mismatch", "more.crown", {CrownWidth}, 1},
      {3, "knit.mismatch", "less.upperArm", {EaseUpperArm}, -1},
      {4, "knit.mismatch", "more.depth", {EaseArmholeDepth}, 1},
      {1, "knit.deviation", "more.fidelity", {Fidelity}, 1},
      {2, "knit.deviation", "everyRow", {}, 0, kEveryRow},
      {1, "knit.wideSteps", "everyRow", {}, 0, kEveryRow},
      {2, "knit.wideSteps", "less.upperArm", {EaseUpperArm}, -1},
      {1, "knit.armholeRows", "more.depth", {EaseArmholeDepth}, 1},
      {2, "knit.armholeRows", "more.underarm", {UnderarmBack, UnderarmFront}, 1},
      {3, "knit.armholeRows", "less.bust", {EaseBust}, -1},
      {1, "knit.sleeveFast", "more.wrist", {EaseWrist}, 1},
      {2, "knit.sleeveFast", "less.upperArm", {EaseUpperArm}, -1},
      {3, "knit.sleeveFast", "sleeve.straight", {}, 0, to(SleeveLine::Straight)},
      {1, "knit.blunt", "more.neckDrop", {FrontNeckDrop}, 1},
      {2, "knit.blunt", "less.neckWidth", {NeckWidth}, -1},
      {1, "knit.rounded", "more.shown", {}, 1},
      {2, "knit.rounded", "less.shown", {}, -1},
      {3, "knit.rounded", "more.bust", {EaseBust}, 1},
      {4, "knit.rounded", "less.bust", {EaseBust}, -1},
      {1, "knit.impossible", "less.neckWidth", {NeckWidth}, -1},
      {2, "knit.impossible", "more.bust", {EaseBust}, 1},
      {3, "knit.impossible", "less.cross", {EaseCrossBack, EaseCrossFront}, -1},
  };
  return all;
}

double leastChange(Field f, double stitchWidth, double rowHeight) {
  constexpr double kShownInInches = 0.32; // an eighth of an inch: less reads as none
  const bool twoPieces = f == Bust || f == EaseBust || f == Waist || f == EaseWaist || f == Hip ||
                         f == EaseHip; // girths that back and front share
  const double half = runsAlongRows(f) ? 0.5 * rowHeight : (twoPieces ? 1 : 0.5) * stitchWidth;
  return std::max(half, kShownInInches);
}

} // namespace scye
