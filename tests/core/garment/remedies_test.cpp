#include "garment/derived.h"

#include "draft/complete.h"
#include "garment/recipes.h"
#include "support/random_designs.h"
#include "support/record.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <iostream>
#include <map>
#include <set>

namespace scye {
namespace {

Findings withRemedies(const Design& d, const RemedyWatch& watch = {}) {
  Derived derived = derive(d);
  deriveRemedies(d, derived, watch);
  return derived.findings;
}

const Remedy* remedyOf(const Findings& findings, std::string_view code, std::string_view key) {
  const Finding* finding = findCode(findings, code);
  if (!finding) return nullptr;
  for (const Remedy& r : finding->remedies)
    if (r.key == key) return &r;
  return nullptr;
}

bool isRecipe(std::string_view code) {
  return std::any_of(recipes().begin(), recipes().end(),
                     [&](const Recipe& r) { return r.code == code; });
}

// Codes of at least this severity.
std::multiset<std::string> codesFrom(Severity severity, const Findings& findings) {
  std::multiset<std::string> codes;
  for (const Finding& f : findings)
    if (f.severity >= severity) codes.insert(f.code);
  return codes;
}

double numberOf(const Remedy& remedy, std::string_view name) {
  for (const Param& p : remedy.params)
    if (p.name == name) return p.number;
  return NAN;
}

// What is knitted, as the row tables tell it.
std::vector<RowTable> rowsOf(const Derived& d) {
  std::vector<RowTable> all;
  for (const KnitPiece& piece : d.knit.pieces)
    all.push_back(piece.rows);
  return all;
}

std::vector<int> pickedUp(const Derived& d) {
  const PickUps& p = d.makingUp.pickUps;
  return {p.neck.total(), p.band.stitches, p.buttonholes.before, p.buttonholes.count};
}

// The promise: one click, and the finding is gone, on the draft and on the needles; nothing as
// grave has come in its place; every value may stand in its field; and something else is knitted or
// sewn.
TEST(Remedies, removeTheirFindingAndBringNoneAsGrave) {
  test::RandomDesigns random(test::propertySeed(1701));
  std::map<std::string, std::pair<int, int>> helped; // by code: findings, those with a remedy
  int remedies = 0;
  for (int i = 0; i < 40; ++i) {
    const Design d = i % 10 ? random.plausible() : random.wild();
    const Derived before = derive(d);
    const Findings findings = withRemedies(d, {.mostTrials = 60});
    for (const Finding& finding : findings) {
      if (!isRecipe(finding.code)) continue; // corrections of doubts have tests of their own
      auto& [all, withOne] = helped[finding.code];
      if (i % 10) all++, withOne += !finding.remedies.empty();
      const auto grave = codesFrom(finding.severity, findings);
      for (const Remedy& remedy : finding.remedies) {
        SCOPED_TRACE("design " + std::to_string(i) + " " + finding.code + " " + remedy.key);
        ++remedies;
        for (const auto& [field, value] : remedy.changes)
          ASSERT_FALSE(check(field, value));
        const Design after = applied(d, remedy);
        ASSERT_NE(after, d);
        const Derived made = derive(after);
        ASSERT_EQ(findCode(made.findings, finding.code), nullptr);
        for (const std::string& code : codesFrom(finding.severity, made.findings))
          ASSERT_LE(codesFrom(finding.severity, made.findings).count(code), grave.count(code))
              << code;
        const bool sewnOnly = remedy.key == "capTop.smooth" || remedy.key == "gathers" ||
                              remedy.key.ends_with("gatherWidth") || remedy.key == "less.pleats";
        if (before.knit.capKnitted && made.knit.capKnitted && !sewnOnly) {
          EXPECT_TRUE(rowsOf(made) != rowsOf(before) || pickedUp(made) != pickedUp(before));
        }
      }
    }
  }
  std::cout << remedies << " remedies tried; findings with at least one, plausible designs:\n";
  for (const auto& [code, counts] : helped)
    std::cout << "  " << code << ": " << counts.second << " of " << counts.first << '\n';
  EXPECT_GT(remedies, 50);
}

// None says "by 0 in" or turns by less than half a stitch or row.
TEST(Remedies, areWorthTheirClick) {
  test::RandomDesigns random(test::propertySeed(1704));
  int lengths = 0;
  for (int i = 0; i < 40; ++i) {
    const Design d = random.plausible();
    const Sizes sizes = draftGarment(d).sizes;
    for (const Finding& finding : withRemedies(d, {.mostTrials = 60}))
      for (const Remedy& remedy : finding.remedies) {
        if (remedy.changes.empty() || remedy.key.starts_with("doubt.")) continue;
        const Field f = remedy.changes.front().field;
        const FieldKind kind = info(f).kind;
        if (kind != FieldKind::Length && kind != FieldKind::Girth) continue;
        ++lengths;
        const double by = numberOf(remedy, "by");
        EXPECT_GE(by, 0.5 * std::min(sizes.stitch.width, sizes.stitch.height) - 1e-9) << remedy.key;
        EXPECT_GE(std::lround(by / kCmPerInch * 4), 1)
            << "reads as no quarter inch: " << remedy.key;
      }
  }
  EXPECT_GT(lengths, 20);
}

// Where a plausible garment is blocked a way out is told.
TEST(Remedies, blockedDesignsAreHelped) {
  test::RandomDesigns random(test::propertySeed(1702));
  int blocked = 0, helpless = 0;
  for (int i = 0; i < 400; ++i) {
    const Design d = random.plausible();
    if (!anyBlocking(derive(d).findings)) continue;
    for (const Finding& f : withRemedies(d, {.mostTrials = 200}))
      if (f.severity == Severity::Blocking) blocked++, helpless += f.remedies.empty();
  }
  test::record("blocked", blocked);
  test::record("helpless", helpless);
  EXPECT_GT(blocked, 20);
  EXPECT_LT(10 * helpless, blocked);
}

TEST(Remedies, areTheSmallestStepThatHelps) {
  Design d;
  d.set(Field::EaseUpperArm, 25);
  const Remedy* narrower = nullptr;
  const Findings findings = withRemedies(d);
  ASSERT_NE(narrower = remedyOf(findings, "match.tooWide", "less.upperArm"), nullptr);
  const auto [field, value] = narrower->changes.front();
  EXPECT_EQ(field, Field::EaseUpperArm);
  const double least = leastChange(field, draftGarment(d).sizes.stitch.width, 0);
  EXPECT_TRUE(anyBlocking(findingsOf(d.set(field, value + least + 0.1))));
}

TEST(Remedies, sayByHowMuch) {
  Design d;
  d.set(Field::EaseArmholeDepth, 6).set(Field::LimitRoomHigh, 20);
  const Findings findings = withRemedies(d);
  const Remedy* raise = remedyOf(findings, "depth.ease", "less.depth");
  ASSERT_NE(raise, nullptr);
  EXPECT_THAT(raise->params, testing::Contains(lengthParam("by", 1)));
  EXPECT_NEAR(raise->changes.front().value, 5, 1e-9);
}

// What helps two findings goes as far as both need.
TEST(Remedies, takeTheStepThatHelpsAllTheyAreFor) {
  Design d;
  d.set(Field::EaseArmholeDepth, 6); // too deep, and too roomy: 4.9 helps both, 5 the depth alone
  const Findings findings = withRemedies(d);
  ASSERT_NE(findCode(findings, "armhole.roomy"), nullptr);
  const Remedy* raise = remedyOf(findings, "depth.ease", "less.depth");
  ASSERT_NE(raise, nullptr);
  const Findings left = derive(applied(d, *raise)).findings;
  EXPECT_EQ(findCode(left, "depth.ease"), nullptr);
  EXPECT_EQ(findCode(left, "armhole.roomy"), nullptr);
}

// What was measured on a garment stays as it was measured; the new one is so much wider than that.
TEST(Remedies, widenAGarmentThatFitsByItsEase) {
  Design d;
  d.set(Field::Bust, 43, Source::Garment).set(Field::CrossShoulder, 42).set(Field::UpperArm, 29);
  const Findings findings = withRemedies(d);
  const Remedy* widen = remedyOf(findings, "armhole.narrow", "more.bust");
  ASSERT_NE(widen, nullptr);
  ASSERT_EQ(widen->changes.size(), 1u);
  EXPECT_EQ(widen->changes.front().field, Field::EaseBust);
  EXPECT_NEAR(numberOf(*widen, "by"), widen->changes.front().value, 1e-9);
  const Sizes after = complete(applied(d, *widen));
  EXPECT_EQ(after[Field::Bust], 43);
  EXPECT_TRUE(after.fromGarment(Field::Bust));
  EXPECT_NEAR(after.finished(Field::Bust), 2 * 43 + numberOf(*widen, "by"), 1e-9);
}

// A body does not change by a click, nor does the garment that was measured. The lengths of the new
// one may, though they can be measured too.
TEST(Remedies, neverTurnWhatWasMeasured) {
  test::RandomDesigns random(test::propertySeed(1705));
  int remedies = 0, onGarment = 0;
  for (int i = 0; i < 20; ++i) {
    Design d = random.plausible();
    const Sizes sizes = complete(d);
    for (int k = 0; k < kFieldCount && i % 2; ++k) { // the same garment laid flat
      const Field f = Field(k);
      if (!d.has(f) || !canTakeOn(f, Source::Garment)) continue;
      const double flat = asTaken(sizes, f, Source::Garment);
      if (!check(f, flat, Source::Garment)) d.set(f, flat, Source::Garment);
    }
    for (const Finding& finding : withRemedies(d, {.mostTrials = 30})) {
      if (finding.code.starts_with("doubt.")) continue;
      for (const Remedy& remedy : finding.remedies)
        for (const auto& [field, value] : remedy.changes) {
          ++remedies, onGarment += i % 2;
          if (remedy.key.starts_with("doubt.")) continue; // the tape's slip, tried on all findings
          EXPECT_TRUE(!isMeasurement(field) || field == Field::HemToUnderarm ||
                      field == Field::NeckWidth)
              << finding.code << ' ' << remedy.key << ' ' << info(field).key;
        }
    }
  }
  EXPECT_GT(remedies, 10);
  EXPECT_GT(onGarment, 5);
}

// A chain that is made up, so that order and effort can be seen: what is found depends on few
// fields.
class MadeUpChain : public testing::Test {
protected:
  MadeUpChain() {
    chain_.drafted = [this](const Design& d) {
      ++drafted_;
      return said(d);
    };
    chain_.whole = [this](const Design& d) { return Outcome{said(d), std::uint64_t(++wholes_)}; };
  }
  static Finding finding(Severity severity, std::string code, Field field) {
    return {severity, std::move(code), {field}, {}, {}};
  }
  // The neck passes the head once it is wide or deep or slit; a width of its own contradicts the
  // shoulders.
  [[nodiscard]] Findings said(const Design& d) const {
    Findings out;
    const double neck = d.given(Field::NeckWidth).value_or(14),
                 drop = d.given(Field::FrontNeckDrop).value_or(7),
                 slit = d.given(Field::BackOpening).value_or(0);
    if (neck + drop + slit < 24)
      out.push_back(finding(Severity::Blocking, "neck.head", Field::NeckWidth));
    if (d.has(Field::NeckWidth) && widthContradicts_)
      out.push_back(finding(Severity::Warning, "shoulder.differs", Field::ShoulderLength));
    return out;
  }
  Findings found(const Design& d, const RemedyWatch& watch = {}) {
    Findings findings = said(d);
    const Sizes sizes = draftGarment(d).sizes;
    complete_ = addRemedies(d, sizes, chain_, findings, watch);
    return findings;
  }
  static std::vector<std::string> keys(const Finding& f) {
    std::vector<std::string> out;
    for (const Remedy& r : f.remedies)
      out.push_back(r.key);
    return out;
  }

