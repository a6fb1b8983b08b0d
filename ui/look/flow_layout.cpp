#include "look/flow_layout.h"

#include <QHBoxLayout>
#include <QWidget>

#include <algorithm>

namespace scye {
namespace {

struct FlowItem {
  QLayoutItem* item;
  int width;
  [[nodiscard]] bool expands() const { return bool(item->expandingDirections() & Qt::Horizontal); }
  [[nodiscard]] int height() const {
    return item->hasHeightForWidth() ? item->heightForWidth(width) : item->sizeHint().height();
  }
};

struct FlowLine {
  QList<FlowItem> items;
  int width = 0, height = 0;
};

// What is left of a line goes to the items that expand.
void fill(FlowLine& line, int width) {
  const int expanding =
      int(std::ranges::count_if(line.items, [](const FlowItem& item) { return item.expands(); }));
  int left = std::max(0, width - line.width), number = expanding;
  for (FlowItem& item : line.items) {
    if (item.expands()) {
      const int share = left / number--;
      item.width += share;
      left -= share;
    }
    line.height = std::max(line.height, item.height());
  }
}

QList<FlowLine> linesOf(const QList<QLayoutItem*>& items, int width, int gap) {
  QList<FlowLine> lines;
  for (QLayoutItem* item : items) {
    if (item->isEmpty()) continue; // hidden
    const int wide = std::min(item->sizeHint().width(), width);
    if (lines.isEmpty() || lines.last().width + gap + wide > width) lines.append(FlowLine{});
    FlowLine& line = lines.last();
    line.width += wide + (line.items.isEmpty() ? 0 : gap);
    line.items.append({item, wide});
  }
  for (FlowLine& line : lines)
    fill(line, width);
  return lines;
}

} // namespace

FlowLayout::~FlowLayout() {
  while (!items_.isEmpty())
    delete items_.takeLast(); // a layout among them asks to be taken out of this one
}

void FlowLayout::addTogether(std::initializer_list<QWidget*> widgets) {
  auto* row = new QHBoxLayout;
  for (QWidget* widget : widgets)
    row->addWidget(widget);
  addLayout(row);
}

void FlowLayout::addLayout(QLayout* layout) {
  addChildLayout(layout);
  addItem(layout);
}

void FlowLayout::addItem(QLayoutItem* item) {
  items_.append(item);
  invalidate();
}

QLayoutItem* FlowLayout::takeAt(int index) {
  return index >= 0 && index < items_.size() ? items_.takeAt(index) : nullptr;
}

int FlowLayout::heightForWidth(int width) const {
  return arrange({0, 0, width, 0}, false);
}

QSize FlowLayout::sizeHint() const {
  int wide = 0, high = 0, count = 0;
  for (const QLayoutItem* item : items_)
    if (!item->isEmpty()) {
      wide += item->sizeHint().width() + (count++ > 0 ? std::max(0, spacing()) : 0);
      high = std::max(high, item->sizeHint().height());
    }
  const QMargins m = contentsMargins();
  return {wide + m.left() + m.right(), high + m.top() + m.bottom()};
}

QSize FlowLayout::minimumSize() const {
  QSize least(0, 0);
  for (const QLayoutItem* item : items_)
    if (!item->isEmpty()) least = least.expandedTo(item->minimumSize());
  const QMargins m = contentsMargins();
  return least + QSize(m.left() + m.right(), m.top() + m.bottom());
}

void FlowLayout::setGeometry(const QRect& place) {
  QLayout::setGeometry(place);
  arrange(place, true);
}

int FlowLayout::arrange(const QRect& place, bool put) const {
  const QMargins m = contentsMargins();
  const QRect room = place.marginsRemoved(m);
  const int gap = std::max(0, spacing());
  const bool mirrored = parentWidget() && parentWidget()->isRightToLeft();
  int y = room.y();
  for (const FlowLine& line : linesOf(items_, room.width(), gap)) {
    int x = room.x();
    for (const FlowItem& item : line.items) {
      const QRect at(x, y, item.width, line.height);
      if (put)
        item.item->setGeometry(mirrored ? QRect(room.left() + room.right() - at.right(), at.y(),
                                                at.width(), at.height())
                                        : at);
      x += item.width + gap;
    }
    y += line.height + gap;
  }
  const int high = y > room.y() ? y - gap - room.y() : 0;
  return high + m.top() + m.bottom();
}

} // namespace scye
