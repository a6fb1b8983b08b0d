// How a line of the directions is set: a comfortable measure, headings apart from what they head,
// steps with a hanging indent, their rows in bold, the stitch count never broken from its word.
#pragma once

#include "directions/directions.h"

#include <QStyledItemDelegate>

class QTextLayout;

namespace scye {

class LineDelegate : public QStyledItemDelegate {
  Q_OBJECT
public:
  explicit LineDelegate(const Phrases& phrases, QObject* parent = nullptr)
      : QStyledItemDelegate(parent), phrases_(phrases) {}

  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                               const QModelIndex& index) const override;

private:
  const Phrases& phrases_;
};

} // namespace scye
