// Whatever a design asks for, no output holds "inf", "nan" or a length below nothing. Ease, offsets
// and differences may be negative; what a piece or an edge measures may not.
#include "directions/row_table_csv.h"
#include "garment/verdict.h"
#include "io/report.h"
#include "schematic/chart.h"
#include "schematic/schematic.h"
#include "support/random_designs.h"

#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <regex>
#include <set>

namespace scye {
namespace {

using nlohmann::json;

void expectFinite(const std::string& text, const char* where) {
  static const std::regex bad("(^|[^A-Za-z])(-?inf|-?nan)([^A-Za-z]|$)", std::regex::icase);
  std::smatch found;
  ASSERT_FALSE(std::regex_search(text, found, bad))
      << where << ": "
      << text.substr(std::size_t(std::max<std::ptrdiff_t>(0, found.position() - 60)), 120);
}

void expectNoNegativeLength(const std::string& text, const char* where) {
  static const std::regex bad("(^|[^0-9A-Za-z/])(-|\u2212)[0-9][0-9./ ]* ?(cm|in)\\b");
  std::smatch found;
  ASSERT_FALSE(std::regex_search(text, found, bad))
      << where << ": "
      << text.substr(std::size_t(std::max<std::ptrdiff_t>(0, found.position() - 60)), 120);
}

void expectDrawable(const Picture& picture, const char* where) {
  for (const Group& group : picture.groups) {
    for (const Stroke& stroke : group.strokes) {
      ASSERT_TRUE(stroke.path.start().allFinite()) << where;
      for (const Cubic& c : stroke.path.segments())
        for (const Vec2& p : c.p)
          ASSERT_TRUE(p.allFinite()) << where << ' ' << group.id;
    }
    for (const Label& label : group.labels) {
      ASSERT_TRUE(label.at.allFinite() && std::isfinite(label.height)) << where;
      expectFinite(label.text, where);
      ASSERT_FALSE(label.text.starts_with("-") && label.role == Role::Measure)
          << where << ' ' << group.id << ": " << label.text;
    }
  }
}

// Numbers that say how long or wide something is, by the names of the report.
void expectLengths(const json& value, const std::string& name = {}) {
  static const std::set<std::string> lengths{
      "length", "finished", "armhole",  "armholeBack", "armholeFront",
      "cap",    "capBack",  "capFront", "capHeight",   "crownWidth",
      "wanted", "knitted",  "along",    "stitchWidth", "rowHeight"};
  if (value.is_null()) ADD_FAILURE() << name << " is no number";
  if (value.is_number() && lengths.contains(name)) {
    EXPECT_GE(value.get<double>(), 0) << name;
  }
  if (value.is_object())
    for (const auto& [key, inner] : value.items())
      expectLengths(inner, key);
  if (value.is_array())
    for (const json& inner : value)
      expectLengths(inner, name);
}

// Findings that speak of ease or room, or of a waist as it was set, which may lie below the edge.
bool tellsOffset(const std::string& code) {
  return code == "match.unreachable" || code == "match.nowhere" || code == "armhole.tight" ||
         code == "waist.outside";
}

void expectSound(const Derived& d) {
  const Phrases& phrases = builtinPhrases();
  for (const LengthUnit unit : {LengthUnit::Centimetre, LengthUnit::Inch}) {
    const FitVerdict verdict = fitVerdict(d, phrases, unit);
    expectFinite(verdict.sentence, "verdict");
    if (verdict.knitted) expectFinite(verdict.knitted->sentence, "knitted");
    for (const Finding& f : d.findings) {
      expectFinite(phrases.say("finding." + f.code, f.params, unit), f.code.c_str());
      if (!tellsOffset(f.code))
        expectNoNegativeLength(phrases.say("finding." + f.code, f.params, unit), f.code.c_str());
    }
    for (const char* terms : {"us", "uk"}) {
      const std::string text =
          directionsText(d.directions, {.phrases = phrases, .terms = terms, .unit = unit});
      expectFinite(text, "directions");
      Directions told = d.directions;
      std::erase_if(told.unmet, [](const Finding& f) { return tellsOffset(f.code); });
      expectNoNegativeLength(
          directionsText(told, {.phrases = phrases, .terms = terms, .unit = unit}), "directions");
    }
    expectFinite(directionsHtml(d.directions, {.phrases = phrases, .unit = unit}), "HTML");
    SchematicOptions options;
    options.unit = unit;
    if (d.knit.gaugeUsable) options.knitted = &d.knit;
    expectDrawable(pieceSchematic(d.draft, phrases, options), "schematic");
    expectDrawable(fitComparison(d.draft, phrases, options), "comparison");
  }
  expectFinite(rowTableCsv(d.knit), "row table");
  expectDrawable(garmentCharts(d.knit, phrases), "charts");
  const std::string report = reportToJson(d, phrases);
  expectFinite(report, "report");
  expectLengths(json::parse(report));
}

TEST(Outputs, holdNoInfinityAndNoNegativeLength) {
  test::RandomDesigns random(test::propertySeed(1010));
  for (int i = 0; i < 60; ++i) {
    SCOPED_TRACE("design " + std::to_string(i));
    expectSound(derive(i % 3 ? random.wild() : random.plausible()));
    if (HasFailure()) return;
  }
}

TEST(Outputs, tellTheGaugeThatIsTooFineToBeKnitted) {
  const Derived d = derive(Design().set(Field::SwatchStitches, 300).set(Field::SwatchRows, 400));
  ASSERT_FALSE(d.knit.gaugeUsable);
  expectSound(d);
  EXPECT_THAT(directionsText(d.directions, {.phrases = builtinPhrases()}),
              testing::HasSubstr("300 "));
}

} // namespace
} // namespace scye
