#include "seam/checks.h"

#include "seam/garment_draft.h"
#include "support/random_designs.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace scye {
namespace {

std::set<std::string> codesOf(const Design& d) {
  std::set<std::string> codes;
  for (const Finding& f : draftGarment(d).findings)
    codes.insert(f.code);
  return codes;
}

// A woman's pullover about which there is nothing to say.
Design sound() {
  Design d;
  d.choose(Choice::Washed, YesNo::Yes);
  return d.set(Field::Bust, 94)
      .set(Field::UpperArm, 29)
      .set(Field::SwatchStitches, 22)
      .set(Field::SwatchRows, 30);
}

Design pinned(WorkedOut what, double capHeight) {
  return sound().choose(Choice::WorkedOut, what).set(Field::CapHeight, capHeight);
}

struct Provoked {
  const char* code;
  Severity severity;
  Design design;
};

std::vector<Provoked> provoked() {
  using enum Field;
  constexpr Severity note = Severity::Note, warning = Severity::Warning,
                     blocking = Severity::Blocking;
  const auto with = [](Field f, double value) { return sound().set(f, value); };
  Design child;
  child.choose(Choice::Figure, Figure::Child).choose(Choice::Washed, YesNo::Yes);
  return {
      {"size.vanishes", blocking, with(Wrist, 8).set(EaseWrist, -8)},
      {"armhole.narrow", blocking, with(CrossShoulder, 51)},
      {"underarm.wide", warning, with(UnderarmBack, 8)},
      {"armhole.shapingHigh", warning, with(RiseShare, 0.7)},
      {"underarm.low", warning, with(ArmholeDepth, 30)},
      {"depth.ease", warning, with(EaseArmholeDepth, 5.5)},
      {"armhole.tight", warning, with(EaseArmholeDepth, -4)},
      {"armhole.roomy", warning, with(EaseArmholeDepth, 5.5)},
      {"cross.wider", warning, with(CrossBack, 40).set(CrossShoulder, 36)},
      {"cap.crownWide", blocking, with(CrownWidth, 30)},
      {"match.tooWide", blocking, with(EaseUpperArm, 25)},
      {"match.unreachable", blocking, pinned(WorkedOut::CrownWidth, 30)},
      {"match.nowhere", blocking, pinned(WorkedOut::CrownWidth, 10).set(EaseUpperArm, 25)},
      {"gathers.nothing", warning, with(CapEase, 0.5).choose(Choice::CapTop, CapTop::Gathered)},
      {"gathers.wide", warning, with(GatherWidth, 38).choose(Choice::CapTop, CapTop::Pleated)},
      {"gathers.thick", warning, with(GatherWidth, 3).choose(Choice::CapTop, CapTop::Gathered)},
      {"pleats.small", warning, with(Pleats, 20).choose(Choice::CapTop, CapTop::Pleated)},
      {"crown.wide", warning, with(CrownWidth, 17)},
      {"upperArm.closed", blocking, with(EaseUpperArm, -8).set(CapEase, -5)},
      {"cap.low", warning, with(EaseUpperArm, 11)},
      {"cap.high", warning, with(EaseUpperArm, -5.5).set(CapEase, 2.5)},
      {"capEase.high", warning, with(CapEase, 3)},
      {"capEase.negative", warning, with(CapEase, -0.5)},
      {"halfCap.uneven", warning,
       with(CrownWidth, 1).set(CrossFront, 30).set(UnderarmFront, 1).set(UnderarmBack, 5)},
      {"lean.notNow", note,
       sound()
           .choose(Choice::CapLean, CapLean::Leaning)
           .choose(Choice::WorkedOut, WorkedOut::CapEase)},
      {"upperArm.tight", warning, with(EaseUpperArm, 0.5)},
      {"wrist.hand", warning, with(EaseWrist, -4)},
      {"sleeve.short", note, with(SleeveLength, 8)},
      {"sleeve.notFull", warning,
       with(FullGirth, 18).set(CuffGirth, 20).choose(Choice::SleeveLine, SleeveLine::Full)},
      {"waist.outside", warning, with(WaistHeight, 90).choose(Choice::SideSeam, SideSeam::Shaped)},
      {"bust.nothing", note,
       with(BustDepth, 0).choose(Choice::BustShaping, BustShaping::ShortRows)},
      {"neck.wide", blocking, with(NeckWidth, 36)},
      {"neck.armhole", blocking,
       with(CrossFront, 20)
           .choose(Choice::Neckline, Neckline::Square)
           .set(FrontNeckDrop, 16)
           .set(NeckWidth, 20)},
      {"shoulder.short", warning, with(NeckWidth, 28)},
      {"shoulder.long", warning, with(NeckWidth, 4).set(NeckBand, 0).set(BackOpening, 20)},
      {"shoulder.differs", warning,
       sound().set(ShoulderLength, 8, Source::Garment).set(NeckWidth, 16)},
      {"shoulder.neck", note, with(ShoulderLength, 22).set(CrossShoulder, 36)},
      {"neck.deep", blocking, with(FrontNeckDrop, 55)},
      {"neck.head", blocking, with(NeckWidth, 8).set(FrontNeckDrop, 3)},
      {"neck.base", warning,
       with(NeckBase, 60).set(NeckWidth, 12).choose(Choice::Garment, Garment::Jacket)},
      {"hip.tight", warning, with(EaseHip, -4).set(HemToUnderarm, 60)},
      {"bust.stretched", note, with(EaseBust, -2)},
      {"gauge.rowsMissing", note, sound().clear(SwatchRows)},
      {"gauge.unwashed", note, sound().choose(Choice::Washed, YesNo::No)},
      {"child.safety", note, child},
  };
}

TEST(Checks, aSoundDesignHasNothingSaidAboutIt) {
  EXPECT_TRUE(codesOf(sound()).empty()) << testing::PrintToString(codesOf(sound()));
  Design jacket = sound();
  jacket.choose(Choice::Garment, Garment::Jacket);
  EXPECT_TRUE(codesOf(jacket).empty()) << testing::PrintToString(codesOf(jacket));
}

TEST(Checks, eachFindingIsMadeWhereItBelongs) {
  for (const Provoked& p : provoked()) {
    const GarmentDraft g = draftGarment(p.design);
    const Finding* f = findCode(g.findings, p.code);
    ASSERT_NE(f, nullptr) << p.code << " among " << testing::PrintToString(codesOf(p.design));
    EXPECT_EQ(f->severity, p.severity) << p.code;
    ASSERT_FALSE(f->fields.empty()) << p.code;
  }
}

// No finding is left out above: what random designs are warned of has been provoked there too.
TEST(Checks, noOtherFindingExists) {
  std::set<std::string> known;
  for (const Provoked& p : provoked())
    known.insert(p.code);
  const auto seed = test::propertySeed(1601);
  test::RandomDesigns random(seed);
  for (int i = 0; i < 4000; ++i)
    for (const std::string& code : codesOf(i % 2 ? random.plausible() : random.wild()))
      EXPECT_THAT(known, testing::Contains(code));
}

TEST(Checks, warningsBeginWhereTheirLimitIsSet) {
  using enum Field;
  Design d = sound().set(EaseUpperArm, 2);
  EXPECT_FALSE(codesOf(d).contains("upperArm.tight"));
  EXPECT_TRUE(codesOf(d.set(LimitUpperArm, 3)).contains("upperArm.tight"));
  d = sound().set(CapEase, 3);
  EXPECT_FALSE(codesOf(d.set(LimitCapEase, 4)).contains("capEase.high"));
  const double ratio = [&] {
    const GarmentDraft g = draftGarment(sound());
    return g.cap.height / g.sizes.finished(ArmholeDepth);
  }();
  EXPECT_TRUE(codesOf(sound().set(LimitCapLow, ratio + 0.01)).contains("cap.low"));
  EXPECT_FALSE(codesOf(sound().set(LimitCapLow, ratio - 0.01)).contains("cap.low"));
  EXPECT_TRUE(codesOf(sound().set(LimitCapHigh, ratio - 0.01)).contains("cap.high"));
}

TEST(Checks, gatheredCapMayBeAsLongAsSheLikes) {
  Design d = sound().set(Field::CapEase, 10);
  EXPECT_TRUE(codesOf(d).contains("capEase.high"));
  EXPECT_FALSE(codesOf(d.choose(Choice::CapTop, CapTop::Gathered)).contains("capEase.high"));
}

// What was measured on a garment that fits is as it is wanted: no advice about its ease.
TEST(Checks, garmentMeasuresAreNotQuestioned) {
  using enum Field;
  Design d = sound().set(EaseUpperArm, 0);
  EXPECT_TRUE(codesOf(d).contains("upperArm.tight"));
  EXPECT_FALSE(codesOf(d.set(UpperArm, 15, Source::Garment)).contains("upperArm.tight"));
}

TEST(Checks, onlyAPulloverMustPassTheHead) {
  using enum Field;
  Design d = sound().set(NeckWidth, 8).set(FrontNeckDrop, 3);
  EXPECT_TRUE(codesOf(d).contains("neck.head"));
  EXPECT_FALSE(codesOf(Design(d).set(BackOpening, 10)).contains("neck.head"));
  EXPECT_FALSE(codesOf(d.choose(Choice::Garment, Garment::Jacket)).contains("neck.head"));
}

TEST(Checks, everyGarmentsNeckGoesRoundTheNeck) {
  using enum Field;
  Design jacket = sound().choose(Choice::Garment, Garment::Jacket).set(NeckWidth, 8);
  EXPECT_TRUE(codesOf(jacket).contains("neck.base"));
}

// What is contradictory is said and drawn so: the back ends at the shoulders.
TEST(Checks, aCrossBackWiderThanTheShouldersIsDrawnAsWideAsThey) {
  using enum Field;
  const GarmentDraft g = draftGarment(sound().set(CrossShoulder, 36).set(CrossBack, 40));
  EXPECT_TRUE(findCode(g.findings, "cross.wider"));
  EXPECT_DOUBLE_EQ(g.bodice.back.halfCross, g.bodice.back.halfShoulder);
  EXPECT_FALSE(codesOf(sound().set(CrossShoulder, 37).set(CrossBack, 38)).contains("cross.wider"))
      << "a body's back is as wide as its shoulders or wider";
}

} // namespace
} // namespace scye
