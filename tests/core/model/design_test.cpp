#include "model/design.h"

#include "model/finding.h"

#include <gtest/gtest.h>

#include <limits>

namespace scye {
namespace {

TEST(Design, isEmptyUntilSomethingIsSet) {
  const Design design;
  for (int i = 0; i < kFieldCount; ++i)
    EXPECT_FALSE(design.has(Field(i)));
  for (int i = 0; i < kChoiceCount; ++i)
    EXPECT_EQ(design.option(Choice(i)), 0);
}

TEST(Design, isItselfAgainAfterSettingAndClearing) {
  const Design before;
  Design design;
  design.set(Field::Bust, 46, Source::Garment);
  EXPECT_NE(design, before);
  EXPECT_EQ(design.given(Field::Bust), 46);
  EXPECT_EQ(design.source(Field::Bust), Source::Garment);
  design.clear(Field::Bust);
  EXPECT_EQ(design, before);
}

TEST(Design, differsByItsWordsToo) {
  Design design;
  design.wearer = "Ada";
  EXPECT_NE(design, Design{});
}

TEST(Design, onlyAMeasurementCanComeFromAGarment) {
  Design design;
  design.set(Field::EaseBust, 5, Source::Garment);
  EXPECT_EQ(design.source(Field::EaseBust), Source::Body);
}

TEST(Design, keepsItsChoiceWhenTheOptionDoesNotExist) {
  Design design;
  design.choose(Choice::Neckline, Neckline::Vee);
  design.choose(Choice::Neckline, 17);
  design.choose(Choice::Neckline, -1);
  EXPECT_EQ(design.as<Neckline>(), Neckline::Vee);
}

TEST(Check, takesTheEndsOfARangeAndNothingBeyond) {
  for (int i = 0; i < kFieldCount; ++i) {
    const FieldInfo& f = info(Field(i));
    EXPECT_FALSE(check(f.id, f.low)) << f.key;
    EXPECT_FALSE(check(f.id, f.high)) << f.key;
    EXPECT_EQ(check(f.id, f.low - 1), Refusal::TooSmall) << f.key;
    EXPECT_EQ(check(f.id, f.high + 1), Refusal::TooLarge) << f.key;
  }
}

TEST(Check, refusesWhatIsNoNumber) {
  EXPECT_EQ(check(Field::Bust, std::numeric_limits<double>::quiet_NaN()), Refusal::NotANumber);
  EXPECT_EQ(check(Field::Bust, std::numeric_limits<double>::infinity()), Refusal::NotANumber);
  EXPECT_EQ(check(Field::Bust, -std::numeric_limits<double>::infinity()), Refusal::NotANumber);
}

TEST(Check, wantsWholeCountsButLetsASwatchCountQuarters) {
  EXPECT_EQ(check(Field::PatternMultiple, 4.5), Refusal::NotWhole);
  EXPECT_FALSE(check(Field::PatternMultiple, 4));
  EXPECT_FALSE(check(Field::SwatchStitches, 22.25));
  EXPECT_EQ(check(Field::SwatchStitches, 22.3), Refusal::NotWhole);
}

TEST(Remedy, keepsWhereAMeasurementWasTaken) {
  Design design;
  design.set(Field::Bust, 46, Source::Garment);
  const Remedy remedy{"more.bust",
                      {},
                      {{Field::Bust, 48}, {Field::CapEase, 0.5}},
                      {{Choice::Washed, int(YesNo::Yes)}}};
  const Design after = applied(design, remedy);
  EXPECT_EQ(after.given(Field::Bust), 48);
  EXPECT_EQ(after.source(Field::Bust), Source::Garment);
  EXPECT_EQ(after.given(Field::CapEase), 0.5);
  EXPECT_TRUE(after.yes(Choice::Washed));
  EXPECT_EQ(design.given(Field::Bust), 46) << "the design itself must stay as it is";
}

TEST(Findings, blockAsSoonAsOneBlocks) {
  const auto finding = [](Severity severity, const char* code) {
    Finding f;
    f.severity = severity, f.code = code;
    return f;
  };
  Findings findings{finding(Severity::Note, "a"), finding(Severity::Warning, "b")};
  EXPECT_FALSE(anyBlocking(findings));
  findings.push_back(finding(Severity::Blocking, "c"));
  EXPECT_TRUE(anyBlocking(findings));
  EXPECT_EQ(findCode(findings, "b"), &findings[1]);
  EXPECT_EQ(findCode(findings, "d"), nullptr);
}

} // namespace
} // namespace scye
