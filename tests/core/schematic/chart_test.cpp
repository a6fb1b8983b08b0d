#include "schematic/chart.h"

#include "pictures.h"
#include "support/random_designs.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <set>

namespace scye {
namespace {

KnitGarment pullover(double bust = 92) {
  Design design;
  design.set(Field::Bust, bust);
  return knitGarment(draftGarment(design));
}

std::optional<int> wholeNumber(const std::string& text) {
  int n = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), n);
  return error == std::errc{} && end == text.data() + text.size() ? std::optional(n) : std::nullopt;
}

ChartOptions fold(ChartFold how) {
  ChartOptions o;
  o.fold = how;
  return o;
}

TEST(Chart, CellsHaveTheProportionsOfTheGauge) {
  const KnitGarment k = pullover();
  const Chart chart =
      pieceChart(k.pieces.front(), k.lattice.size, builtinPhrases(), fold(ChartFold::Never));
  EXPECT_NEAR(chart.rows.at(1) / chart.columns.at(1), k.lattice.size.height / k.lattice.size.width,
              1e-12);
  EXPECT_NEAR(chart.columns.end(), chart.grid.columns * chart.columns.at(1), 1e-9);
  EXPECT_NEAR(chart.rows.end(), chart.grid.rows * chart.rows.at(1), 1e-9);
}

// What stands beside a chart: a row's number, and behind it what else is told of that row.
struct RowLabel {
  int row = 0;
  std::string told;
  const Label* label = nullptr;
};

std::vector<RowLabel> rowLabels(const Chart& chart) {
  std::vector<RowLabel> found;
  for (const Label& l : chart.picture.groups.front().labels) {
    if (l.angle != 0 || l.role == Role::Caption || labelBox(l).low.y() < -0.5 * l.height) continue;
    if (l.at.x() >= 0 && l.at.x() <= chart.columns.end()) continue;
    const std::size_t end = l.text.find(" · ");
    const std::string number = l.text.substr(0, end);
    if (const auto row = wholeNumber(number))
      found.push_back(
          {*row, end == std::string::npos ? "" : l.text.substr(end + std::string(" · ").size()),
           &l});
  }
  return found;
}

// Stitches after each row in which their number has changed, as they are told beside it.
std::map<int, std::string> changedCounts(const KnitPiece& piece) {
  std::map<int, std::map<SectionId, int>> changed;
  const RowLine* before = nullptr;
  for (const RowLine& l : piece.rows) {
    if (before && (before->section != l.section || before->stitches() != l.stitches()) &&
        l.stitches() > Stitches(0))
      changed[l.row.value()][l.section] = l.stitches().value();
    before = &l;
  }
  std::map<int, std::string> told;
  for (const auto& [row, counts] : changed)
    for (const auto& [section, n] : counts) {
      const std::string count = std::to_string(n) + (n == 1 ? " st" : " sts");
      told[row] += (told[row].empty() ? "" : ", ") +
                   std::string(section == SectionId::Right  ? "right "
                               : section == SectionId::Left ? "left "
                                                            : "") +
                   count;
    }
  return told;
}

// Row numbers stand where the row starts: right-side rows are read from the right (common
// practice).
void expectBesideTheirRows(const Chart& chart, const KnitPiece& piece) {
  const auto counts = changedCounts(piece);
  std::set<int> seen;
  for (const RowLabel& l : rowLabels(chart)) {
    EXPECT_TRUE(seen.insert(l.row).second) << "twice: " << l.label->text;
    EXPECT_EQ(l.row % 2 == 1, l.label->at.x() > chart.columns.end()) << l.label->text;
    EXPECT_EQ(l.row % 2 == 0, l.label->at.x() < 0) << l.label->text;
    // A figure is 0.72 of its height high.
    EXPECT_EQ(chart.rows.itemAt(l.label->at.y() + 0.36 * l.label->height), l.row - 1)
        << l.label->text;
    const auto told = counts.find(l.row);
    EXPECT_EQ(l.told, told == counts.end() ? "" : told->second) << l.label->text;
  }
  // No count stands for itself.
  for (const Label& l : chart.picture.groups.front().labels)
    if ((l.text.ends_with(" sts") || l.text.ends_with(" st")) && l.angle == 0) {
      EXPECT_TRUE(wholeNumber(l.text.substr(0, l.text.find(" · ")))) << l.text;
    }
}

