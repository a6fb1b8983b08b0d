// What is doubted is said beside its field, and a click there corrects it. Also: what was filled in
// says where it came from and how sure it is.
#include "window_fixture.h"

#include "fit/finding_card.h"
#include "values/field_box.h"
#include "values/value_slider.h"

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

namespace scye::test {
namespace {

class MeasureDoubt : public WindowFixture {
protected:
  void SetUp() override { openDemo(); }

  void typeUpperArm(const char* text) {
    auto* box = named<FieldBox>(QStringLiteral("Upper arm"));
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QString::fromLatin1(text));
    QTest::keyClick(box, Qt::Key_Return);
    settle();
  }
  // The panel's own card, not the one in the list of findings.
  FindingCard* cardInPanel() {
    for (FindingCard* card : window_->workbench().panel().findChildren<FindingCard*>())
      if (card->isVisible()) return card;
    return nullptr;
  }
  QToolButton* mark() {
    for (QToolButton* b : window_->workbench().panel().findChildren<QToolButton*>())
      if (b->isVisible() && b->accessibleName().contains(QStringLiteral("half a girth"))) return b;
    return nullptr;
  }
};

TEST_F(MeasureDoubt, halfAGirthIsQuestionedInItsRowAndAClickCorrectsIt) {
  EXPECT_FALSE(cardInPanel());
  const double true_ = *document().design().given(Field::UpperArm);
  typeUpperArm("14.75"); // half of the demo's 29.5
  ASSERT_DOUBLE_EQ(*document().design().given(Field::UpperArm), true_ / 2);
  ASSERT_TRUE(QTest::qWaitFor([&] { return cardInPanel() != nullptr; }));
  FindingCard* card = cardInPanel();
  EXPECT_TRUE(card->accessibleName().contains(QStringLiteral("half a girth")));
  EXPECT_TRUE(mark());
  // The slip makes the body strange; that is not said beside it.
  EXPECT_TRUE(document().derived().draft.sizes.beyondSurvey);
  for (const QLabel* label : window_->workbench().panel().findChildren<QLabel*>())
    EXPECT_FALSE(label->isVisible() && label->text().contains(QStringLiteral("extrapolations")));
  const int steps = document().history().count();
  // First: it was measured on a garment. Second: it is to be doubled.
  const auto remedies = card->findChildren<QPushButton*>();
  ASSERT_EQ(remedies.size(), 2);
  QPushButton* remedy = remedies[1];
  ASSERT_TRUE(remedy->isEnabled());
  QTest::mouseClick(remedy, Qt::LeftButton);
  settle();
  EXPECT_DOUBLE_EQ(*document().design().given(Field::UpperArm), true_);
  EXPECT_EQ(document().history().count(), steps + 1);
  EXPECT_FALSE(cardInPanel());
  EXPECT_FALSE(mark());
}

TEST_F(MeasureDoubt, slipsAreLookedForInTheUnitThatIsTyped) {
  window_->settings().setUnit(LengthUnit::Inch);
  settle();
  typeUpperArm("29.5"); // the demo's centimetres, typed as inches
  const Finding* doubt = findCode(document().derived().findings, "doubt.centimetres");
  ASSERT_TRUE(doubt);
  ASSERT_FALSE(doubt->remedies.empty());
  const Design mended = applied(document().design(), doubt->remedies.front());
  EXPECT_NEAR(*mended.given(Field::UpperArm), 29.5, 0.05);
  window_->settings().setUnit(LengthUnit::Centimetre);
}

TEST_F(MeasureDoubt, theMarkLeadsToTheCorrectionByMouseAndByKeyboard) {
  typeUpperArm("14.75");
  named<FieldBox>(QStringLiteral("Bust"))->setFocus();
  settle();
  EXPECT_FALSE(cardInPanel()); // another row is in use
  ASSERT_TRUE(mark());
  QTest::mouseClick(mark(), Qt::LeftButton);
  settle();
  ASSERT_TRUE(cardInPanel());
  EXPECT_FALSE(cardInPanel()->visibleRegion().isEmpty());
  if (const QByteArray folder = qgetenv("SCYE_PICTURES"); !folder.isEmpty()) {
    EXPECT_TRUE(window_->grab().save(QString::fromLocal8Bit(folder + "/doubt-1280.png")));
  }
  EXPECT_TRUE(cardInPanel()->isAncestorOf(QApplication::focusWidget()));
  named<FieldBox>(QStringLiteral("Bust"))->setFocus();
  settle();
  mark()->setFocus(Qt::TabFocusReason);
  QTest::keyClick(mark(), Qt::Key_Space);
  settle();
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
  settle();
  EXPECT_EQ(document().design().source(Field::UpperArm), Source::Garment);
  EXPECT_DOUBLE_EQ(*document().design().given(Field::UpperArm), 14.75) << "as typed";
}

TEST_F(MeasureDoubt, anotherFindingOpensUnderItsRowOnlyWhenItsMarkIsPressed) {
  document().edit(QStringLiteral("wide"), Design(document().design()).set(Field::EaseUpperArm, 32));
  settle();
  named<FieldBox>(QStringLiteral("Upper-arm ease"))->setFocus();
  settle();
  EXPECT_FALSE(cardInPanel());
  const QString text = [&] {
    for (FindingCard* card : window_->findChildren<FindingCard*>())
      if (card->isVisible()) return card->accessibleName();
    return QString();
  }();
  for (QToolButton* b : window_->workbench().panel().findChildren<QToolButton*>())
    if (b->isVisible() && !b->accessibleName().isEmpty() && text.endsWith(b->accessibleName())) {
      QTest::mouseClick(b, Qt::LeftButton);
      settle();
      EXPECT_TRUE(cardInPanel());
      return;
    }
  FAIL() << "no mark for: " << text.toStdString();
}

TEST_F(MeasureDoubt, anEstimateShowsItsRangeAndItsSource) {
  auto* fill = named<QComboBox>(QStringLiteral("Fill in from"));
  fill->setFocus();
  QTest::keyClick(fill, Qt::Key_End);
  QTest::keyClick(fill, Qt::Key_Home);
  settle();
  ASSERT_EQ(document().design().as<FillFrom>(), FillFrom::Survey);
  document().edit(QStringLiteral("not taken"), Design(document().design()).clear(Field::Wrist));
  settle();
  const auto likely = document().derived().draft.sizes.likely[std::size_t(Field::Wrist)];
  ASSERT_TRUE(likely);
  auto* wrist = named<FieldBox>(QStringLiteral("Wrist"));
  EXPECT_TRUE(wrist->toolTip().contains(QStringLiteral("Soldiers are not everybody")));
  wrist->setFocus();
  settle();
  auto* slider = named<ValueSlider>(QStringLiteral("Wrist, slider"));
  ASSERT_TRUE(slider);
  EXPECT_TRUE(slider->accessibleDescription().contains(QStringLiteral("1988 survey")));
  // The band is really drawn: the picture with it differs from the one without.
  const QImage with = slider->grab().toImage();
  slider->setLikely({});
  EXPECT_NE(slider->grab().toImage(), with);
  bool told = false;
  for (const QLabel* label : window_->findChildren<QLabel*>())
    told = told || (label->isVisible() && label->text().startsWith(QStringLiteral("Nine in ten")));
  EXPECT_TRUE(told);
  // One that was taken has no range.
  named<FieldBox>(QStringLiteral("Bust"))->setFocus();
  settle();
  EXPECT_TRUE(
      named<ValueSlider>(QStringLiteral("Bust, slider"))->accessibleDescription().isEmpty());
}

TEST_F(MeasureDoubt, childrenHaveTablesOnlyAndItIsSaid) {
  Design child = document().design();
  child.choose(Choice::Figure, Figure::Child).set(Field::Bust, 66).clear(Field::Wrist);
  document().edit(QStringLiteral("a child"), child);
  settle();
  for (QComboBox* box : window_->findChildren<QComboBox*>())
    EXPECT_FALSE(box->isVisible() && box->accessibleName() == QStringLiteral("Fill in from"));
  bool told = false;
  for (const QLabel* label : window_->findChildren<QLabel*>())
    told = told ||
           (label->isVisible() && label->text().contains(QStringLiteral("published tables only")));
  EXPECT_TRUE(told);
}

} // namespace
} // namespace scye::test
