// Looking at the pieces: zoom, pan, fit, by mouse and by keyboard.
#include "window_fixture.h"

#include "knitting/lines_view.h"
#include "shell/actions.h"
#include "shell/work_area.h"

#include <QAction>
#include <QApplication>
#include <QFile>
#include <QLabel>
#include <QTabBar>
#include <QTest>
#include <QWheelEvent>

#include <cmath>

#include <algorithm>

namespace scye::test {
namespace {

class Table : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    table().setFocus();
  }
  [[nodiscard]] QRectF drawn() {
    const Box box = table().picture().box();
    return QRectF(table().view().map(box.low), table().view().map(box.high)).normalized();
  }
  [[nodiscard]] double lettersOnScreen() {
    return table().picture().textHeight * table().view().scale;
  }
};

TEST_F(Table, allPiecesAreInViewWhenADesignIsOpened) {
  EXPECT_TRUE(table().isFitted());
  EXPECT_TRUE(QRectF(table().rect()).contains(drawn()));
  EXPECT_EQ(table().picture().groups.size(), 4u) << "back, two fronts, sleeve";
}

// A large garment in a small window: smaller letters rather than pieces without figures.
TEST_F(Table, everyPieceHasItsFiguresInASmallWindow) {
  const QString copy = file("large.scye");
  ASSERT_TRUE(QFile::copy(QStringLiteral(SCYE_RESOURCES "/demos/telegraph.scye"), copy));
  window_->openFile(copy);
  settle();
  ASSERT_EQ(window_->size(), QSize(1280, 800));
  ASSERT_EQ(table().picture().groups.size(), 3u);
  for (const Group& piece : table().picture().groups)
    EXPECT_GE(std::ranges::count(piece.labels, Role::Measure, &Label::role), 4) << piece.title;
}

