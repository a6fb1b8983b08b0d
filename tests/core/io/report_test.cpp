#include "io/report.h"

#include "making_up/pick_up.h"
#include "making_up/seam_marks.h"
#include "support/random_designs.h"

#include <cmath>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace scye {
namespace {

using nlohmann::json;

json reportOf(const Derived& derived) {
  return json::parse(reportToJson(derived, builtinPhrases()));
}

double polyline(const json& points) {
  double sum = 0;
  for (std::size_t i = 1; i < points.size(); ++i)
    sum += std::hypot(points[i][0].get<double>() - points[i - 1][0].get<double>(),
                      points[i][1].get<double>() - points[i - 1][1].get<double>());
  return sum;
}

TEST(Report, NumbersReadBackAsTheDraftHasThem) {
  test::RandomDesigns random(test::propertySeed(31));
  for (int i = 0; i < 50; ++i) {
    const Derived derived = derive(random.plausible());
    const GarmentDraft& draft = derived.draft;
    const json report = reportOf(derived);
    const json& sleeve = report["sleeve"];
    EXPECT_EQ(sleeve["armholeBack"].get<double>(), draft.cap.armholeBack);
    EXPECT_EQ(sleeve["armholeFront"].get<double>(), draft.cap.armholeFront);
    EXPECT_EQ(sleeve["cap"].get<double>(), draft.cap.cap());
    EXPECT_EQ(sleeve["capHeight"].get<double>(), draft.cap.height);
    EXPECT_EQ(sleeve["ease"].get<double>(), draft.cap.ease());
    EXPECT_EQ(sleeve["crownMark"].get<double>(), draft.cap.crownMark);
    EXPECT_EQ(sleeve["fits"].get<bool>(), draft.cap.found);
    EXPECT_EQ(report["values"]["bust"]["finished"].get<double>(),
              draft.sizes.finished(Field::Bust));
    EXPECT_EQ(report["values"].size(), std::size_t(kFieldCount));
    EXPECT_EQ(report["findings"].size(), derived.findings.size());
  }
}

// Where bodies lie, and what room the armhole leaves one.
TEST(Report, TellsWhereTheBodyLiesAndItsRoomInTheArmhole) {
  Design d;
  const Derived derived = derive(d.set(Field::Bust, 94).set(Field::UpperArm, 29));
  const json report = reportOf(derived);
  const json& hip = report["values"]["hip"];
  EXPECT_LT(hip["likely"][0].get<double>(), hip["value"].get<double>());
  EXPECT_GT(hip["likely"][1].get<double>(), hip["value"].get<double>());
  EXPECT_FALSE(report["values"]["bust"].contains("likely")) << "it was taken";
  const json& room = report["sleeve"]["room"];
  EXPECT_DOUBLE_EQ(room["room"].get<double>(),
                   derived.draft.cap.armhole() - derived.draft.sizes[Field::ScyeGirth]);
  EXPECT_LT(room["likely"][0].get<double>(), room["room"].get<double>());
  EXPECT_GT(room["likely"][1].get<double>(), room["room"].get<double>());
}

// What is knitted stands in it as the core has it: buttonholes, pick-up counts, pins.
TEST(Report, TellsHowItIsMade) {
  test::RandomDesigns random(test::propertySeed(33));
  for (int i = 0; i < 50; ++i) {
    const Derived derived = derive(random.plausible());
    const KnitGarment& knit = derived.knit;
    const json knitted = reportOf(derived)["knitted"];
    const auto holes = knitted["buttonholes"]["rows"].get<std::vector<int>>();
    EXPECT_TRUE(std::equal(holes.begin(), holes.end(), knit.buttonholes.rows.begin(),
                           knit.buttonholes.rows.end(),
                           [](int told, Rows row) { return told == row.value(); }));
    EXPECT_EQ(knitted["pickUp"]["neckAll"].get<int>(), pickUps(derived.draft, knit).neck.total());
    const std::vector<SeamMarks> sides = seamMarks(derived.draft, knit);
    ASSERT_EQ(knitted["pins"].size(), sides.size());
    for (std::size_t k = 0; k < sides.size(); ++k)
      EXPECT_EQ(knitted["pins"][k]["marks"].size(), sides[k].marks.size());
  }
}

// The edges lie end to end round each piece, and their chords are as long as the edges, to 1 part
// in 5000 (64 chords a curve).
TEST(Report, OutlinesCloseAndTheirEdgesAreAsLongAsTold) {
  test::RandomDesigns random(test::propertySeed(32));
  for (int i = 0; i < 50; ++i) {
    const Derived derived = derive(random.plausible());
    const GarmentDraft& draft = derived.draft;
    const json report = reportOf(derived);
    ASSERT_EQ(report["pieces"].size(), draft.pieces.size());
    for (const json& piece : report["pieces"]) {
      const json& edges = piece["edges"];
      for (std::size_t k = 0; k < edges.size(); ++k) {
        const json& end = edges[k]["points"].back();
        const json& start = edges[(k + 1) % edges.size()]["points"].front();
        EXPECT_NEAR(end[0].get<double>(), start[0].get<double>(), 1e-9)
            << piece["piece"] << edges[k]["edge"];
        EXPECT_NEAR(end[1].get<double>(), start[1].get<double>(), 1e-9)
            << piece["piece"] << edges[k]["edge"];
        const double length = edges[k]["length"];
        EXPECT_NEAR(polyline(edges[k]["points"]), length, 2e-4 * length + 1e-9)
            << piece["piece"] << edges[k]["edge"];
      }
    }
  }
}

// Summed from the pieces alone: the armhole of back and front, and the cap with underarms and
// crown.
TEST(Report, TheSleevesEdgesAreThoseOfTheFigures) {
  const json report = reportOf(derive(Design().set(Field::Bust, 94).set(Field::UpperArm, 29.5)));
  double armholes = 0, cap = 0;
  for (const json& piece : report["pieces"])
    for (const json& edge : piece["edges"]) {
      const std::string kind = edge["edge"];
      if (piece["piece"] == "sleeve") {
        if (kind == "underarm" || kind == "cap" || kind == "crown")
          cap += edge["length"].get<double>();
      } else if (kind == "underarm" || kind == "armhole") {
        armholes += edge["length"].get<double>();
      }
    }
  EXPECT_NEAR(0.5 * armholes, report["sleeve"]["armhole"].get<double>(), 1e-9);
  EXPECT_NEAR(cap, report["sleeve"]["cap"].get<double>(), 1e-9);
}

TEST(Report, FindingsCarryMessageFieldsAndRemedies) {
  const Design design = Design().set(Field::Bust, 92).set(Field::EaseUpperArm, 40);
  Derived derived = derive(design);
  deriveRemedies(design, derived);
  const json report = reportOf(derived);
  bool seen = false;
  for (const json& finding : report["findings"]) {
    EXPECT_EQ(finding["message"].get<std::string>().find_first_of("[{"), std::string::npos);
    EXPECT_FALSE(finding["fields"].empty());
    if (finding["code"] != "match.tooWide") continue;
    seen = true;
    EXPECT_EQ(finding["severity"], "blocking");
    ASSERT_FALSE(finding["remedies"].empty());
    const json& remedy = finding["remedies"][0];
    EXPECT_FALSE(remedy["message"].get<std::string>().empty());
    EXPECT_EQ(remedy["message"].get<std::string>().find_first_of("[{"), std::string::npos);
    EXPECT_TRUE(remedy["values"].contains("ease.armholeDepth") ||
                remedy["values"].contains("ease.upperArm") ||
                remedy["values"].contains("ease.crossBack"));
  }
  EXPECT_TRUE(seen);
}

TEST(Report, EveryWildDesignIsReportedInFiniteNumbers) {
  test::RandomDesigns random(test::propertySeed(33));
  for (int i = 0; i < 200; ++i) {
    const std::string text = reportToJson(derive(random.wild()), builtinPhrases());
    EXPECT_EQ(text.find("null"), std::string::npos); // how JSON would write a NaN
  }
}

TEST(Report, TellsTheKnittedEdgesAndWhatWasRounded) {
  Design design;
  design.set(Field::Bust, 94).set(Field::SwatchStitches, 22).set(Field::SwatchRows, 30);
  const Derived derived = derive(design);
  const KnitGarment& knit = derived.knit;
  const json report = reportOf(derived);
  const json& k = report["knitted"];
  EXPECT_EQ(k["right"]["armhole"].get<double>(), knit.right.armhole.mean());
  EXPECT_EQ(k["right"]["cap"].get<double>(), knit.right.cap.mean());
  double sum = 0;
  for (const char* measure : {"chord", "corner", "middle"})
    sum += k["right"][measure]["mismatch"].get<double>();
  EXPECT_NEAR(sum / 3, k["right"]["mismatch"].get<double>(), 1e-12);
  EXPECT_EQ(k["capCurve"]["height"].get<double>(), knit.cap.referenceHeight);
  EXPECT_NEAR(k["mismatch"].get<double>(), knit.mismatch(), 1e-15);
  EXPECT_EQ(k["capLines"].get<int>(), knit.cap.lines());
  ASSERT_EQ(k["sizes"].size(), knit.rounded.size());
  for (const json& size : k["sizes"])
    EXPECT_NEAR(size["difference"].get<double>(),
                size["knitted"].get<double>() - size["wanted"].get<double>(), 1e-12);
}

} // namespace
} // namespace scye
