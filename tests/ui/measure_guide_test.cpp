// The measuring guide, fit by ease, and measurements from a garment laid flat.
#include "window_fixture.h"

#include "body/yarn_classes.h"
#include "canvas/picture_widget.h"
#include "guide/guide_window.h"
#include "look/quiet_button.h"
#include "schematic/guide_sheet.h"
#include "shell/banner.h"
#include "values/field_box.h"

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTest>

namespace scye::test {
namespace {

class MeasureGuide : public WindowFixture {
protected:
  void SetUp() override { openDemo(); }
  [[nodiscard]] GuideWindow& guide() { return window_->guide(); }
  [[nodiscard]] bool told(const std::string& phrase) {
    const QString words = QString::fromStdString(builtinPhrases().say(phrase));
    for (const QLabel* label : guide().findChildren<QLabel*>())
      if (label->isVisible() && label->text().contains(words)) return true;
    return false;
  }
};

TEST_F(MeasureGuide, theRowInUseLeadsToItsPageByKeyboard) {
  named<FieldBox>(QStringLiteral("Upper arm"))->setFocus();
  settle();
  auto* how = named<QuietButton>(QStringLiteral("How to measure: Upper arm"));
  ASSERT_TRUE(how);
  how->setFocus();
  QTest::keyClick(how, Qt::Key_Space);
  ASSERT_TRUE(guide().isVisible());
  EXPECT_EQ(guide().measurement(), Field::UpperArm);
  EXPECT_EQ(guide().where(), Source::Body);
  for (const char* part : {".body", ".alone", ".spoils"})
    EXPECT_TRUE(told(std::string("guide.upperArm") + part)) << part;
  EXPECT_FALSE(guide().picture().picture().groups.empty());
}

TEST_F(MeasureGuide, askedForInARowItOpensAtThatMeasurement) {
  for (const Field f : measuredOn(Source::Body)) {
    window_->workbench().panel().focusField(f, false);
    settle();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F1);
    ASSERT_TRUE(guide().isVisible()) << info(f).key;
    EXPECT_EQ(guide().measurement(), f) << info(f).key;
    guide().close();
    window_->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
  }
  // Elsewhere it opens as it was left.
  guide().showMeasurement(Field::Wrist, Source::Body);
  table().setFocus();
  QTest::keyClick(&table(), Qt::Key_F1);
  EXPECT_EQ(guide().measurement(), Field::Wrist);
}

TEST_F(MeasureGuide, pageDownGoesThroughThemAllAndPageUpBack) {
  window_->actions().guide->trigger();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&guide()));
  EXPECT_FALSE(guide().measurement()); // the overview comes first
  const auto all = measuredOn(Source::Body);
  for (const Field f : all) {
    QTest::keyClick(guide().findChild<QListWidget*>(), Qt::Key_PageDown);
    EXPECT_EQ(guide().measurement(), f);
    EXPECT_TRUE(told("guide." + std::string(info(f).key) + ".body"));
  }
  QTest::keyClick(guide().findChild<QListWidget*>(), Qt::Key_PageDown); // no further
  EXPECT_EQ(guide().measurement(), all.back());
  QTest::keyClick(&guide(), Qt::Key_PageUp);
  EXPECT_EQ(guide().measurement(), all[all.size() - 2]);
  QTest::keyClick(&guide(), Qt::Key_Escape);
  EXPECT_FALSE(guide().isVisible());
}

TEST_F(MeasureGuide, theGarmentHasPagesOfItsOwn) {
  guide().showMeasurement(Field::Bust, Source::Body);
  guide().show();
  auto* where = named<QComboBox>(QStringLiteral("Body or garment"), &guide());
  where->setFocus();
  QTest::keyClick(where, Qt::Key_Down);
  EXPECT_EQ(guide().where(), Source::Garment);
  EXPECT_EQ(guide().measurement(), Field::Bust); // the same one
  EXPECT_TRUE(told("guide.bust.garment"));
  EXPECT_EQ(guide().findChild<QListWidget*>()->count(),
            1 + int(measuredOn(Source::Garment).size()));
}

TEST_F(MeasureGuide, aMeasurementFromAGarmentLeadsToTheGarmentsPage) {
  document().edit(QStringLiteral("flat"),
                  Design(document().design()).set(Field::Wrist, 10.5, Source::Garment));
  settle();
  named<FieldBox>(QStringLiteral("Wrist"))->setFocus();
  settle();
  QTest::mouseClick(named<QuietButton>(QStringLiteral("How to measure: Wrist")), Qt::LeftButton);
  EXPECT_EQ(guide().where(), Source::Garment);
  EXPECT_TRUE(told("guide.wrist.garment"));
}

TEST_F(MeasureGuide, theSheetIsAPdfOfA4PagesAndAFolderThatIsNotThereIsRefusedInWords) {
  const QString path = file("sheet.pdf");
  guide().saveSheet(path);
  ASSERT_TRUE(isMade(guide().exports()));
  const QByteArray pdf = contents(path);
  EXPECT_TRUE(pdf.startsWith("%PDF"));
  // ISO 216: A4 is 210 mm x 297 mm, which is 595 x 842 points.
  EXPECT_TRUE(pdf.contains("/MediaBox [0 0 595"));
  const auto pages =
      measuringSheet(builtinPhrases(), Source::Body, Figure::Woman, LengthUnit::Centimetre);
  EXPECT_TRUE(pdf.contains("/Count " + QByteArray::number(int(pages.size()))));
  guide().saveSheet(file("nowhere/sheet.pdf"));
  ASSERT_FALSE(isMade(guide().exports()));
  EXPECT_TRUE(window_->banner().text().contains(QStringLiteral("sheet.pdf")));
}

