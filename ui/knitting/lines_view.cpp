#include "knitting/lines_view.h"

#include "knitting/line_delegate.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QResizeEvent>
#include <QScrollBar>

#include <algorithm>

namespace scye {

int LinesModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : int(lines_.size());
}

QVariant LinesModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || role != Qt::DisplayRole) return {};
  return QString::fromStdString(line(index).text);
}

void LinesModel::setLines(std::vector<DirectionLine> lines) {
  const bool same =
      std::equal(lines.begin(), lines.end(), lines_.begin(), lines_.end(),
                 [](const DirectionLine& a, const DirectionLine& b) { return a.kind == b.kind; });
  if (!same) {
    beginResetModel();
    lines_ = std::move(lines);
    endResetModel();
    return;
  }
  lines_.swap(lines);
  for (int i = 0; i < int(lines.size()); ++i)
    if (lines[std::size_t(i)].text != lines_[std::size_t(i)].text)
      Q_EMIT dataChanged(index(i), index(i));
}

LinesView::LinesView(const Phrases& phrases, QWidget* parent)
    : QListView(parent), model_(new LinesModel(this)) {
  setModel(model_);
  setItemDelegate(new LineDelegate(phrases, this));
  setFrameShape(QFrame::NoFrame);
  setResizeMode(QListView::Adjust);
  setVerticalScrollMode(ScrollPerPixel);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setSelectionMode(SingleSelection);
  setEditTriggers(NoEditTriggers);
  setMouseTracking(true);
  setAccessibleName(tr("Directions"));
}

const DirectionLine* LinesView::current() const {
  return currentIndex().isValid() ? &model_->line(currentIndex()) : nullptr;
}
const DirectionLine* LinesView::pointed() const {
  return pointed_.isValid() ? &model_->line(pointed_) : nullptr;
}

// The line that stands for `line` now: the same rows, or those that hold its first row.
QModelIndex LinesView::alike(const DirectionLine& line) const {
  QModelIndex best;
  for (int i = 0; i < model_->rowCount(); ++i) {
    const DirectionLine& other = model_->lines()[std::size_t(i)];
    if (other.kind != line.kind || other.section != line.section || other.first > line.first)
      continue;
    best = model_->index(i);
  }
  return best;
}

void LinesView::goToRow(SectionId section, int row) {
  for (int i = 0; i < model_->rowCount(); ++i) {
    const DirectionLine& line = model_->lines()[std::size_t(i)];
    if (line.kind != LineKind::Step || line.section != section || row < line.first ||
        row > line.last)
      continue;
    setCurrentIndex(model_->index(i));
    scrollTo(model_->index(i), PositionAtCenter);
    return;
  }
}

void LinesView::setLines(std::vector<DirectionLine> lines, bool sameText) {
  const QModelIndex top = indexAt(QPoint(viewport()->width() / 2, 0));
  const int offset = top.isValid() ? visualRect(top).top() : 0;
  const std::optional<DirectionLine> topLine =
      sameText && top.isValid() ? std::optional(model_->line(top)) : std::nullopt;
  const std::optional<DirectionLine> at =
      sameText && current() ? std::optional(*current()) : std::nullopt;
  const int count = model_->rowCount(), topRow = top.row();
  bool anew = false;
  const auto reset = connect(model_, &QAbstractItemModel::modelReset, [&] { anew = true; });
  model_->setLines(std::move(lines));
  disconnect(reset);
  doItemsLayout();
  if (!sameText) {
    setCurrentIndex({});
    clearSelection();
    scrollToTop();
    return;
  }
  if (anew && at) setCurrentIndex(alike(*at));
  if (topLine) {
    const QModelIndex now =
        !anew && count == model_->rowCount() ? model_->index(topRow) : alike(*topLine);
    QScrollBar* bar = verticalScrollBar();
    bar->setValue(bar->value() + visualRect(now).top() - offset);
  }
  Q_EMIT currentMoved(); // its rows may be others
}

void LinesView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QListView::currentChanged(current, previous);
  Q_EMIT currentMoved();
}

void LinesView::point(const QModelIndex& index) {
  if (pointed_ == index) return;
  pointed_ = index;
  Q_EMIT pointedMoved();
}

void LinesView::mouseMoveEvent(QMouseEvent* event) {
  QListView::mouseMoveEvent(event);
  point(indexAt(event->position().toPoint()));
}

bool LinesView::viewportEvent(QEvent* event) {
  if (event->type() == QEvent::Leave) point({});
  return QListView::viewportEvent(event);
}

void LinesView::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && currentIndex().isValid()) {
    setCurrentIndex({});
    clearSelection();
    return;
  }
  if (event->matches(QKeySequence::Copy) && current()) {
    QGuiApplication::clipboard()->setText(QString::fromStdString(current()->text));
    return;
  }
  QListView::keyPressEvent(event);
}

// A list lays its items out anew by itself only where its height has changed; lines break by its
// width.
void LinesView::resizeEvent(QResizeEvent* event) {
  QListView::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) scheduleDelayedItemsLayout();
}

void LinesView::changeEvent(QEvent* event) {
  QListView::changeEvent(event);
  if (event->type() == QEvent::FontChange) scheduleDelayedItemsLayout();
}

} // namespace scye
