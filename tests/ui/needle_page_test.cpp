// The page to knit by: keys and buttons go from row to row, and the file has the place at once.
#include "window_fixture.h"

#include "document/design_store.h"
#include "knitting/big_text.h"
#include "knitting/chart_view.h"
#include "knitting/conflict_box.h"
#include "knitting/needle_page.h"
#include "shell/banner.h"
#include "shell/knit_pages.h"
#include "shell/work_area.h"

#include <QCheckBox>
#include <QPushButton>
#include <QTest>

namespace scye::test {
namespace {

class Needles : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    window_->workbench().area().showPage(page());
    settle();
  }
  [[nodiscard]] NeedlePage* page() { return window_->workbench().pages().needles; }
  [[nodiscard]] int worked() {
    const PieceWork* p = document().work().find(PieceId::Back);
    return p ? p->worked : 0;
  }
};

TEST_F(Needles, GoForwardAndBackByKeys) {
  for (const int key : {Qt::Key_Space, Qt::Key_PageDown, Qt::Key_Right, Qt::Key_Return})
    QTest::keyClick(page(), Qt::Key(key));
  EXPECT_EQ(worked(), 4);
  EXPECT_TRUE(page()->what().text().startsWith(QStringLiteral("P2, *k2, p2; repeat")))
      << page()->what().text().toStdString(); // row 4, written out
  for (const int key : {Qt::Key_PageUp, Qt::Key_Backspace})
    QTest::keyClick(page(), Qt::Key(key));
  EXPECT_EQ(worked(), 2);
  EXPECT_FALSE(document().history().canUndo()); // no part of the design's history
}

TEST_F(Needles, AnyPieceMayBeOnTheNeedles) {
  page()->step(3);
  page()->choosePiece(PieceId::LeftSleeve);
  page()->step(5);
  EXPECT_EQ(worked(), 3);
  EXPECT_EQ(document().work().find(PieceId::LeftSleeve)->worked, 5);
}

// Whatever ends the program then, the place stands in the file; and nothing else does that was not
// saved.
TEST_F(Needles, ThePlaceIsInTheFileAtOnce) {
  const Design saved = document().design();
  document().edit(QStringLiteral("title"), [&] {
    Design other = saved;
    other.title = "Not saved";
    return other;
  }());
  page()->step(7);
  Work onDisk;
  EXPECT_TRUE(QTest::qWaitFor([&] {
    const auto read = designOf(readDesignText(file("demo.scye")), builtinPhrases(), &onDisk);
    const auto* design = std::get_if<Design>(&read);
    const PieceWork* p = onDisk.find(PieceId::Back);
    return design && *design == saved && p && p->worked == 7;
  }));
  EXPECT_TRUE(document().isModified());
}

// Every row of a piece has its letters at least twice as large as other text, and all of them in
// view: in a small window, with large letters, in the dark.
TEST_F(Needles, TheRowIsReadFromAfarInASmallWindow) {
  for (const double letters : {1.0, 2.0}) {
    window_->settings().setTextSize(letters);
    window_->settings().setLook(letters > 1 ? Look::Dark : Look::Light);
    window_->resize(800, 600);
    settle();
    int rows = 0;
    for (const PieceId id : {PieceId::Back, PieceId::RightFront, PieceId::Sleeve}) {
      page()->choosePiece(id);
      const int lines = int(plannedPiece(document().derived().knit, id)->rows.size());
      for (int line = 0; line < lines; line += 7, ++rows) {
        EXPECT_GE(page()->what().times(), 2.0) << page()->what().text().toStdString();
        page()->step(7);
      }
    }
    EXPECT_GT(rows, 40);
    document().setWork({});
  }
  window_->settings().setTextSize(1);
  window_->settings().setLook(Look::Desktop);
}

