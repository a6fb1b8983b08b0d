// The diary: lines by hand, in the order of time, and taken out again.
#include "window_fixture.h"

#include "knitting/diary_page.h"
#include "shell/knit_pages.h"
#include "shell/work_area.h"

#include <QComboBox>
#include <QDateEdit>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTest>

namespace scye::test {
namespace {

class Diary : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    window_->workbench().area().showPage(page());
    settle();
  }
  [[nodiscard]] DiaryPage* page() { return window_->workbench().pages().diary; }
  void write(DiaryEntry::Kind kind, const QDate& day, const char* text) {
    page()->kind().setCurrentIndex(page()->kind().findData(int(kind)));
    page()->day().setDate(day);
    page()->text().setText(QString::fromLatin1(text));
    QTest::keyClick(&page()->text(), Qt::Key_Return);
  }
};

TEST_F(Diary, LinesByHandStandInTheOrderOfTime) {
  EXPECT_FALSE(page()->write().isEnabled());
  write(DiaryEntry::Kind::Decision, QDate(2026, 11, 20), "longer sleeves");
  page()->piece().setCurrentIndex(page()->piece().findData(int(PieceId::Sleeve)));
  write(DiaryEntry::Kind::Measured, QDate(2026, 11, 12), "hangs well");
  const std::vector<DiaryEntry>& diary = document().work().diary;
  ASSERT_EQ(diary.size(), 2U);
  EXPECT_EQ(diary[0].on, "2026-11-12");
  EXPECT_EQ(diary[0].piece, PieceId::Sleeve);
  EXPECT_EQ(diary[1].text, "longer sleeves");
  EXPECT_FALSE(document().history().canUndo()); // no part of the design's history
  QListWidget& list = page()->list();
  EXPECT_TRUE(list.item(list.count() - 1)->text().contains(QStringLiteral("longer sleeves")));
  EXPECT_TRUE(page()->text().text().isEmpty());
}

TEST_F(Diary, SwatchesStandAtItsHeadAndCannotBeTakenOut) {
  write(DiaryEntry::Kind::Swatch, QDate(2026, 11, 12), "softer than I thought");
  QListWidget& list = page()->list();
  ASSERT_EQ(list.count(), 2);
  EXPECT_TRUE(list.item(0)->text().startsWith(QStringLiteral("Swatch: ")));
  list.setCurrentRow(0);
  EXPECT_FALSE(page()->strike().isEnabled());
  list.setCurrentRow(1);
  ASSERT_TRUE(page()->strike().isEnabled());
  QTest::mouseClick(&page()->strike(), Qt::LeftButton);
  EXPECT_TRUE(document().work().diary.empty());
}

} // namespace
} // namespace scye::test