TEST(Chart, NumbersEveryRowOnTheSideWhereItStartsWithTheStitchesWhereTheyChange) {
  const KnitGarment k = pullover();
  for (const KnitPiece& piece : k.pieces) {
    const Chart chart = pieceChart(piece, k.lattice.size, builtinPhrases(), fold(ChartFold::Never));
    EXPECT_EQ(int(rowLabels(chart).size()), piece.lastRow().value());
    expectBesideTheirRows(chart, piece);
  }
}

TEST(Chart, NoLabelBesideAChartIsWithoutItsRow) {
  test::RandomDesigns designs(test::propertySeed(42));
  for (int i = 0; i < 100; ++i) {
    const KnitGarment k =
        knitGarment(draftGarment(i % 4 == 3 ? designs.wild() : designs.plausible()));
    ChartOptions o;
    o.textHeight = i % 3 == 0 ? 0 : designs.uniform(0.1, 1.5);
    for (const KnitPiece& piece : k.pieces)
      expectBesideTheirRows(pieceChart(piece, k.lattice.size, builtinPhrases(), o), piece);
  }
}

TEST(Chart, EveryChangeIsToldBesideItsRowWhereTheLettersAreAsHighAsTheCells) {
  test::RandomDesigns designs(test::propertySeed(43));
  for (int i = 0; i < 60; ++i) {
    const KnitGarment k = knitGarment(draftGarment(designs.plausible()));
    for (const KnitPiece& piece : k.pieces) {
      std::set<int> told;
      for (const RowLabel& l : rowLabels(pieceChart(piece, k.lattice.size, builtinPhrases())))
        told.insert(l.row);
      for (const auto& [row, counts] : changedCounts(piece))
        EXPECT_TRUE(told.contains(row)) << row << " " << counts;
    }
  }
}

// By column and row, from the right edge: whether a cell of the lower edge has a bar.
bool isPurled(const Chart& chart, int row, int fromRight) {
  const int column = chart.grid.castOn.to - 1 - fromRight;
  return std::any_of(chart.grid.marks.begin(), chart.grid.marks.end(), [&](const ChartMark& m) {
    return m.symbol == ChartSymbol::Purl && m.row == row && m.columns.has(column);
  });
}

TEST(Chart, RibIsShownByItsPurlCells) {
  const struct {
    RibKind kind;
    std::string first,
        second;    // of a row seen from the right side, from its right edge, over and over
    int start = 0; // stitches before
  } kRibs[] = {
      {RibKind::TwoTwo, "ppkk", "ppkk", 2},
      {RibKind::OneOne, "pk", "pk", 2},
      {RibKind::ThreeOne, "pkkk", "pkkk", 3},
      {RibKind::Seed, "kp", "pk", 0},
      {RibKind::Garter, "k", "p", 0},
      {RibKind::Plain, "k", "k", 0},
      {RibKind::Own, "k", "k", 0}, // not known
  };
  for (const auto& rib : kRibs) {
    Design design;
    design.choose(Choice::Rib, rib.kind);
    const KnitGarment k = knitGarment(draftGarment(design));
    const KnitPiece& back = *k.piece(PieceId::Back);
    const Chart chart = pieceChart(back, k.lattice.size, builtinPhrases());
    const int hem = back.hemRows.value();
    ASSERT_GT(hem, 4);
    bool any = false;
    for (int row = 1; row <= hem + 4; ++row)
      for (int s = rib.start; s < chart.grid.castOn.size() - 2; ++s) {
        const std::string& over = row % 2 == 1 ? rib.first : rib.second;
        const bool purl = row <= hem && over[std::size_t(s - rib.start) % over.size()] == 'p';
        ASSERT_EQ(isPurled(chart, row, s), purl) << int(rib.kind) << " row " << row << " st " << s;
        any |= purl;
      }
    const auto& legend = chart.picture.groups.back().labels;
    EXPECT_EQ(std::any_of(legend.begin(), legend.end(),
                          [](const Label& l) { return l.text == "purl on RS, knit on WS"; }),
              any);
  }
}

