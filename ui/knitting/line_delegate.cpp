#include "knitting/line_delegate.h"

#include "knitting/line_marks.h"
#include "knitting/lines_view.h"
#include "paint/picture_colours.h"

#include <QPainter>
#include <QScrollBar>
#include <QTextLayout>

#include <cmath>

namespace scye {
namespace {

constexpr int kMeasure = 90; // characters

struct Setting {
  double size = 1; // of the widget's letters
  bool bold = false;
  double above = 0.12, below = 0.12; // air, lines
  double indent = 0, hang = 0;       // characters; of the first line, and of those after it
};

Setting settingOf(LineKind kind) {
  switch (kind) {
  case LineKind::Title:
    return {1.5, true, 0.5, 0.3, 0, 0};
  case LineKind::Warning:
    return {1.08, true, 0.1, 0.25, 0, 0};
  case LineKind::Heading:
    return {1.3, true, 0.6, 0.3, 0, 0};
  case LineKind::Part:
    return {1.08, true, 0.9, 0.2, 0, 0};
  case LineKind::Note:
    return {1.08, false, 0.1, 0.25, 0, 0};
  case LineKind::Step:
    return {1.08, false, 0.17, 0.17, 0, 3};
  }
  return {};
}

struct Measures {
  QFont font;
  double em = 0, line = 0, width = 0;
};

Measures measuresOf(const QStyleOptionViewItem& option, const Setting& setting) {
  Measures m;
  m.font = option.font;
  m.font.setPointSizeF(setting.size * m.font.pointSizeF());
  m.font.setBold(setting.bold);
  const QFontMetricsF plain(option.font);
  m.em = plain.averageCharWidth();
  m.line = plain.height();
  const auto* view = qobject_cast<const QListView*>(option.widget);
  const int bar = view ? view->verticalScrollBar()->sizeHint().width() : 0;
  const double room = (view ? view->width() : option.rect.width()) - bar - 5 * m.em;
  m.width = std::clamp(room, 20 * m.em, 1.08 * kMeasure * m.em);
  return m;
}

void mark(QTextLayout& layout, const Phrases& phrases, const DirectionLine& line,
          const QColor& pale) {
  const LineMarks marks = marksOf(phrases, line);
  QList<QTextLayout::FormatRange> formats;
  const auto format = [&](qsizetype from, qsizetype to, QFont::Weight weight,
                          const QColor& colour) {
    QTextLayout::FormatRange range;
    range.start = int(from), range.length = int(to - from);
    range.format.setFontWeight(weight);
    if (colour.isValid()) range.format.setForeground(colour);
    formats.append(range);
  };
  if (line.kind == LineKind::Step) {
    format(0, marks.head, QFont::DemiBold, {});
    format(marks.count, marks.text.size(), QFont::DemiBold, {});
  } else if (line.kind == LineKind::Part && marks.head > 0) {
    format(marks.head, marks.text.size(), QFont::Normal, pale);
  }
  layout.setText(marks.text);
  layout.setFormats(formats);
}

double lay(QTextLayout& layout, const Setting& setting, const Measures& m) {
  double y = 0;
  layout.beginLayout();
  for (int i = 0;; ++i) {
    QTextLine line = layout.createLine();
    if (!line.isValid()) break;
    const double in = (i == 0 ? setting.indent : setting.hang) * m.em;
    line.setLineWidth(m.width - in);
    line.setPosition({in, y});
    y += 1.12 * line.height();
  }
  layout.endLayout();
  return y;
}

double layOut(QTextLayout& layout, const Phrases& phrases, const QModelIndex& index,
              const Setting& setting, const Measures& m, const QColor& pale) {
  const auto* model = qobject_cast<const LinesModel*>(index.model());
  layout.setFont(m.font);
  mark(layout, phrases, model->line(index), pale);
  return lay(layout, setting, m);
}

LineKind kindOf(const QModelIndex& index) {
  return qobject_cast<const LinesModel*>(index.model())->line(index).kind;
}

} // namespace

QSize LineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const Setting setting = settingOf(kindOf(index));
  const Measures m = measuresOf(option, setting);
  QTextLayout layout;
  const double height = layOut(layout, phrases_, index, setting, m, {});
  return {int(m.width), int(std::ceil(height + (setting.above + setting.below) * m.line))};
}

void LineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
  const Setting setting = settingOf(kindOf(index));
  const Measures m = measuresOf(option, setting);
  const QPalette& palette = option.palette;
  const QColor ground = palette.color(QPalette::Base), ink = palette.color(QPalette::Text),
               lead = palette.color(QPalette::Highlight);
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  const QRectF row = QRectF(option.rect).adjusted(m.em / 2, 0, -m.em / 2, 0);
  const bool chosen = option.state & QStyle::State_Selected;
  const bool pointed = option.state & QStyle::State_MouseOver;
  if (chosen || pointed) {
    painter->setPen(Qt::NoPen);
    painter->setBrush(mixed(ground, lead, chosen ? 0.16 : 0.07));
    painter->drawRoundedRect(row, m.em / 3, m.em / 3);
  }
  if (chosen) {
    painter->setBrush(lead);
    painter->drawRect(QRectF(row.left(), row.top(), m.em / 3, row.height()));
  }
  QTextLayout layout;
  layOut(layout, phrases_, index, setting, m, mixed(ground, ink, 0.7));
  painter->setPen(setting.bold || kindOf(index) == LineKind::Step ? ink : mixed(ground, ink, 0.8));
  layout.draw(painter, option.rect.topLeft() + QPointF(2 * m.em, setting.above * m.line));
  painter->restore();
}

} // namespace scye
