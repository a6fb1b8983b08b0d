// Whole garments on their forms.
#include "worn/worn_measures.h"

#include "support/random_designs.h"
#include "worn/body_surface.h"
#include "worn/crossings.h"
#include "worn/raster.h"
#include "worn/worn_picture.h"
#include "worn/worn_words.h"
#include "worn_demos.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

struct Draped {
  std::shared_ptr<const SewnGarment> garment;
  BodyForm body;
};

Draped dressed(const Derived& derived, double spacing = 0) {
  const auto pattern = wornPattern(derived);
  EXPECT_TRUE(pattern.has_value());
  return {std::make_shared<const SewnGarment>(sewn(*pattern, spacing)), formOf(derived)};
}

// The lowest that a shoulder seam lies, over the armpit, cm: a garment that has slid off hangs
// lower.
double shouldersOverArmpit(const Worn& worn) {
  double lowest = 1e9;
  const SewnGarment& g = *worn.garment;
  for (const Seam& seam : g.seams)
    if (seam.kind == SeamKind::Shoulder)
      for (const auto& [a, b] : seam.pairs)
        lowest = std::min(lowest, worn.state.x(g.vertices[std::size_t(a)].point, 1));
  EXPECT_LT(lowest, 1e9) << "no shoulder seam";
  return lowest - worn.body.measures().armpitY;
}

class EveryStyle : public testing::TestWithParam<std::string> {};

// Gathers and pleats are drawn up to the armhole; their excess is not the seam's.
double longerEdge(const WornPattern& p) {
  const double armholes = lengthOf(p.back.armhole) + lengthOf(p.front.armhole);
  return std::max(armholes,
                  lengthOf(p.sleeve.cap) - p.backSeam.letIn.drawn - p.frontSeam.letIn.drawn);
}

TEST_P(EveryStyle, IsWornAtEveryArm) {
  const Derived derived = derive(test::demoDesign(GetParam()));
  const Draped d = dressed(derived);
  for (const double arm : {15.0, 45.0, 75.0, 90.0}) {
    SCOPED_TRACE("arm at " + std::to_string(arm));
    const Worn worn = canonicalDrape(d.garment, d.body, arm);
    ASSERT_TRUE(worn.state.x.allFinite());
    EXPECT_LT(worn.state.rms, 0.004) << "not settled";
    const WornMeasures m = measuresOf(worn);
    EXPECT_LT(m.mostStretch, 0.60);
    EXPECT_LT(m.deepest, 0.2);
    EXPECT_LT(m.layersThrough, 0.5);
    const double armpit = d.body.measures().armpitY, tip = d.body.measures().tipY;
    EXPECT_GT(shouldersOverArmpit(worn), 0.6 * (tip - armpit)) << "it slides off";
    EXPECT_EQ(crossingsAbove(armpit, *d.garment, worn.state.x), 0)
        << "a shoulder goes through itself";
    if (arm == 15) {
      const double longer = longerEdge(d.garment->pattern);
      EXPECT_NEAR(m.seam, longer, 0.02 * longer);
    }
  }
}
INSTANTIATE_TEST_SUITE_P(Demos, EveryStyle, testing::ValuesIn(test::demoDesigns()),
                         [](const auto& name) { return name.param; });

// Whether a garment is narrower than what it has to go round, so that no cloth could be worn
// unstretched there: at the neck, at the cuff, at a cap that is shorter than its armhole.
bool isTight(const Derived& derived, const WornPattern& p) {
  const Sizes& sizes = derived.draft.sizes;
  const double cuff =
      p.sleeve.cuffBand > 0 ? p.sleeve.cuffGirth : 2 * p.sleeve.frontSeam.front().x();
  const double armhole = lengthOf(p.back.armhole) + lengthOf(p.front.armhole);
  return derived.draft.bodice.neckEdge < 0.85 * sizes[Field::NeckBase] ||
         cuff < 0.9 * sizes.body(Field::Wrist) || lengthOf(p.sleeve.cap) < 0.9 * armhole;
}

