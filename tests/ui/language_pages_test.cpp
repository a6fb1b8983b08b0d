// The pages to knit and make up by in a made-up language: nothing stays English, nothing is cut
// off.
#include "language_walk.h"

#include "knitting/big_text.h"
#include "knitting/chart_view.h"
#include "knitting/conflict_box.h"
#include "panels/edit_panel.h"
#include "panels/fold.h"
#include "panels/panel_context.h"
#include "shell/banner.h"
#include "shell/knit_pages.h"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QDoubleSpinBox>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTableView>
#include <QTest>

namespace scye::test {
namespace {

class LanguageOfThePages : public LanguageWalk {
protected:
  LanguageOfThePages() { openNamelessDemo(); }
  ~LanguageOfThePages() override { window_->settings().setTextSize(1); }

  [[nodiscard]] const KnitPages& pages() { return window_->workbench().pages(); }
  void work(PieceId id, const std::function<void(PieceWork&)>& how) {
    Work work = document().work();
    const KnitGarment& knit = document().derived().knit;
    how(*workOn(work, knit, knit, id));
    document().setWork(work);
    settle();
  }
  // The value with the longest name of all in the panel.
  void takeInHandTheLongest() {
    std::optional<Field> longest;
    const auto length = [&](Field f) { return fieldName(phrases(), f).size(); };
    for (int i = 0; i < kFieldCount; ++i)
      if (const Field f = Field(i); matters(f, document().draft().sizes.style))
        if (!longest || length(f) > length(*longest)) longest = f;
    window_->workbench().panel().focusField(*longest, false);
    settle();
  }
  void knitAll(std::initializer_list<PieceId> all) {
    for (const PieceId id : all)
      work(id, [](PieceWork& p) { p.worked = int(p.plan.rows.size()); });
  }
};

TEST_F(LanguageOfThePages, DirectionsChartAndSizes) {
  for (QAction* page :
       {window_->actions().directions, window_->actions().chart, window_->actions().sizes}) {
    page->trigger();
    settle();
    expectAll(*window_);
  }
}

TEST_F(LanguageOfThePages, TheChartsRows) {
  window_->actions().chart->trigger();
  settle();
  auto* view = window_->findChild<ChartView*>();
  ASSERT_TRUE(view);
  view->setFocus();
  for (int i = 0; i < 60; ++i) {
    QTest::keyClick(view, Qt::Key_Up);
    expectTranslated(*view->parentWidget());
    expectRoom(*view->parentWidget());
  }
  expectPainted(*view->parentWidget());
}

TEST_F(LanguageOfThePages, RowByRow) {
  NeedlePage* page = pages().needles;
  show(page);
  page->reminder().setChecked(true);
  for (const PieceId id : {PieceId::Back, PieceId::RightFront, PieceId::Sleeve}) {
    page->choosePiece(id);
    const int rows = int(plannedPiece(document().derived().knit, id)->rows.size());
    for (int row = 0; row < rows; row += 17) {
      page->step(17);
      expectTranslated(*page);
      expectRoom(*page);
      EXPECT_EQ(firstEnglishWordIn(page->what().text()), "");
      EXPECT_GE(page->what().times(), 1.5) << page->what().text().toStdString();
    }
    expectPainted(*page);
  }
  page->reminder().setChecked(false);
}

TEST_F(LanguageOfThePages, AChangeThatReachesWorkedRows) {
  NeedlePage* page = pages().needles;
  show(page);
  page->step(40);
  expectBanner([&] {
    change(
        [&](Design& d) { d.set(Field::EaseBust, document().draft().sizes[Field::EaseBust] + 6); });
  });
  ASSERT_TRUE(page->conflicts().isVisible());
  expectAll(*window_);
}

TEST_F(LanguageOfThePages, AsItCameOut) {
  knitAll({PieceId::Back, PieceId::LeftFront, PieceId::RightFront});
  CameOutPage* page = pages().cameOut;
  show(page);
  const QString before = page->answer();
  page->box(Reading::Armhole).setValue(27);
  ASSERT_TRUE(QTest::qWaitFor([&] { return page->planAnew().isEnabled(); }, 20000));
  EXPECT_NE(page->answer(), before);
  expectAll(*window_);
}

TEST_F(LanguageOfThePages, AForeignGauge) {
  work(PieceId::Back, [](PieceWork& p) { p.worked = 60; });
  CameOutPage* page = pages().cameOut;
  show(page);
  page->box(Reading::Across).setValue(20);
  page->box(Reading::StitchCount).setValue(20 / document().draft().sizes.stitch.width * 1.08);
  ASSERT_TRUE(QTest::qWaitFor([&] { return page->otherCounts().isVisible(); }, 20000));
  expectAll(*window_);
  show(pages().needles); // tells it too
}

TEST_F(LanguageOfThePages, TheDiary) {
  knitAll({PieceId::Back});
  DiaryPage* page = pages().diary;
  show(page);
  for (int kind = 0; kind < page->kind().count(); ++kind) {
    page->kind().setCurrentIndex(kind);
    page->text().setText(QStringLiteral("\u0436"));
    QTest::keyClick(&page->text(), Qt::Key_Return);
  }
  settle();
  EXPECT_GE(page->list().count(), page->kind().count());
  expectAll(*window_);
}

TEST_F(LanguageOfThePages, BlockingAndMakingUp) {
  knitAll({PieceId::Back});
  work(PieceId::Back, [](PieceWork& p) { p.measured.set(Reading::Width, 40); });
  FinishPage* page = pages().finish;
  show(page);
  for (int i = 0; i < page->list().count(); i += 5) {
    page->list().setCurrentRow(i);
    page->list().item(i)->setCheckState(Qt::Checked);
    EXPECT_EQ(firstEnglishWordIn(page->now().text()), "");
    EXPECT_GE(page->now().times(), 1.0) << page->now().text().toStdString();
  }
  expectAll(*window_);
}

TEST_F(LanguageOfThePages, TheBooklet) {
  BookletPage* page = pages().booklet;
  show(page);
  ASSERT_TRUE(QTest::qWaitFor([&] { return page->isLaidOut(); }, 60000));
  expectAll(*window_);
}

TEST_F(LanguageOfThePages, TheGarmentWorn) {
  Design child; // small, and soon draped
  child.choose(Choice::Figure, Figure::Child);
  document().replace(child.set(Field::Bust, 63.5), {});
  settle();
  WornPage* page = pages().worn;
  QSignalSpy drawn(page->findChild<WornEngine*>(), &WornEngine::drawn);
  window_->workbench().area().showPage(page);
  for (QCheckBox* box : page->findChildren<QCheckBox*>())
    box->setChecked(true);
  change([](Design& d) { d.set(Field::EaseBust, 9); });
  takeInHandTheLongest();
  for (QComboBox* box : page->findChildren<QComboBox*>())
    for (int i = 0; i < box->count(); ++i) {
      box->setCurrentIndex(i);
      Q_EMIT box->activated(i);
      expectAll(*page);
    }
  ASSERT_TRUE(QTest::qWaitFor([&] { return !drawn.isEmpty(); }, 60000));
  expectAll(*window_);
}

TEST_F(LanguageOfThePages, WithLettersTwiceAsLarge) {
  window_->settings().setTextSize(2);
  settle();
  for (QWidget* page : std::initializer_list<QWidget*>{
           pages().directions, pages().chart, pages().needles, pages().sizes, pages().cameOut,
           pages().diary, pages().finish, pages().booklet, pages().worn}) {
    window_->workbench().area().showPage(page);
    settle();
    expectRoom(*window_);
    // A table of figures may be wider than its page, which then scrolls to it; nothing else may.
    for (const QScrollArea* area : page->findChildren<QScrollArea*>())
      if (area->metaObject() == &QScrollArea::staticMetaObject && !area->findChild<QTableView*>()) {
        EXPECT_EQ(area->horizontalScrollBar()->maximum(), 0) << page->metaObject()->className();
      }
  }
  takeInHandTheLongest();
  for (QComboBox* box : pages().worn->findChildren<QComboBox*>())
    for (int i = 0; i < box->count(); ++i) {
      box->setCurrentIndex(i);
      Q_EMIT box->activated(i);
      expectRoom(*pages().worn);
    }
  EXPECT_EQ(window_->size(), QSize(1280, 800));
}

} // namespace
} // namespace scye::test