  Chain chain_;
  bool widthContradicts_ = false, complete_ = false;
  int drafted_ = 0, wholes_ = 0;
};

TEST_F(MadeUpChain, whatLeavesNothingToFindIsOfferedFirst) {
  EXPECT_EQ(keys(found({}).front()).front(), "more.neckWidth") << "the likeliest by the table";
  widthContradicts_ = true;
  const auto offered = keys(found({}).front());
  ASSERT_EQ(offered.size(), 3u);
  EXPECT_EQ(offered.back(), "more.neckWidth") << "it brings a warning";
}

TEST_F(MadeUpChain, theCauseIsTakenBackBeforeTheSymptomIsTreated) {
  Design d;
  d.set(Field::FrontNeckDrop, 1); // set far above where it would start: the cause
  EXPECT_EQ(keys(found(d).front()).front(), "more.neckDrop");
}

TEST_F(MadeUpChain, trialsAreMadeOnceHoweverOftenTheyAreAskedFor) {
  std::set<std::vector<double>> tried;
  const auto drafted = chain_.drafted;
  chain_.drafted = [&](const Design& d) {
    std::vector<double> values;
    for (int f = 0; f < kFieldCount; ++f)
      values.push_back(d.given(Field(f)).value_or(-1e9));
    EXPECT_TRUE(tried.insert(values).second);
    return drafted(d);
  };
  (void)found({});
  EXPECT_GT(tried.size(), 10u);
}

TEST_F(MadeUpChain, theDraftAloneRulesTrialsOut) {
  (void)found({});
  EXPECT_LT(wholes_, drafted_ / 2);
}

TEST_F(MadeUpChain, isToldAsItComesAndCanBeStopped) {
  std::stop_source stop;
  int told = 0;
  const Findings findings = found({}, {.stop = stop.get_token(), .found = [&](std::size_t, auto&) {
                                         ++told;
                                         stop.request_stop();
                                       }});
  EXPECT_EQ(told, 1);
  EXPECT_EQ(findings.front().remedies.size(), 1u) << "what was found is there";
  EXPECT_FALSE(complete_);
}

TEST_F(MadeUpChain, isGivenUpWhenItsTimeIsOver) {
  double now = 0;
  const auto clock = [&] { return now += 0.1; };
  const Findings findings = found({}, {.seconds = clock, .giveUpAfter = 3});
  EXPECT_LT(now, 3.3);
  EXPECT_FALSE(complete_);
  (void)found({});
  EXPECT_TRUE(complete_);
}

TEST(Remedies, areNotSoughtWhereNothingIsFound) {
  Findings none;
  int asked = 0;
  const Chain chain{[&](const Design&) { return ++asked, Findings(); },
                    [&](const Design&) { return ++asked, Outcome(); }};
  EXPECT_TRUE(addRemedies({}, draftGarment({}).sizes, chain, none));
  EXPECT_EQ(asked, 0);
}

TEST(Recipes, areKnownToThePhrasesAndRankedFromTheLikeliest) {
  std::map<std::string_view, int> last;
  for (const Recipe& r : recipes()) {
    EXPECT_TRUE(builtinPhrases().has("remedy." + std::string(r.key))) << r.key;
    EXPECT_TRUE(builtinPhrases().has("finding." + std::string(r.code))) << r.code;
    EXPECT_EQ(r.rank, ++last[r.code]) << r.code << ' ' << r.key;
    EXPECT_EQ(r.pick.has_value(), r.direction == 0) << r.key;
  }
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
  for (int i = 0; i < 60; ++i)
    for (const Finding& f :
         withRemedies(i % 4 ? random.plausible() : random.wild(), {.mostTrials = 40})) {
      read("finding." + f.code, f.params);
      for (const Remedy& r : f.remedies)
        read("remedy." + r.key, r.params);
    }
  EXPECT_GT(said.size(), 35u);
}

} // namespace
} // namespace scye