// Garments that somebody might want, in gauges from 10 to 40, on all figures, every other one
// several centimetres narrower than its wearer.
TEST(Worn, OfDesignsAtRandomNothingIsTornOrThroughTheBody) {
  test::RandomDesigns random(test::propertySeed(20261127));
  constexpr int kGarments = 12;
  for (int worn = 0; worn < kGarments;) {
    Design design = random.plausible();
    const double stitches = std::round(random.uniform(10, 40));
    design.set(Field::SwatchStitches, stitches);
    design.set(Field::SwatchRows, std::round(stitches * random.uniform(1.25, 1.5)));
    if (worn % 2)
      for (const Field ease :
           {Field::EaseBust, Field::EaseWaist, Field::EaseHip, Field::EaseUpperArm})
        design.set(ease, random.uniform(-6, 2));
    const Derived derived = derive(design);
    const auto pattern = wornPattern(derived);
    const bool blocked = std::ranges::any_of(
        derived.findings, [](const Finding& f) { return f.severity == Severity::Blocking; });
    if (blocked || !pattern || isTight(derived, *pattern)) continue;
    const Draped d = dressed(derived);
    for (const double arm : {15.0, 45.0, 75.0, 90.0}) {
      SCOPED_TRACE("garment " + std::to_string(worn) + ", arm at " + std::to_string(arm));
      const Worn on = canonicalDrape(d.garment, d.body, arm);
      ASSERT_TRUE(on.state.x.allFinite());
      const WornMeasures m = measuresOf(on);
      EXPECT_LT(m.mostStretch, 0.60);
      EXPECT_LT(m.deepest, 0.2);
      EXPECT_LT(m.layersThrough, 0.5);
      EXPECT_GT(shouldersOverArmpit(on), 0) << "it has slid off";
    }
    ++worn;
  }
}

// Every pair of vertices along the armhole lies where the seam walk says.
TEST_P(EveryStyle, SeamPairsAreTheSeamWalks) {
  const Derived derived = derive(test::demoDesign(GetParam()));
  const Draped d = dressed(derived);
  const SewnGarment& g = *d.garment;
  int sides = 0;
  for (const Seam& seam : g.seams) {
    if (seam.kind != SeamKind::Armhole) continue;
    ++sides;
    const auto at = [&](int v) { return g.vertices[std::size_t(v)]; };
    const bool back = at(seam.pairs.front().first).panel == PanelId::Back;
    const LetIn& let = (back ? g.pattern.backSeam : g.pattern.frontSeam).letIn;
    const Line& armhole = (back ? g.pattern.back : g.pattern.front).armhole;
    const Line cap = back ? reversed(g.pattern.sleeve.cap) : g.pattern.sleeve.cap;
    for (const auto& [a, c] : seam.pairs) {
      // The place along the armhole, by the nearest point of its line.
      double best = 1e9, s = 0, along = 0;
      for (std::size_t i = 1; i < armhole.size(); ++i) {
        const Vec2 step = armhole[i] - armhole[i - 1];
        const double t =
            std::clamp((at(a).at - armhole[i - 1]).dot(step) / step.squaredNorm(), 0.0, 1.0);
        const double off = (armhole[i - 1] + t * step - at(a).at).norm();
        if (off < best) best = off, s = along + t * step.norm();
        along += step.norm();
      }
      EXPECT_LT(best, 1e-6);
      EXPECT_LT((pointAt(cap, let.onCap(s)) - at(c).at).norm(), 0.02);
      EXPECT_EQ(at(a).point, at(c).point);
    }
  }
  EXPECT_EQ(sides, 2);
}

// Lifted to level, what is too long of a high cap stands up over the shoulder; it does not fold
// through itself.
TEST(Worn, ALiftedShoulderStandsUpButDoesNotGoThroughItself) {
  const Draped d = dressed(derive(test::demoDesign("puff")));
  const Worn worn = canonicalDrape(d.garment, d.body, 90);
  EXPECT_EQ(crossingsAbove(d.body.measures().armpitY, *d.garment, worn.state.x), 0);
}

TEST(Worn, ClothThatGoesThroughClothIsCounted) {
  PieceMesh two;
  two.at = {{0, 0}, {4, 0}, {0, 4}, {10, 0}, {14, 0}, {10, 4}};
  two.triangles = {{0, 1, 2}, {3, 4, 5}};
  const SewnGarment cloth = flatCloth(two, 0.035);
  Points x(6, 3);
  x << 0, 0, 0, 4, 0, 0, 0, 4, 0, //
      1, 1, -1, 1, 1, 3, 3, 3, 1;
  EXPECT_EQ(crossingsAbove(-1, cloth, x), 1); // the edge across z = 0
  EXPECT_EQ(crossingsAbove(0.5, cloth, x), 0) << "the other triangle reaches lower";
  x.bottomRows<3>().col(2).array() += 1.5;
  EXPECT_EQ(crossingsAbove(-1, cloth, x), 0);
}

