// The garment worn: drawn while the window goes on, the newest wish shown, nothing while hidden.
#include "worn/worn_page.h"

#include "event_clock.h"

#include "draft/complete.h"
#include "knitting/take_out.h"
#include "panels/panel_context.h"

#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QGuiApplication>
#include <QLabel>
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
    page_ = std::make_unique<WornPage>(document_, attention_, settings_);
    page_->resize(420, 360);
    engine_ = page_->findChild<WornEngine*>();
  }
  void untilItRests() {
    // Not by a spy: frames come from another thread, and of two in one turn of the events the
    // second would end the spy's next wait at once.
    bool rests = false;
    const auto told =
        QObject::connect(engine_, &WornEngine::drawn, page_.get(),
                         [&](const WornFrame& garment, const WornFrame&, bool resting) {
                           last_ = garment;
                           rests = resting;
                         });
    const bool came = QTest::qWaitFor([&] { return rests; }, kPatience);
    QObject::disconnect(told);
    ASSERT_TRUE(came);
  }

  QTemporaryDir folder_;
  Document document_;
  Attention attention_;
  Settings settings_;
  std::unique_ptr<WornPage> page_;
  WornEngine* engine_ = nullptr;
  WornFrame last_; // the garment's
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
    untilItRests();
    return last_;
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

// Two side by side: with another value of what is in hand, and as it was before the last change;
// both turn together.
TEST_F(WornPageTest, ShowsTwoSideBySide) {
  QComboBox* choices = nullptr;
  for (QComboBox* box : page_->findChildren<QComboBox*>())
    if (box->count() == int(ShownBeside::BeforeChange) + 1) choices = box;
  ASSERT_TRUE(choices);
  const auto isOffered = [&](ShownBeside which) {
    return bool(choices->model()->flags(choices->model()->index(int(which), 0)) &
                Qt::ItemIsEnabled);
  };
  EXPECT_FALSE(isOffered(ShownBeside::More)) << "nothing is in hand";
  attention_.light(Field::EaseBust);
  attention_.light(std::nullopt); // the keyboard goes to the page
  EXPECT_TRUE(isOffered(ShownBeside::More));
  const QString name = fieldName(settings_.phrases(), Field::EaseBust);
  const QList<QLabel*> labels = page_->findChildren<QLabel*>();
  EXPECT_TRUE(
      std::ranges::any_of(labels, [&](const QLabel* l) { return l->text().contains(name); }));
  page_->show();
  untilItRests();
  const auto pictures = [&] {
    QSignalSpy drawn(engine_, &WornEngine::drawn);
    untilItRests();
    return std::pair(drawn.last().at(0).value<WornFrame>(), drawn.last().at(1).value<WornFrame>());
  };
  const auto beside = [&](ShownBeside which) {
    choices->setCurrentIndex(int(which));
    Q_EMIT choices->activated(int(which));
    return pictures();
  };
  const auto [now, wider] = beside(ShownBeside::More);
  ASSERT_FALSE(now.image.isNull());
  ASSERT_FALSE(wider.image.isNull());
  EXPECT_EQ(now.image.size(), wider.image.size());
  EXPECT_NE(now.image, wider.image);
  QTest::keyClick(page_->findChild<WornView*>(), Qt::Key_3);
  const auto [nowBehind, widerBehind] = pictures();
  EXPECT_NE(nowBehind.image, now.image);
  EXPECT_NE(widerBehind.image, wider.image) << "the one beside did not turn";
  const auto [same, asBefore] = beside(ShownBeside::BeforeChange);
  document_.edit(QStringLiteral("wider"), Design(document_.design()).set(Field::EaseBust, 16));
  (void)document_.derived();
  const auto [changed, before] = pictures();
  EXPECT_NE(changed.image, before.image);
}

// Half of what the slider shows, within what the field takes; nothing where it cannot be set.
TEST(WornBeside, AnotherValueIsWithinTheFieldsRange) {
  Design design;
  design.set(Field::Bust, 94).set(Field::EaseBust, 8);
  const auto more = withOtherValue(design, Field::EaseBust, true),
             less = withOtherValue(design, Field::EaseBust, false);
  ASSERT_TRUE(more && less);
  const auto ease = [](const Design& d) { return complete(d)[Field::EaseBust]; };
  EXPECT_NEAR(ease(*more) - 8, 8 - ease(*less), 1e-9);
  EXPECT_GE(ease(*more) - 8, 2);
  design.set(Field::EaseBust, rangeOf(Field::EaseBust).high);
  EXPECT_FALSE(withOtherValue(design, Field::EaseBust, true));
}

// What is shown beside is another design, drafted and shaped: the window's thread does not do it.
TEST_F(WornPageTest, WhatStandsBesideIsWorkedOutBesideTheWindow) {
  QComboBox* choices = nullptr;
  for (QComboBox* box : page_->findChildren<QComboBox*>())
    if (box->count() == int(ShownBeside::BeforeChange) + 1) choices = box;
  ASSERT_TRUE(choices);
  page_->show();
  untilItRests();
  double before = EventClock::workedMs();
  const auto lower = besideDesign(document_.design(), ShownBeside::LowerCap, {});
  ASSERT_TRUE(lower);
  (void)derive(*lower);
  const double deriving = EventClock::workedMs() - before;
  before = EventClock::workedMs();
  choices->setCurrentIndex(int(ShownBeside::LowerCap));
  Q_EMIT choices->activated(int(ShownBeside::LowerCap));
  EXPECT_LT(EventClock::workedMs() - before, 0.5 * deriving);
  EventClock::instance().forget();
  bool two = false;
  QObject::connect(
      engine_, &WornEngine::drawn, page_.get(),
      [&](const WornFrame&, const WornFrame& beside, bool) { two = !beside.image.isNull(); });
  EXPECT_TRUE(QTest::qWaitFor([&] { return two; }, kPatience));
  EXPECT_LT(EventClock::instance().longest().ms, 50)
      << EventClock::instance().longest().what.toStdString();
}

// Each caution that applies has its line, and all of them have room.
TEST_F(WornPageTest, AllCautionsAreShown) {
  Design design = document_.design();
  design.set(Field::SwatchStitches, 14).set(Field::SwatchRows, 20).set(Field::EaseBust, -4);
  document_.edit(QStringLiteral("tight"), design);
  page_->show();
  const QLabel* cautions = nullptr;
  for (const QLabel* label : page_->findChildren<QLabel*>())
    if (label->text().count(u'\n') == 2) cautions = label;
  ASSERT_TRUE(cautions) << "not three lines";
  QTest::qWait(50);
  EXPECT_GE(cautions->height(), cautions->heightForWidth(cautions->width()));
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