// Where the row is: lit in the chart on the page and on the drawing; worked parts are filled there,
// the rest is in outline.
TEST_F(Needles, TheRowIsShownOnChartAndDrawing) {
  const auto filled = [&](Role role) {
    int n = 0;
    for (const Group& group : table().picture().groups)
      for (const Stroke& stroke : group.strokes)
        n += stroke.role == role && stroke.filled;
    return n;
  };
  EXPECT_EQ(filled(Role::Worked), 0);
  EXPECT_GT(filled(Role::Fabric), 0);
  page()->step(40);
  settle();
  EXPECT_EQ(filled(Role::Worked), 1);
  EXPECT_EQ(filled(Role::Fabric), 0);
  EXPECT_TRUE(page()->chart().isVisible());
  EXPECT_EQ(page()->chart().chart().grid.rows,
            document().work().find(PieceId::Back)->plan.lastRow().value());
  page()->choosePiece(PieceId::LeftSleeve); // drawn on the right one's outline
  page()->step(10);
  settle();
  EXPECT_EQ(filled(Role::Worked), 2);
  Box back, sleeve;
  for (const Group& group : table().picture().groups)
    for (const Stroke& stroke : group.strokes)
      if (stroke.role == Role::Worked) (group.id == "back" ? back : sleeve).add(stroke.path);
  EXPECT_NEAR(back.size().y() / sleeve.size().y(), 39.0 / 9, 0.05); // rows, the cast-on is none
}

// A change that reaches worked rows is told where it is made; nothing happens to them before it is
// said what shall.
TEST_F(Needles, AChangeThatReachesWorkedRowsIsToldAndSettled) {
  page()->step(40);
  const KnitPiece was = document().work().find(PieceId::Back)->plan;
  Design wider = document().design();
  wider.set(Field::EaseBust, document().draft().sizes[Field::EaseBust] + 6);
  document().edit(QStringLiteral("wider"), wider);
  settle();
  EXPECT_TRUE(window_->banner().isVisible());
  EXPECT_TRUE(window_->banner().text().contains(QStringLiteral("knitted already")));
  EXPECT_EQ(document().work().find(PieceId::Back)->plan, was);
  ASSERT_TRUE(page()->conflicts().isVisible());
  auto* keep = page()->conflicts().findChild<QPushButton*>();
  ASSERT_TRUE(keep);
  EXPECT_TRUE(keep->text().startsWith(QStringLiteral("Keep")));
  QTest::mouseClick(keep, Qt::LeftButton);
  ASSERT_TRUE(QTest::qWaitFor([&] { return document().derived().conflicts.empty(); }, 20000));
  settle();
  const PieceWork& back = *document().work().find(PieceId::Back);
  EXPECT_EQ(back.worked, 40);
  EXPECT_NE(back.plan.rows, was.rows);
  for (std::size_t i = 0; i < 40; ++i)
    EXPECT_EQ(back.plan.rows[i].stitches(), was.rows[i].stitches());
  EXPECT_FALSE(page()->conflicts().isVisible());
  EXPECT_FALSE(window_->banner().isVisible());
  EXPECT_EQ(document().work().diary.back().kind, DiaryEntry::Kind::Kept);
}

TEST_F(Needles, TheChangeIsTakenBackFromWhereItIsTold) {
  page()->step(40);
  const Design before = document().design();
  Design wider = before;
  wider.set(Field::EaseBust, document().draft().sizes[Field::EaseBust] + 6);
  document().edit(QStringLiteral("wider"), wider);
  settle();
  auto* back = window_->banner().findChild<QPushButton*>();
  ASSERT_TRUE(back);
  QTest::mouseClick(back, Qt::LeftButton);
  settle();
  EXPECT_EQ(document().design(), before);
  EXPECT_TRUE(document().derived().conflicts.empty());
  EXPECT_FALSE(window_->banner().isVisible());
}

TEST_F(Needles, TheReminderToRestIsOffUntilItIsAskedFor) {
  EXPECT_FALSE(page()->reminder().isChecked());
  EXPECT_FALSE(window_->settings().restReminder());
  page()->reminder().setChecked(true);
  EXPECT_TRUE(window_->settings().restReminder());
  page()->reminder().setChecked(false);
}

} // namespace
} // namespace scye::test
