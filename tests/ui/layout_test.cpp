// How the window divides its room: the drawing first, the ease in hand, the answer always in words.
#include "window_fixture.h"

#include "canvas/picture_widget.h"
#include "fit/verdict_line.h"
#include "paint/picture_colours.h"
#include "panels/ease_dial.h"
#include "panels/ease_strip.h"
#include "panels/field_slider.h"
#include "shell/head_bar.h"
#include "values/field_box.h"

#include "draft/complete.h"

#include <QApplication>
#include <QFontMetrics>
#include <QTest>

#include <set>

namespace scye::test {
namespace {

class Layout : public WindowFixture {
protected:
  void SetUp() override { openDemo(); }
  void resize(int width, int height) {
    window_->resize(width, height);
    settle();
    ASSERT_EQ(window_->size(), QSize(width, height));
  }
  [[nodiscard]] EaseStrip& ease() { return window_->workbench().ease(); }
  [[nodiscard]] EaseDial* dial(Field field) {
    for (EaseDial* d : ease().dials())
      if (d->slider()->field() == field) return d;
    ADD_FAILURE() << info(field).key;
    return nullptr;
  }
  [[nodiscard]] bool inView(const QWidget* widget) {
    return widget->isVisible() && widget->visibleRegion().boundingRect() == widget->rect();
  }
};

TEST_F(Layout, theDrawingHasMostOfALaptopsScreen) {
  resize(1280, 800);
  const double share = double(table().width()) * table().height() / (1280.0 * 800.0);
  RecordProperty("share", std::to_string(share));
  EXPECT_GE(share, 0.45);
}

// Bust, length, armhole depth, upper arm, sleeve length, cap height, cuff, cross-shoulder.
TEST_F(Layout, whatAGarmentIsToldByIsLegible) {
  for (const QSize size : {QSize(1280, 800), QSize(1000, 650), QSize(1920, 1080)}) {
    resize(size.width(), size.height());
    const Picture& picture = table().picture();
    EXPECT_GE(picture.textHeight * table().view().scale, 9) << size.width();
    std::set<Field> told;
    for (const Group& g : picture.groups)
      for (const HotSpot& h : g.hotSpots)
        if (g.id == "back" || g.id == "sleeve") told.insert(h.field);
    for (const Field f :
         {Field::Bust, Field::HemToUnderarm, Field::ArmholeDepth, Field::CrossShoulder,
          Field::UpperArm, Field::SleeveLength, Field::CapHeight, Field::Wrist})
      EXPECT_TRUE(told.contains(f)) << info(f).key << " at " << size.width();
  }
}

TEST_F(Layout, theComparisonIsLargeEnoughToBeRead) {
  resize(1280, 800);
  auto* shown = named<PictureWidget>(QStringLiteral("Cap laid over the armhole"));
  ASSERT_TRUE(inView(shown));
  ASSERT_EQ(shown->picture().groups.size(), 2u);
  for (const Group& g : shown->picture().groups) {
    Box curves;
    for (const Stroke& s : g.strokes) {
      if (s.role != Role::Armhole && s.role != Role::Cap) continue;
      Box line;
      line.add(s.path);
      if (line.size().y() > 1) curves.add(s.path); // not the strip's ground
    }
    EXPECT_GE(curves.size().y() * shown->view().scale, 180) << g.id;
    EXPECT_GE(2.5 * shown->picture().textHeight * shown->view().scale, 24) << "the strip";
  }
}

TEST_F(Layout, theAnswerIsInViewAtEverySizeAndInEveryStage) {
  const VerdictLine& verdict = window_->head().verdict();
  Design misfit = document().design();
  misfit.set(Field::CapEase, 4);
  for (const bool fits : {true, false}) {
    if (!fits) document().edit(QStringLiteral("too much"), misfit);
    settle();
    EXPECT_EQ(verdict.fits(), fits);
    EXPECT_FALSE(verdict.sentence().isEmpty());
    EXPECT_TRUE(verdict.accessibleName().contains(verdict.sentence()));
    for (const QSize size : {QSize(1000, 650), QSize(1280, 800), QSize(1920, 1080)})
      for (const Stage stage : {Stage::Drafting, Stage::Knitting, Stage::MakingUp}) {
        resize(size.width(), size.height());
        window_->workbench().setStage(stage);
        settle();
        EXPECT_TRUE(inView(&verdict)) << size.width();
        EXPECT_GE(verdict.height() + 1, verdict.heightForWidth(verdict.width())) << "uncut";
      }
  }
}

TEST_F(Layout, theEaseIsInHandWithoutScrolling) {
  for (const QSize size : {QSize(1280, 800), QSize(1000, 650)}) {
    resize(size.width(), size.height());
    for (const Field f :
         {Field::EaseBust, Field::EaseUpperArm, Field::EaseArmholeDepth, Field::CapEase}) {
      EXPECT_TRUE(inView(dial(f)->slider())) << info(f).key;
      EXPECT_TRUE(inView(dial(f)->box())) << info(f).key;
    }
  }
}

TEST_F(Layout, aDialIsDraggedTypedAndSentBackToItsStart) {
  EaseDial* bust = dial(Field::EaseBust);
  const double start =
      complete(Design(document().design()).clear(Field::EaseBust))[Field::EaseBust];
  settle(); // the panel's columns follow what it shows
  QTest::mousePress(bust->slider(), Qt::LeftButton, {}, {bust->slider()->width() / 2, 5});
  const QPoint before = bust->mapTo(window_.get(), QPoint());
  QTest::mouseMove(bust->slider(), {bust->slider()->width() - 4, 5});
  settle();
  EXPECT_EQ(bust->mapTo(window_.get(), QPoint()), before) << "nothing moves under the pointer";
  QTest::mouseRelease(bust->slider(), Qt::LeftButton, {}, {bust->slider()->width() - 4, 5});
  settle();
  EXPECT_GT(complete(document().design())[Field::EaseBust], start + 4);
  EXPECT_EQ(document().history().count(), 1);
  bust->box()->setFocus();
  bust->box()->selectAll();
  QTest::keyClicks(bust->box(), QStringLiteral("6.5"));
  QTest::keyClick(bust->box(), Qt::Key_Return);
  settle();
  EXPECT_NEAR(complete(document().design())[Field::EaseBust], 6.5, 1e-9);
  const int steps = document().history().index();
  QTest::mouseDClick(bust->slider(), Qt::LeftButton, {}, {20, 5});
  settle();
  EXPECT_EQ(document().history().index(), steps + 1) << "what the first press moved is no step";
  EXPECT_FALSE(document().design().has(Field::EaseBust));
  EXPECT_NEAR(complete(document().design())[Field::EaseBust], start, 1e-9);
}

TEST_F(Layout, whatIsWorkedOutIsShownAsSuchAndCannotBeMoved) {
  EXPECT_TRUE(dial(Field::CapEase)->slider()->isEnabled());
  Design d = document().design();
  d.choose(Choice::WorkedOut, 4); // cap ease
  document().edit(QStringLiteral("worked out"), d);
  settle();
  EXPECT_FALSE(dial(Field::CapEase)->slider()->isEnabled());
  EXPECT_TRUE(dial(Field::CapEase)->box()->isReadOnly());
  EXPECT_TRUE(dial(Field::EaseBust)->slider()->isEnabled());
}

// WCAG 2.1, success criterion 1.4.3: 4.5 to 1 for text.
TEST_F(Layout, allTextStandsOutFromItsGround) {
  // Black on white is 21 to 1, and #767676 on white the lightest grey that is enough, by the
  // criterion's own note.
  EXPECT_NEAR(contrast(Qt::black, Qt::white), 21, 0.01);
  EXPECT_GE(contrast(QColor(0x76, 0x76, 0x76), Qt::white), 4.5);
  EXPECT_LT(contrast(QColor(0x77, 0x77, 0x77), Qt::white), 4.5);
  for (const Look look : {Look::Light, Look::Dark}) {
    window_->settings().setLook(look);
    settle();
    const QPalette p = window_->palette();
    EXPECT_EQ(isDark(p), look == Look::Dark);
    const auto expectLegible = [&](const QColor& text, const QColor& ground, const char* what) {
      EXPECT_GE(contrast(text, ground), 4.5) << what << (isDark(p) ? ", dark" : ", light");
    };
    expectLegible(p.color(QPalette::PlaceholderText), p.color(QPalette::Window), "hints");
    expectLegible(p.color(QPalette::PlaceholderText), p.color(QPalette::Base), "hints in boxes");
    expectLegible(p.color(QPalette::WindowText), p.color(QPalette::Window), "words");
    expectLegible(p.color(QPalette::ButtonText), p.color(QPalette::Button), "buttons");
    expectLegible(p.color(QPalette::HighlightedText), p.color(QPalette::Highlight), "chosen");
    expectLegible(legible(blockingColour(isDark(p)), p.color(QPalette::Window)),
                  p.color(QPalette::Window), "refusals");
    const PictureColours colours = screenColours(p);
    for (const Role role : {Role::Measure, Role::Caption, Role::Note, Role::Notch, Role::Lit,
                            Role::Armhole, Role::Cap, Role::Short, Role::Knitted, Role::Symbol})
      for (const QColor& ground : {colours.ground, colours[Role::Fabric]})
        EXPECT_GE(contrast(colours[role], ground), 4.5)
            << int(role) << (isDark(p) ? ", dark" : ", light");
    for (const Role role : {Role::Measure, Role::Caption, Role::Note, Role::Notch, Role::Lit,
                            Role::Knitted, Role::Outline})
      EXPECT_GE(contrast(colours[role], colours[Role::Worked]), 4.5)
          << int(role) << (isDark(p) ? ", worked, dark" : ", worked, light");
  }
  window_->settings().setLook(Look::Desktop);
}

TEST_F(Layout, withLettersTwiceAsLargeEverythingIsInALaptopsScreen) {
  window_->settings().setTextSize(2);
  resize(1280, 800);
  EXPECT_LE(window_->minimumSizeHint().width(), 1280);
  EXPECT_LE(window_->minimumSizeHint().height(), 800);
  EXPECT_TRUE(inView(&window_->head().verdict()));
  EXPECT_TRUE(inView(&table()));
  for (const EaseDial* d : ease().dials())
    EXPECT_TRUE(inView(d->slider())) << d->box()->accessibleName().toStdString();
  window_->settings().setTextSize(1);
}

} // namespace
} // namespace scye::test
