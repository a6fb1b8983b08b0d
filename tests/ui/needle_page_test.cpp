// The page to knit by: keys and buttons go from row to row, and the file has the place at once.
#include "window_fixture.h"

#include "document/design_store.h"
#include "knitting/big_text.h"
#include "knitting/needle_page.h"
#include "shell/knit_pages.h"
#include "shell/work_area.h"

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
  EXPECT_EQ(page()->what().text(), QStringLiteral("Work in rib"));
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

} // namespace
} // namespace scye::test
