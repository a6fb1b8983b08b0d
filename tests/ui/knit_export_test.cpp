// What is knitted from, as files: the same words and figures as on the page, opened by other
// programs.
#include "window_fixture.h"

#include "directions/row_table_csv.h"
#include "knitting/knit_files.h"
#include "knitting/knit_print.h"
#include "knitting/take_out.h"
#include "shell/knit_pages.h"

#include <QClipboard>
#include <QFile>
#include <QGuiApplication>
#include <QImage>
#include <QImageReader>
#include <QMimeData>
#include <QPrinter>
#include <QProcess>
#include <QRegularExpression>
#include <QSignalSpy>
#include <QStandardPaths>
#include <QTest>
#include <QXmlStreamReader>

namespace scye::test {
namespace {

class KnitExport : public WindowFixture {
protected:
  void SetUp() override { openDemo(); }
  [[nodiscard]] KnitFiles& files() { return window_->workbench().knitFiles(); }
  [[nodiscard]] const Derived& derived() { return document().derived(); }
  static QString run(const char* program, const QStringList& arguments) {
    const QString path = QStandardPaths::findExecutable(QString::fromLatin1(program));
    EXPECT_FALSE(path.isEmpty()) << program << " is needed to read with";
    QProcess process;
    process.start(path, arguments);
    EXPECT_TRUE(process.waitForFinished()) << program;
    return QString::fromUtf8(process.readAllStandardOutput());
  }
  static int pagesOf(const QString& pdf) {
    for (const QString& line : run("pdfinfo", {pdf}).split(u'\n'))
      if (line.startsWith(QStringLiteral("Pages:"))) return line.mid(6).trimmed().toInt();
    return 0;
  }
  // Words without their spaces and ligatures, which a PDF does not keep.
  static QString packed(const QString& text) {
    return text.normalized(QString::NormalizationForm_KC).simplified().remove(u' ');
  }
};

TEST_F(KnitExport, directionsAsTextHoldEveryLine) {
  QSignalSpy exported(&files().exports(), &ExportQueue::made);
  files().exportTo(OutputId::Directions, file("d.txt"));
  ASSERT_TRUE(isMade(files().exports()));
  EXPECT_EQ(exported.count(), 1);
  const QString text = QString::fromUtf8(contents(file("d.txt"))).simplified();
  for (const DirectionLine& line : directionLines(derived().directions, {builtinPhrases()}))
    EXPECT_TRUE(text.contains(QString::fromStdString(line.text).simplified())) << line.text;
}

TEST_F(KnitExport, directionsKeepHerTermsAndUnits) {
  window_->settings().setTerms(QStringLiteral("uk"));
  window_->settings().setUnit(LengthUnit::Inch);
  files().exportTo(OutputId::Directions, file("d.html"));
  ASSERT_TRUE(isMade(files().exports()));
  const QString html = QString::fromUtf8(contents(file("d.html")));
  EXPECT_TRUE(html.startsWith(QStringLiteral("<!DOCTYPE html>")));
  EXPECT_TRUE(html.contains(QStringLiteral("cast off")));
  EXPECT_FALSE(html.contains(QStringLiteral("bind off")));
  EXPECT_FALSE(html.contains(QStringLiteral(" cm")));
}

TEST_F(KnitExport, rowTableIsTheRowTable) {
  files().exportTo(OutputId::RowList, file("r.csv"));
  ASSERT_TRUE(isMade(files().exports()));
  EXPECT_EQ(contents(file("r.csv")).toStdString(), rowTableCsv(derived().knit));
}

TEST_F(KnitExport, chartAsSvgHasEveryPiece) {
  files().exportTo(OutputId::Chart, file("c.svg"));
  ASSERT_TRUE(isMade(files().exports()));
  QXmlStreamReader xml(contents(file("c.svg")));
  QStringList ids;
  while (!xml.atEnd()) {
    xml.readNext();
    if (xml.isStartElement() && xml.name() == u"g")
      ids.append(xml.attributes().value(QLatin1String("id")).toString());
  }
  EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
  for (const KnitPiece& piece : derived().knit.pieces)
    EXPECT_TRUE(ids.contains(QString::fromStdString(std::string(pieceKey(piece.id)))));
}

// A chart that is too large for a sheet is cut in parts, after a map of them.
TEST_F(KnitExport, chartAsPdfHasItsPiecesOnPagesOfTheirOwn) {
  files().exportTo(OutputId::Chart, file("c.pdf"));
  ASSERT_TRUE(isMade(files().exports()));
  EXPECT_GT(pagesOf(file("c.pdf")), int(derived().knit.pieces.size()));
  const QString text = run("pdftotext", {file("c.pdf"), QStringLiteral("-")});
  for (const char* piece : {"Back", "Right front", "Left front", "Sleeve"})
    EXPECT_TRUE(text.contains(QStringLiteral("Harbour jacket: ") + QLatin1String(piece))) << piece;
  EXPECT_FALSE(text.contains(QStringLiteral("Scale"))) << "a chart has none";
}

TEST_F(KnitExport, chartAsPng) {
  files().exportTo(OutputId::Chart, file("c.png"));
  ASSERT_TRUE(isMade(files().exports()));
  QImageReader reader(file("c.png"));
  const QSize size = reader.size();
  EXPECT_GT(size.height(), size.width()) << "all pieces, below one another";
  QImageReader::setAllocationLimit(0); // it is larger than Qt takes for harmless
  EXPECT_FALSE(reader.read().isNull()) << reader.errorString().toStdString();
}

// What a button of the window puts on the clipboard.
const QMimeData* copiedBy(TakeOut& button) {
  QSignalSpy copied(&button, &TakeOut::copied);
  QGuiApplication::clipboard()->clear();
  QTest::mouseClick(&button, Qt::LeftButton);
  EXPECT_TRUE(!copied.isEmpty() || copied.wait(20000)) << button.accessibleName().toStdString();
  return QGuiApplication::clipboard()->mimeData();
}

TEST_F(KnitExport, pictureChartAndDirectionsAreCopied) {
  const Wording wording = wordingOf(window_->settings());
  int found = 0;
  window_->actions().directions->trigger();
  window_->actions().chart->trigger();
  const QList<TakeOut*> all = window_->findChildren<TakeOut*>();
  for (TakeOut* button : all) {
    if (button->accessibleName() == u"The garment worn") continue; // tests/ui/worn_page_test.cpp
    if (button->accessibleName() == u"The chart") window_->actions().chart->trigger();
    if (button->accessibleName() == u"The directions") window_->actions().directions->trigger();
    const QMimeData* mime = copiedBy(*button);
    ASSERT_TRUE(mime);
    EXPECT_FALSE(mime->hasUrls()) << "a file is for dragging";
    if (button->accessibleName() == u"The directions") {
      EXPECT_EQ(mime->text().toStdString(), directionsText(derived().directions, wording));
      EXPECT_TRUE(mime->hasHtml());
    } else {
      QXmlStreamReader svg(mime->data(QStringLiteral("image/svg+xml")));
      while (!svg.atEnd())
        svg.readNext();
      EXPECT_FALSE(svg.hasError()) << button->accessibleName().toStdString();
      EXPECT_FALSE(QImage::fromData(mime->data(QStringLiteral("image/png"))).isNull());
    }
    ++found;
  }
  EXPECT_EQ(found, 3);
}

TEST_F(KnitExport, whatIsDraggedIsAFileToo) {
  OutputJob job{derived(), wordingOf(window_->settings())};
  job.piece = PieceId::Back;
  const TakenOut chart =
      pictureTaken(OutputId::Chart, job, QStringLiteral("a/b: back"), QDir(folder_.path()));
  EXPECT_FALSE(chart.problem);
  EXPECT_EQ(QFileInfo(chart.file).fileName(), QStringLiteral("a-b- back.svg"));
  const auto mime = mimeOf(chart, true);
  ASSERT_EQ(mime->urls().size(), 1);
  EXPECT_EQ(contents(mime->urls().front().toLocalFile()),
            mime->data(QStringLiteral("image/svg+xml")));
  const TakenOut none = directionsTaken(job, QStringLiteral("d"), QDir(file("nowhere")));
  ASSERT_TRUE(none.problem);
  EXPECT_TRUE(none.file.isEmpty());
}

TEST_F(KnitExport, printedDirectionsHoldEveryLineAndBeginAPageForEachPiece) {
  QPrinter printer(QPrinter::HighResolution);
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(file("p.pdf"));
  const Wording wording = wordingOf(window_->settings());
  EXPECT_TRUE(
      printDirections(derived().directions, wording, printer, [](double) { return false; }));
  EXPECT_FALSE(QFile::exists(file("p.pdf"))) << "it was given up";
  EXPECT_FALSE(printDirections(derived().directions, wording, printer));
  QString text = run("pdftotext", {QStringLiteral("-layout"), file("p.pdf"), QStringLiteral("-")});
  text.remove(QRegularExpression(QStringLiteral("\\n\\s*\\d+\\s*\\f"))); // page numbers
  text = packed(text);
  for (const DirectionLine& line : directionLines(derived().directions, {builtinPhrases()}))
    EXPECT_TRUE(text.contains(packed(QString::fromStdString(line.text)))) << line.text;
  EXPECT_GE(pagesOf(file("p.pdf")), 1 + int(derived().knit.pieces.size()));
}

TEST_F(KnitExport, printedChartHasItsPiecesOnPagesOfTheirOwn) {
  QPrinter printer(QPrinter::HighResolution);
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(file("p.pdf"));
  ASSERT_FALSE(printChart({derived(), wordingOf(window_->settings())}, printer));
  EXPECT_GT(pagesOf(file("p.pdf")), int(derived().knit.pieces.size()));
}

TEST_F(KnitExport, whatCannotBeWrittenIsSaid) {
  QSignalSpy failed(&files().exports(), &ExportQueue::failed);
  files().exportTo(OutputId::Directions, file("no/such/folder.txt"));
  EXPECT_FALSE(isMade(files().exports()));
  files().exportTo(OutputId::Directions, file("d.doc"));
  EXPECT_FALSE(isMade(files().exports()));
  files().exportTo(OutputId::RowList, file("r.txt"));
  EXPECT_FALSE(isMade(files().exports()));
  files().exportTo(OutputId::Chart, file("c.gif"));
  EXPECT_FALSE(isMade(files().exports()));
  EXPECT_EQ(failed.count(), 4);
  for (const char* name : {"d.doc", "r.txt", "c.gif"})
    EXPECT_FALSE(QFile::exists(file(name)));
}

} // namespace
} // namespace scye::test
