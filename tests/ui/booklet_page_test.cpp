// The booklet on its page, in a file and from the printer: the same pages, whatever its paper and
// letters.
#include "window_fixture.h"

#include "knitting/booklet_view.h"
#include "knitting/directions_page.h"
#include "knitting/knit_files.h"
#include "shell/knit_pages.h"
#include "shell/work_area.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QPrinter>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>

namespace scye::test {
namespace {

class BookletPreview : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    window_->resize(1280, 800);
    window_->show();
    show();
  }
  void show() {
    window_->workbench().area().showPage(&page());
    settle();
    waitForPages();
  }
  [[nodiscard]] BookletPage& page() { return *window_->workbench().pages().booklet; }
  [[nodiscard]] BookletView& view() { return page().view(); }
  void waitForPages() {
    QSignalSpy moved(&view(), &BookletView::pageMoved);
    while (!page().isLaidOut())
      ASSERT_TRUE(moved.wait(60000));
  }
  // Every word of every page, where it stands.
  [[nodiscard]] std::vector<Sheet> sheets() {
    const Settings& settings = window_->settings();
    return sheetsOf(
        info(OutputId::Booklet),
        {document().derived(), wordingOf(settings), settings.exportOptions(), {}, today()},
        FileFormat::Pdf);
  }
  // PDF writes a count of its pages.
  [[nodiscard]] static int pagesIn(const QString& pdf) {
    const QByteArray bytes = contents(pdf);
    const qsizetype at = bytes.lastIndexOf("/Count ");
    return at < 0 ? 0 : bytes.mid(at + 7, 6).split('\n').front().simplified().toInt();
  }
  void expectTheSameFromFileAndPrinter() {
    KnitFiles& files = window_->workbench().knitFiles();
    files.exportTo(OutputId::Booklet, file("b.pdf"));
    ASSERT_TRUE(isMade(files.exports()));
    EXPECT_EQ(pagesIn(file("b.pdf")), view().pageCount());
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(file("p.pdf"));
    const ExportOptions options = window_->settings().exportOptions();
    printer.setPageSize(
        QPageSize(options.paper == Paper::Letter ? QPageSize::Letter : QPageSize::A4));
    ASSERT_FALSE(printOutput(
        OutputId::Booklet,
        {document().derived(), wordingOf(window_->settings()), options, {}, today()}, printer));
    EXPECT_EQ(pagesIn(file("p.pdf")), view().pageCount());
  }
};

TEST_F(BookletPreview, showsThePagesOfTheFile) {
  EXPECT_EQ(view().pageCount(), int(sheets().size()));
  EXPECT_GE(view().pageCount(), 8);
  expectTheSameFromFileAndPrinter();
}

TEST_F(BookletPreview, letterAndLargePrintAreChoicesThatHoldForAll) {
  const int before = view().pageCount();
  QCheckBox* large = nullptr;
  for (QCheckBox* box : page().findChildren<QCheckBox*>())
    large = box;
  ASSERT_TRUE(large);
  large->click();
  waitForPages();
  EXPECT_GT(view().pageCount(), before);
  EXPECT_TRUE(window_->settings().exportOptions().largePrint);
  expectTheSameFromFileAndPrinter();
  auto* paper = named<QComboBox>(QStringLiteral("Paper"), &page());
  ASSERT_TRUE(paper);
  QTest::keyClick(paper, Qt::Key_Down);
  waitForPages();
  EXPECT_EQ(window_->settings().exportOptions().paper, Paper::Letter);
  EXPECT_TRUE(window_->settings().exportOptions().largePrint) << "the paper has not changed it";
  EXPECT_EQ(view().pageCount(), int(sheets().size()));
  expectTheSameFromFileAndPrinter();
}

TEST_F(BookletPreview, isPaintedWhereItIsSeenAndScrolls) {
  view().showPage(4);
  EXPECT_EQ(view().page(), 4);
  QSignalSpy seen(&view(), &BookletView::painted);
  while (!view().isPainted())
    ASSERT_TRUE(seen.wait());
  const QImage image = view().viewport()->grab().toImage();
  int dark = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x)
      dark += qGray(image.pixel(x, y)) < 60;
  EXPECT_GT(dark, 200) << "words";
  const int before = view().verticalScrollBar()->value();
  view().setFocus();
  QTest::keyClick(&view(), Qt::Key_PageDown);
  EXPECT_GT(view().verticalScrollBar()->value(), before);
}

TEST_F(BookletPreview, followsTheDesign) {
  document().edit(QStringLiteral("Title"), [&] {
    Design design = document().design();
    design.title = "Another name";
    return design;
  }());
  settle();
  waitForPages();
  EXPECT_EQ(view().pages().front().picture.title, "Another name");
}

TEST_F(BookletPreview, whereNothingIsKnittedItSaysSo) {
  document().edit(QStringLiteral("No swatch"), Design());
  settle();
  waitForPages();
  if (document().derived().knit.pieces.empty()) {
    EXPECT_EQ(view().pageCount(), 0);
    EXPECT_FALSE(view().message().isEmpty());
  } else {
    EXPECT_GT(view().pageCount(), 0);
  }
}

} // namespace
} // namespace scye::test
