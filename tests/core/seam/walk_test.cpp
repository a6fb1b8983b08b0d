#include "seam/walk.h"

#include "draft/complete.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

namespace scye::seam_walk {
namespace {

Design puffed() {
  return Design().set(Field::Bust, 90).choose(Choice::CapTop, CapTop::Gathered);
}

constexpr ArmholeHalf kSides[] = {ArmholeHalf::Back, ArmholeHalf::Front};

// The closed form of what is told of it: nothing up to a third of the way, from there the integral
// of smoothstep, 3 v^2 - 2 v^3, over the whole of it (one half), by Simpson's rule.
TEST(SeamWalk, theEaseIsSharedBySmoothstepsIntegral) {
  const auto smoothstep = [](double v) { return 3 * v * v - 2 * v * v * v; };
  for (int i = 0; i <= 60; ++i) {
    const double t = i / 60.0, u = std::max(0.0, 1.5 * (t - 1.0 / 3));
    // Exact for a cubic.
    const double integral = u / 6 * (smoothstep(0) + 4 * smoothstep(u / 2) + smoothstep(u));
    EXPECT_NEAR(easeShare(t), 2 * integral, 1e-12) << t;
  }
  EXPECT_EQ(easeShare(0.2), 0);
  EXPECT_EQ(easeShare(1.0 / 3), 0);
  EXPECT_DOUBLE_EQ(easeShare(2.0 / 3), 3.0 / 16); // u = 1/2: 2/8 - 1/16
  EXPECT_DOUBLE_EQ(easeShare(1), 1);
}

TEST(SeamWalk, theWholeEaseIsLetInBetweenUnderarmAndShoulder) {
  test::RandomDesigns random(test::propertySeed(71));
  for (int i = 0; i < 500; ++i) {
    const GarmentDraft g = draftGarment(random.plausible());
    if (!g.cap.found) continue;
    for (const ArmholeHalf side : kSides) {
      const SeamWalk walk(g, side);
      const LetIn& let = walk.letIn();
      ASSERT_NEAR(let.ease(), walk.ease(), 1e-9);
      ASSERT_EQ(let.upTo(walk.underarm()), 0);
      ASSERT_NEAR(let.upTo(walk.armhole().length()), walk.ease(), 1e-9);
      ASSERT_NEAR(walk.onCap(walk.armhole().length()), walk.cap().length(), 1e-9);
    }
  }
}

// Common practice: of a gathered cap a centimetre at most is eased in smoothly, the rest drawn in.
TEST(SeamWalk, gathersTakeWhatIsNotEasedIn) {
  const GarmentDraft g = draftGarment(puffed());
  double smooth = 0, drawn = 0;
  for (const ArmholeHalf side : kSides) {
    const LetIn let = SeamWalk(g, side).letIn();
    smooth += let.smooth, drawn += let.drawn;
    EXPECT_NEAR(let.to - let.gathersFrom, 0.5 * g.sizes[Field::GatherWidth], 1e-9);
  }
  EXPECT_NEAR(smooth, 1, 1e-6);
  EXPECT_NEAR(drawn, g.cap.ease() - 1, 1e-6);
}

TEST(SeamWalk, gathersAreEvenAndEndAtTheShoulder) {
  const LetIn let{2, 15, 20, 0, 4};
  EXPECT_EQ(let.upTo(15), 0);
  EXPECT_DOUBLE_EQ(let.upTo(16), 0.8); // 4 cm over 5
  EXPECT_DOUBLE_EQ(let.upTo(17.5), 2);
  EXPECT_DOUBLE_EQ(let.upTo(20), 4);
  EXPECT_DOUBLE_EQ(let.onCap(17.5), 19.5);
}

TEST(SeamWalk, aPointOfTheCapIsFoundOnTheArmhole) {
  test::RandomDesigns random(test::propertySeed(72));
  int found = 0;
  for (int i = 0; i < 300; ++i) {
    const GarmentDraft g = draftGarment(random.plausible());
    if (!g.cap.found || g.cap.ease() < 0) continue;
    for (const ArmholeHalf side : kSides) {
      const LetIn let = SeamWalk(g, side).letIn();
      for (const double share : {0.1, 0.5, 0.9, 1.0}) {
        const double s = share * let.to;
        ASSERT_NEAR(let.onArmhole(let.onCap(s)), s, 1e-8);
        ++found;
      }
    }
  }
  EXPECT_GT(found, 500);
}

TEST(SeamWalk, nothingIsDrawnInWhereTheCapIsSmoothOrShort) {
  for (const double ease : {0.0, 2.0}) {
    const GarmentDraft g =
        draftGarment(puffed().choose(Choice::CapTop, CapTop::Smooth).set(Field::CapEase, ease));
    const SeamWalk walk(g, ArmholeHalf::Back);
    EXPECT_FALSE(walk.letIn().gathers());
    for (const Notch& n : walk.notches())
      EXPECT_NE(n.kind, NotchKind::GathersBegin);
  }
  const GarmentDraft little = draftGarment(puffed().set(Field::CapEase, kSmoothEase));
  EXPECT_FALSE(SeamWalk(little, ArmholeHalf::Front).letIn().gathers());
}

TEST(SeamWalk, notchesRiseFromTheUnderarmToTheShoulder) {
  test::RandomDesigns random(test::propertySeed(73));
  for (int i = 0; i < 500; ++i) {
    const GarmentDraft g = draftGarment(random.plausible());
    for (const ArmholeHalf side : kSides) {
      const SeamWalk walk(g, side);
      const std::vector<Notch> notches = walk.notches();
      ASSERT_GE(notches.size(), 2u);
      EXPECT_EQ(notches.front().kind, NotchKind::Underarm);
      EXPECT_EQ(notches.front().s, walk.underarm());
      EXPECT_EQ(notches.back().kind, NotchKind::Shoulder);
      EXPECT_EQ(notches.back().s, walk.armhole().length());
      int begins = 0;
      for (std::size_t k = 1; k < notches.size(); ++k) {
        EXPECT_GT(notches[k].s, notches[k - 1].s);
        EXPECT_LT(notches[k].s - notches[k - 1].s, 7.5 + 1e-9);
        begins += notches[k].kind == NotchKind::GathersBegin;
      }
      EXPECT_EQ(begins, walk.letIn().gathers() ? 1 : 0);
    }
  }
}

} // namespace
} // namespace scye::seam_walk