// A band that is knitted on goes on in the stitch of the lower edge, column for column, up to the
// neck; where that edge lies flat by itself, in garter stitch from the cast-on.
TEST(Chart, ABandThatIsKnittedOnIsShownByItsPurlCells) {
  for (const RibKind kind : {RibKind::TwoTwo, RibKind::OneOne, RibKind::Seed, RibKind::Plain}) {
    Design design;
    design.choose(Choice::Garment, Garment::Jacket).choose(Choice::Rib, kind);
    design.choose(Choice::BandMade, BandMade::KnittedOn);
    const KnitGarment k = knitGarment(draftGarment(design));
    for (const PieceId id : {PieceId::LeftFront, PieceId::RightFront}) {
      const KnitPiece& front = *k.piece(id);
      const int band = front.band.value(), hem = front.hemRows.value();
      const int neck = front.neckRow.value();
      ASSERT_GT(band, 3);
      ASSERT_GT(neck, hem + 10);
      const Chart chart = pieceChart(front, k.lattice.size, builtinPhrases());
      const ChartGrid& grid = chart.grid;
      std::map<int, std::string> seen; // the band's cells by row, from its free edge
      for (int row = 1; row <= grid.rows; ++row) {
        const auto lines = grid.in(row);
        const bool left = id == PieceId::LeftFront;
        const Span cells = left ? lines.front()->cells : lines.back()->cells;
        for (int s = 0; s < std::min(band, cells.size()); ++s) {
          const int column = left ? cells.from + s : cells.to - 1 - s;
          const auto has = [&](ChartSymbol symbol) {
            return std::any_of(grid.marks.begin(), grid.marks.end(), [&](const ChartMark& m) {
              return m.symbol == symbol && m.row == row && m.columns.has(column);
            });
          };
          seen[row] += has(ChartSymbol::Buttonhole) ? '?' : has(ChartSymbol::Purl) ? 'p' : 'k';
        }
        // Nothing is purled beyond it.
        for (const ChartMark& m : grid.marks)
          if (m.symbol == ChartSymbol::Purl && m.row == row && row > hem) {
            EXPECT_TRUE(left ? m.columns.to <= cells.from + band
                             : m.columns.from >= cells.to - band)
                << "row " << row;
          }
      }
      for (int row = hem + 1; row < neck; ++row) {
        std::string wanted = kind == RibKind::Plain
                                 ? std::string(std::size_t(band), row % 2 == 1 ? 'k' : 'p')
                                 : seen[row % 2 == 1 ? 1 : 2];
        for (std::size_t s = 0; s < wanted.size(); ++s)
          if (seen[row][s] == '?') wanted[s] = '?';
        ASSERT_EQ(seen[row], wanted) << "row " << row << " of " << pieceKey(id);
      }
      EXPECT_NE(seen[2].find('p'), std::string::npos);
      EXPECT_EQ(seen[neck + 2].find('p'), std::string::npos);
    }
  }
}

TEST(Chart, WhatIsLeftOutAndWhatIsDrawnMakeTheWholePiece) {
  const KnitGarment k = pullover(150);
  bool cut = false;
  for (const KnitPiece& piece : k.pieces) {
    const Chart chart = pieceChart(piece, k.lattice.size, builtinPhrases());
    for (const ChartAxis* axis : {&chart.columns, &chart.rows}) {
      int items = 0;
      for (const Span& s : axis->drawn())
        items += s.size();
      for (const Span& s : axis->cuts())
        items += s.size(), cut = true;
      EXPECT_EQ(items, axis->items());
    }
    for (const Span& s : chart.columns.cuts())
      EXPECT_TRUE(std::any_of(
          chart.picture.groups.front().labels.begin(), chart.picture.groups.front().labels.end(),
          [&](const Label& l) { return l.text == std::to_string(s.size()) + " stitches alike"; }));
    // A row number that is shown is true: it stands at its own row.
    for (const Label& l : chart.picture.groups.front().labels)
      if (const auto row = wholeNumber(l.text); row && l.at.y() >= 0) {
        EXPECT_EQ(chart.rows.itemAt(0.5 * (labelBox(l).low.y() + labelBox(l).high.y())), *row - 1);
      }
  }
  EXPECT_TRUE(cut);
}

