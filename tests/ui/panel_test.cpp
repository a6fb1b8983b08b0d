// Typing values: in either unit, refused where they cannot be, one step of history each.
#include "window_fixture.h"

#include "draft/complete.h"
#include "fit/answers.h"
#include "look/quiet_button.h"
#include "panels/ease_strip.h"
#include "panels/edit_panel.h"
#include "panels/fold.h"
#include "values/field_box.h"
#include "values/value_slider.h"

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QWheelEvent>

#include <map>

namespace scye::test {
namespace {

class Panel : public WindowFixture {
protected:
  void SetUp() override { openDemo(); }

  FieldBox* box(const char* name) { return named<FieldBox>(QString::fromLatin1(name)); }
  void type(FieldBox* box, const char* text) {
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QString::fromLatin1(text));
    QTest::keyClick(box, Qt::Key_Return);
    settle();
  }
  [[nodiscard]] bool told(const QString& words) {
    for (const QLabel* label : window_->findChildren<QLabel*>())
      if (label->isVisible() && label->text().startsWith(words)) return true;
    return false;
  }
  [[nodiscard]] double now(Field f) { return complete(document().design())[f]; }
};

TEST_F(Panel, aTypedValueIsOneStepAndControlZBelongsToTheWindow) {
  const Design before = document().design();
  FieldBox* bust = box("Bust");
  type(bust, "96.5");
  EXPECT_DOUBLE_EQ(now(Field::Bust), 96.5);
  EXPECT_EQ(document().history().count(), 1);
  QTest::keyClick(bust, Qt::Key_Z, Qt::ControlModifier);
  settle();
  EXPECT_EQ(document().design(), before);
}

TEST_F(Panel, inchesAndCentimetresCanBothBeTypedAtAnyTime) {
  type(box("Bust"), "37 1/2 in");
  EXPECT_NEAR(now(Field::Bust), 37.5 * 2.54, 1e-12);
  type(box("Bust"), "96,5 cm");
  EXPECT_DOUBLE_EQ(now(Field::Bust), 96.5);
  window_->settings().setUnit(LengthUnit::Inch);
  settle();
  type(box("Bust"), "38");
  EXPECT_NEAR(now(Field::Bust), 38 * 2.54, 1e-12);
}

TEST_F(Panel, theUnitIsAMatterOfDisplayAlone) {
  const Design before = document().design();
  EXPECT_EQ(box("Bust")->text(), QStringLiteral("94"));
  window_->actions().inches->trigger();
  settle();
  EXPECT_EQ(box("Bust")->text(), QStringLiteral("37"));
  // Going through every box without typing changes nothing either.
  for (FieldBox* b : window_->findChildren<FieldBox*>()) {
    if (!b->isVisible()) continue;
    b->setFocus();
    QTest::keyClick(b, Qt::Key_Return);
  }
  EXPECT_EQ(document().design(), before);
  EXPECT_EQ(document().history().count(), 0);
}

TEST_F(Panel, theFinishedSizeWritesTheEase) {
  type(box("Bust, finished"), "104");
  EXPECT_DOUBLE_EQ(now(Field::EaseBust), 10);
  EXPECT_DOUBLE_EQ(now(Field::Bust), 94);
}

TEST_F(Panel, whatCannotBeIsRefusedInWordsAndChangesNothing) {
  const Design before = document().design();
  for (const char* text : {"900", "ninety"}) {
    type(box("Bust"), text);
    EXPECT_EQ(document().design(), before) << text;
    EXPECT_TRUE(told(QStringLiteral("Bust:"))) << text;
    EXPECT_EQ(box("Bust")->text(), QString::fromLatin1(text)) << "to be put right";
  }
}

TEST_F(Panel, aRefusedEntryStaysWithItsMessageUntilItIsPutRightOrGivenUp) {
  const QString message = QStringLiteral("Bust:");
  FieldBox* bust = box("Bust");
  type(bust, "900");
  QTest::keyClick(bust, Qt::Key_Tab);
  settle();
  EXPECT_FALSE(bust->hasFocus());
  EXPECT_EQ(bust->text(), QStringLiteral("900")) << "Tab does not throw it away";
  EXPECT_TRUE(told(message));
  type(box("Waist"), "77"); // another row is in use, the design another
  EXPECT_EQ(bust->text(), QStringLiteral("900"));
  EXPECT_TRUE(told(message));
  type(bust, "96");
  EXPECT_DOUBLE_EQ(now(Field::Bust), 96);
  EXPECT_FALSE(told(message));
  type(bust, "900");
  EXPECT_TRUE(told(message));
  QTest::keyClick(bust, Qt::Key_Escape);
  settle();
  EXPECT_EQ(bust->text(), QStringLiteral("96"));
  EXPECT_FALSE(told(message));
}

TEST_F(Panel, returnGoesDownARow) {
  type(box("Bust"), "95");
  EXPECT_TRUE(box("Waist")->hasFocus());
  type(box("Bust, finished"), "104");
  EXPECT_TRUE(box("Waist, finished")->hasFocus());
}

TEST_F(Panel, theWheelNeverChangesAClosedListOrABoxWithoutTheKeyboard) {
  const Design before = document().design();
  const auto turn = [](QWidget* widget) {
    const QPointF at = QRectF(widget->rect()).center();
    QWheelEvent wheel(at, widget->mapToGlobal(at), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(widget, &wheel);
  };
  table().setFocus();
  turn(box("Bust"));
  auto* figure = named<QComboBox>(QStringLiteral("For"));
  figure->setFocus();
  turn(figure);
  settle();
  EXPECT_EQ(document().design(), before);
}

// Nothing of it is cut off at its right side, whatever has been made since the window was laid out.
TEST_F(Panel, isAsWideAsWhatStandsInIt) {
  EditPanel& panel = window_->workbench().panel();
  const QDir demos(QStringLiteral(SCYE_RESOURCES "/demos"));
  for (const QString& demo : demos.entryList({QStringLiteral("*.scye")}, QDir::Files)) {
    SCOPED_TRACE(demo.toStdString());
    const QString copy = file("other.scye");
    QFile::remove(copy);
    ASSERT_TRUE(QFile::copy(demos.filePath(demo), copy));
    window_->openFile(copy);
    settle();
    QApplication::processEvents();
    EXPECT_LE(panel.widget()->width(), panel.viewport()->width());
  }
}

TEST_F(Panel, anOpenedSliderLeavesWhatIsUnderThePointerWhereItIs) {
  FieldBox* bust = box("Bust");
  QTest::mouseClick(bust, Qt::LeftButton, {}, bust->rect().center());
  settle();
  FieldBox* wrist = box("Wrist"); // below the slider that is open
  const QPoint before = wrist->mapToGlobal(QPoint());
  QTest::mouseClick(wrist, Qt::LeftButton, {}, wrist->rect().center());
  settle();
  EXPECT_EQ(wrist->mapToGlobal(QPoint()), before);
}

TEST_F(Panel, everyPartAndSectionHasAKey) {
  QTest::keyClick(window_.get(), Qt::Key_2, Qt::AltModifier);
  settle();
  EXPECT_TRUE(window_->workbench().panel().isAncestorOf(QApplication::focusWidget()));
  QSet<QWidget*> parts;
  for (int i = 0; i < 4; ++i) {
    QTest::keyClick(window_.get(), Qt::Key_F6);
    QWidget* at = QApplication::focusWidget();
    for (QWidget* part :
         {static_cast<QWidget*>(&window_->workbench().panel()), static_cast<QWidget*>(&table()),
          static_cast<QWidget*>(&window_->workbench().ease()),
          static_cast<QWidget*>(&window_->workbench().answers())})
      if (part == at || part->isAncestorOf(at)) parts.insert(part);
  }
  EXPECT_EQ(parts.size(), 4);
}

TEST_F(Panel, fromTheDrawingItIsFewTabsToTheFirstSlider) {
  table().setFocus();
  int tabs = 0;
  while (tabs < 5 && !qobject_cast<ValueSlider*>(QApplication::focusWidget())) {
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    ++tabs;
  }
  EXPECT_TRUE(qobject_cast<ValueSlider*>(QApplication::focusWidget()));
}

TEST_F(Panel, anEmptiedFieldGoesBackToWhatIsFilledIn) {
  ASSERT_TRUE(document().design().has(Field::Bust));
  const Design before = document().design();
  for (const auto& [name, field] :
       {std::pair("Bust", Field::Bust), std::pair("Bust, finished", Field::EaseBust)}) {
    const double filled = complete(Design(document().design()).clear(field))[field];
    FieldBox* emptied = box(name);
    emptied->setFocus();
    emptied->selectAll();
    QTest::keyClick(emptied, Qt::Key_Delete);
    QTest::keyClick(emptied, Qt::Key_Tab); // left without Return
    settle();
    EXPECT_FALSE(document().design().has(field)) << name;
    EXPECT_DOUBLE_EQ(now(field), filled) << name;
    EXPECT_FALSE(emptied->text().isEmpty()) << name;
    EXPECT_FALSE(told(QStringLiteral("Bust:"))) << name;
  }
  EXPECT_EQ(document().history().count(), 2);
  document().undo();
  document().undo();
  EXPECT_EQ(document().design(), before);
}

TEST_F(Panel, whyAWorkedOutValueCannotBeTypedIsSaidCalmly) {
  const QString why = QStringLiteral("Worked out from the others");
  EXPECT_FALSE(told(why));
  window_->workbench().panel().focusField(Field::CapHeight, false);
  settle();
  ASSERT_TRUE(told(why));
  const Design before = document().design();
  type(box("Cap height"), "17");
  EXPECT_EQ(document().design(), before);
  for (const QLabel* label : window_->findChildren<QLabel*>()) {
    if (!label->isVisible() || !label->text().startsWith(why)) continue;
    EXPECT_TRUE(label->text().contains(QStringLiteral("\"Worked out for you\"")))
        << "the choice to change";
    EXPECT_EQ(label->visibleRegion().boundingRect(), label->rect()) << "all of it is in view";
    EXPECT_EQ(label->palette().color(QPalette::WindowText),
              QApplication::palette().color(QPalette::WindowText));
  }
  // Another choice, and it can be typed.
  document().edit(QStringLiteral("ease"),
                  Design(before).choose(Choice::WorkedOut, WorkedOut::CapEase));
  settle();
  EXPECT_FALSE(told(why));
  type(box("Cap height"), "17");
  EXPECT_DOUBLE_EQ(now(Field::CapHeight), 17);
}

TEST_F(Panel, escapePutsTheOldTextBack) {
  FieldBox* bust = box("Bust");
  bust->setFocus();
  bust->selectAll();
  QTest::keyClicks(bust, QStringLiteral("120"));
  QTest::keyClick(bust, Qt::Key_Escape);
  EXPECT_EQ(bust->text(), QStringLiteral("94"));
  QTest::keyClick(bust, Qt::Key_Tab);
  EXPECT_DOUBLE_EQ(now(Field::Bust), 94);
}

TEST_F(Panel, arrowKeysStepAValue) {
  FieldBox* bust = box("Bust");
  bust->setFocus();
  QTest::keyClick(bust, Qt::Key_Up);
  QTest::keyClick(bust, Qt::Key_Up);
  settle();
  EXPECT_DOUBLE_EQ(now(Field::Bust), 95);
  EXPECT_EQ(document().history().count(), 1);
}

TEST_F(Panel, theWheelScrollsThePanelAndChangesNothing) {
  const Design before = document().design();
  FieldBox* bust = box("Bust");
  box("Hip")->setFocus();
  QWheelEvent wheel(bust->rect().center(), bust->mapToGlobal(bust->rect().center()), {}, {0, 120},
                    Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
  QApplication::sendEvent(bust, &wheel);
  settle();
  EXPECT_EQ(document().design(), before);
}

TEST_F(Panel, aClickedFigureLeadsToTheValueBehindIt) {
  const HotSpot* spot = nullptr;
  for (const Group& g : table().picture().groups)
    for (const HotSpot& h : g.hotSpots)
      if (g.id == "sleeve" && h.field == Field::UpperArm) spot = &h;
  ASSERT_TRUE(spot);
  const QPointF at = table().view().map(0.5 * (spot->box.low + spot->box.high));
  QTest::mouseClick(&table(), Qt::LeftButton, {}, at.toPoint());
  QApplication::processEvents();
  FieldBox* finished = box("Upper arm, finished");
  EXPECT_EQ(QApplication::focusWidget(), finished);
  QTest::keyClicks(finished,
                   QStringLiteral("37")); // what is there is selected, so typing replaces it
  QTest::keyClick(finished, Qt::Key_Return);
  settle();
  EXPECT_DOUBLE_EQ(now(Field::UpperArm) + now(Field::EaseUpperArm), 37);
}

TEST_F(Panel, everyFieldHasARowThatTheKeyboardCanBeTakenTo) {
  // Some have one only in the styles that they shape.
  const std::map<Field, std::pair<Choice, int>> of{
      {Field::CuffGirth, {Choice::SleeveLine, int(SleeveLine::Flared)}},
      {Field::FlareFrom, {Choice::SleeveLine, int(SleeveLine::Flared)}},
      {Field::FullGirth, {Choice::SleeveLine, int(SleeveLine::Full)}},
      {Field::BackOpening, {Choice::Garment, int(Garment::Pullover)}},
      {Field::BustDepth, {Choice::BustShaping, int(BustShaping::ShortRows)}},
      {Field::BustReach, {Choice::BustShaping, int(BustShaping::ShortRows)}},
      {Field::GatherWidth, {Choice::CapTop, int(CapTop::Gathered)}},
      {Field::Pleats, {Choice::CapTop, int(CapTop::Pleated)}},
      {Field::RibMultiple, {Choice::Rib, int(RibKind::Own)}}};
  const Design jacket = document().design();
  for (int i = 0; i < kFieldCount; ++i) {
    const Field f = Field(i);
    Design design = jacket;
    if (const auto style = of.find(f); style != of.end())
      design.choose(style->second.first, style->second.second);
    document().edit(QStringLiteral("its style"), design);
    settle();
    table().setFocus();
    window_->workbench().panel().focusField(f, false);
    EXPECT_TRUE(qobject_cast<FieldBox*>(QApplication::focusWidget())) << info(f).key;
  }
}

TEST_F(Panel, everyControlHasANameToBeReadOut) {
  for (int i = 0; i < kFieldCount; ++i)
    window_->workbench().panel().focusField(Field(i), false);
  for (const QWidget* w : window_->findChildren<QWidget*>()) {
    if (!w->isVisible() || w->focusPolicy() == Qt::NoFocus || qobject_cast<const QLineEdit*>(w))
      continue;
    const auto* button = qobject_cast<const QAbstractButton*>(w);
    const bool container = qobject_cast<const QAbstractScrollArea*>(w) && !w->isEnabled();
    EXPECT_TRUE(!w->accessibleName().isEmpty() || (button && !button->text().isEmpty()) ||
                container)
        << w->metaObject()->className();
  }
}

TEST_F(Panel, norCanAFinishedSizeThatFollowsFromIt) {
  const struct {
    WorkedOut what;
    const char* finished;
  } cases[] = {{WorkedOut::UpperArmEase, "Upper arm, finished"},
               {WorkedOut::ArmholeDepth, "Armhole depth, finished"}};
  for (const auto& c : cases) {
    document().edit(QStringLiteral("worked out"),
                    Design(document().design()).choose(Choice::WorkedOut, c.what));
    settle();
    const Design before = document().design();
    type(box(c.finished), "44");
    EXPECT_EQ(document().design(), before) << c.finished;
    EXPECT_TRUE(told(QStringLiteral("Worked out from the others"))) << c.finished;
  }
}

TEST_F(Panel, tabGoesThroughASectionBeforeTheNextHeading) {
  for (Fold* fold : window_->workbench().panel().findChildren<Fold*>())
    if (fold->isVisible()) fold->setOpen(true);
  QApplication::processEvents();
  QList<Fold*> folds;
  for (Fold* fold : window_->workbench().panel().findChildren<Fold*>())
    if (fold->isVisible()) folds.append(fold);
  ASSERT_GT(folds.size(), 8);
  std::sort(folds.begin(), folds.end(), [](Fold* a, Fold* b) { return a->y() < b->y(); });
  folds.front()->findChild<QuietButton*>()->setFocus();
  for (Fold* fold : folds) {
    auto* head = fold->findChild<QuietButton*>();
    ASSERT_EQ(QApplication::focusWidget(), head) << head->text().toStdString();
    QSet<const QWidget*> visited;
    while (fold->isAncestorOf(QApplication::focusWidget()) && visited.size() < 300) {
      visited.insert(QApplication::focusWidget());
      QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    for (const FieldBox* box : fold->findChildren<FieldBox*>())
      EXPECT_TRUE(!box->isVisible() || visited.contains(box))
          << box->accessibleName().toStdString();
    for (const QComboBox* box : fold->findChildren<QComboBox*>())
      EXPECT_TRUE(!box->isVisible() || visited.contains(box))
          << box->accessibleName().toStdString();
  }
}

TEST_F(Panel, choicesAreStepsOfHistoryToo) {
  auto* neckline = named<QComboBox>(QStringLiteral("Neckline"));
  ASSERT_TRUE(neckline);
  neckline->setFocus();
  QTest::keyClick(neckline, Qt::Key_Down);
  settle();
  EXPECT_EQ(document().design().as<Neckline>(), Neckline::Vee);
  EXPECT_EQ(document().history().count(), 1);
}

} // namespace
} // namespace scye::test
