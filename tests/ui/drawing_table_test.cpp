// Looking at the pieces: zoom, pan, fit, by mouse and by keyboard.
#include "window_fixture.h"

#include "shell/work_area.h"

#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QTabBar>
#include <QTest>
#include <QWheelEvent>

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
  area.addPage(Stage::Drafting, QStringLiteral("Another page"), page);
  area.showPage(page);
  QApplication::processEvents();
  EXPECT_TRUE(page->isVisible());
  EXPECT_LT(table().width(), area.width() / 2);
  EXPECT_TRUE(QRectF(table().rect()).contains(drawn()));
}

} // namespace
} // namespace scye::test