TEST_F(Table, theWheelZoomsAndThePlaceUnderThePointerStays) {
  const Group& sleeve = table().picture().groups.at(1);
  ASSERT_EQ(sleeve.id, "sleeve");
  const QPointF at = table().view().map(sleeve.origin);
  const double before = table().view().scale, letters = lettersOnScreen();
  QWheelEvent wheel(at, table().mapToGlobal(at), {}, {0, 240}, Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(&table(), &wheel);
  EXPECT_GT(table().view().scale, 1.3 * before);
  const QPointF after = table().view().map(table().picture().groups.at(1).origin);
  EXPECT_NEAR(after.x(), at.x(), 1);
  EXPECT_NEAR(after.y(), at.y(), 1);
  EXPECT_NEAR(lettersOnScreen(), letters, 1e-9) << "letters keep their size on the screen";
}

TEST_F(Table, theKeyboardZoomsPansAndFits) {
  const PictureView fitted = table().view();
  QTest::keyClick(&table(), Qt::Key_Plus);
  EXPECT_GT(table().view().scale, fitted.scale);
  EXPECT_FALSE(table().isFitted());
  const QPointF origin = table().view().origin;
  QTest::keyClick(&table(), Qt::Key_Right);
  EXPECT_LT(table().view().origin.x(), origin.x());
  QTest::keyClick(&table(), Qt::Key_F);
  EXPECT_TRUE(table().isFitted());
  EXPECT_NEAR(table().view().scale, fitted.scale, 1e-9);
  QTest::keyClick(window_.get(), Qt::Key_Minus, Qt::ControlModifier);
  EXPECT_LT(table().view().scale, fitted.scale);
}

TEST_F(Table, dragMovesTheDrawing) {
  const QPointF before = table().view().origin;
  const QPoint corner(5, 5); // no figure stands there
  QTest::mousePress(&table(), Qt::LeftButton, {}, corner);
  QTest::mouseMove(&table(), corner + QPoint(40, 25));
  QTest::mouseRelease(&table(), Qt::LeftButton, {}, corner + QPoint(40, 25));
  EXPECT_EQ(table().view().origin, before + QPointF(40, 25));
}

TEST_F(Table, itFollowsTheWindowUntilShePicksAView) {
  window_->resize(1600, 1000);
  QApplication::processEvents();
  EXPECT_TRUE(table().isFitted());
  EXPECT_TRUE(QRectF(table().rect()).contains(drawn()));
  QTest::keyClick(&table(), Qt::Key_Plus);
  const double scale = table().view().scale;
  window_->resize(1300, 900);
  QApplication::processEvents();
  EXPECT_DOUBLE_EQ(table().view().scale, scale);
}

TEST_F(Table, whatGrowsOutOfTheViewIsFittedAgain) {
  Design large = document().design();
  large.set(Field::HemToUnderarm, 95).set(Field::SleeveLength, 75);
  document().edit(QStringLiteral("long"), large);
  settle();
  EXPECT_TRUE(QRectF(table().rect()).contains(drawn()));
}

TEST_F(Table, piecesAreToldToWhoCannotSeeThem) {
  const QString text = table().accessibleDescription();
  for (const char* name : {"Back", "Sleeve", "Left front", "Right front"})
    EXPECT_TRUE(text.contains(QString::fromLatin1(name))) << name;
}

TEST_F(Table, pagesStandBesideTheDrawing) {
  WorkArea& area = window_->workbench().area();
  auto* page = new QLabel(QStringLiteral("Cast on"));
  const int number =
      area.addPage(Stage::Drafting, QStringLiteral("Another page"), [page] { return page; });
  area.showPage(area.madePage(number));
  QApplication::processEvents();
  EXPECT_TRUE(page->isVisible());
  EXPECT_LT(table().width(), area.width() / 2);
  EXPECT_TRUE(QRectF(table().rect()).contains(drawn()));
}

// With large letters in a small window a strip of the page would be left: it stands alone, and the
// drawing comes back when it is asked for, or when there is room.
TEST_F(Table, aPageThatWouldBeSqueezedStandsAlone) {
  WorkArea& area = window_->workbench().area();
  auto* page = new QLabel(QStringLiteral("Cast on"));
  const int number =
      area.addPage(Stage::Drafting, QStringLiteral("Another page"), [page] { return page; });
  window_->resize(1280, 800);
  area.showPage(area.madePage(number));
  settle();
  EXPECT_FALSE(area.isEnlarged());
  window_->settings().setTextSize(2);
  settle();
  EXPECT_TRUE(area.isEnlarged());
  EXPECT_GT(page->height(), 8 * page->fontMetrics().lineSpacing());
  window_->settings().setTextSize(1);
  settle();
  EXPECT_FALSE(area.isEnlarged());
  EXPECT_TRUE(page->isVisible() && table().isVisible());
  window_->settings().setTextSize(2);
  settle();
  area.setEnlarged(false);
  settle();
  EXPECT_FALSE(area.isEnlarged());
  EXPECT_TRUE(table().isVisible());
  area.setStage(Stage::Knitting);
  area.setStage(Stage::Drafting);
  settle();
  EXPECT_FALSE(area.isEnlarged()) << "both were asked for";
  window_->settings().setTextSize(1);
  settle();
  area.setEnlarged(true); // asked for, with room or without
  window_->settings().setTextSize(2);
  settle();
  window_->settings().setTextSize(1);
  settle();
  EXPECT_TRUE(area.isEnlarged());
}

class Handles : public Table {
protected:
  [[nodiscard]] QPoint at(PieceId piece, std::string_view key) {
    const auto place = table().handles().place(piece, key);
    EXPECT_TRUE(place.has_value()) << key;
    return table().view().map(place.value_or(Vec2::Zero())).toPoint();
  }
  void drag(const QPoint& from, const QPoint& by, Qt::KeyboardModifiers keys = {}) {
    QTest::mousePress(&table(), Qt::LeftButton, keys, from);
    for (const double share : {0.3, 0.7, 1.0}) {
      const QPointF to = QPointF(from) + share * QPointF(by);
      QMouseEvent move(QEvent::MouseMove, to, table().mapToGlobal(to), Qt::NoButton, Qt::LeftButton,
                       keys);
      QApplication::sendEvent(&table(), &move);
      settle();
    }
    QTest::mouseRelease(&table(), Qt::LeftButton, keys, from + by);
    settle();
  }
  [[nodiscard]] double finished(Field f) { return document().derived().draft.sizes.finished(f); }
};

TEST_F(Handles, everyHandleWritesTheValueItStandsFor) {
  const struct {
    PieceId piece;
    const char* key;
    QPoint by;
    Field field;
    bool finished;
    int sign; // of the change
  } cases[] = {
      {PieceId::Back, "shoulderTip", {12, 0}, Field::CrossShoulder, true, 1},
      {PieceId::Back, "underarm", {0, 15}, Field::ArmholeDepth, true, 1},
      {PieceId::Back, "underarm", {15, 0}, Field::Bust, true, 1},
      {PieceId::Back, "crossBack", {-10, 0}, Field::CrossBack, true, -1},
      {PieceId::LeftFront, "crossFront", {-10, 0}, Field::CrossFront, true, -1},
      {PieceId::Back, "waist", {-12, 0}, Field::Waist, true, -1},
      {PieceId::Back, "hem", {0, 20}, Field::HemToUnderarm, true, 1},
      {PieceId::Sleeve, "cuff", {10, 0}, Field::Wrist, true, 1},
      {PieceId::Back, "neckPoint", {8, 0}, Field::NeckWidth, false, 1},
      {PieceId::LeftFront, "neckDrop", {0, 12}, Field::FrontNeckDrop, false, 1},
      {PieceId::Sleeve, "crown", {8, 0}, Field::CrownWidth, false, 1},
      {PieceId::Sleeve, "upperFullness", {10, 0}, Field::UpperFullness, false, 1},
      {PieceId::Sleeve, "lowerFullness", {-10, 0}, Field::LowerFullness, false, 1},
  };
  for (const auto& c : cases) {
    const Design start = document().design();
    const auto value = [&] {
      return c.finished ? finished(c.field) : document().derived().draft.sizes[c.field];
    };
    const double before = value();
    const int steps = document().history().index();
    drag(at(c.piece, c.key), c.by);
    EXPECT_GT(c.sign * (value() - before), 0) << c.key;
    EXPECT_EQ(document().history().index(), steps + 1) << c.key << ": one step to undo";
    document().undo();
    settle();
    EXPECT_EQ(document().design(), start) << c.key;
  }
}

TEST_F(Handles, beyondDraftingTheDrawingIsOnlyLookedAt) {
  ASSERT_TRUE(table().handles().place(PieceId::Back, "underarm"));
  window_->workbench().setStage(Stage::Knitting);
  settle();
  EXPECT_FALSE(table().handles().place(PieceId::Back, "underarm"));
  window_->workbench().setStage(Stage::Drafting);
  settle();
  EXPECT_TRUE(table().handles().place(PieceId::Back, "underarm"));
}

TEST_F(Handles, theCapsHeightIsTakenOnlyWhenItIsHers) {
  const QPoint crown = at(PieceId::Sleeve, "crown");
  const Design start = document().design();
  drag(crown, {0, -15});
  EXPECT_FALSE(document().design().has(Field::CapHeight)) << "it is worked out";
  document().edit(QStringLiteral("hers"),
                  Design(start).choose(Choice::WorkedOut, WorkedOut::CapEase));
  settle();
  const double before = document().derived().draft.sizes[Field::CapHeight];
  drag(at(PieceId::Sleeve, "crown"), {0, -15});
  EXPECT_GT(document().derived().draft.sizes[Field::CapHeight], before);
}

TEST_F(Handles, withShiftTheyKeepToWholeRows) {
  drag(at(PieceId::Back, "underarm"), {0, 17}, Qt::ShiftModifier);
  const double rows =
      finished(Field::ArmholeDepth) / document().derived().draft.sizes.stitch.height;
  EXPECT_NEAR(rows, std::round(rows), 1e-6);
}

TEST_F(Handles, theyAreWorkedFromTheKeyboardAndTold) {
  QTest::keyClick(&table(), Qt::Key_H);
  const QString first = table().accessibleDescription();
  EXPECT_TRUE(first.startsWith(QStringLiteral("Hem"))) << first.toStdString();
  const double before = finished(Field::HemToUnderarm);
  QTest::keyClick(&table(), Qt::Key_Down);
  QTest::keyClick(&table(), Qt::Key_Down);
  settle();
  // Half centimetres, on their grid.
  EXPECT_NEAR(finished(Field::HemToUnderarm), std::round(2 * before) / 2 + 1, 1e-6);
  EXPECT_EQ(document().history().count(), 1);
  QTest::keyClick(&table(), Qt::Key_H);
  EXPECT_NE(table().accessibleDescription(), first);
  QTest::keyClick(&table(), Qt::Key_Escape);
  const QPointF origin = table().view().origin;
  QTest::keyClick(&table(), Qt::Key_Down);
  EXPECT_NE(table().view().origin, origin) << "the arrows move the drawing again";
}

TEST_F(Handles, aClickGoesToTheBoxAndToTheRow) {
  QTest::mouseClick(&table(), Qt::LeftButton, {}, at(PieceId::Back, "underarm"));
  settle();
  const QWidget* focus = QApplication::focusWidget();
  ASSERT_NE(focus, nullptr);
  EXPECT_EQ(focus->accessibleName(), QStringLiteral("Bust, finished"));
  window_->actions().directions->trigger();
  settle();
  const auto& lines = window_->workbench().pages().directions->lines();
  ASSERT_NE(lines.current(), nullptr);
  const KnitPiece& back = *document().derived().knit.piece(PieceId::Back);
  EXPECT_LE(lines.current()->first, back.underarmRow.value() + 1);
  EXPECT_GE(lines.current()->last, back.underarmRow.value() - 2);
}

TEST_F(Handles, theStateBeforeLiesUnderTheDrawingWhenAskedFor) {
  const auto ghosts = [this] {
    int count = 0;
    for (const Group& g : table().picture().groups)
      for (const Stroke& s : g.strokes)
        count += s.role == Role::Ghost;
    return count;
  };
  drag(at(PieceId::Back, "underarm"), {15, 0});
  EXPECT_EQ(ghosts(), 0);
  window_->actions().before->setChecked(true);
  settle();
  EXPECT_EQ(ghosts(), 4) << "a piece each";
  window_->actions().undo->trigger();
  settle();
  EXPECT_EQ(ghosts(), 0) << "there is no change any more";
}

} // namespace
} // namespace scye::test
