// Findings beside what they concern, and remedies that really do remove them.
#include "window_fixture.h"

#include "canvas/picture_widget.h"
#include "fit/finding_card.h"
#include "fit/severity.h"
#include "values/field_box.h"

#include "fit/answers.h"

#include <QAction>
#include <QApplication>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

namespace scye::test {
namespace {

class FindingsShown : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    document().edit(QStringLiteral("wide"),
                    Design(document().design()).set(Field::EaseUpperArm, 32));
    settle();
  }
  FindingCard* firstCard() {
    for (FindingCard* card : window_->findChildren<FindingCard*>())
      if (card->isVisible()) return card;
    return nullptr;
  }
};

TEST_F(FindingsShown, aRemedyIsOneClickOneStepAndRemovesTheFinding) {
  const Design before = document().design();
  const int steps = document().history().count();
  ASSERT_TRUE(firstCard());
  const std::string code = document().derived().findings.front().code;
  auto* remedy = firstCard()->findChild<QPushButton*>();
  ASSERT_TRUE(remedy);
  QTest::mouseClick(remedy, Qt::LeftButton);
  settle();
  EXPECT_FALSE(findCode(document().derived().findings, code));
  EXPECT_EQ(document().history().count(), steps + 1);
  window_->actions().undo->trigger();
  settle();
  EXPECT_EQ(document().design(), before);
  EXPECT_TRUE(findCode(document().derived().findings, code));
}

TEST_F(FindingsShown, aRemedyWithTheKeyboardOnItShowsWhatItWouldGive) {
  auto* remedy = firstCard()->findChild<QPushButton*>();
  const auto ghosts = [&] {
    int n = 0;
    for (const Group& g : table().picture().groups)
      for (const Stroke& s : g.strokes)
        n += s.role == Role::Ghost;
    return n;
  };
  EXPECT_EQ(ghosts(), 0);
  remedy->setFocus();
  EXPECT_GT(ghosts(), 0);
  table().setFocus();
  EXPECT_EQ(ghosts(), 0);
}

TEST_F(FindingsShown, goingToAFindingLeadsToTheValueItConcerns) {
  FindingCard* card = firstCard();
  card->setFocus();
  QTest::keyClick(card, Qt::Key_Return);
  auto* box = qobject_cast<FieldBox*>(QApplication::focusWidget());
  ASSERT_TRUE(box);
  const Field field = document().derived().findings.front().fields.front();
  const QString name =
      QString::fromStdString(builtinPhrases().say("field." + std::string(info(field).key)));
  EXPECT_EQ(box->accessibleName(), name);
}

TEST_F(FindingsShown, theGravestFindingIsInViewWithItsRemedies) {
  for (const QPushButton* remedy : firstCard()->findChildren<QPushButton*>())
    EXPECT_FALSE(remedy->visibleRegion().isEmpty()) << remedy->text().toStdString();
}

TEST_F(FindingsShown, howeverManyTheyAreTheComparisonCanBeRead) {
  document().edit(
      QStringLiteral("more to say"),
      Design(document().design()).set(Field::FrontNeckDrop, 3).choose(Choice::Washed, YesNo::No));
  settle();
  auto* picture = named<PictureWidget>(QStringLiteral("Cap laid over the armhole"));
  ASSERT_TRUE(picture);
  for (const QSize size : {QSize(1280, 800), QSize(1000, 700)}) {
    window_->resize(size);
    settle();
    window_->actions().answers->setChecked(true); // in the narrow one they have made room
    settle();
    ASSERT_EQ(window_->size(), size);
    // Two armholes with their names and scales below one another, each at least nine letters high.
    EXPECT_GT(picture->height(), 2 * 9 * picture->fontMetrics().height()) << size.height();
    EXPECT_EQ(picture->visibleRegion().boundingRect(), picture->rect()) << "all of it is in view";
    EXPECT_FALSE(firstCard()->findChild<QPushButton*>()->visibleRegion().isEmpty())
        << size.height();
  }
}

TEST_F(FindingsShown, inANarrowWindowTheyMakeRoomUntilTheyAreAskedFor) {
  QWidget* answers = &window_->workbench().answers();
  const auto resize = [this](int width) {
    window_->resize(width, 700);
    settle();
    ASSERT_EQ(window_->width(), width);
  };
  EXPECT_TRUE(answers->isVisible());
  EXPECT_GE(table().width(), 380);
  resize(1000);
  EXPECT_FALSE(answers->isVisible());
  EXPECT_GE(table().width(), 380);
  EXPECT_FALSE(window_->actions().answers->isChecked());
  QTest::keyClick(&table(), Qt::Key_4, Qt::ControlModifier);
  EXPECT_TRUE(answers->isVisible());
  resize(1010);
  EXPECT_TRUE(answers->isVisible()) << "she has asked for them";
  resize(1280);
  EXPECT_TRUE(answers->isVisible());
  resize(1000);
  EXPECT_FALSE(answers->isVisible());
  resize(1280);
  EXPECT_TRUE(answers->isVisible()) << "there is room again";
  EXPECT_TRUE(window_->actions().answers->isChecked());
  // A window that is narrow from the first.
  MainWindow other(paths(), builtinPhrases());
  other.resize(1000, 700);
  other.show();
  other.openFile(demoFile());
  QApplication::processEvents();
  EXPECT_FALSE(other.workbench().answers().isVisible());
  EXPECT_FALSE(other.actions().answers->isChecked());
}

TEST_F(FindingsShown, severityIsToldInWordsAndByAMark) {
  EXPECT_TRUE(firstCard()->accessibleName().startsWith(severityName(Severity::Blocking)));
  bool marked = false;
  for (const QToolButton* mark : window_->workbench().panel().findChildren<QToolButton*>())
    marked = marked || (mark->isVisible() && !mark->icon().isNull() &&
                        mark->accessibleName() == findingText(builtinPhrases(),
                                                              document().derived().findings.front(),
                                                              LengthUnit::Centimetre));
  EXPECT_TRUE(marked) << "the row that it concerns carries its sign";
}

} // namespace
} // namespace scye::test