TEST(Chart, SmallPiecesAreDrawnWhole) {
  Design baby;
  baby.choose(Choice::Figure, Figure::Baby);
  baby.set(Field::Bust, 46).set(Field::SwatchStitches, 20).set(Field::SwatchRows, 27);
  const KnitGarment k = knitGarment(draftGarment(baby));
  const Chart chart = pieceChart(k.pieces.front(), k.lattice.size, builtinPhrases());
  EXPECT_TRUE(chart.columns.cuts().empty());
  EXPECT_TRUE(chart.rows.cuts().empty());
}

TEST(Chart, NamesTheStitchUnderThePointer) {
  const KnitGarment k = pullover();
  for (const KnitPiece& piece : k.pieces) {
    const Chart chart = pieceChart(piece, k.lattice.size, builtinPhrases(), fold(ChartFold::Never));
    for (const ChartLine& line : chart.grid.lines) {
      for (int c = line.cells.from; c < line.cells.to; ++c) {
        const auto place =
            chartPlaceAt(chart, Vec2(chart.columns.middle(c), chart.rows.middle(line.row - 1)));
        ASSERT_TRUE(place.has_value());
        EXPECT_EQ(place->section, line.section);
        EXPECT_EQ(place->row, line.row);
        EXPECT_EQ(place->lastRow, line.row);
        EXPECT_EQ(place->stitches, line.told->stitches());
        EXPECT_EQ(place->stitch, line.row % 2 == 1 ? line.cells.to - c : c - line.cells.from + 1);
      }
    }
    EXPECT_FALSE(chartPlaceAt(chart, Vec2(0.1, -0.1)).has_value());
    EXPECT_FALSE(chartPlaceAt(chart, Vec2(0.1, chart.rows.end() + 0.1)).has_value());
    EXPECT_FALSE(chartPlaceAt(chart, Vec2(chart.columns.end() + 100, 0.1)).has_value());
  }
}

TEST(Chart, NamesTheRowsOfACut) {
  const KnitGarment k = pullover();
  const Chart chart = pieceChart(k.pieces.front(), k.lattice.size, builtinPhrases());
  ASSERT_FALSE(chart.rows.cuts().empty());
  const Span cut = chart.rows.cuts().front();
  const auto place =
      chartPlaceAt(chart, Vec2(chart.columns.middle(2), chart.rows.middle(cut.from + 1)));
  ASSERT_TRUE(place.has_value());
  EXPECT_EQ(place->row, cut.from + 1);
  EXPECT_EQ(place->lastRow, cut.to);
  EXPECT_EQ(place->stitch, 0);
}

TEST(Chart, SaysARowInWords) {
  const Act right{Rows(45), ActKind::Decrease, EdgeSide::Right, Stitches(1), Shapes::Side};
  Act left = right;
  left.side = EdgeSide::Left;
  const Phrases& p = builtinPhrases();
  ChartPlace place{SectionId::Undivided, 45, 45, Stitches(91), 0, {right, left}};
  EXPECT_EQ(placeText(place, p), "row 45, RS, 91 stitches: decrease 1 at each end");
  place.acts = {right};
  EXPECT_EQ(placeText(place, p), "row 45, RS, 91 stitches: decrease 1 at the right edge");
  place = {SectionId::Left,
           46,
           46,
           Stitches(1),
           0,
           {{Rows(46), ActKind::BindOff, EdgeSide::Left, Stitches(6), Shapes::Shoulder}}};
  EXPECT_EQ(placeText(place, p), "Left side: row 46, WS, 1 stitch: bind off 6 at the beginning");
  place = {SectionId::Undivided, 33, 78, Stitches(101), 0, {}};
  EXPECT_EQ(placeText(place, p), "rows 33-78, 101 stitches: work even");
}

// A right-side row goes from right to left: its ssk, which leans left, stands at the right edge,
// its k2tog at the left (common practice).
TEST(Chart, DecreasesLeanTowardTheMiddleOfThePiece) {
  const KnitGarment k = pullover();
  const Chart chart = pieceChart(*k.piece(PieceId::Back), k.lattice.size, builtinPhrases());
  Box fabric;
  for (const Stroke& s : chart.picture.groups.front().strokes)
    if (s.role == Role::Fabric)
      for (const Cubic& c : s.path.segments())
        fabric.add(c.end());
  const double middle = 0.5 * (fabric.low.x() + fabric.high.x());
  int right = 0, left = 0;
  for (const Stroke& s : chart.picture.groups.front().strokes) {
    if (s.role != Role::Symbol || s.path.segments().size() != 1) continue;
    const Vec2 along = s.path.end() - s.path.start();
    if (along.x() * along.y() == 0) continue; // a purl stitch, or half of another sign
    const bool leansRight = along.x() * along.y() > 0;
    EXPECT_EQ(leansRight, s.path.start().x() < middle);
    ++(leansRight ? right : left);
  }
  EXPECT_GT(right, 2);
  EXPECT_EQ(right, left);
}

