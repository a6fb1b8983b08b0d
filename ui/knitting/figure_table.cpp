#include "knitting/figure_table.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>

namespace scye {

FigureModel::FigureModel(QStringList columns, QObject* parent)
    : QAbstractTableModel(parent), columns_(std::move(columns)) {}

void FigureModel::setRows(const QList<FigureRow>& rows) {
  if (rows == rows_) return;
  if (rows.size() != rows_.size()) {
    beginResetModel();
    rows_ = rows;
    endResetModel();
    return;
  }
  rows_ = rows;
  Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

int FigureModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : int(rows_.size());
}
int FigureModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : int(columns_.size());
}

QVariant FigureModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const FigureRow& row = rows_[index.row()];
  if (role == Qt::DisplayRole)
    return index.column() == 0 ? row.name : row.figures.value(index.column() - 1);
  if (role == Qt::TextAlignmentRole)
    return QVariant(Qt::AlignVCenter | (index.column() == 0 ? Qt::AlignLeft : Qt::AlignRight));
  return {};
}

QVariant FigureModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::DisplayRole) return columns_[section];
  if (role == Qt::TextAlignmentRole)
    return QVariant(Qt::AlignVCenter | (section == 0 ? Qt::AlignLeft : Qt::AlignRight));
  return {};
}

FigureTable::FigureTable(const QString& name, const QStringList& columns, QWidget* parent)
    : QTableView(parent), model_(new FigureModel(columns, this)) {
  setModel(model_);
  setAccessibleName(name);
  setFrameShape(NoFrame);
  setShowGrid(false);
  setWordWrap(false);
  setEditTriggers(NoEditTriggers);
  setSelectionMode(SingleSelection);
  setSelectionBehavior(SelectRows);
  setTabKeyNavigation(false);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  verticalHeader()->hide();
  horizontalHeader()->setSectionsClickable(false);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  fitColumns(true);
}

void FigureTable::setRows(const QList<FigureRow>& rows) {
  const bool anew = rows.size() != model_->rowCount();
  model_->setRows(rows);
  fitColumns(anew);
}

// Of the same table columns only grow: figures that jump about during a drag cannot be read.
void FigureTable::fitColumns(bool anew) {
  const int gap = 2 * fontMetrics().averageCharWidth(), line = fontMetrics().height();
  verticalHeader()->setDefaultSectionSize(line * 3 / 2);
  verticalHeader()->setMinimumSectionSize(line);
  const QSize before = sizeHint();
  for (int i = 0; i < model_->columnCount(); ++i) {
    int width = horizontalHeader()->sectionSizeHint(i);
    for (int row = 0; row < model_->rowCount(); ++row)
      width =
          std::max(width, fontMetrics().horizontalAdvance(model_->index(row, i).data().toString()));
    width += gap;
    if (anew || width > columnWidth(i)) setColumnWidth(i, width);
  }
  if (sizeHint() != before) updateGeometry();
}

QSize FigureTable::sizeHint() const {
  int width = 0;
  for (int i = 0; i < model_->columnCount(); ++i)
    width += columnWidth(i);
  return {width, horizontalHeader()->sizeHint().height() +
                     model_->rowCount() * verticalHeader()->defaultSectionSize()};
}

void FigureTable::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::FontChange) fitColumns(true);
}

// It never scrolls itself: the page does.
void FigureTable::wheelEvent(QWheelEvent* event) {
  event->ignore();
}

void FigureTable::keyPressEvent(QKeyEvent* event) {
  if (!event->matches(QKeySequence::Copy) || !currentIndex().isValid()) {
    QTableView::keyPressEvent(event);
    return;
  }
  const FigureRow& row = model_->rows()[currentIndex().row()];
  QGuiApplication::clipboard()->setText((QStringList(row.name) + row.figures).join(u'\t'));
}

} // namespace scye
