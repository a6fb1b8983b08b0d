#include "garment/remedies.h"

#include "seam/garment_draft.h"
#include "support/random_designs.h"
#include "support/record.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <iostream>
#include <map>
#include <set>

namespace scye {
namespace {

Findings draftedFindings(const Design& d) {
  return draftGarment(d).findings;
}

Findings withRemedies(const Design& d) {
  const GarmentDraft g = draftGarment(d);
  Findings findings = g.findings;
  addRemedies(d, g.sizes, draftedFindings, findings);
  return findings;
}

const Remedy* remedyOf(const Findings& findings, std::string_view code, std::string_view key) {
  const Finding* finding = findCode(findings, code);
  if (!finding) return nullptr;
  for (const Remedy& r : finding->remedies)
    if (r.key == key) return &r;
  return nullptr;
}

std::set<std::string> blockingCodes(const Findings& findings) {
  std::set<std::string> codes;
  for (const Finding& f : findings)
    if (f.severity == Severity::Blocking) codes.insert(f.code);
  return codes;
}

// The promise: one click, and the finding is gone; nothing that blocks has come in its place, and
// every value may stand in its field.
TEST(Remedies, removeTheirFindingAndBlockNothingNew) {
  const auto seed = test::propertySeed(1701);
  test::RandomDesigns random(seed);
  std::map<std::string, std::pair<int, int>> helped; // by code: findings, those with a remedy
  int remedies = 0;
  for (int i = 0; i < 3000; ++i) {
    const Design d = i % 5 ? random.plausible() : random.wild();
    const Findings findings = withRemedies(d);
    const std::set<std::string> blockedBefore = blockingCodes(findings);
    for (const Finding& finding : findings) {
      auto& [all, withOne] = helped[finding.code];
      if (i % 5) all++, withOne += !finding.remedies.empty();
      for (const Remedy& remedy : finding.remedies) {
        SCOPED_TRACE("design " + std::to_string(i) + " " + finding.code + " " + remedy.key);
        ++remedies;
        for (const auto& [field, value] : remedy.changes)
          ASSERT_FALSE(check(field, value));
        const Design after = applied(d, remedy);
        ASSERT_NE(after, d);
        const Findings left = draftedFindings(after);
        ASSERT_EQ(findCode(left, finding.code), nullptr);
        for (const std::string& code : blockingCodes(left))
          ASSERT_TRUE(blockedBefore.contains(code)) << code;
      }
    }
  }
  std::cout << remedies << " remedies tried; findings with at least one, plausible designs:\n";
  for (const auto& [code, counts] : helped)
    std::cout << "  " << code << ": " << counts.second << " of " << counts.first << '\n';
  EXPECT_GT(remedies, 3000);
}

// Where a plausible garment is blocked she is told what to do.
TEST(Remedies, blockedDesignsAreHelped) {
  const auto seed = test::propertySeed(1702);
  test::RandomDesigns random(seed);
  int blocked = 0, helpless = 0;
  for (int i = 0; i < 4000; ++i)
    for (const Finding& f : withRemedies(random.plausible()))
      if (f.severity == Severity::Blocking) blocked++, helpless += f.remedies.empty();
  test::record("blocked", blocked);
  test::record("helpless", helpless);
  EXPECT_GT(blocked, 100);
  EXPECT_LT(helpless, blocked / 10);
}

TEST(Remedies, areTheSmallestStepThatHelps) {
  Design d;
  d.set(Field::EaseUpperArm, 25);
  const Findings findings = withRemedies(d);
  const Remedy* narrower = remedyOf(findings, "match.tooWide", "less.upperArm");
  ASSERT_NE(narrower, nullptr);
  const auto [field, value] = narrower->changes.front();
  EXPECT_EQ(field, Field::EaseUpperArm);
  EXPECT_NE(findCode(draftedFindings(d.set(field, value + 0.1)), "match.tooWide"), nullptr);
}

TEST(Remedies, sayByHowMuch) {
  Design d;
  d.set(Field::EaseArmholeDepth, 6);
  const Findings findings = withRemedies(d);
  const Remedy* raise = remedyOf(findings, "depth.ease", "less.depth");
  ASSERT_NE(raise, nullptr);
  EXPECT_THAT(raise->params, testing::Contains(lengthParam("by", 1)));
  EXPECT_NEAR(raise->changes.front().value, 5, 1e-9);
}

// A flat width is half a girth: the width moves by half of what the body is widened by.
TEST(Remedies, speakOfTheGirthWhereAFlatWidthIsTurned) {
  Design d;
  d.set(Field::Bust, 43, Source::Garment).set(Field::CrossShoulder, 42).set(Field::UpperArm, 29);
  const Findings findings = withRemedies(d);
  const Remedy* widen = remedyOf(findings, "armhole.narrow", "more.bust");
  ASSERT_NE(widen, nullptr);
  EXPECT_EQ(widen->changes.front().field, Field::Bust);
  EXPECT_EQ(applied(d, *widen).source(Field::Bust), Source::Garment);
  const auto by = std::find_if(widen->params.begin(), widen->params.end(),
                               [](const Param& p) { return p.name == "by"; });
  ASSERT_NE(by, widen->params.end());
  EXPECT_NEAR(by->number, 2 * (widen->changes.front().value - 43), 1e-9);
}

TEST(Remedies, areNotSoughtWhereNothingIsFound) {
  Findings none;
  int asked = 0;
  addRemedies(
      {}, draftGarment({}).sizes,
      [&](const Design& d) {
        ++asked;
        return draftedFindings(d);
      },
      none);
  EXPECT_EQ(asked, 0);
}

// Everything a draft can say is in the phrase catalogue, in both units, with every place filled.
TEST(Words, areThereForEveryFindingAndRemedy) {
  const auto seed = test::propertySeed(1703);
  test::RandomDesigns random(seed);
  const Phrases& phrases = builtinPhrases();
  std::set<std::string> said;
  const auto read = [&](const std::string& key, const Params& params) {
    for (LengthUnit unit : {LengthUnit::Centimetre, LengthUnit::Inch}) {
      const std::string text = phrases.say(key, params, unit);
      ASSERT_EQ(text.find_first_of("{}[]"), std::string::npos) << key << ": " << text;
      ASSERT_FALSE(text.empty()) << key;
    }
    said.insert(key);
  };
  for (int i = 0; i < 1200; ++i)
    for (const Finding& f : withRemedies(i % 4 ? random.plausible() : random.wild())) {
      read("finding." + f.code, f.params);
      for (const Remedy& r : f.remedies)
        read("remedy." + r.key, r.params);
    }
  EXPECT_GT(said.size(), 50u);
}

} // namespace
} // namespace scye
