// The page As it came out: what is measured is answered in words and drawn, and what is planned
// anew is told, kept and shown everywhere.
#include "window_fixture.h"

#include "canvas/picture_widget.h"
#include "document/design_store.h"
#include "knitting/came_out_page.h"
#include "knitting/needle_page.h"
#include "shell/knit_pages.h"
#include "shell/work_area.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QPushButton>
#include <QTest>

namespace scye::test {
namespace {

class CameOut : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    Work work = document().work();
    for (const PieceId id : {PieceId::Back, PieceId::LeftFront, PieceId::RightFront}) {
      PieceWork* p = workOn(work, document().derived().knit, document().derived().knit, id);
      p->worked = int(p->plan.rows.size());
    }
    document().setWork(work);
    window_->workbench().area().showPage(page());
    settle();
  }
  [[nodiscard]] CameOutPage* page() { return window_->workbench().pages().cameOut; }
  void choose(PieceId piece) {
    QComboBox& pieces = page()->pieces();
    pieces.setCurrentIndex(pieces.findData(int(piece)));
    Q_EMIT pieces.activated(pieces.currentIndex());
    settle();
  }
  [[nodiscard]] bool answers(const char* words) {
    return QTest::qWaitFor([&] { return page()->answer().contains(QString::fromLatin1(words)); },
                           20000);
  }
  // A longer armhole at the back.
  void measureTheArmhole() {
    choose(PieceId::Back);
    page()->box(Reading::Armhole).setValue(27);
    ASSERT_TRUE(answers("instead of"));
  }
};

TEST_F(CameOut, AnotherArmholeIsAnsweredInWordsAndDrawn) {
  EXPECT_TRUE(answers("Nothing changes"));
  EXPECT_FALSE(page()->planAnew().isEnabled());
  EXPECT_FALSE(page()->drawn().isVisible());
  measureTheArmhole();
  EXPECT_TRUE(page()->planAnew().isEnabled());
  ASSERT_TRUE(page()->drawn().isVisible());
  int old = 0, planned = 0;
  for (const Group& group : page()->drawn().picture().groups)
    for (const Stroke& stroke : group.strokes) {
      if (!group.piece) continue;
      old += stroke.role == Role::Ghost;
      planned += stroke.role == Role::Outline;
    }
  EXPECT_EQ(old, 2); // both sleeves
  EXPECT_EQ(planned, 2);
}

TEST_F(CameOut, WhatIsPlannedAnewIsKeptAndFollowedAndWrittenDown) {
  const RowTable before = document().derived().knit.piece(PieceId::Sleeve)->rows;
  measureTheArmhole();
  QTest::mouseClick(&page()->planAnew(), Qt::LeftButton);
  ASSERT_TRUE(answers("Nothing changes"));
  EXPECT_FALSE(page()->planAnew().isEnabled());
  EXPECT_NE(document().derived().knit.piece(PieceId::Sleeve)->rows, before);
  EXPECT_NEAR(document().derived().knit.mismatch(), 0, 0.3);
  std::vector<DiaryEntry::Kind> kinds;
  for (const DiaryEntry& entry : document().work().diary)
    kinds.push_back(entry.kind);
  EXPECT_EQ(kinds, (std::vector{DiaryEntry::Kind::Measured, DiaryEntry::Kind::Refit}));
  Work onDisk;
  EXPECT_TRUE(QTest::qWaitFor([&] {
    (void)designOf(readDesignText(file("demo.scye")), builtinPhrases(), &onDisk);
    return onDisk == document().work();
  }));
}

// One entry a day, however many boxes are filled in.
TEST_F(CameOut, WhatIsMeasuredIsWrittenDownOnce) {
  choose(PieceId::Back);
  page()->box(Reading::Armhole).setValue(25);
  page()->box(Reading::Armhole).setValue(26);
  page()->box(Reading::Width).setValue(52);
  ASSERT_EQ(document().work().diary.size(), 1U);
  EXPECT_NE(document().work().diary[0].text.find("26 cm"), std::string::npos);
  EXPECT_NE(document().work().diary[0].text.find("52 cm"), std::string::npos);
  page()->box(Reading::Armhole).setValue(0);
  page()->box(Reading::Width).setValue(0);
  EXPECT_TRUE(document().work().diary.empty());
}

TEST_F(CameOut, AForeignGaugeIsToldWithTheWaysOut) {
  Work work = document().work();
  for (PieceWork& p : work.pieces)
    p.worked = p.piece == PieceId::Back ? 60 : 0;
  document().setWork(work);
  choose(PieceId::Back);
  page()->box(Reading::Across).setValue(20);
  const double swatch = 20 / document().derived().draft.sizes.stitch.width;
  page()->box(Reading::StitchCount).setValue(swatch * 1.08);
  ASSERT_TRUE(QTest::qWaitFor(
      [&] { return page()->warning().contains(QStringLiteral("certainly not")); }, 20000));
  EXPECT_TRUE(page()->warning().contains(QStringLiteral("larger needles")));
  EXPECT_TRUE(page()->warning().contains(QStringLiteral("live with it")));
  ASSERT_TRUE(page()->otherCounts().isVisible());
  QTest::mouseClick(&page()->otherCounts(), Qt::LeftButton);
  ASSERT_TRUE(QTest::qWaitFor([&] { return document().work().find(PieceId::Back)->ownPlan; }));
  EXPECT_EQ(document().work().diary.back().kind, DiaryEntry::Kind::Refit);
}

TEST_F(CameOut, ReadsInTheUnitThatIsShown) {
  window_->settings().setUnit(LengthUnit::Inch);
  settle();
  choose(PieceId::Back);
  page()->box(Reading::Armhole).setValue(10);
  const PieceWork* back = document().work().find(PieceId::Back);
  EXPECT_NEAR(back->measured[Reading::Armhole].value_or(0), 25.4, 1e-9);
  QComboBox& as = page()->as();
  as.setCurrentIndex(1);
  Q_EMIT as.activated(1);
  EXPECT_EQ(document().work().find(PieceId::Back)->measured.as, MeasuredAs::Unwashed);
  window_->settings().setUnit(LengthUnit::Centimetre);
}

} // namespace
} // namespace scye::test