// Each piece's mesh covers it: no hole, and no edge that runs over itself.
TEST_P(EveryStyle, MeshesCoverTheirPieces) {
  const auto pattern = wornPattern(derive(test::demoDesign(GetParam())));
  ASSERT_TRUE(pattern);
  for (const PieceMesh& mesh : sewn(*pattern).meshes) {
    const auto across = [&](int i, int j) {
      const Vec2 a = mesh.at[std::size_t(i)], b = mesh.at[std::size_t(j)];
      return 0.5 * (a.x() * b.y() - a.y() * b.x());
    };
    double covered = 0, outline = 0;
    for (const auto& t : mesh.triangles)
      covered += across(t[0], t[1]) + across(t[1], t[2]) + across(t[2], t[0]);
    for (int i = 0; i < mesh.edgePoints; ++i)
      outline += across(i, (i + 1) % mesh.edgePoints);
    EXPECT_NEAR(covered, outline, 1e-5 * outline);
  }
}

TEST(Worn, HalfTheMeshSizeChangesHemAndSeamLittle) {
  for (const char* name : {"jacket", "puff", "child"}) {
    SCOPED_TRACE(name);
    const Derived derived = derive(test::demoDesign(name));
    const Draped coarse = dressed(derived), fine = dressed(derived, 0.5 * coarse.garment->spacing);
    const WornMeasures a = measuresOf(canonicalDrape(coarse.garment, coarse.body, 0)),
                       b = measuresOf(canonicalDrape(fine.garment, fine.body, 0));
    EXPECT_NEAR(a.hemY, b.hemY, 0.5);
    EXPECT_NEAR(a.seam, b.seam, 0.5);
  }
}

TEST(Worn, TheSamePictureTwice) {
  const Derived derived = derive(test::demoDesign("child"));
  const auto picture = [&] {
    const auto worn = wornBy(derived, 30);
    WornScene scene = sceneOf(*worn, trunkSurface(worn->body), {true, 0});
    lightUp(scene);
    Drawing drawing;
    drawing.width = 300, drawing.height = 240, drawing.samples = 2;
    return drawn(scene, viewOf(NamedView::Armhole, worn->body, scene.extent), drawing);
  };
  const Image first = picture();
  EXPECT_TRUE(first == picture());
  // And something is on it.
  EXPECT_NE(*std::min_element(first.rgb.begin(), first.rgb.end()),
            *std::max_element(first.rgb.begin(), first.rgb.end()));
}

// Clear where nothing is, opaque on the form, and laid on a ground it is what is drawn on it.
TEST(Worn, ACutOutLiesOnAnyGround) {
  const Derived derived = derive(test::demoDesign("outing"));
  WornPictureOptions options;
  options.cutOut = true, options.width = 160, options.height = 140;
  const auto image = wornPicture(derived, options);
  ASSERT_TRUE(image);
  ASSERT_EQ(image->opacity.size(), 160u * 140u);
  EXPECT_EQ(image->opacity.front(), 0);
  EXPECT_EQ(image->opacity[std::size_t(70 * 160 + 80)], 255);
  const auto worn = wornBy(derived, 0);
  WornScene scene = sceneOf(*worn, trunkSurface(worn->body), {});
  lightUp(scene);
  Drawing drawing;
  drawing.width = 160, drawing.height = 140, drawing.samples = 2;
  drawing.palette.ground.setConstant(0.4f), drawing.palette.deeper = 0;
  const Image grey = drawn(scene, viewOf(NamedView::Front, worn->body, scene.extent), drawing);
  for (std::size_t i = 0; i < grey.rgb.size(); ++i) {
    const double opaque = image->opacity[i / 3] / 255.0;
    ASSERT_NEAR(opaque * image->rgb[i] + (1 - opaque) * 0.4 * 255, grey.rgb[i], 3) << i;
  }
}

// As far from one another as they are planned, whatever vertices lie near; cloth that is drawn out
// takes them along.
TEST(Worn, ButtonsLieAtTheirHeights) {
  for (const char* name : {"jacket", "kite", "cardigan"}) {
    SCOPED_TRACE(name);
    const Draped d = dressed(derive(test::demoDesign(name)));
    const Worn worn = canonicalDrape(d.garment, d.body, 0);
    const WornScene scene = sceneOf(worn, trunkSurface(worn.body));
    const std::vector<double>& planned = d.garment->pattern.fronts.buttons;
    ASSERT_GT(planned.size(), 2u);
    ASSERT_EQ(scene.buttons.size(), planned.size());
    for (std::size_t i = 1; i < planned.size(); ++i) {
      const double gap = planned[i] - planned[i - 1];
      const double seen = double((scene.buttons[i].at - scene.buttons[i - 1].at).norm());
      EXPECT_NEAR(seen, gap, 0.08 * gap) << "above button " << i;
    }
  }
}

