// Setting in the sleeve, as the window tells it: pins in rows and stitches, the ease between two of
// them, seams of unequal rows, how the sleeve hangs, and the cap's two fullnesses as a picture.
// With SCYE_PICTURES=folder the window is kept as it looks with a gathered cap.
#include "window_fixture.h"

#include "knitting/figure_table.h"
#include "panels/cap_shape_view.h"
#include "panels/panel_context.h"
#include "seam/hang.h"
#include "shell/knit_pages.h"

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QSpinBox>
#include <QTest>

namespace scye::test {
namespace {

void keep(QWidget& window, const char* name) {
  const QByteArray folder = qgetenv("SCYE_PICTURES");
  if (folder.isEmpty()) return;
  QApplication::processEvents();
  const QString path =
      QStringLiteral("%1/%2.png").arg(QString::fromLocal8Bit(folder), QLatin1String(name));
  EXPECT_TRUE(window.grab().save(path)) << path.toStdString();
}

class SeamHelpers : public WindowFixture {
protected:
  void SetUp() override {
    window_->resize(1600, 1000);
    openDemo();
    window_->actions().sizes->trigger();
    settle();
  }
  void edit(const std::function<void(Design&)>& change) {
    Design design = document().design();
    change(design);
    document().edit(QStringLiteral("change"), design);
    settle();
  }
  [[nodiscard]] const std::vector<SeamMarks>& marks() {
    return document().derived().directions.finishing.makingUp.marks;
  }
  [[nodiscard]] QString answer() {
    return named<QLabel>(QStringLiteral("Ease between the marks"))->text();
  }
};

TEST_F(SeamHelpers, pinsAreToldInRowsAndOnBindOffsInStitches) {
  auto* table = named<FigureTable>(QStringLiteral("Pin marks, right armhole"));
  ASSERT_EQ(table->rows().size(), qsizetype(marks()[0].marks.size() + marks()[1].marks.size()));
  const SeamMark& second = marks()[0].marks[1];
  EXPECT_EQ(table->rows().at(1).figures.at(0),
            QStringLiteral("%1 (%2)").arg(second.armhole.up).arg(second.armhole.row));
  EXPECT_EQ(table->rows().at(1).figures.at(1),
            QStringLiteral("%1 (%2)").arg(second.cap.up).arg(second.cap.row));
  EXPECT_EQ(table->rows().at(0).figures.at(1),
            QStringLiteral("underarm, %1 sts").arg(marks()[0].marks[0].cap.stitches));
  EXPECT_EQ(table->rows().at(qsizetype(marks()[0].marks.size()) - 1).figures.at(1),
            QStringLiteral("crown, %1 sts").arg(marks()[0].marks.back().cap.stitches));
}

TEST_F(SeamHelpers, theEaseBetweenTwoMarksIsToldByKeyboardAlone) {
  auto* from = named<QComboBox>(QStringLiteral("From mark"));
  auto* to = named<QComboBox>(QStringLiteral("To mark"));
  const int last = int(marks()[0].marks.size()) - 1;
  EXPECT_EQ(from->currentIndex(), 0);
  EXPECT_EQ(to->currentIndex(), last);
  const QString whole = answer();
  EXPECT_TRUE(whole.startsWith(QStringLiteral("ease +")));
  to->setFocus();
  QTest::keyClick(to, Qt::Key_Home);
  EXPECT_EQ(to->currentIndex(), 0);
  EXPECT_NE(answer(), whole);
  QTest::keyClick(to, Qt::Key_End);
  EXPECT_EQ(answer(), whole);
  auto* side = named<QComboBox>(QStringLiteral("Side of the armhole"));
  side->setFocus();
  QTest::keyClick(side, Qt::Key_Down);
  EXPECT_EQ(side->currentText(), QStringLiteral("Right armhole, front"));
  EXPECT_EQ(to->count(), int(marks()[1].marks.size()));
}

TEST_F(SeamHelpers, theEaseFollowsTheDesign) {
  const QString before = answer();
  edit([](Design& d) { d.choose(Choice::CapTop, CapTop::Gathered).set(Field::CapEase, 8); });
  EXPECT_NE(answer(), before);
  auto* table = named<FigureTable>(QStringLiteral("Pin marks, right armhole"));
  EXPECT_TRUE(std::any_of(table->rows().begin(), table->rows().end(), [](const FigureRow& row) {
    return row.name.contains(QStringLiteral("fullness begins"));
  }));
}

TEST_F(SeamHelpers, theLastMarkStaysTheShoulderWhenMarksAreAdded) {
  auto* to = named<QComboBox>(QStringLiteral("To mark"));
  const int before = to->count();
  ASSERT_EQ(to->currentIndex(), before - 1);
  edit([](Design& d) { d.set(Field::ArmholeDepth, 32); });
  ASSERT_GT(to->count(), before);
  EXPECT_EQ(to->currentIndex(), to->count() - 1);
}

TEST_F(SeamHelpers, ofASleeveThatCannotFitNoPinsAndNothingKnittedAreShown) {
  const auto shown = [&](const char* name) {
    for (const QWidget* w : window_->findChildren<QWidget*>())
      if (w->isVisible() && w->accessibleName().startsWith(QLatin1String(name))) return true;
    return false;
  };
  constexpr const char* kNames[] = {"Pin marks, right armhole", "Pin marks, left armhole",
                                    "Cap, knitted: ", "How the sleeve hangs"};
  for (const char* name : kNames)
    EXPECT_TRUE(shown(name)) << name;
  edit([](Design& d) { d.set(Field::EaseUpperArm, 32); });
  ASSERT_FALSE(document().derived().draft.cap.found);
  for (const char* name : kNames)
    EXPECT_FALSE(shown(name)) << name;
  EXPECT_EQ(answer(), QString());
  document().undo();
  settle();
  for (const char* name : kNames)
    EXPECT_TRUE(shown(name)) << name;
  EXPECT_TRUE(answer().startsWith(QStringLiteral("ease +"))) << "from the underarm to the shoulder";
}

TEST_F(SeamHelpers, edgesOfUnequalRowsGetARecipe) {
  auto* first = named<QSpinBox>(QStringLiteral("Rows of one edge"));
  auto* second = named<QSpinBox>(QStringLiteral("Rows of the other edge"));
  auto* how = named<QLabel>(QStringLiteral("How to sew them"));
  EXPECT_EQ(how->text(), QStringLiteral("sew row to row")) << "this garment's side seams";
  const auto type = [](QSpinBox* box, const QString& text) {
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, text);
    QTest::keyClick(box, Qt::Key_Return);
  };
  type(first, QStringLiteral("120"));
  type(second, QStringLiteral("126"));
  EXPECT_EQ(how->text(), QStringLiteral("sew 20 rows to 21 rows, 6 times"));
  edit([](Design& d) { d.set(Field::EaseBust, 12); });
  EXPECT_EQ(first->value(), 120) << "what she typed stays";
}

TEST_F(SeamHelpers, answersAndNotesAreNeverCut) {
  auto* area = window_->workbench().pages().sizes->findChild<QScrollArea*>();
  ASSERT_TRUE(area);
  const auto expectWhole = [&](const char* when) {
    QApplication::processEvents();
    for (const QLabel* label : area->findChildren<QLabel*>()) {
      if (!label->isVisible()) continue;
      const QSize least =
          label->wordWrap() ? QSize(0, label->heightForWidth(label->width())) : label->sizeHint();
      EXPECT_GE(label->height(), least.height()) << when << ": " << label->text().toStdString();
      EXPECT_GE(label->width(), least.width()) << when << ": " << label->text().toStdString();
      const int right = label->mapTo(area->widget(), label->rect().topRight()).x();
      EXPECT_LT(right, area->widget()->width()) << when << ": " << label->text().toStdString();
    }
  };
  expectWhole("at first");
  auto* first = named<QSpinBox>(QStringLiteral("Rows of one edge"));
  first->setValue(first->value() + 7);
  expectWhole("a longer answer");
  window_->actions().enlarge->trigger();
  for (const int width : {1000, 1280, 1600}) {
    window_->resize(width, 700);
    EXPECT_TRUE(QTest::qWaitFor([&] { return !area->horizontalScrollBar()->isVisible(); }))
        << width;
    expectWhole("another width");
  }
}

TEST_F(SeamHelpers, theFitSaysHowTheSleeveHangs) {
  auto* hang = named<QLabel>(QStringLiteral("How the sleeve hangs"));
  const auto expected = [&] {
    return phraseText(builtinPhrases(),
                      "hang." + std::string(hangKey(sleeveHang(document().derived().draft).hang)));
  };
  EXPECT_TRUE(hang->text().contains(expected())) << hang->text().toStdString();
  edit([](Design& d) { d.choose(Choice::WorkedOut, WorkedOut::CapEase).set(Field::CapHeight, 7); });
  EXPECT_TRUE(hang->text().contains(phraseText(builtinPhrases(), "hang.standsOut")))
      << hang->text().toStdString();
  EXPECT_TRUE(hang->toolTip().startsWith(QStringLiteral("Common practice")));
}

TEST_F(SeamHelpers, thePictureOfTheCapFollowsItsFullness) {
  window_->workbench().setStage(Stage::Drafting);
  window_->workbench().panel().focusField(Field::LowerFullness, false);
  settle();
  auto* view = named<CapShapeView>(QStringLiteral("Shape of the cap"));
  EXPECT_FALSE(view->toolTip().isEmpty());
  const auto told = [&] { return view->picture().groups.at(0).labels.at(1).text; };
  edit([](Design& d) { d.set(Field::LowerFullness, 0.4); });
  EXPECT_EQ(told(), "lower fullness at the underarm, 40 %");
  edit([](Design& d) { d.set(Field::LowerFullness, 0.6); });
  EXPECT_EQ(told(), "lower fullness at the underarm, 60 %");
  edit([](Design& d) { d.choose(Choice::CapTop, CapTop::Gathered).set(Field::CapEase, 8); });
  keep(*view->parentWidget(), "cap-shape");
  window_->actions().sizes->trigger();
  window_->actions().enlarge->trigger();
  auto* area = window_->workbench().pages().sizes->findChild<QScrollArea*>();
  ASSERT_TRUE(area);
  QApplication::processEvents();
  area->verticalScrollBar()->setValue(area->verticalScrollBar()->maximum());
  keep(*window_, "pins");
}

} // namespace
} // namespace scye::test
