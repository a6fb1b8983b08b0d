// Several swatches in the panel: typed with real keys, undone, and told together.
#include "window_fixture.h"

#include "panels/swatch_band.h"
#include "values/field_box.h"
#include "values/text_box.h"

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

namespace scye::test {
namespace {

class MeasureSwatch : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    Design design = document().design();
    design.swatches.clear();
    design.set(Field::SwatchStitches, 22).set(Field::SwatchWidth, 10);
    design.set(Field::SwatchRows, 30).set(Field::SwatchHeight, 10);
    document().replace(design, {});
    settle();
  }

  void type(const char* name, const char* text) {
    auto* box = named<FieldBox>(QString::fromLatin1(name));
    ASSERT_TRUE(box);
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QString::fromLatin1(text));
    QTest::keyClick(box, Qt::Key_Return);
    settle();
  }
  void add() {
    for (QPushButton* b : window_->findChildren<QPushButton*>())
      if (b->isVisible() && b->text() == QStringLiteral("Add a swatch")) {
        b->setFocus();
        QTest::keyClick(b, Qt::Key_Space);
        settle();
        return;
      }
    FAIL() << "no button to add a swatch";
  }
  [[nodiscard]] bool told(const char* words) {
    for (const QLabel* label : window_->findChildren<QLabel*>())
      if (label->isVisible() && label->text().contains(QString::fromUtf8(words))) return true;
    return false;
  }
};

TEST_F(MeasureSwatch, aSecondSwatchIsAddedFilledInPooledAndUndone) {
  const Design before = document().design();
  add();
  ASSERT_EQ(document().design().swatches.size(), 1u);
  // The keyboard is in the new swatch.
  EXPECT_EQ(QApplication::focusWidget(), named<TextBox>(QStringLiteral("Swatch 2, what it is")));
  type("Swatch 2, stitches", "46");
  type("Swatch 2, width", "20");
  EXPECT_EQ(document().design().swatches[0].stitches, 46);
  EXPECT_EQ(document().design().swatches[0].width, 20);
  // Least squares through the origin: (22 x 10 + 46 x 20) / (10^2 + 20^2) stitches a cm.
  EXPECT_NEAR(1 / document().derived().gauge.across->size.value, 1140.0 / 500, 1e-12);
  EXPECT_TRUE(told("22.8 ±"));
  while (document().history().canUndo())
    document().undo();
  settle();
  EXPECT_EQ(document().design(), before);
}

TEST_F(MeasureSwatch, nothingIsCutWithThreeSwatches) {
  add();
  type("Swatch 2, stitches", "20");
  type("Swatch 2, rows", "33");
  add();
  type("Swatch 3, stitches", "28");
  EditPanel& panel = window_->workbench().panel();
  panel.ensureWidgetVisible(named<FieldBox>(QStringLiteral("Swatch 3, weight")), 0, 300);
  QApplication::processEvents();
  for (const QLabel* label : panel.findChildren<QLabel*>()) {
    if (!label->isVisible() || label->text().isEmpty()) continue;
    const QSize wanted =
        label->wordWrap() ? QSize(0, label->heightForWidth(label->width())) : label->sizeHint();
    EXPECT_GE(label->width(), wanted.width()) << label->text().toStdString();
    EXPECT_GE(label->height(), wanted.height()) << label->text().toStdString();
  }
  if (const QByteArray folder = qgetenv("SCYE_PICTURES"); !folder.isEmpty()) {
    EXPECT_TRUE(window_->grab().save(QString::fromLocal8Bit(folder + "/swatches-1280.png")));
  }
}

TEST_F(MeasureSwatch, whatWashingDidIsTold) {
  add();
  auto* use = named<QComboBox>(QStringLiteral("Swatch 2, what it is for"));
  use->setFocus();
  QTest::keyClick(use, Qt::Key_Down);
  type("Swatch 2, stitches", "20");
  type("Swatch 2, rows", "33");
  ASSERT_EQ(document().design().swatches[0].use, SwatchReading::Use::BeforeWashing);
  // 10/22 cm against 10/20 cm: 1 - 20/22 = 9.1 % narrower; 33/30: 10 % longer.
  EXPECT_TRUE(told("9.1 % narrower"));
  EXPECT_TRUE(told("10 % longer"));
}

TEST_F(MeasureSwatch, anotherPatternHasAGaugeOfItsOwnUnderItsLabel) {
  add();
  auto* label = named<TextBox>(QStringLiteral("Swatch 2, what it is"));
  QTest::keyClicks(label, QStringLiteral("Rib"));
  QTest::keyClick(label, Qt::Key_Return);
  auto* use = named<QComboBox>(QStringLiteral("Swatch 2, what it is for"));
  use->setFocus();
  QTest::keyClick(use, Qt::Key_End);
  type("Swatch 2, stitches", "28");
  EXPECT_TRUE(told("Rib: 28 ±"));
  EXPECT_TRUE(told("22 ±"));
}

TEST_F(MeasureSwatch, blankMeansNotCountedAndNonsenseIsRefused) {
  add();
  type("Swatch 2, stitches", "22");
  type("Swatch 2, stitches", " ");
  EXPECT_EQ(document().design().swatches[0].stitches, 0);
  const Design before = document().design();
  type("Swatch 2, width", "900");
  EXPECT_EQ(document().design(), before);
  EXPECT_TRUE(told("over a width of:"));
}

TEST_F(MeasureSwatch, aSwatchIsRemovedByItsButtonAndComesBack) {
  add();
  type("Swatch 2, stitches", "21");
  add();
  type("Swatch 3, stitches", "23");
  const Design before = document().design();
  auto* remove = named<QToolButton>(QStringLiteral("Remove swatch 2"));
  QTest::mouseClick(remove, Qt::LeftButton);
  settle();
  ASSERT_EQ(document().design().swatches.size(), 1u);
  EXPECT_EQ(document().design().swatches[0].stitches, 23);
  EXPECT_EQ(named<FieldBox>(QStringLiteral("Swatch 2, stitches"))->value(), 23);
  document().undo();
  settle();
  EXPECT_EQ(document().design(), before);
}

TEST_F(MeasureSwatch, weightIsTypedInGrams) {
  type("Weight of the swatch", "4.4 g");
  EXPECT_DOUBLE_EQ(*document().design().given(Field::SwatchWeight), 4.4);
  EXPECT_TRUE(told("440 g a square metre")); // 4.4 g on 10 cm x 10 cm
}

TEST_F(MeasureSwatch, theBandsFollowTheSwatch) {
  const auto widest = [&] {
    double reach = 0;
    for (const SwatchBand* band : window_->findChildren<SwatchBand*>())
      if (band->isVisible()) reach = std::max(reach, band->reach());
    return reach;
  };
  const double before = widest();
  EXPECT_GT(before, 1); // a swatch of 10 cm leaves the bust open by more than a centimetre
  EXPECT_TRUE(told("would bring the bust within"));
  type("over a width of", "30");
  type("Stitches", "66");
  EXPECT_LT(widest(), before);
}

} // namespace
} // namespace scye::test
