#include "look/scrolled_column.h"

#include <QScrollArea>
#include <QVBoxLayout>

namespace scye {

QVBoxLayout* scrolledColumn(QWidget& page) {
  const int gap = page.fontMetrics().averageCharWidth();
  auto* inside = new QWidget;
  auto* column = new QVBoxLayout(inside);
  column->setContentsMargins(2 * gap, gap, 2 * gap, gap);
  auto* scroll = new QScrollArea(&page);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setWidget(inside);
  auto* all = new QVBoxLayout(&page);
  all->setContentsMargins({});
  all->addWidget(scroll);
  return column;
}

} // namespace scye
