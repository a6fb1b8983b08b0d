#include "seam/match.h"

#include "draft/complete.h"
#include "support/random_designs.h"
#include "support/record.h"

#include <gtest/gtest.h>

#include <cmath>

namespace scye {
namespace {

Worked workedOut(const Design& d) {
  return matchCap(complete(d));
}

Design aWoman() {
  return Design().set(Field::Bust, 94).set(Field::UpperArm, 29).set(Field::SwatchStitches, 22);
}

// The design with every completed value said aloud, so that turning one leaves the others alone.
Design allSaid(const Design& d, const Sizes& s) {
  Design out = d;
  for (int f = 0; f < kFieldCount; ++f)
    if (!out.has(Field(f))) out.set(Field(f), s[Field(f)]);
  return out;
}

struct Turned {
  WorkedOut what;
  Field field;
};
constexpr Turned kOthers[] = {{WorkedOut::UpperArmEase, Field::EaseUpperArm},
                              {WorkedOut::ArmholeDepth, Field::EaseArmholeDepth},
                              {WorkedOut::CrownWidth, Field::CrownWidth},
                              {WorkedOut::CapEase, Field::CapEase}};

TEST(Match, capIsAsLongAsTheArmholeAndItsEase) {
  const auto seed = test::propertySeed(1401);
  test::RandomDesigns random(seed);
  int found = 0, leaning = 0;
  for (int i = 0; i < 4000; ++i) {
    const Worked w = workedOut(random.plausible());
    if (!w.match.found) continue;
    ASSERT_NEAR(w.match.ease(), w.match.easeWanted, 2e-9) << "design " << i;
    found++, leaning += w.match.lean != 0;
  }
  test::record("found", found);
  test::record("leaning", leaning);
  EXPECT_GT(found, 2500);
  EXPECT_GT(leaning, 500);
}

TEST(Match, workingOutAnotherValueGivesBackTheOneThatWasThere) {
  const Worked first = workedOut(aWoman());
  ASSERT_TRUE(first.match.found);
  for (const auto& [what, field] : kOthers) {
    SCOPED_TRACE(info(field).key);
    Design d = allSaid(aWoman(), first.sizes);
    const double before = first.sizes[field];
    d.choose(Choice::WorkedOut, what).set(field, before + 0.7);
    const Worked again = workedOut(d);
    ASSERT_TRUE(again.match.found);
    EXPECT_EQ(again.match.unknown, what);
    EXPECT_NEAR(again.match.value, before, 1e-8);
    EXPECT_NEAR(again.sizes[field], before, 1e-8);
    EXPECT_DOUBLE_EQ(again.match.height, first.match.height);
    if (what != WorkedOut::CapEase) {
      EXPECT_LT(again.match.low, again.match.value);
      EXPECT_GT(again.match.high, again.match.value);
    }
  }
}

TEST(Match, movesNothingButTheUnknown) {
  const auto seed = test::propertySeed(1402);
  test::RandomDesigns random(seed);
  for (int i = 0; i < 1000; ++i) {
    const Design d = random.plausible();
    const Sizes before = complete(d);
    const Worked w = matchCap(before);
    int moved = 0;
    for (int f = 0; f < kFieldCount; ++f)
      moved += w.sizes.values[f] != before.values[f];
    ASSERT_LE(moved, 1);
    ASSERT_EQ(w.sizes.origins, before.origins);
  }
}

TEST(Match, unknownStaysWithinTheRangeOfItsField) {
  const auto seed = test::propertySeed(1403);
  test::RandomDesigns random(seed);
  for (int i = 0; i < 4000; ++i) {
    const Design d = i % 4 ? random.plausible() : random.wild();
    const Worked w = workedOut(d);
    if (!w.match.found || w.match.unknown == WorkedOut::CapEase) continue;
    for (Field f : {Field::EaseUpperArm, Field::UpperArm, Field::EaseArmholeDepth,
                    Field::ArmholeDepth, Field::CrownWidth}) {
      const ValueRange range = rangeOf(f, w.sizes.fromGarment(f) ? Source::Garment : Source::Body);
      ASSERT_GE(w.sizes[f], range.low - 1e-9) << info(f).key;
      ASSERT_LE(w.sizes[f], range.high + 1e-9) << info(f).key;
    }
  }
}

TEST(Match, onAGarmentTheChangeToItIsWorkedOut) {
  Design d = aWoman();
  d.set(Field::UpperArm, 16, Source::Garment).set(Field::ArmholeDepth, 20, Source::Garment);
  d.set(Field::CapHeight, 13);
  const Worked arm = workedOut(Design(d).choose(Choice::WorkedOut, WorkedOut::UpperArmEase));
  ASSERT_TRUE(arm.match.found);
  EXPECT_EQ(arm.match.value, arm.sizes[Field::EaseUpperArm]);
  EXPECT_EQ(arm.sizes[Field::UpperArm], 16) << "what was typed stays";
  EXPECT_NEAR(2 * arm.match.back.halfWidth, 2 * 16 + arm.match.value, 1e-12)
      << "a flat width is half the girth";
  const Worked depth = workedOut(Design(d).choose(Choice::WorkedOut, WorkedOut::ArmholeDepth));
  ASSERT_TRUE(depth.match.found);
  EXPECT_EQ(depth.match.value, depth.sizes[Field::EaseArmholeDepth]);
  EXPECT_EQ(depth.sizes[Field::ArmholeDepth], 20);
  EXPECT_NEAR(depth.match.ease(), depth.match.easeWanted, 1e-9);
}

TEST(Match, capRisesWithItsEaseAndSinksWithTheSleevesWidth) {
  double before = 0;
  for (double ease = 0; ease <= 4; ease += 0.5) {
    const double height = workedOut(aWoman().set(Field::CapEase, ease)).match.height;
    EXPECT_GT(height, before);
    before = height;
  }
  before = 100;
  for (double ease = 0; ease <= 10; ease += 1) {
    const double height = workedOut(aWoman().set(Field::EaseUpperArm, ease)).match.height;
    EXPECT_LT(height, before);
    before = height;
  }
}

TEST(Match, capOfEqualArmholesIsMarkedInItsMiddle) {
  const CapMatch m = workedOut(aWoman()).match;
  EXPECT_NEAR(m.crownMark, 0, 1e-9);
  EXPECT_NEAR(m.capBack, m.capFront, 1e-9);
  EXPECT_LE(m.summary.iterations, 12);
  EXPECT_GE(m.summary.high, m.height);
  EXPECT_LE(m.summary.low, m.height);
}

// The crown mark moves so that each half has its own armhole and its share of the ease.
TEST(Match, markGivesEachHalfItsOwnArmhole) {
  const Design d = aWoman().set(Field::CrossFront, 34).set(Field::CrossBack, 36.5);
  const CapMatch m = workedOut(d).match;
  ASSERT_TRUE(m.found);
  ASSERT_NE(m.armholeBack, m.armholeFront);
  EXPECT_NE(m.crownMark, 0);
  EXPECT_EQ(m.lean, 0);
  const double share = m.armholeBack / m.armhole();
  EXPECT_NEAR(m.capBack, m.armholeBack + share * m.easeWanted, 1e-9);
  EXPECT_NEAR(m.capFront, m.armholeFront + (1 - share) * m.easeWanted, 1e-9);
  // A longer back half means that the mark lies off the middle toward the front.
  EXPECT_EQ(m.crownMark > 0, m.armholeBack > m.armholeFront);
}

TEST(Match, leaningCapGivesEachHalfItsOwnArmhole) {
  const auto seed = test::propertySeed(1404);
  test::RandomDesigns random(seed);
  int leaning = 0, upright = 0;
  for (int i = 0; i < 6000; ++i) {
    Design d = random.plausible();
    d.choose(Choice::CapLean, CapLean::Leaning).choose(Choice::WorkedOut, WorkedOut::CapHeight);
    const CapMatch m = workedOut(d).match;
    if (!m.found || m.back.span() <= 0.3 || m.front.span() <= 0.3) continue;
    if (m.lean == 0 && std::abs(m.armholeBack - m.armholeFront) > 1e-6) {
      upright++;
      continue;
    }
    const double share = m.armholeBack / m.armhole();
    ASSERT_NEAR(m.capBack, m.armholeBack + share * m.easeWanted, 1e-9) << "design " << i;
    ASSERT_NEAR(m.capFront, m.armholeFront + (1 - share) * m.easeWanted, 1e-9) << "design " << i;
    leaning++;
  }
  test::record("leaning", leaning);
  test::record("couldNotLean", upright);
  EXPECT_GT(leaning, 2500);
  EXPECT_LT(upright, leaning / 20);
}

TEST(Match, leansToTheFrontWhereTheBackArmholeIsLonger) {
  Design d = aWoman().set(Field::CrossFront, 36.5).set(Field::CrossBack, 34);
  d.choose(Choice::CapLean, CapLean::Leaning);
  const CapMatch m = workedOut(d).match;
  ASSERT_NE(m.armholeBack, m.armholeFront);
  EXPECT_EQ(m.lean > 0, m.armholeBack > m.armholeFront);
  EXPECT_EQ(m.back.lean, m.lean);
  EXPECT_EQ(m.front.lean, -m.lean);
}

TEST(Match, findsNothingWhereTheSleeveIsTooWide) {
  const CapMatch m = workedOut(aWoman().set(Field::EaseUpperArm, 30)).match;
  EXPECT_FALSE(m.found);
  EXPECT_EQ(m.summary.status, RootStatus::NoSignChange);
  EXPECT_GT(m.height, 0) << "something is drawn all the same";
}

TEST(Match, saysWhatCanBeHadWhereAPinnedHeightCannotFit) {
  Design d = aWoman().set(Field::CapHeight, 35);
  d.choose(Choice::WorkedOut, WorkedOut::CrownWidth);
  const CapMatch m = workedOut(d).match;
  EXPECT_FALSE(m.found);
  EXPECT_EQ(m.height, 35);
  EXPECT_LT(m.low, m.high);
}

TEST(Match, pinnedHeightAlwaysHasSomeCapEase) {
  Design d = aWoman().set(Field::CapHeight, 10);
  d.choose(Choice::WorkedOut, WorkedOut::CapEase);
  const Worked w = workedOut(d);
  EXPECT_TRUE(w.match.found);
  EXPECT_LT(w.match.value, 0) << "a low cap is shorter than its armhole";
  EXPECT_EQ(w.sizes[Field::CapEase], w.match.value);
  EXPECT_NEAR(w.match.ease(), w.match.value, 1e-9);
}

// What cannot be had is answered with the nearest that can: hold that cap height instead, and it is
// found there.
TEST(AnyUnknown, whatCannotBeHadIsAnsweredWithTheNearestThatCan) {
  test::RandomDesigns random(test::propertySeed(1405));
  int answered = 0;
  for (int i = 0; i < 4000; ++i) {
    Design d = random.plausible();
    d.choose(Choice::WorkedOut, 1 + random.index(3)); // upper-arm ease, armhole depth, crown width
    d.set(Field::CapHeight, random.uniform(4, 30));
    const CapMatch m = draftGarment(d).cap;
    if (m.found || !m.nearest) continue;
    ++answered;
    const double toward = m.nearest->height > m.height ? 1 : -1;
    const CapMatch beyond =
        draftGarment(d.set(Field::CapHeight, m.nearest->height + toward * 0.01)).cap;
    const CapMatch before =
        draftGarment(d.set(Field::CapHeight, m.nearest->height - toward * 0.01)).cap;
    ASSERT_TRUE(beyond.found || before.found) << "design " << i;
    const CapMatch& had = beyond.found ? beyond : before;
    ASSERT_NEAR(had.value, m.nearest->value, 1) << "design " << i;
  }
  EXPECT_GT(answered, 200);
}

} // namespace
} // namespace scye