TEST(Worn, ReshapedIsAsIfSewnAnew) {
  Design design = test::demoDesign("jacket");
  const Draped before = dressed(derive(design));
  design.set(Field::EaseBust, 10);
  const auto pattern = wornPattern(derive(design));
  ASSERT_TRUE(pattern);
  const auto shaped = reshaped(*before.garment, *pattern);
  ASSERT_TRUE(shaped);
  EXPECT_EQ(shaped->points, before.garment->points);
  double area = 0, anew = 0;
  for (const ClothTriangle& t : shaped->triangles)
    area += t.area;
  for (const ClothTriangle& t : sewn(*pattern).triangles)
    anew += t.area;
  EXPECT_NEAR(area, anew, 1e-3 * anew);
}

TEST(Worn, EveryCautionThatAppliesIsTold) {
  Design design;
  design.set(Field::Bust, 94).set(Field::SwatchStitches, 22).set(Field::SwatchRows, 30);
  const auto cautions = [&] { return wornCautions(derive(design), builtinPhrases()); };
  const std::size_t usual = cautions().size();
  design.set(Field::EaseBust, -4);
  const std::vector<std::string> tight = cautions();
  ASSERT_EQ(tight.size(), usual + 1);
  design.set(Field::SwatchStitches, 14).set(Field::SwatchRows, 20);
  const std::vector<std::string> heavy = cautions();
  ASSERT_EQ(heavy.size(), usual + 2);
  EXPECT_EQ(heavy.front(), tight.front());
  EXPECT_EQ(heavy[1], builtinPhrases().say("worn.caution.heavy"));
}

// The figure in the sentence is the hem's way from the arms hanging to the arms lifted, to the half
// centimetre; so is that of the usual cap.
TEST(Worn, WhatIsSaidOfTheHemIsWhatIsMeasured) {
  Design design;
  design.set(Field::Bust, 98);
  design.choose(Choice::CapRise, CapRise::High);
  std::array<double, 2> measured{};
  std::array<std::optional<double>, 2> told;
  for (const bool usual : {false, true}) {
    const Draped d = dressed(derive(usual ? withUsualCap(design) : design));
    measured[usual] = measuresOf(canonicalDrape(d.garment, d.body, 60)).hemY -
                      measuresOf(canonicalDrape(d.garment, d.body, 0)).hemY;
    told[usual] = hemLift(d.garment, d.body);
    ASSERT_TRUE(told[usual]);
  }
  const std::string text = hemLiftText(*told[0], told[1], builtinPhrases(), LengthUnit::Centimetre);
  SCOPED_TRACE(text);
  std::vector<double> said;
  for (std::size_t at = 0; (at = text.find("about ", at)) != std::string::npos;)
    said.push_back(std::stod(text.substr(at += 6)));
  ASSERT_EQ(said.size(), 2u);
  EXPECT_NEAR(said[0], measured[0], 0.2501);
  EXPECT_NEAR(said[1], measured[1], 0.2501);
}

TEST(Worn, TheHemIsToldInHalfCentimetres) {
  const auto text = [](double lift, std::optional<double> usual) {
    return hemLiftText(lift, usual, builtinPhrases(), LengthUnit::Centimetre);
  };
  EXPECT_EQ(text(0.1, std::nullopt), builtinPhrases().say("worn.lift.none"));
  EXPECT_NE(text(1.3, std::nullopt).find("about 1.5 cm"), std::string::npos);
  EXPECT_EQ(text(1.3, 1.6), text(1.3, std::nullopt)) << "as much to the half centimetre";
  EXPECT_NE(text(1.3, 0.9).find("about 1 cm"), std::string::npos);
}

// A lower cap pulls less, and lifts the hem less, than a higher one: of arms that are lifted as far
// as what is said of them.
TEST(Worn, ALowerCapPullsAndLiftsLess) {
  for (const double bust : {80.0, 86.0, 92.0, 98.0, 104.0, 110.0, 116.0}) {
    for (const Figure figure : {Figure::Woman, Figure::Man}) {
      if (figure == Figure::Man && (bust < 92 || bust > 104)) continue; // ten bodies in all
      WornMeasures lifted[2];
      double lift[2] = {};
      for (int high = 0; high < 2; ++high) {
        Design design;
        design.choose(Choice::Figure, figure);
        design.set(Field::Bust, bust);
        design.choose(Choice::CapRise, high ? CapRise::High : CapRise::Shallow);
        const Draped d = dressed(derive(design));
        lifted[high] = measuresOf(canonicalDrape(d.garment, d.body, liftedArm(d.body)));
        lift[high] = lifted[high].hemY - measuresOf(canonicalDrape(d.garment, d.body, 0)).hemY;
      }
      SCOPED_TRACE("bust " + std::to_string(bust));
      EXPECT_LT(lifted[0].pull, lifted[1].pull);
      EXPECT_LT(lift[0], lift[1]);
    }
  }
}

} // namespace
} // namespace scye
