// The page Blocking and making up: sizes side by side, and the list in the order of work.
#include "window_fixture.h"

#include "document/design_store.h"
#include "knitting/big_text.h"
#include "knitting/figure_table.h"
#include "knitting/finish_page.h"
#include "shell/knit_pages.h"
#include "shell/work_area.h"

#include <QDoubleSpinBox>
#include <QListWidget>
#include <QTest>

namespace scye::test {
namespace {

class Finish : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    window_->workbench().area().showPage(page());
    settle();
  }
  [[nodiscard]] FinishPage* page() { return window_->workbench().pages().finish; }
  [[nodiscard]] const FigureRow& row(const char* name) {
    for (const FigureRow& r : page()->sizes().rows())
      if (r.name == QString::fromLatin1(name)) return r;
    ADD_FAILURE() << name;
    static const FigureRow none;
    return none;
  }
  void measure(Reading reading, double cm) {
    Work work = document().work();
    const KnitGarment& knit = document().derived().knit;
    workOn(work, knit, knit, PieceId::Back)->measured.set(reading, cm);
    document().setWork(work);
    settle();
  }
};

TEST_F(Finish, SetsWantedKnittedAndMeasuredSideBySide) {
  const char* width = "Back: Width at the underarm";
  const FigureRow planned = row(width);
  ASSERT_EQ(planned.figures.size(), 4);
  EXPECT_EQ(planned.figures[0], planned.figures[1]);
  EXPECT_EQ(planned.figures[2], QStringLiteral("\u2013")); // nothing is measured
  const double wanted = planned.figures[0].section(u' ', 0, 0).toDouble();
  ASSERT_GT(wanted, 30);
  // Two in a hundred can be drawn out, six cannot, and are marked.
  measure(Reading::Width, wanted / 1.02);
  EXPECT_EQ(row(width).figures[3], planned.figures[0]);
  measure(Reading::Width, wanted / 1.06);
  EXPECT_TRUE(row(width).figures[3].endsWith(u'*'));
  const double pinned = row(width).figures[3].section(u' ', 0, 0).toDouble();
  EXPECT_NEAR(pinned, 1.03 * wanted / 1.06, 0.06);
}

TEST_F(Finish, TheListIsTickedOffAndKept) {
  QListWidget& list = page()->list();
  ASSERT_GT(list.count(), 20);
  EXPECT_TRUE(list.item(0)->text().startsWith(QStringLiteral("Block")));
  int pins = 0;
  for (int i = 0; i < list.count(); ++i) {
    const QString text = list.item(i)->text();
    EXPECT_FALSE(text.contains(u'[')) << text.toStdString();
    pins += text.contains(QStringLiteral("row")) && text.contains(QStringLiteral("pin"));
  }
  EXPECT_GT(pins, 12);
  // Pinned before it is sewn: the ends are woven in last.
  EXPECT_FALSE(list.item(list.count() - 1)->data(Qt::UserRole).toString().startsWith(u"pin."));
  list.item(2)->setCheckState(Qt::Checked);
  EXPECT_EQ(document().work().done.size(), 1U);
  Work onDisk;
  EXPECT_TRUE(QTest::qWaitFor([&] {
    (void)designOf(readDesignText(file("demo.scye")), builtinPhrases(), &onDisk);
    return onDisk.done == document().work().done;
  }));
  EXPECT_EQ(list.item(2)->checkState(), Qt::Checked);
  list.item(2)->setCheckState(Qt::Unchecked);
  EXPECT_TRUE(document().work().done.empty());
}

// The same list with the mouse: a click on the box of a line ticks it.
TEST_F(Finish, SpaceTicksTheChosenLine) {
  QListWidget& list = page()->list();
  list.setFocus();
  list.setCurrentRow(1);
  QTest::keyClick(&list, Qt::Key_Space);
  EXPECT_EQ(document().work().done.size(), 1U);
  EXPECT_EQ(list.currentRow(), 1);
}

TEST_F(Finish, HowFarTheLastSeamCameOutIsWrittenDown) {
  auto* box = named<QDoubleSpinBox>(QStringLiteral("How far the last seam came out"));
  ASSERT_TRUE(box);
  box->setValue(-0.4);
  box->setValue(-0.6);
  ASSERT_TRUE(document().work().lastSeam);
  EXPECT_NEAR(*document().work().lastSeam, -0.6, 1e-9);
  ASSERT_EQ(document().work().diary.size(), 1U);
  EXPECT_NE(document().work().diary[0].text.find("too short by 0.6 cm"), std::string::npos)
      << document().work().diary[0].text;
}

// The chosen line stands in letters several times as large, none of it cut, in a small window too.
TEST_F(Finish, TheChosenLineIsReadFromAfar) {
  QListWidget& list = page()->list();
  for (const QSize size : {QSize(1280, 800), QSize(800, 600)}) {
    window_->resize(size);
    settle();
    for (int i = 0; i < list.count(); ++i) {
      list.setCurrentRow(i);
      EXPECT_EQ(page()->now().text(), list.item(i)->text());
      EXPECT_GE(page()->now().times(), 2.0) << list.item(i)->text().toStdString();
    }
  }
}

} // namespace
} // namespace scye::test
