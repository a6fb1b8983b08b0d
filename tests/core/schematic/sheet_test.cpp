#include "schematic/sheet.h"

#include "garments.h"
#include "schematic/blocking.h"
#include "schematic/chart.h"
#include "schematic/chart_tiles.h"
#include "schematic/svg.h"

#include <gtest/gtest.h>

namespace scye::test {
namespace {

std::vector<PictureMaker> templates(const Made& made) {
  std::vector<PictureMaker> drawings;
  for (const KnitPiece& piece : made.knit.pieces)
    drawings.push_back([&made, id = piece.id](double letters) {
      return blockingTemplate(made.draft, made.knit, id, letters, builtinPhrases(),
                              LengthUnit::Centimetre);
    });
  return drawings;
}

// mm of paper, from the sheet's upper left, where a point of the drawing lies.
Vec2 onSheet(const Sheet& s, const Vec2& cm) {
  return s.corner + 10 / s.oneTo * Vec2(cm.x() - s.seen.low.x(), s.seen.high.y() - cm.y());
}

std::vector<Vec2> registersOf(const Sheet& s) {
  std::vector<Vec2> at; // cm of the drawing
  for (const Group& g : s.marks.groups)
    if (g.id == "register") {
      const Box box = g.box();
      const Vec2 mm = 10 * 0.5 * (box.low + box.high);
      at.emplace_back(s.seen.low.x() + (mm.x() - s.corner.x()) / 10,
                      s.seen.high.y() - (s.size.y() - mm.y() - s.corner.y()) / 10);
    }
  return at;
}

TEST(Sheet, tilesShowEveryPartOfEveryPieceAtItsTrueSize) {
  for (const Paper paper : {Paper::A4, Paper::Letter})
    for (const Made& made : some(63, 10)) {
      ExportOptions options;
      options.paper = paper;
      const auto sheets = tiledSheets(templates(made), options, builtinPhrases());
      std::size_t at = 1;
      for (const PictureMaker& make : templates(made)) {
        const std::string id = make(0.5).groups.front().id;
        std::vector<const Sheet*> own;
        for (; at < sheets.size() && sheets[at].picture.groups.front().id == id; ++at)
          own.push_back(&sheets[at]);
        ASSERT_FALSE(own.empty()) << id;
        const Box box = own.front()->picture.box();
        for (int i = 0; i <= 40; ++i)
          for (int k = 0; k <= 40; ++k) {
            const Vec2 p = box.low + Vec2(i / 40.0, k / 40.0).cwiseProduct(box.size());
            const bool shown = std::any_of(own.begin(), own.end(), [&](const Sheet* s) {
              return (p.array() >= s->seen.low.array() - 1e-9).all() &&
                     (p.array() <= s->seen.high.array() + 1e-9).all();
            });
            ASSERT_TRUE(shown) << id << " " << p.transpose();
          }
        for (const Sheet* s : own) {
          EXPECT_EQ(s->oneTo, 1);
          EXPECT_TRUE(s->clipped);
          const Vec2 low = onSheet(*s, s->seen.low), high = onSheet(*s, s->seen.high);
          EXPECT_GE(low.x(), kMarginMm - 1e-9);
          EXPECT_GE(high.y(), kMarginMm - 1e-9);
          EXPECT_LE(high.x(), s->size.x() - kMarginMm + 1e-9);
          EXPECT_LE(low.y(), s->size.y() - kMarginMm - 9 + 1e-9) << "the title block";
          EXPECT_EQ(registersOf(*s).size(), 4u);
        }
      }
      EXPECT_EQ(at, sheets.size());
    }
}

TEST(Sheet, neighboursHaveTheSameCrossesAndShareAStripe) {
  const Made made = some(62, 1).front();
  ExportOptions options;
  options.paper = Paper::A4;
  const auto sheets = tiledSheets(templates(made), options, builtinPhrases());
  int joints = 0;
  for (std::size_t i = 1; i + 1 < sheets.size(); ++i) {
    const Sheet &a = sheets[i], &b = sheets[i + 1];
    if (a.picture.groups.front().id != b.picture.groups.front().id) continue;
    if (std::abs(a.seen.high.y() - b.seen.high.y()) > 1e-9) continue; // the next row
    EXPECT_NEAR(10 * (a.seen.high.x() - b.seen.low.x()), kOverlapMm, 1e-9);
    int same = 0;
    for (const Vec2& p : registersOf(a))
      for (const Vec2& q : registersOf(b))
        same += (p - q).norm() < 1e-9;
    EXPECT_EQ(same, 2);
    ++joints;
  }
  EXPECT_GT(joints, 5);
}

TEST(Sheet, theMapHasASquareOfTenCentimetres) {
  const Made made = some(62, 1).front();
  ExportOptions options;
  options.paper = Paper::Letter;
  const Sheet map = tiledSheets(templates(made), options, builtinPhrases()).front();
  const auto square = std::find_if(map.marks.groups.begin(), map.marks.groups.end(),
                                   [](const Group& g) { return g.id == "square"; });
  ASSERT_NE(square, map.marks.groups.end());
  Box box;
  box.add(square->strokes.front().path);
  EXPECT_TRUE(box.size().isApprox(Vec2(10, 10), 1e-12));
  const Box all = map.marks.box();
  EXPECT_GE(all.low.minCoeff(), 0.5);
  EXPECT_LE(all.high.x(), map.size.x() / 10 - 0.5);
  EXPECT_LE(all.high.y(), map.size.y() / 10 - 0.5);
}

TEST(Sheet, theTitleBlockTellsWhatIsKnownAndNothingElse) {
  Picture picture;
  picture.title = "Net loft";
  Group g;
  g.strokes.push_back({Path::polyline({{0, 0}, {60, 0}, {60, 40}}), Role::Outline, false});
  picture.groups.push_back(g);
  ExportOptions options;
  options.paper = Paper::A4;
  options.block = {"Net loft", "Ida", "22 sts", "2026-11-27"};
  const auto textsOf = [&] {
    std::vector<std::string> texts;
    const Sheet sheet = sheetFor([&](double) { return picture; }, options, builtinPhrases());
    for (const Group& group : sheet.marks.groups)
      for (const Label& l : group.labels)
        texts.push_back(l.text);
    return texts;
  };
  const auto has = [](const std::vector<std::string>& texts, const std::string& text) {
    return std::count(texts.begin(), texts.end(), text) == 1;
  };
  for (const char* text : {"Net loft", "Ida", "22 sts", "2026-11-27", "1 : 3"})
    EXPECT_TRUE(has(textsOf(), text)) << text;
  options.block = {};
  EXPECT_EQ(textsOf().size(), 4u) << "title and scale, with their heads";
}

TEST(Sheet, onASheetAnSvgIsScaledAsItSays) {
  Picture picture;
  Group g;
  g.id = "bar";
  g.strokes.push_back({Path::polyline({{0, 0}, {60, 0}}), Role::Outline, false});
  picture.groups.push_back(g);
  ExportOptions options;
  options.paper = Paper::A4;
  const Sheet sheet = sheetFor([&](double) { return picture; }, options, builtinPhrases());
  const Picture paper = onPaper(sheet);
  EXPECT_NEAR(paper.groups.front().strokes.front().path.length(), 60 / sheet.oneTo, 1e-9);
  const std::string svg = sheetAsSvg(sheet);
  EXPECT_NE(svg.find("mm\""), std::string::npos);
  EXPECT_NE(svg.find("title-block"), std::string::npos);
}

TEST(Sheet, cellsOfAChartAreNeverSmallerThanTheyMayBe) {
  int inParts = 0, whole = 0, turned = 0;
  for (const Paper paper : {Paper::A4, Paper::Letter})
    for (const Made& made : some(64, 12)) {
      std::vector<PictureMaker> charts;
      std::vector<PartsMaker> parts;
      for (const KnitPiece& piece : made.knit.pieces) {
        charts.push_back([&made, &piece](double letters) {
          ChartOptions options;
          options.textHeight = letters;
          return chartPicture(piece, made.knit.lattice.size, builtinPhrases(), options);
        });
        parts.push_back(chartPartsOf(piece, made.knit.lattice.size, builtinPhrases()));
      }
      ExportOptions options;
      options.paper = paper;
      options.toScale = false;
      const auto sheets =
          legibleSheets(charts, parts, sheetSize(paper), true, options, builtinPhrases());
      std::size_t at = 0;
      for (const PictureMaker& make : charts) {
        const std::string id = make(0.2).groups.front().id;
        std::vector<const Sheet*> own;
        for (; at < sheets.size() && sheets[at].picture.groups.front().id == id; ++at)
          own.push_back(&sheets[at]);
        ASSERT_FALSE(own.empty()) << id;
        ++(own.size() > 1 ? inParts : whole);
        for (const Sheet* s : own) {
          turned += s->size.x() > s->size.y();
          EXPECT_GE(10 * s->picture.detail / s->oneTo, kLeastDetailMm - 1e-9);
          EXPECT_NEAR(10 * s->picture.textHeight / s->oneTo, 2.5, 1e-9) << "letters";
          const Vec2 low = onSheet(*s, s->seen.low), high = onSheet(*s, s->seen.high);
          EXPECT_GE(std::min(low.x(), high.y()), kMarginMm - 1e-6);
          EXPECT_LE(high.x(), s->size.x() - kMarginMm + 1e-6);
          EXPECT_LE(low.y(), s->size.y() - kMarginMm - 9 + 1e-6) << "the title block";
        }
      }
      EXPECT_EQ(at, sheets.size());
    }
  EXPECT_GT(inParts, 0);
  EXPECT_GT(whole, 0);
  EXPECT_GT(turned, 0);
}

// A title of any length leaves the letters of its block at 6 points and more, and within it.
TEST(Sheet, theLettersOfATitleBlockAreNeverTooSmall) {
  Picture picture;
  Group g;
  g.strokes.push_back({Path::polyline({{0, 0}, {60, 0}, {60, 40}}), Role::Outline, false});
  picture.groups.push_back(g);
  ExportOptions options;
  options.paper = Paper::A4;
  for (const std::size_t length : {5u, 40u, 400u}) {
    picture.title = std::string(length, 'm');
    options.block = {picture.title, std::string(length / 2, 'w'), "22 sts, 30 rows to 10 cm",
                     "2026-11-27"};
    const Sheet sheet = sheetFor([&](double) { return picture; }, options, builtinPhrases());
    for (const Group& group : sheet.marks.groups)
      for (std::size_t i = 0; i < group.labels.size(); ++i) {
        EXPECT_GE(group.labels[i].height, 6 * 2.54 / 72) << group.labels[i].text;
        EXPECT_LE(labelBox(group.labels[i]).high.x(), sheet.size.x() / 10 - kMarginMm / 10);
        for (std::size_t k = i + 2; k < group.labels.size(); k += 2)
          EXPECT_LE(labelBox(group.labels[i]).high.x(), labelBox(group.labels[k]).low.x());
      }
  }
}

TEST(Sheet, aSheetGrowsWhereItsDetailsWouldBeTooSmall) {
  const Made made = some(62, 1).front();
  ExportOptions options;
  options.paper = Paper::A4;
  options.toScale = false;
  const Sheet sheet = sheetFor(
      [&](double letters) {
        ChartOptions chart;
        chart.textHeight = letters;
        return garmentCharts(made.knit, builtinPhrases(), chart);
      },
      options, builtinPhrases());
  EXPECT_GE(10 * sheet.picture.detail / sheet.oneTo, kLeastDetailMm - 1e-9);
  const Box paper = onPaper(sheet).box();
  EXPECT_GE(paper.low.minCoeff(), 1);
  EXPECT_LE(paper.high.x(), sheet.size.x() / 10 - 1);
  EXPECT_LE(paper.high.y(), sheet.size.y() / 10 - 1);
}

} // namespace
} // namespace scye::test
