// The sheet to print and fill in.
#include "schematic/guide_sheet.h"

#include "core/schematic/guide_checks.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace scye {
namespace {

struct Case {
  Source where;
  Figure figure;
  LengthUnit unit;
};

std::vector<Case> cases() {
  std::vector<Case> all;
  for (const Source where : {Source::Body, Source::Garment})
    for (const Figure figure : {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby})
      for (const LengthUnit unit : {LengthUnit::Centimetre, LengthUnit::Inch})
        all.push_back({where, figure, unit});
  return all;
}

const Group* groupOf(const Picture& page, std::string_view id) {
  const auto found = std::find_if(page.groups.begin(), page.groups.end(),
                                  [&](const Group& g) { return g.id == id; });
  return found == page.groups.end() ? nullptr : &*found;
}

TEST(MeasuringSheet, staysWithinThePage) {
  for (const Case& c : cases())
    for (const Picture& page : measuringSheet(builtinPhrases(), c.where, c.figure, c.unit)) {
      const Box box = page.box();
      EXPECT_GE(box.low.x(), kSheetBox.left - 1e-9);
      EXPECT_LE(box.high.x(), kSheetBox.right + 1e-9);
      EXPECT_GE(box.low.y(), kSheetBox.bottom - 1e-9);
      EXPECT_LE(box.high.y(), kSheetBox.top + 1e-9);
    }
}

// Letter is 21.59 x 27.94 cm (8.5 x 11 in).
TEST(MeasuringSheet, fitsOnLetterPaperToo) {
  const double less = kSheetHeight - 27.94, margin = 1.5;
  EXPECT_GE(kSheetBox.left, margin);
  EXPECT_GE(kSheetWidth - kSheetBox.right, margin);
  EXPECT_GE(kSheetHeight - kSheetBox.top, margin);
  EXPECT_GE(kSheetBox.bottom - less, margin) << "set at the top";
  EXPECT_GE(kSheetHeight - kSheetBox.top - less / 2, margin) << "set in the middle";
}

TEST(MeasuringSheet, keepsItsWordsApartAndOffTheLinesToWriteOn) {
  for (const Case& c : cases())
    for (const Picture& page : measuringSheet(builtinPhrases(), c.where, c.figure, c.unit)) {
      test::expectWordsApart(page, page.title);
      std::vector<Path> rules;
      for (const Group& g : page.groups)
        for (const Stroke& s : g.strokes)
          if (s.role == Role::Measure) rules.push_back(s.path);
      EXPECT_EQ(rules.empty(), groupOf(page, "table") == nullptr);
      for (const Group& g : page.groups)
        for (const Label& l : g.labels) {
          const Box box = labelBox(l);
          for (const Path& rule : rules)
            EXPECT_TRUE(rule.end().x() < box.low.x() || rule.start().x() > box.high.x() ||
                        rule.start().y() < box.low.y() || rule.start().y() > box.high.y())
                << l.text << " on a line to write on";
        }
    }
}

TEST(MeasuringSheet, hasAControlLineOfTenCentimetres) {
  for (const Case& c : cases()) {
    const Picture page = measuringSheet(builtinPhrases(), c.where, c.figure, c.unit).front();
    const Group* check = groupOf(page, "check");
    ASSERT_NE(check, nullptr);
    EXPECT_NEAR(check->strokes.front().path.length(), 10, 1e-9);
    // Its marks divide it into centimetres.
    ASSERT_EQ(check->strokes.size(), 12u);
    for (int i = 0; i <= 10; ++i)
      EXPECT_NEAR(check->strokes[std::size_t(i + 1)].path.start().x() -
                      check->strokes.front().path.start().x(),
                  i, 1e-9);
  }
}

TEST(MeasuringSheet, hasALineToWriteOnForEveryMeasurement) {
  for (const Case& c : cases()) {
    const Picture page = measuringSheet(builtinPhrases(), c.where, c.figure, c.unit).front();
    const Group* table = groupOf(page, "table");
    ASSERT_NE(table, nullptr);
    const std::vector<Field> fields = measuredOn(c.where);
    EXPECT_EQ(table->strokes.size(), fields.size());
    for (const Stroke& s : table->strokes)
      EXPECT_GE(s.path.length(), 1.8) << "room for five figures in handwriting";
    for (std::size_t i = 0; i < fields.size(); ++i) {
      const std::string number = std::to_string(i + 1),
                        name = builtinPhrases().say("field." + std::string(info(fields[i]).key));
      const auto says = [](const Group& g, const std::string& text) {
        return std::any_of(g.labels.begin(), g.labels.end(),
                           [&](const Label& l) { return l.text == text || l.text == text + " *"; });
      };
      EXPECT_TRUE(says(*table, number) && says(*table, name)) << name;
      EXPECT_TRUE(says(*groupOf(page, "front"), number) || says(*groupOf(page, "back"), number))
          << name;
    }
  }
}

TEST(MeasuringSheet, cautionsForChildren) {
  const std::string caution = builtinPhrases().say("guide.child");
  for (const Case& c : cases()) {
    const std::vector<Picture> pages = measuringSheet(builtinPhrases(), c.where, c.figure, c.unit);
    const Group* head = groupOf(pages.front(), "head");
    ASSERT_NE(head, nullptr);
    const bool cautioned =
        std::any_of(head->labels.begin(), head->labels.end(), [&](const Label& l) {
          return l.text.size() > 20 && caution.starts_with(l.text);
        });
    EXPECT_EQ(cautioned, c.figure == Figure::Child || c.figure == Figure::Baby);
  }
}

} // namespace
} // namespace scye