// Every tenth stitch is marked from where the first right-side row begins.
TEST(Chart, TensAreCountedFromTheRightEdgeOfTheCastOn) {
  const KnitGarment k = pullover();
  const ChartOptions whole = fold(ChartFold::Never);
  const Chart chart = pieceChart(*k.piece(PieceId::Back), k.lattice.size, builtinPhrases(), whole);
  ASSERT_NE(chart.grid.castOn.size() % 10, 0);
  int lines = 0;
  for (const Stroke& s : chart.picture.groups.front().strokes) {
    if (s.role != Role::TenCells || s.path.start().x() != s.path.end().x()) continue;
    const double column = s.path.start().x() / whole.cellWidth;
    EXPECT_NEAR(std::remainder(chart.grid.castOn.to - column, 10), 0, 1e-6) << column;
    ++lines;
  }
  EXPECT_GT(lines, 3);
}

TEST(Chart, LegendNamesWhatOccursAndNothingElse) {
  const KnitGarment k = pullover();
  const KnitPiece& sleeve = *k.piece(PieceId::Sleeve);
  std::set<ChartSymbol> used;
  const Chart chart = pieceChart(sleeve, k.lattice.size, builtinPhrases());
  for (const ChartMark& m : chart.grid.marks)
    used.insert(m.symbol);
  const Picture& picture = chart.picture;
  ASSERT_EQ(picture.groups.back().id, "legend");
  EXPECT_EQ(picture.groups.back().labels.size(),
            used.size() + 2); // and the plain cell, and no stitch
}

KnitGarment withEverything() {
  Design design;
  design.choose(Choice::Garment, Garment::Jacket).choose(Choice::Hem, HemMade::Faced);
  design.choose(Choice::ShoulderWork, ShoulderWork::ShortRows)
      .choose(Choice::BackNeck, BackNeck::Straight);
  design.choose(Choice::BustShaping, BustShaping::ShortRows)
      .choose(Choice::SleeveLine, SleeveLine::Full);
  design.set(Field::Bust, 104).set(Field::BustDepth, 4).set(Field::BustReach, 9);
  return knitGarment(draftGarment(design));
}

TEST(Chart, LegendNamesTurnsAndButtonholesWhereTheyOccur) {
  const KnitGarment k = withEverything();
  const Phrases& p = builtinPhrases();
  const auto names = [&](PieceId id, const char* key) {
    const Picture picture = chartPicture(*k.piece(id), k.lattice.size, p);
    const auto& labels = picture.groups.back().labels;
    return std::any_of(labels.begin(), labels.end(),
                       [&](const Label& l) { return l.text == p.say(key); });
  };
  EXPECT_TRUE(names(PieceId::RightFront, "chart.symbol.buttonhole"));
  EXPECT_FALSE(names(PieceId::LeftFront, "chart.symbol.buttonhole"));
  // The side is at the left of the right front, where right-side rows end.
  EXPECT_TRUE(names(PieceId::RightFront, "chart.symbol.turnLeft"));
  EXPECT_FALSE(names(PieceId::RightFront, "chart.symbol.turnRight"));
  EXPECT_TRUE(names(PieceId::LeftFront, "chart.symbol.turnRight"));
  EXPECT_TRUE(names(PieceId::Back, "chart.symbol.turnLeft"));
  EXPECT_FALSE(names(PieceId::Sleeve, "chart.symbol.turnLeft"));
}

