// Changing a value by its slider: what is seen during a drag, and what the history holds
// afterwards.
#include "window_fixture.h"

#include "draft/complete.h"
#include "panels/row_slider.h"
#include "values/field_box.h"
#include "values/value_slider.h"

#include <QAction>
#include <QSignalSpy>
#include <QTest>

namespace scye::test {
namespace {

class Slider : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    window_->workbench().panel().focusField(Field::EaseBust, false);
    settle();
    slider_ = named<ValueSlider>(QStringLiteral("Bust ease, slider"));
    ASSERT_TRUE(slider_);
  }
  [[nodiscard]] QPoint at(double share) const {
    return {int(share * slider_->width()), slider_->height() / 2};
  }
  // Width of the back as it is drawn now, in the drawing's own centimetres.
  [[nodiscard]] double drawnBack() {
    for (const Group& g : table().picture().groups)
      if (g.id == "back")
        for (const Stroke& s : g.strokes)
          if (s.role == Role::Outline) {
            Box box;
            box.add(s.path);
            return box.size().x();
          }
    return 0;
  }
  [[nodiscard]] bool drawn(Role role) {
    for (const Group& g : table().picture().groups)
      for (const Stroke& s : g.strokes)
        if (s.role == role) return true;
    return false;
  }

  ValueSlider* slider_ = nullptr;
};

TEST_F(Slider, movesThePiecesWhileItIsDraggedAndLeavesOneStep) {
  const Design before = document().design();
  const double width = drawnBack();
  QTest::mousePress(slider_, Qt::LeftButton, {}, at(0.5));
  settle();
  QSignalSpy redrawn(&table(), &DrawingTable::redrawn);
  double last = drawnBack();
  for (const double share : {0.6, 0.7, 0.8}) {
    redrawn.clear();
    QTest::mouseMove(slider_, at(share));
    ASSERT_TRUE(redrawn.count() > 0 || redrawn.wait());
    EXPECT_GT(drawnBack(), last + 0.5) << "the drawing follows during the drag";
    last = drawnBack();
    EXPECT_TRUE(drawn(Role::Lit)) << "what the slider changes is lit";
    EXPECT_TRUE(drawn(Role::Ghost)) << "the state before stays as a pale outline";
    EXPECT_EQ(document().history().count(), 0) << "nothing is history before she lets go";
  }
  QTest::mouseRelease(slider_, Qt::LeftButton, {}, at(0.8));
  settle();
  EXPECT_FALSE(drawn(Role::Ghost));
  EXPECT_EQ(document().history().count(), 1);
  EXPECT_GT(complete(document().design())[Field::EaseBust], complete(before)[Field::EaseBust] + 3);

  window_->actions().undo->trigger();
  settle();
  EXPECT_EQ(document().design(), before);
  EXPECT_NEAR(drawnBack(), width, 1e-9);
  EXPECT_FALSE(document().history().canUndo());
}

TEST_F(Slider, escapeGivesTheDragUpAndLeavesNothing) {
  const Design before = document().design();
  QTest::mousePress(slider_, Qt::LeftButton, {}, at(0.5));
  QTest::mouseMove(slider_, at(0.9));
  settle();
  EXPECT_NE(document().design(), before);
  QTest::keyClick(slider_, Qt::Key_Escape);
  EXPECT_EQ(document().design(), before);
  QTest::mouseMove(slider_, at(0.2)); // the button is still down
  QTest::mouseRelease(slider_, Qt::LeftButton, {}, at(0.2));
  settle();
  EXPECT_EQ(document().design(), before);
  EXPECT_EQ(document().history().count(), 0);
}

TEST_F(Slider, draggedBackToWhereItWasLeavesNoStep) {
  const Design before = document().design();
  QTest::mousePress(slider_, Qt::LeftButton, {}, at(0.5));
  const Design pressed = document().design();
  QTest::mouseMove(slider_, at(0.8));
  QTest::mouseMove(slider_, at(0.5));
  QTest::mouseRelease(slider_, Qt::LeftButton, {}, at(0.5));
  settle();
  EXPECT_EQ(document().design(), pressed);
  EXPECT_EQ(document().history().count(), pressed == before ? 0 : 1);
}

TEST_F(Slider, arrowKeysInARowAreOneStep) {
  const Design before = document().design();
  slider_->setFocus();
  for (int i = 0; i < 5; ++i)
    QTest::keyClick(slider_, Qt::Key_Right);
  settle();
  EXPECT_NEAR(complete(document().design())[Field::EaseBust],
              complete(before)[Field::EaseBust] + 0.5, 1e-9);
  EXPECT_EQ(document().history().count(), 1);
  for (int i = 0; i < 5; ++i)
    QTest::keyClick(slider_, Qt::Key_Left);
  settle();
  EXPECT_EQ(document().history().count(), 0) << "a step that changes nothing vanishes";
}

TEST_F(Slider, manyMovesAreDrawnAtMostOnceAFrame) {
  QTest::mousePress(slider_, Qt::LeftButton, {}, at(0.5));
  QSignalSpy redrawn(&table(), &DrawingTable::redrawn);
  for (int i = 0; i < 200; ++i)
    QTest::mouseMove(slider_, at(0.3 + 0.002 * i));
  QTest::mouseRelease(slider_, Qt::LeftButton, {}, at(0.7));
  settle();
  EXPECT_LT(redrawn.count(), 100);
  const Piece* back = document().derived().draft.piece(PieceId::Back);
  EXPECT_NEAR(drawnBack(), back->box().size().x(), 1e-9) << "never a stale picture";
}

} // namespace
} // namespace scye::test
