// Files of former versions are read to the same garment. The figures are those of the last program
// that wrote them, from its report.
#include "io/design_file.h"
#include "seam/garment_draft.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

Design readDesign(const std::string& inside) {
  const DesignRead read = designFromJson(
      R"({"format": "scyewright-design", "version": 1, )" + inside + "}", builtinPhrases());
  EXPECT_TRUE(read.design) << read.problem.reason;
  return read.design.value_or(Design());
}

struct Before {
  const char* name;
  const char* inside;
  double depth, crossShoulder, crossBack, hemToUnderarm, neck, arm, wrist, underarm, armhole, cap;
};

const Before kBefore[] = {
    {"a jacket measured on the body",
     R"("choices": {"garment": "jacket"}, "measurements": {
        "bust": {"value": 94, "source": "body"}, "armholeDepth": {"value": 18, "source": "body"},
        "upperArm": {"value": 29.5, "source": "body"}, "crossBack": {"value": 37, "source": "body"}},
        "values": {"ease.bust": 8})",
     21, 40.01, 37, 38.31625, 13.32, 35.5, 18.202, 2.47275, 50.31164711543774, 14.35412090344466},
    {"a pullover like one that fits, a shoulder length on the body",
     R"("measurements": {"bust": {"value": 52, "source": "garment"},
        "shoulderLength": {"value": 11, "source": "body"}})",
     21.0425, 41.26, 41.26, 38.58625, 14.835714714, 33.195, 18.15442, 2.4165, 49.14070230136561,
     14.682916847606712},
    {"a child's", R"("choices": {"figure": "child"},
        "measurements": {"bust": {"value": 64, "source": "body"}})",
     15.366666667, 26.201666667, 26.201666667, 21.635883333, 9.4326, 25.486666667, 16.066768485,
     2.204625, 37.41480046023953, 11.076019675252228},
};

TEST(DesignVersion1, IsReadToTheSameGarment) {
  for (const Before& b : kBefore) {
    SCOPED_TRACE(b.name);
    const GarmentDraft g = draftGarment(readDesign(b.inside));
    const Sizes& s = g.sizes;
    constexpr double kTold = 1e-8;
    EXPECT_NEAR(s.finished(Field::ArmholeDepth), b.depth, kTold);
    EXPECT_NEAR(s.finished(Field::CrossShoulder), b.crossShoulder, kTold);
    EXPECT_NEAR(s.finished(Field::CrossBack), b.crossBack, kTold);
    EXPECT_NEAR(s.finished(Field::HemToUnderarm), b.hemToUnderarm, kTold);
    EXPECT_NEAR(s[Field::NeckWidth], b.neck, kTold);
    EXPECT_NEAR(s.finished(Field::UpperArm), b.arm, kTold);
    EXPECT_NEAR(s.finished(Field::Wrist), b.wrist, kTold);
    EXPECT_NEAR(s[Field::UnderarmBack], b.underarm, kTold);
    EXPECT_NEAR(g.cap.armhole(), b.armhole, 1e-7);
    EXPECT_NEAR(g.cap.height, b.cap, 1e-7);
  }
}

// What the body's depth means now: from the nape. What was set for the garment is not the body's.
TEST(DesignVersion1, TellsTheDepthFromTheNapeAndKeepsTheBodysMeasurementsApart) {
  const Design d =
      readDesign(R"("measurements": {"armholeDepth": {"value": 18, "source": "body"}})");
  EXPECT_DOUBLE_EQ(*d.given(Field::ArmholeDepth), 18 + 2.5 - 2);
  EXPECT_EQ(d.source(Field::ArmholeDepth), Source::Body);
  for (int i = 0; i < kFieldCount; ++i)
    if (const Field f = Field(i); isMeasurement(f) && d.has(f) && f != Field::ArmholeDepth) {
      EXPECT_EQ(d.source(f), Source::Garment) << info(f).key;
    }
}

Design of(int version, const std::string& inside) {
  const auto read =
      designFromJson("{\"format\": \"scyewright-design\", \"version\": " + std::to_string(version) +
                         ", " + inside + "}",
                     builtinPhrases());
  EXPECT_TRUE(read.design) << read.problem.reason;
  return read.design.value_or(Design());
}

