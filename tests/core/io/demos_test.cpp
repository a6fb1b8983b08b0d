// The designs that come with the program open, and show garments that are right: drafted and
// knitted at their own gauge, and at coarser and finer ones.
#include "body/advice.h"
#include "draft/complete.h"
#include "garment/derived.h"
#include "io/design_file.h"
#include "io/files.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>

namespace scye {
namespace {

Design demo(const std::string& name) {
  const FileText file = readWhole(std::string(SCYE_RESOURCES "/demos/") + name);
  EXPECT_TRUE(file.text) << name << ": " << file.problem.phrase;
  const DesignRead read = designFromJson(file.text.value_or(""), builtinPhrases());
  EXPECT_TRUE(read.design) << name << ":" << read.problem.line << ": " << read.problem.reason;
  return read.design.value_or(Design());
}

std::vector<std::string> demoNames() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(SCYE_RESOURCES "/demos"))
    names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

std::vector<Design> demos() {
  std::vector<Design> all;
  for (const std::string& name : demoNames())
    all.push_back(demo(name));
  return all;
}

bool isForAChild(const Design& design) {
  const Figure figure = design.as<Figure>();
  return figure == Figure::Child || figure == Figure::Baby;
}

std::string told(const Finding& finding) {
  return builtinPhrases().say("finding." + finding.code, finding.params);
}

// What the window says of it: of draft, knitting and measurements.
Findings everyFinding(const Design& design) {
  Findings all = findingsOf(design);
  for (Finding& finding : adviceOn(design, complete(design)))
    all.push_back(std::move(finding));
  return all;
}

// At its own gauge, and stitches and rows in 10 cm.
struct Gauge {
  int stitches = 0, rows = 0;
};
constexpr std::array<Gauge, 4> kGauges{{{}, {16, 22}, {22, 30}, {28, 38}}};

// Another gauge is another yarn.
Design atGauge(Design design, const Gauge& gauge) {
  if (gauge.stitches == 0) return design;
  return design.choose(Choice::YarnClass, 0)
      .set(Field::SwatchStitches, gauge.stitches)
      .set(Field::SwatchWidth, 10)
      .set(Field::SwatchRows, gauge.rows)
      .set(Field::SwatchHeight, 10);
}

class EveryDemo : public testing::TestWithParam<std::string> {
protected:
  const Design design_ = demo(GetParam());
};

TEST_P(EveryDemo, DraftsWithAMatchedCap) {
  const GarmentDraft draft = draftGarment(design_);
  EXPECT_TRUE(draft.cap.found);
  EXPECT_NEAR(draft.cap.ease(), draft.cap.easeWanted, 1e-8);
}

TEST_P(EveryDemo, IsKnittedWithNothingToBeWarnedOfAtAnyOfItsGauges) {
  for (const Gauge& gauge : kGauges) {
    const Design design = atGauge(design_, gauge);
    const KnitGarment knit = knitGarment(draftGarment(design));
    EXPECT_TRUE(knit.capKnitted);
    EXPECT_TRUE(knit.impossible.empty());
    bool cautioned = false;
    for (const Finding& finding : everyFinding(design)) {
      EXPECT_EQ(finding.severity, Severity::Note)
          << gauge.stitches << "/" << gauge.rows << ": " << finding.code << ": " << told(finding);
      cautioned |= finding.code == "child.safety";
    }
    EXPECT_EQ(cautioned, isForAChild(design));
  }
}

TEST_P(EveryDemo, NamesItsWearerItsYarnAndAWashedSwatch) {
  EXPECT_FALSE(design_.title.empty());
  EXPECT_FALSE(design_.wearer.empty());
  EXPECT_GT(design_.notes.size(), 40u);
  EXPECT_TRUE(design_.yes(Choice::Washed));
  for (const Field field : {Field::Bust, Field::UpperArm, Field::SwatchStitches, Field::SwatchRows})
    EXPECT_TRUE(design_.has(field)) << info(field).key;
}

INSTANTIATE_TEST_SUITE_P(Demos, EveryDemo, testing::ValuesIn(demoNames()), [](const auto& name) {
  return name.param.substr(0, name.param.find('.'));
});

TEST(Demos, JacketIsMeasuredOnTheBodyPulloverOnAGarment) {
  EXPECT_EQ(demo("jacket.scye").source(Field::Bust), Source::Body);
  EXPECT_EQ(demo("pullover.scye").source(Field::Bust), Source::Garment);
}

TEST(Demos, ShowEveryStyleThatCanBeChosen) {
  const std::vector<Design> all = demos();
  for (const Choice choice :
       {Choice::Figure, Choice::Garment, Choice::Neckline, Choice::SideSeam, Choice::SleeveLine,
        Choice::CapTop, Choice::CapRise, Choice::CapLean, Choice::ShoulderWork, Choice::Hem,
        Choice::BodyLength, Choice::BackNeck, Choice::BustShaping, Choice::BandMade,
        Choice::ButtonSide})
    for (int option = 0; option < int(info(choice).options.size()); ++option)
      EXPECT_TRUE(std::any_of(all.begin(), all.end(),
                              [&](const Design& d) { return d.option(choice) == option; }))
          << "no design has " << info(choice).key << " " << info(choice).options.begin()[option];
}

TEST(Demos, AreAtLeastTwelveWithTitlesAndWearersOfTheirOwn) {
  const std::vector<Design> all = demos();
  EXPECT_GE(all.size(), 12u);
  std::set<std::string> titles, wearers, notes;
  for (const Design& design : all) {
    titles.insert(design.title);
    wearers.insert(design.wearer);
    notes.insert(design.notes);
  }
  EXPECT_EQ(titles.size(), all.size());
  EXPECT_EQ(wearers.size(), all.size());
  EXPECT_EQ(notes.size(), all.size());
}

} // namespace
} // namespace scye