TEST_F(MeasureGuide, nothingIsCut) {
  guide().show();
  for (const Source where : {Source::Body, Source::Garment})
    for (const Field f : measuredOn(where)) {
      guide().showMeasurement(f, where);
      QApplication::processEvents();
      for (const QLabel* label : guide().findChildren<QLabel*>()) {
        const int wanted =
            label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
        EXPECT_GE(label->height(), wanted) << label->text().toStdString();
      }
      EXPECT_GT(guide().picture().height(), guide().height() / 3);
    }
  const QByteArray folder = qgetenv("SCYE_PICTURES");
  if (folder.isEmpty()) return;
  const auto keep = [&](const char* name) {
    QApplication::processEvents();
    guide().grab().save(QString::fromLocal8Bit(folder) + u'/' + QLatin1String(name));
  };
  guide().showMeasurement(Field::UpperArm, Source::Body), keep("guide-arm.png");
  guide().showMeasurement({}, Source::Body), keep("guide-body.png");
  guide().showMeasurement(Field::Bust, Source::Garment), keep("guide-garment-bust.png");
}

TEST_F(MeasureGuide, aFitSetsThePublishedEaseInOneStepAndIsNamed) {
  auto* fit = named<QComboBox>(QStringLiteral("Fit at the bust"));
  // Craft Yarn Council, garment fit: 5 to 10 cm is a standard fit; the demo's ease is 8.
  EXPECT_EQ(fit->currentIndex(), int(Fit::Standard));
  EXPECT_TRUE(fit->toolTip().contains(QStringLiteral("Craft Yarn Council")));
  const Design before = document().design();
  for (int i = 0; i < fit->count(); ++i) {
    fit->setFocus();
    QTest::keyClick(fit, Qt::Key_Home);
    for (int k = 0; k < i; ++k)
      QTest::keyClick(fit, Qt::Key_Down);
    settle();
    EXPECT_EQ(fit->currentIndex(), i);
    const double ease = *document().design().given(Field::EaseBust);
    const EaseRange range = easeFor(Fit(i), document().derived().draft.sizes.stitch.width);
    EXPECT_GE(ease, range.low.value_or(-99));
    EXPECT_LE(ease, range.high.value_or(99));
  }
  while (document().history().canUndo())
    document().undo();
  settle();
  EXPECT_EQ(document().design(), before);
  EXPECT_EQ(fit->currentIndex(), int(Fit::Standard));
}

TEST_F(MeasureGuide, aGarmentsGirthIsShownFlatWithItsFinishedGirth) {
  document().edit(QStringLiteral("flat"),
                  Design(document().design())
                      .clear(Field::EaseBust) // of a body; of a garment it would be a change
                      .set(Field::Bust, 51, Source::Garment));
  settle();
  auto* bust = named<FieldBox>(QStringLiteral("Bust"));
  EXPECT_EQ(bust->text(), QStringLiteral("51"));
  EXPECT_TRUE(bust->toolTip().contains(QStringLiteral("102")));
  EXPECT_EQ(named<FieldBox>(QStringLiteral("Bust, finished"))->value(), 102);
  EXPECT_TRUE(named<QuietButton>(QStringLiteral("Bust, source: half width")));
  // The others stay as they were taken: the ways mix.
  EXPECT_TRUE(named<QuietButton>(QStringLiteral("Hip, source: measured")));
}

// One choice for all; what was typed stays as typed, and ease is then a change to that garment.
TEST_F(MeasureGuide, oneChoiceTellsThatAllWasMeasuredOnAGarment) {
  const Design before = document().design();
  auto* where = named<QComboBox>(QStringLiteral("Measured"));
  ASSERT_TRUE(where);
  where->setFocus();
  QTest::keyClick(where, Qt::Key_End);
  settle();
  const Design& now = document().design();
  EXPECT_EQ(now.as<Source>(), Source::Garment);
  EXPECT_EQ(now.source(Field::Bust), Source::Garment);
  EXPECT_EQ(now.given(Field::Bust), before.given(Field::Bust)) << "as typed";
  auto* bust = named<FieldBox>(QStringLiteral("Bust"));
  bust->setFocus();
  bust->selectAll();
  QTest::keyClicks(bust, QStringLiteral("48"));
  QTest::keyClick(bust, Qt::Key_Return);
  settle();
  EXPECT_EQ(document().design().given(Field::Bust), 48);
  EXPECT_EQ(bust->text(), QStringLiteral("48"));
  EXPECT_EQ(named<FieldBox>(QStringLiteral("Bust, finished"))->value(),
            96 + document().derived().draft.sizes[Field::EaseBust]);
  auto* ease = named<FieldBox>(QStringLiteral("Bust ease"));
  ease->setFocus();
  ease->selectAll();
  QTest::keyClicks(ease, QStringLiteral("2"));
  QTest::keyClick(ease, Qt::Key_Return);
  settle();
  EXPECT_EQ(named<FieldBox>(QStringLiteral("Bust, finished"))->value(), 98);
  while (document().history().canUndo())
    document().undo();
  settle();
  EXPECT_EQ(document().design(), before);
}

} // namespace
} // namespace scye::test
