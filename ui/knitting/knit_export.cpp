#include "knitting/knit_export.h"

#include "directions/row_table_csv.h"
#include "document/disk.h"
#include "knitting/line_marks.h"
#include "model/plain_text.h"
#include "schematic/chart.h"

#include <QCoreApplication>
#include <QPrinter>
#include <QTextCursor>
#include <QTextDocument>

#include <memory>

namespace scye {
namespace {

struct KnitExportText {
  Q_DECLARE_TR_FUNCTIONS(KnitExport)
};

std::optional<QString> writeText(const QString& path, std::string_view text) {
  const auto problem = writeFile(path, text);
  if (!problem) return std::nullopt;
  return KnitExportText::tr("%1 could not be written: %2.").arg(path, *problem);
}

Picture titled(const std::string& title, Picture picture) {
  if (!title.empty()) picture.title = plainLine(title) + ": " + picture.title;
  return picture;
}

std::vector<PictureMaker> chartPages(const Phrases& phrases, const KnitGarment& knit,
                                     const std::string& title) {
  std::vector<PictureMaker> pages;
  for (const KnitPiece& piece : knit.pieces)
    pages.push_back([&phrases, &knit, &piece, &title](double textHeight) {
      ChartOptions options;
      options.textHeight = textHeight;
      return titled(title, chartPicture(piece, knit.lattice.size, phrases, options));
    });
  return pages;
}

constexpr double kPrintedPoints = 10;

struct PaperStyle {
  double size = 1; // of the text's letters
  bool bold = false;
  double above = 0, below = 0, hang = 0; // of their height
};

PaperStyle paperStyle(LineKind kind) {
  switch (kind) {
  case LineKind::Title:
    return {1.7, true, 0, 0.3, 0};
  case LineKind::Heading:
    return {1.3, true, 1.2, 0.4, 0};
  case LineKind::Part:
    return {1, false, 0.75, 0.2, 0};
  case LineKind::Note:
    return {1, false, 0, 0.2, 0};
  case LineKind::Step:
    return {1, false, 0, 0.16, 1.6};
  }
  return {};
}

// Set for paper line by line: the HTML document is for a reader of the web.
std::unique_ptr<QTextDocument> paperDirections(const Directions& directions, const Wording& wording,
                                               int dpi) {
  auto document = std::make_unique<QTextDocument>();
  QFont font(QStringLiteral("serif"));
  font.setPointSizeF(kPrintedPoints);
  document->setDefaultFont(font);
  document->setUndoRedoEnabled(false);
  QTextCursor cursor(document.get());
  // Printing scales a block's margins above and below, 96 dots to an inch, but not its indents.
  const double letter = kPrintedPoints * 96 / 72, wide = kPrintedPoints * dpi / 72;
  for (const DirectionLine& line : directionLines(directions, wording)) {
    const PaperStyle style = paperStyle(line.kind);
    QTextBlockFormat block;
    block.setTopMargin(style.above * letter);
    block.setBottomMargin(style.below * letter);
    block.setLeftMargin(style.hang * wide);
    block.setTextIndent(-style.hang * wide);
    block.setLineHeight(112, QTextBlockFormat::ProportionalHeight);
    if (line.kind == LineKind::Heading && line.piece)
      block.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
    QTextCharFormat letters;
    letters.setFontPointSize(style.size * kPrintedPoints);
    if (document->isEmpty())
      cursor.setBlockFormat(block);
    else
      cursor.insertBlock(block);
    const LineMarks marks = marksOf(line);
    const auto write = [&](qsizetype from, qsizetype to, bool bold) {
      letters.setFontWeight(bold ? QFont::DemiBold : QFont::Normal);
      cursor.insertText(marks.text.mid(from, to - from), letters);
    };
    write(0, marks.head, true);
    write(marks.head, marks.count, style.bold);
    write(marks.count, marks.text.size(), true);
  }
  return document;
}

} // namespace

std::optional<QString> exportDirections(const Directions& directions, const Wording& wording,
                                        const QString& path) {
  if (path.endsWith(QLatin1String(".html"), Qt::CaseInsensitive))
    return writeText(path, directionsHtml(directions, wording));
  if (path.endsWith(QLatin1String(".txt"), Qt::CaseInsensitive))
    return writeText(path, directionsText(directions, wording));
  return KnitExportText::tr("%1: directions end in .txt or .html.").arg(path);
}

Rendered renderChart(const Phrases& phrases, const KnitGarment& knit, const std::string& title,
                     const QString& name, ExportOptions options) {
  options.toScale = false;
  if (name.endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive))
    return renderPages(chartPages(phrases, knit, title), name, options);
  const Picture picture = titled(title, garmentCharts(knit, phrases));
  return renderPicture([&](double) { return picture; }, name, options);
}

std::optional<QString> exportChart(const Phrases& phrases, const KnitGarment& knit,
                                   const std::string& title, const QString& path,
                                   const ExportOptions& options) {
  return writeRendered(renderChart(phrases, knit, title, path, options), path);
}

std::optional<QString> exportRows(const KnitGarment& knit, const QString& path) {
  if (!path.endsWith(QLatin1String(".csv"), Qt::CaseInsensitive))
    return KnitExportText::tr("%1: a row table ends in .csv.").arg(path);
  return writeText(path, rowTableCsv(knit));
}

std::optional<QString> printDirections(const Directions& directions, const Wording& wording,
                                       QPrinter& printer, const GoOn& goOn) {
  const auto document = paperDirections(directions, wording, printer.resolution());
  if (goOn && !goOn(0.5)) return givenUp();
  document->print(&printer);
  return std::nullopt;
}

std::optional<QString> printChart(const Phrases& phrases, const KnitGarment& knit,
                                  const std::string& title, QPrinter& printer, const GoOn& goOn) {
  return printPages(chartPages(phrases, knit, title), printer, false, goOn);
}

} // namespace scye
