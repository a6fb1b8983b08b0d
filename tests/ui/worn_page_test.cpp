// The garment worn: drawn while the window goes on, the newest wish shown, nothing while hidden.
#include "worn/worn_page.h"

#include "knitting/take_out.h"

#include <QCheckBox>
#include <QClipboard>
#include <QGuiApplication>
#include <QMimeData>
#include <QSignalSpy>
#include <QSlider>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

namespace scye::test {
namespace {

constexpr int kPatience = 60000; // ms; the processor may be busy

class WornPageTest : public testing::Test {
protected:
  WornPageTest() : settings_(folder_.filePath(QStringLiteral("settings.ini")), builtinPhrases()) {
    Design design;
    design.choose(Choice::Figure, Figure::Child); // small, and soon draped
    design.set(Field::Bust, 63.5);
    document_.replace(design, {});
    (void)document_.derived();
    page_ = std::make_unique<WornPage>(document_, settings_);
    page_->resize(420, 360);
    engine_ = page_->findChild<WornEngine*>();
  }
  void untilItRests() {
    QSignalSpy drawn(engine_, &WornEngine::drawn);
    for (;;) {
      ASSERT_TRUE(drawn.wait(kPatience));
      if (drawn.last().at(2).toBool()) return;
    }
  }

  QTemporaryDir folder_;
  Document document_;
  Settings settings_;
  std::unique_ptr<WornPage> page_;
  WornEngine* engine_ = nullptr;
};

TEST_F(WornPageTest, ShowsTheGarmentAndThenRests) {
  QSignalSpy drawn(engine_, &WornEngine::drawn);
  QTest::qWait(50);
  EXPECT_EQ(drawn.count(), 0) << "drawn while it is hidden";
  page_->show();
  untilItRests();
  EXPECT_GT(drawn.count(), 2) << "not shown while it settles";
  const WornFrame frame = drawn.last().at(0).value<WornFrame>();
  ASSERT_FALSE(frame.image.isNull());
  const QRgb corner = frame.image.pixel(2, 2);
  const QRgb middle = frame.image.pixel(frame.image.width() / 2, frame.image.height() / 2);
  EXPECT_NE(corner, middle);
}

TEST_F(WornPageTest, FollowsTheArmTheSleevesAndTheView) {
  page_->show();
  untilItRests();
  const auto picture = [&] {
    QSignalSpy drawn(engine_, &WornEngine::drawn);
    untilItRests();
    return drawn.last().at(0).value<WornFrame>();
  };
  page_->findChild<QSlider*>()->setValue(70);
  const WornFrame lifted = picture();
  QTest::keyClick(page_->findChild<WornView*>(), Qt::Key_3);
  const WornFrame behind = picture();
  EXPECT_NE(lifted.image, behind.image);
  EXPECT_TRUE(behind.numbers.empty());
  page_->findChildren<QCheckBox*>().first()->setChecked(true);
  EXPECT_FALSE(picture().numbers.empty()) << "no notch has its number";
}

TEST_F(WornPageTest, ItsPictureIsCopied) {
  page_->show();
  untilItRests();
  auto* copy = page_->findChild<TakeOut*>();
  ASSERT_TRUE(copy);
  QSignalSpy copied(copy, &TakeOut::copied);
  QTest::mouseClick(copy, Qt::LeftButton);
  ASSERT_TRUE(copied.wait(kPatience)) << copy->accessibleDescription().toStdString();
  const QMimeData* mime = QGuiApplication::clipboard()->mimeData();
  const QImage image = QImage::fromData(mime->data(QStringLiteral("image/png")));
  ASSERT_FALSE(image.isNull());
  EXPECT_NE(image.pixel(2, 2), image.pixel(image.width() / 2, image.height() / 2));
}

TEST_F(WornPageTest, NothingRunsWhileItIsHidden) {
  page_->show();
  untilItRests();
  page_->hide();
  QSignalSpy drawn(engine_, &WornEngine::drawn);
  document_.edit(QStringLiteral("wider"), [&] {
    Design design = document_.design();
    design.set(Field::EaseBust, 14);
    return design;
  }());
  (void)document_.derived();
  QTest::qWait(300);
  EXPECT_EQ(drawn.count(), 0);
}

} // namespace
} // namespace scye::test
