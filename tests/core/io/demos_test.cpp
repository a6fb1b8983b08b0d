// The designs that come with the program open, and show a garment that is right.
#include "io/design_file.h"
#include "io/files.h"
#include "seam/garment_draft.h"

#include <filesystem>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace scye {
namespace {

Design demo(const std::string& name) {
  const FileText file = readWhole(std::string(SCYE_RESOURCES "/demos/") + name);
  EXPECT_TRUE(file.text) << name << ": " << file.problem;
  const DesignRead read = designFromJson(file.text.value_or(""));
  EXPECT_TRUE(read.design) << name << ":" << read.problem.line << ": " << read.problem.reason;
  return read.design.value_or(Design());
}

std::vector<std::string> findingCodes(const Design& design) {
  std::vector<std::string> codes;
  for (const Finding& f : draftGarment(design).findings) codes.push_back(f.code);
  return codes;
}

TEST(Demos, JacketHasNothingToBeWarnedOf) {
  const Design jacket = demo("jacket.scye");
  EXPECT_EQ(jacket.wearer, "Maren Holm");
  EXPECT_EQ(jacket.given(Field::Bust), 94);
  EXPECT_THAT(findingCodes(jacket), testing::IsEmpty());
}

TEST(Demos, PulloverFromAGarmentHasNothingToBeWarnedOf) {
  const Design pullover = demo("pullover.scye");
  EXPECT_EQ(pullover.source(Field::Bust), Source::Garment);
  EXPECT_THAT(findingCodes(pullover), testing::IsEmpty());
}

TEST(Demos, ChildsPulloverCarriesOnlyTheNoteOnSafety) {
  EXPECT_THAT(findingCodes(demo("child.scye")), testing::ElementsAre("child.safety"));
}

TEST(Demos, EveryDemoDraftsWithAMatchedCap) {
  for (const auto& entry : std::filesystem::directory_iterator(SCYE_RESOURCES "/demos")) {
    const GarmentDraft draft = draftGarment(demo(entry.path().filename().string()));
    EXPECT_TRUE(draft.cap.found) << entry.path();
    EXPECT_NEAR(draft.cap.ease(), draft.cap.easeWanted, 1e-8) << entry.path();
  }
}

} // namespace
} // namespace scye
