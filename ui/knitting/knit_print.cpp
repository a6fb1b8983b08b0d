#include "knitting/knit_print.h"

#include "knitting/line_marks.h"

#include <QPrinter>
#include <QTextCursor>
#include <QTextDocument>

#include <memory>

namespace scye {
namespace {

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
  case LineKind::Warning:
    return {1, true, 0, 0.2, 0};
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
    const LineMarks marks = marksOf(wording.phrases, line);
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

std::optional<QString> printDirections(const Directions& directions, const Wording& wording,
                                       QPrinter& printer, const GoOn& goOn) {
  const auto document = paperDirections(directions, wording, printer.resolution());
  if (goOn && !goOn(0.5)) return givenUp();
  document->print(&printer);
  return std::nullopt;
}

std::optional<QString> printChart(const OutputJob& job, QPrinter& printer) {
  return printOutput(OutputId::Chart, job, printer);
}

} // namespace scye
