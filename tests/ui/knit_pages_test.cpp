// What is knitted from, beside the drawing: it follows the design during a drag, and a line that is
// pointed at or gone to lights its rows.
#include "window_fixture.h"

#include "knitting/chart_view.h"
#include "knitting/figure_table.h"
#include "knitting/lines_view.h"
#include "knitting/piece_list.h"
#include "shell/knit_pages.h"
#include "shell/work_area.h"
#include "values/value_text.h"

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QImage>
#include <QLabel>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTabBar>
#include <QTest>
#include <QWheelEvent>

namespace scye::test {
namespace {

class Pages : public WindowFixture {
protected:
  void SetUp() override {
    window_->resize(1600, 1000);
    openDemo();
    window_->actions().directions->trigger();
    settle();
  }
  [[nodiscard]] const KnitPages& pages() { return window_->workbench().pages(); }
  [[nodiscard]] LinesView& lines() { return pages().directions->lines(); }
  [[nodiscard]] ChartView& chart() { return pages().chart->view(); }
  [[nodiscard]] QString textOf(int row) { return lines().model()->index(row, 0).data().toString(); }
  [[nodiscard]] QStringList texts() {
    QStringList all;
    for (int i = 0; i < lines().model()->rowCount(); ++i)
      all.append(textOf(i));
    return all;
  }
  [[nodiscard]] static QStringList toldFor(const Derived& derived, PieceId piece) {
    QStringList all;
    for (const DirectionLine& line : pieceLines(derived.directions, piece, {builtinPhrases()}))
      all.append(QString::fromStdString(line.text));
    return all;
  }
  // The first line of the kind that shapes rows of its own.
  [[nodiscard]] int firstStepWithRows() {
    const auto& all = lines().lines();
    for (int i = 0; i < int(all.size()); ++i)
      if (all[std::size_t(i)].kind == LineKind::Step && all[std::size_t(i)].first > 1) return i;
    ADD_FAILURE() << "no such step";
    return -1;
  }
  void clickLine(int row) {
    const QModelIndex index = lines().model()->index(row, 0);
    lines().scrollTo(index);
    QTest::mouseClick(lines().viewport(), Qt::LeftButton, {}, lines().visualRect(index).center());
  }
  [[nodiscard]] QImage picture(QWidget& widget) { return widget.grab().toImage(); }
  [[nodiscard]] int pixelsThatDiffer(const QImage& a, const QImage& b, const QRect& in) {
    int count = 0;
    for (int y = in.top(); y <= in.bottom(); ++y)
      for (int x = in.left(); x <= in.right(); ++x)
        count += a.pixel(x, y) != b.pixel(x, y);
    return count;
  }
  void dragBustEase(const std::vector<double>& shares, const std::function<void()>& atEach) {
    // As from a handle of the drawing, which stays beside the page.
    document().beginGesture(QStringLiteral("Bust ease"));
    QSignalSpy redrawn(&table(), &DrawingTable::redrawn);
    for (const double share : shares) {
      redrawn.clear();
      document().edit({}, Design(document().design()).set(Field::EaseBust, 24 * share - 4));
      ASSERT_TRUE(redrawn.count() > 0 || redrawn.wait());
      atEach();
    }
    document().endGesture();
    settle();
  }
};

TEST_F(Pages, theFirstPieceIsToldWhenADesignIsOpened) {
  EXPECT_EQ(texts(), toldFor(document().derived(), PieceId::Back));
  for (const DirectionLine& line : lines().lines()) {
    // The cast-on tells its stitches as what is done.
    const std::string count =
        (line.last > 0 ? "(" : "Cast on ") + std::to_string(line.stitches.value()) + " st";
    EXPECT_TRUE(line.kind != LineKind::Step || line.text.find(count) != std::string::npos)
        << line.text;
  }
}

TEST_F(Pages, directionsFollowASliderWhileItIsDragged) {
  QStringList last = texts();
  dragBustEase({0.65, 0.8, 0.95}, [&] {
    EXPECT_EQ(texts(), toldFor(document().derived(), PieceId::Back));
    EXPECT_NE(texts(), last);
    last = texts();
    EXPECT_EQ(document().history().count(), 0) << "she still drags";
  });
  EXPECT_EQ(texts(), toldFor(document().derived(), PieceId::Back));
}

TEST_F(Pages, thePlaceOnThePageStaysWhileSheDrags) {
  lines().verticalScrollBar()->setValue(lines().verticalScrollBar()->maximum() / 2);
  const auto top = [this] { return lines().indexAt(QPoint(lines().viewport()->width() / 2, 0)); };
  const DirectionLine before = lines().lines().at(std::size_t(top().row()));
  dragBustEase({0.6, 0.75}, [&] {
    const DirectionLine& now = lines().lines().at(std::size_t(top().row()));
    EXPECT_EQ(now.kind, before.kind);
    EXPECT_EQ(now.section, before.section);
    EXPECT_LE(now.first, before.first + 12) << before.text << " / " << now.text;
    EXPECT_GE(now.last, before.first - 12) << before.text << " / " << now.text;
  });
}

TEST_F(Pages, aPageThatIsNotSeenIsNotMade) {
  window_->actions().sizes->trigger();
  const QStringList before = texts();
  dragBustEase({0.9}, [&] { EXPECT_EQ(texts(), before); });
  window_->actions().directions->trigger();
  EXPECT_EQ(texts(), toldFor(document().derived(), PieceId::Back))
      << "it catches up when it is shown";
}

TEST_F(Pages, aLineThatIsClickedLightsItsRowsOnTheDrawing) {
  const QImage dark = picture(table());
  const int step = firstStepWithRows();
  clickLine(step);
  QEvent leave(QEvent::Leave); // the pointer leaves the page
  QApplication::sendEvent(lines().viewport(), &leave);
  const Group* back = nullptr;
  for (const Group& g : table().picture().groups)
    if (g.id == "back") back = &g;
  ASSERT_TRUE(back);
  const DirectionLine& line = lines().lines().at(std::size_t(step));
  const double height = document().derived().knit.lattice.size.height;
  const QPointF low = table().view().map(back->origin + Vec2(0, (line.first - 1) * height));
  const QPointF high = table().view().map(back->origin + Vec2(0, line.last * height));
  const QImage lit = picture(table());
  const QRect whole = table().rect();
  const QRect band(0, int(high.y()) - 8, whole.width(), int(low.y() - high.y()) + 16);
  EXPECT_GT(pixelsThatDiffer(dark, lit, band), 100);
  EXPECT_EQ(pixelsThatDiffer(dark, lit, whole), pixelsThatDiffer(dark, lit, band))
      << "nothing but the rows is lit";
  lines().setFocus();
  QTest::keyClick(&lines(), Qt::Key_Escape);
  EXPECT_EQ(pixelsThatDiffer(dark, picture(table()), whole), 0);
}

TEST_F(Pages, theKeyboardGoesFromLineToLineAndLightsThem) {
  clickLine(firstStepWithRows());
  const QImage one = picture(table());
  const int row = lines().currentIndex().row();
  QTest::keyClick(&lines(), Qt::Key_Down);
  EXPECT_EQ(lines().currentIndex().row(), row + 1);
  EXPECT_GT(pixelsThatDiffer(one, picture(table()), table().rect()), 0);
}

TEST_F(Pages, aLineUnderThePointerLightsItsRowsWhileItIsThere) {
  const QImage dark = picture(table());
  const QModelIndex index = lines().model()->index(firstStepWithRows(), 0);
  lines().scrollTo(index);
  pointAt(lines().viewport(), lines().visualRect(index).center());
  EXPECT_GT(pixelsThatDiffer(dark, picture(table()), table().rect()), 50);
  QEvent leave(QEvent::Leave);
  QApplication::sendEvent(lines().viewport(), &leave);
  EXPECT_EQ(pixelsThatDiffer(dark, picture(table()), table().rect()), 0);
}

TEST_F(Pages, thePieceIsChosenByKeyboardAndSharedWithTheChart) {
  auto* list = named<PieceList>(QStringLiteral("Piece"), pages().directions);
  list->setFocus();
  QTest::keyClick(list, Qt::Key_Down);
  ASSERT_TRUE(list->place());
  const PieceId piece = list->place()->piece;
  EXPECT_NE(piece, PieceId::Back);
  EXPECT_EQ(texts(), toldFor(document().derived(), piece));
  window_->actions().chart->trigger();
  EXPECT_EQ(chart().chart().picture.groups.at(0).piece, piece);
}

TEST_F(Pages, theListTellsWhatStandsBeforeAndAfterThePieces) {
  auto* list = named<PieceList>(QStringLiteral("Piece"), pages().directions);
  list->setFocus();
  QTest::keyClick(list, Qt::Key_Home);
  EXPECT_TRUE(texts().join(u'\n').contains(QStringLiteral("Gauge")));
  QTest::keyClick(list, Qt::Key_End);
  EXPECT_TRUE(texts().join(u'\n').contains(QStringLiteral("ends")));
  for (const DirectionLine& line : lines().lines())
    EXPECT_FALSE(line.piece);
}

TEST_F(Pages, termsAreChosenAndKept) {
  ASSERT_TRUE(texts().join(u'\n').contains(QStringLiteral("bind off")));
  auto* terms = named<QComboBox>(QStringLiteral("Terms"));
  terms->setFocus();
  QTest::keyClick(terms, Qt::Key_Down);
  EXPECT_FALSE(texts().join(u'\n').contains(QStringLiteral("bind off")));
  EXPECT_TRUE(texts().join(u'\n').contains(QStringLiteral("cast off")));
  EXPECT_TRUE(QTest::qWaitFor([this] {
    return Settings(paths().settings, builtinPhrases()).terms() == QStringLiteral("uk");
  }));
  window_->settings().setUnit(LengthUnit::Inch);
  EXPECT_TRUE(texts().join(u'\n').contains(QStringLiteral(" in")));
}

TEST_F(Pages, wholeStitchesAreDrawnOverTheCurves) {
  const auto knitted = [this] {
    std::size_t points = 0;
    for (const Group& g : table().picture().groups)
      for (const Stroke& s : g.strokes)
        if (s.role == Role::Knitted) points += s.path.segments().size();
    return points;
  };
  EXPECT_EQ(knitted(), 0u);
  const QImage before = picture(table());
  QTest::keyClick(window_.get(), Qt::Key_K, Qt::ControlModifier);
  EXPECT_GT(knitted(), 100u) << "a step for each change of an edge";
  EXPECT_GT(pixelsThatDiffer(before, picture(table()), table().rect()), 100);
  EXPECT_TRUE(window_->actions().wholeStitches->isChecked());
  EXPECT_TRUE(QTest::qWaitFor(
      [this] { return Settings(paths().settings, builtinPhrases()).stitchesShown(); }));
  window_->actions().wholeStitches->trigger();
  EXPECT_EQ(knitted(), 0u);
}

TEST_F(Pages, theFitIsToldDraftedAndKnitted) {
  const Derived& derived = document().derived();
  const auto shown = [](double cm) {
    return valueText(builtinPhrases(), FieldKind::Length, cm,
                     {LengthUnit::Centimetre, false, false, true});
  };
  EXPECT_EQ(beginning<QLabel>(QStringLiteral("Armhole, drafted: "))->text(),
            shown(derived.draft.cap.armhole()));
  const QString knitted = beginning<QLabel>(QStringLiteral("Armhole, knitted: "))->text();
  EXPECT_TRUE(knitted == shown(derived.knit.left.armhole.mean()) ||
              knitted == shown(derived.knit.right.armhole.mean()));
}

TEST_F(Pages, thePageCanTakeTheWholeMiddle) {
  QTest::keyClick(window_.get(), Qt::Key_F9);
  EXPECT_FALSE(table().isVisible());
  EXPECT_TRUE(lines().isVisible());
  QTest::keyClick(window_.get(), Qt::Key_F9);
  EXPECT_TRUE(table().isVisible());
}

TEST_F(Pages, eachStageOfTheWorkBringsItsPagesForward) {
  const WorkArea& area = window_->workbench().area();
  QTest::keyClick(window_.get(), Qt::Key_F2);
  EXPECT_EQ(area.page(), nullptr);
  EXPECT_TRUE(window_->workbench().panel().isVisible());
  settle();
  const int alone = table().width();
  QTest::keyClick(window_.get(), Qt::Key_F3);
  EXPECT_TRUE(pages().directions->isVisible());
  settle();
  EXPECT_FALSE(window_->workbench().panel().isVisible());
  EXPECT_TRUE(table().isVisible()) << "to show where she is";
  EXPECT_LT(table().width(), alone);
  auto* tabs = area.findChild<QTabBar*>();
  QTest::mouseClick(tabs, Qt::LeftButton, {}, tabs->tabRect(1).center());
  EXPECT_TRUE(pages().chart->isVisible());
  QTest::keyClick(window_.get(), Qt::Key_F4);
  EXPECT_TRUE(pages().sizes->isVisible());
  EXPECT_GT(pages().sizes->height(), 100);
  QTest::keyClick(window_.get(), Qt::Key_F3);
  EXPECT_TRUE(pages().chart->isVisible()) << "the page that was there";
}

TEST_F(Pages, sizesAreToldWantedKnittedAndTheDifference) {
  window_->actions().sizes->trigger();
  auto* table = named<FigureTable>(QStringLiteral("Finished sizes"));
  const auto& rounded = document().derived().knit.rounded;
  ASSERT_EQ(table->rows().size(), qsizetype(rounded.size()));
  const auto number = [](QString text) {
    return text.remove(QChar(0x202f)).remove(QStringLiteral("cm")).toDouble();
  };
  for (std::size_t i = 0; i < rounded.size(); ++i) {
    const QStringList& figures = table->rows().at(qsizetype(i)).figures;
    EXPECT_NEAR(number(figures.at(0)), rounded[i].wanted, 0.051);
    EXPECT_NEAR(number(figures.at(1)), rounded[i].knitted, 0.051);
    EXPECT_NEAR(number(figures.at(2)), rounded[i].knitted - rounded[i].wanted, 0.051);
    EXPECT_EQ(table->model()->index(int(i), 2).data(Qt::TextAlignmentRole).toInt() & Qt::AlignRight,
              Qt::AlignRight);
  }
  EXPECT_FALSE(named<FigureTable>(QStringLiteral("Armhole and cap"))->rows().isEmpty());
  EXPECT_GE(named<FigureTable>(QStringLiteral("Pin marks, left armhole"))->rows().size(), 4);
}

class ChartTest : public Pages {
protected:
  void SetUp() override {
    Pages::SetUp();
    window_->actions().chart->trigger();
    QApplication::processEvents();
  }
  [[nodiscard]] QString named_() {
    return named<QLabel>(QStringLiteral("Row"), pages().chart)->text();
  }
  [[nodiscard]] QPoint middleOf(int row) {
    const Chart& c = chart().chart();
    return chart().view().map({0.5 * c.columns.end(), c.rows.middle(row - 1)}).toPoint();
  }
};

TEST_F(ChartTest, theRowUnderThePointerIsNamed) {
  QTest::keyClick(&chart(), Qt::Key_Home);
  const KnitPiece* back = document().derived().knit.piece(PieceId::Back);
  int named = 0;
  for (int row = 1; row < back->underarmRow.value(); ++row) {
    const QPoint at = middleOf(row);
    if (!chart().rect().contains(at) || chart().chart().rows.cutAt(row - 1)) continue;
    ++named;
    pointAt(&chart(), at);
    const QString text = named_();
    EXPECT_TRUE(text.startsWith(QStringLiteral("Row %1,").arg(row))) << text.toStdString();
    EXPECT_TRUE(text.contains(row % 2 ? QStringLiteral("RS") : QStringLiteral("WS")));
    const int stitches = back->rows.at(std::size_t(row)).stitches().value();
    EXPECT_TRUE(text.contains(QStringLiteral("%1 stitches").arg(stitches))) << text.toStdString();
  }
  EXPECT_GE(named, 4);
}

TEST_F(ChartTest, theKeyboardGoesFromRowToRowAndLightsTheDrawing) {
  chart().setFocus();
  const QImage dark = picture(table());
  QTest::keyClick(&chart(), Qt::Key_Up);
  EXPECT_TRUE(named_().startsWith(QStringLiteral("Row 1,"))) << named_().toStdString();
  QTest::keyClick(&chart(), Qt::Key_Up);
  EXPECT_TRUE(named_().startsWith(QStringLiteral("Row 2,"))) << named_().toStdString();
  EXPECT_GT(pixelsThatDiffer(dark, picture(table()), table().rect()), 20);
  QTest::keyClick(&chart(), Qt::Key_Down);
  EXPECT_TRUE(named_().startsWith(QStringLiteral("Row 1,"))) << named_().toStdString();
  QTest::keyClick(&chart(), Qt::Key_Escape);
  EXPECT_EQ(pixelsThatDiffer(dark, picture(table()), table().rect()), 0);
}

TEST_F(ChartTest, everyRowIsReachedByKeyboard) {
  chart().setFocus();
  QTest::keyClick(&chart(), Qt::Key_Up);
  int next = 1;
  while (next <= chart().chart().grid.rows) {
    ASSERT_TRUE(chart().place());
    ASSERT_EQ(chart().place()->row, next);
    next = chart().place()->lastRow + 1;
    QTest::keyClick(&chart(), Qt::Key_Up);
  }
  EXPECT_EQ(chart().place()->lastRow, chart().chart().grid.rows) << "and it stays at the top";
}

TEST_F(ChartTest, theWheelZoomsAboutThePointer) {
  const double before = chart().view().scale;
  const QPointF at(middleOf(3));
  const Vec2 under = chart().view().unmap(at);
  QWheelEvent wheel(at, chart().mapToGlobal(at), {}, {0, 240}, Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(&chart(), &wheel);
  EXPECT_GT(chart().view().scale, 1.3 * before);
  EXPECT_NEAR((chart().view().unmap(at) - under).norm(), 0, 1e-9);
  QTest::keyClick(&chart(), Qt::Key_F);
  const Box box = chart().chart().picture.box();
  EXPECT_TRUE(
      QRectF(chart().rect())
          .contains(QRectF(chart().view().map(box.low), chart().view().map(box.high)).normalized()))
      << "the whole chart";
}

TEST_F(ChartTest, aRoomThatGrowsIsFilledFromTheFirstRow) {
  QTest::keyClick(&chart(), Qt::Key_Home);
  for (int i = 0; i < 8; ++i)
    QTest::keyClick(&chart(), Qt::Key_Plus);
  QTest::keyClick(&chart(), Qt::Key_Up);
  const int before = chart().height();
  window_->resize(1600, 1200);
  settle();
  ASSERT_GT(chart().height(), before + 100);
  const Box box = chart().chart().picture.box();
  const double bottom = chart().view().map(box.low).y(), top = chart().view().map(box.high).y();
  ASSERT_GT(bottom - top, chart().height()) << "higher than the room";
  EXPECT_GT(bottom, 0.75 * chart().height()) << "nothing empty below but the legend";
  EXPECT_LT(top, 0.1 * chart().height());
}

TEST_F(ChartTest, theChosenLineOfTheDirectionsIsLitInTheChart) {
  const auto lit = [this] {
    for (const Stroke& s : chart().chart().picture.groups.at(0).strokes)
      if (s.role == Role::Lit) {
        Box box;
        box.add(s.path);
        return box;
      }
    return Box();
  };
  EXPECT_TRUE(lit().empty());
  window_->actions().directions->trigger();
  const int step = firstStepWithRows();
  clickLine(step);
  const DirectionLine line = lines().lines().at(std::size_t(step));
  window_->actions().chart->trigger();
  const ChartAxis& rows = chart().chart().rows;
  ASSERT_FALSE(lit().empty());
  EXPECT_NEAR(lit().low.y(), rows.at(line.first - 1), 1e-9);
  EXPECT_NEAR(lit().high.y(), rows.at(line.last), 1e-9);
}

TEST_F(ChartTest, itFollowsASliderWhileItIsDragged) {
  const int before = chart().chart().grid.columns;
  dragBustEase({0.9}, [&] {
    EXPECT_GT(chart().chart().grid.columns, before);
    EXPECT_EQ(chart().chart().grid.castOn.size(),
              document().derived().knit.piece(PieceId::Back)->castOn().value());
  });
}

} // namespace
} // namespace scye::test
