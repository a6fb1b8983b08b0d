#include "look/scrolled.h"

#include <QScrollArea>
#include <QVBoxLayout>

namespace scye {

void fillScrolled(QWidget& page, QWidget* inside) {
  auto* scroll = new QScrollArea(&page);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setWidget(inside);
  auto* all = new QVBoxLayout(&page);
  all->setContentsMargins({});
  all->addWidget(scroll);
}

} // namespace scye