// Up to version 3 caps were drawn fuller. Of a garment that has been drafted
// it stays so.
TEST(DesignVersion3, KeepsTheFullnessOfItsCap) {
  const std::string bust = R"("measurements": {"bust": {"value": 96, "source": "body"}})";
  for (const int version : {1, 2, 3}) {
    EXPECT_DOUBLE_EQ(*of(version, bust).given(Field::LowerFullness), 0.45) << version;
    EXPECT_DOUBLE_EQ(*of(version, bust).given(Field::UpperFullness), 0.55) << version;
  }
  EXPECT_NE(of(4, bust).given(Field::LowerFullness), 0.45);
  EXPECT_FALSE(of(3, R"("choices": {"garment": "jacket"})").has(Field::LowerFullness));
  const Design high = of(3, bust + R"(, "choices": {"capRise": "high"})");
  EXPECT_DOUBLE_EQ(*high.given(Field::LowerFullness), 0.4);
  EXPECT_DOUBLE_EQ(*high.given(Field::UpperFullness), 0.5);
  const Design own = of(3, bust + R"(, "values": {"lowerFullness": 0.6})");
  EXPECT_EQ(own.given(Field::LowerFullness), 0.6);
  EXPECT_DOUBLE_EQ(*own.given(Field::UpperFullness), 0.55);
}

// Up to version 4 armholes were scooped deeper, a large woman's front deeper still: 0.55, and 0.02
// for each cm of its curve over 4.
TEST(DesignVersion4, KeepsTheScoopOfItsArmhole) {
  const std::string woman = R"("measurements": {"bust": {"value": 130, "source": "body"},
                                "crossShoulder": {"value": 38, "source": "body"}})";
  for (const int version : {2, 4}) {
    const Design then = of(version, woman);
    const Sizes s = complete(then);
    const double curve = 0.25 * s.finished(Field::Bust) - 0.5 * s.finished(Field::CrossFront) -
                         s[Field::UnderarmFront];
    ASSERT_GT(curve, 4.5);
    const double back = then.given(Field::ScoopBack).value_or(0);
    EXPECT_GT(back, s.beyondSurvey ? 0.42 : 0.549);
    EXPECT_NEAR(then.given(Field::ScoopFront).value_or(0) - back, 0.02 * (curve - 4), 1e-9);
  }
  const std::string man =
      R"("choices": {"figure": "man"}, "measurements": {"bust": {"value": 100, "source": "body"}})";
  EXPECT_NEAR(of(4, man).given(Field::ScoopFront).value_or(0), 0.55, 1e-12);
  EXPECT_FALSE(of(5, man).has(Field::ScoopFront));
  EXPECT_FALSE(of(4, R"("choices": {"garment": "jacket"})").has(Field::ScoopBack));
  const std::string child =
      R"("choices": {"figure": "child"}, "measurements": {"bust": {"value": 70, "source": "body"}})";
  EXPECT_FALSE(of(4, child).has(Field::ScoopBack));
  const Design own = of(
      4,
      R"("measurements": {"bust": {"value": 96, "source": "body"}}, "values": {"scoop.back": 0.4})");
  EXPECT_EQ(own.given(Field::ScoopBack), 0.4);
  EXPECT_NEAR(own.given(Field::ScoopFront).value_or(0), 0.55, 0.03);
}

// In versions 4 and 5 a usual cap was a little leaner below and fuller above.
TEST(DesignVersion5, KeepsTheFullnessOfItsCap) {
  const std::string bust = R"("measurements": {"bust": {"value": 96, "source": "body"}})";
  for (const int version : {4, 5}) {
    EXPECT_EQ(of(version, bust).given(Field::LowerFullness), 0.35) << version;
    EXPECT_EQ(of(version, bust).given(Field::UpperFullness), 0.45) << version;
    EXPECT_FALSE(
        of(version, R"("choices": {"capRise": "high"}, )" + bust).has(Field::LowerFullness));
  }
  EXPECT_FALSE(of(6, bust).has(Field::LowerFullness));
  EXPECT_FALSE(of(5, R"("choices": {"garment": "jacket"})").has(Field::UpperFullness));
  const Design own = of(5, bust + R"(, "values": {"lowerFullness": 0.5})");
  EXPECT_EQ(own.given(Field::LowerFullness), 0.5);
  EXPECT_EQ(own.given(Field::UpperFullness), 0.45);
}

// Nothing measured is nobody's garment yet.
TEST(DesignVersion1, WithoutMeasurementsStartsAsOneOfToday) {
  EXPECT_EQ(readDesign(R"("choices": {"garment": "jacket"})"),
            Design().choose(Choice::Garment, Garment::Jacket));
}

TEST(DesignVersion1, IsWrittenAsOneOfTodayAndReadBackEqual) {
  const Design d = readDesign(kBefore[0].inside);
  const std::string text = designToJson(d);
  EXPECT_NE(text.find("\"version\": 6"), std::string::npos);
  EXPECT_EQ(designFromJson(text, builtinPhrases()).design, d);
}

} // namespace
} // namespace scye