TEST(Chart, ShowsTheFacingAndItsFold) {
  const KnitGarment k = withEverything();
  const KnitPiece& back = *k.piece(PieceId::Back);
  const int foldRow = back.foldRow.value();
  ASSERT_GT(foldRow, 0);
  for (const ChartFold how : {ChartFold::Never, ChartFold::Always}) {
    const Chart chart = pieceChart(back, k.lattice.size, builtinPhrases(), fold(how));
    const Group& group = chart.picture.groups.front();
    const auto says = [&](const std::string& text) {
      return std::any_of(group.labels.begin(), group.labels.end(),
                         [&](const Label& l) { return l.text == text; });
    };
    EXPECT_TRUE(says("facing, " + std::to_string(foldRow - 1) + " rows"));
    EXPECT_FALSE(says("rib, " + std::to_string(back.hemRows.value()) + " rows"));
    EXPECT_TRUE(says("fold"));
    // The line lies in the row of the fold, across all of its cells.
    const double y = chart.rows.middle(foldRow - 1);
    EXPECT_TRUE(std::any_of(group.strokes.begin(), group.strokes.end(), [&](const Stroke& s) {
      return s.role == Role::Measure && s.path.start().y() == y && s.path.end().y() == y &&
             s.path.start().x() < 0 && s.path.end().x() == chart.columns.end();
    }));
  }
}

// Twice the area that a closed line goes round.
double doubleArea(const Path& path) {
  double sum = 0;
  for (const Cubic& c : path.segments())
    sum += c.start().x() * c.end().y() - c.end().x() * c.start().y();
  return sum;
}

// Where an edge steps in and out again the outline goes round just the cells.
TEST(Chart, OutlineGoesRoundEveryCell) {
  const KnitGarment k = withEverything();
  for (const KnitPiece& piece : k.pieces) {
    const Chart chart = pieceChart(piece, k.lattice.size, builtinPhrases(), fold(ChartFold::Never));
    double cells = 0;
    for (const ChartLine& l : chart.grid.lines)
      cells += l.cells.size();
    const auto outline = test::strokesOf(chart.picture, Role::Outline);
    ASSERT_EQ(outline.size(), 1u);
    EXPECT_NEAR(doubleArea(outline.front()->path),
                2 * cells * chart.rows.at(1) * chart.columns.at(1), 1e-6);
  }
}

TEST(Chart, LightsTheRowsAskedFor) {
  const KnitGarment k = pullover();
  ChartOptions o = fold(ChartFold::Never);
  o.lit = Span{5, 9};
  const Chart chart = pieceChart(k.pieces.front(), k.lattice.size, builtinPhrases(), o);
  const auto lit = test::strokesOf(chart.picture, Role::Lit);
  ASSERT_EQ(lit.size(), 1u);
  Box box;
  box.add(lit.front()->path);
  EXPECT_NEAR(box.low.y(), chart.rows.at(4), 1e-12);
  EXPECT_NEAR(box.high.y(), chart.rows.at(8), 1e-12);
}

TEST(Chart, OfNothingIsEmptyButNamed) {
  KnitPiece nothing;
  const Chart chart = pieceChart(nothing, {0.5, 0.4}, builtinPhrases());
  EXPECT_TRUE(chart.picture.groups.front().strokes.empty());
  EXPECT_FALSE(chartPlaceAt(chart, Vec2(0, 0)).has_value());
}

TEST(Chart, LettersNeverLieOnOneAnother) {
  test::RandomDesigns designs(test::propertySeed(41));
  for (int i = 0; i < 120; ++i) {
    const Design design = i % 4 == 3 ? designs.wild() : designs.plausible();
    const KnitGarment k = knitGarment(draftGarment(design));
    ChartOptions o;
    o.textHeight = i % 3 == 0 ? 0 : designs.uniform(0.1, 1.5);
    for (const KnitPiece& piece : k.pieces) {
      const Picture picture = chartPicture(piece, k.lattice.size, builtinPhrases(), o);
      EXPECT_TRUE(test::finite(picture)) << i;
      EXPECT_THAT(test::overlappingLabels(picture), testing::IsEmpty())
          << "design " << i << ", " << pieceKey(piece.id) << ", letters " << o.textHeight;
      EXPECT_THAT(test::badWords(picture), testing::IsEmpty());
    }
  }
}

TEST(Chart, OfAGarmentHoldsEveryPieceOneBelowTheOther) {
  const KnitGarment k = pullover();
  const Picture picture = garmentCharts(k, builtinPhrases());
  ASSERT_EQ(picture.groups.size(), k.pieces.size() + 1);
  for (std::size_t i = 1; i < picture.groups.size(); ++i)
    EXPECT_LT(picture.groups[i].box().high.y(), picture.groups[i - 1].box().low.y());
}

} // namespace
} // namespace scye
