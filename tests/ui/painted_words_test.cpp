// Words painted in pictures, as wide as the letters really are: on every sheet of every output none
// is cut off or leaves its paper, in English and in a language that is longer by 40 %.
#include "io/design_file.h"
#include "io/files.h"
#include "io/outputs.h"
#include "schematic/ink.h"
#include "support/trial_language.h"

#include <QFontMetricsF>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scye::test {
namespace {

constexpr double kHair = 1e-6;

// cm; what is inked of the letters.
Box inked(const Label& label) {
  constexpr int kLarge = 200; // pixels, so that nothing is rounded
  QFont font;
  font.setPixelSize(kLarge);
  font.setBold(isBold(label.role));
  const QFontMetricsF metrics(font);
  const QString text = QString::fromStdString(label.text);
  const double unit = label.height / kLarge, wide = metrics.horizontalAdvance(text);
  const QRectF ink = metrics.tightBoundingRect(text);
  const double shift = label.anchor == Anchor::Start    ? 0
                       : label.anchor == Anchor::Middle ? -wide / 2
                                                        : -wide;
  const double angle = label.angle * std::numbers::pi / 180;
  const Vec2 along(std::cos(angle), std::sin(angle)), up(-along.y(), along.x());
  Box box;
  for (const double x : {ink.left() + shift, ink.right() + shift})
    for (const double y : {-ink.bottom(), -ink.top()})
      box.add(Vec2(label.at + unit * (x * along + y * up)));
  return box;
}

void expectWithin(const Picture& picture, const Box& canvas, const std::string& where) {
  for (const Group& g : picture.groups)
    for (const Label& l : g.labels) {
      const Box ink = inked(l);
      const double out =
          std::max((canvas.low - ink.low).maxCoeff(), (ink.high - canvas.high).maxCoeff());
      EXPECT_LE(out, kHair) << where << ": \"" << l.text << "\" is cut by " << out << " cm";
    }
}

// The knitter's own words are short here, so that nothing has to be.
void expectWhole(const Picture& marks, const std::string& where) {
  for (const Group& g : marks.groups)
    for (const Label& l : g.labels)
      EXPECT_EQ(l.text.find("\u2026"), l.text.npos) << where << ": shortened: " << l.text;
}

void expectSheetsHold(const OutputInfo& output, const OutputJob& job, FileFormat format,
                      const std::string& of) {
  for (const Sheet& sheet : sheetsOf(output, job, format)) {
    const std::string where = of + ", " + std::string(output.key);
    Box paper;
    paper.add(Vec2(0, 0));
    paper.add(Vec2(sheet.size / 10));
    expectWithin(sheet.marks, paper, where + ", on the sheet");
    expectWhole(sheet.marks, where);
    // What goes over a joint goes on on the next sheet; together they show all of the picture.
    if (sheet.clipped)
      expectWithin(sheet.picture, sheet.picture.box(), where);
    else
      expectWithin(onPaper(sheet), paper, where);
  }
}

Design demo(const std::string& name) {
  const auto text = readWhole(SCYE_RESOURCES "/demos/" + name + ".scye").text.value_or("");
  return designFromJson(text, builtinPhrases()).design.value_or(Design());
}

TEST(PaintedWords, lieOnTheirPaper) {
  std::vector<Design> designs;
  for (const char* name : {"jacket", "pullover"})
    designs.push_back(demo(name));
  designs.push_back(Design().choose(Choice::Figure, Figure::Baby)); // little room for the words
  for (Design& design : designs) {
    design.title = design.wearer = "\u0416", design.notes.clear();
    const Derived derived = derive(design);
    for (const Phrases* phrases : {&builtinPhrases(), &trialPhrases()})
      for (const OutputInfo& output : allOutputs())
        for (const Paper paper : {Paper::TrueSize, Paper::A4, Paper::Letter})
          for (const FileFormat format : {FileFormat::Svg, FileFormat::Pdf}) {
            const bool is = std::ranges::find(output.formats, format) != output.formats.end();
            if (!is || (output.has && !output.has(derived))) continue;
            OutputJob job{derived, {*phrases, "us", LengthUnit::Inch}};
            job.page.paper = paper;
            job.date = "2026-01-01";
            expectSheetsHold(output, job, format, phrases->language());
          }
  }
}

} // namespace
} // namespace scye::test
