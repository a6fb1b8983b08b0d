#include "shell/work_area.h"

#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

namespace scye {

WorkArea::WorkArea(QWidget* table, QWidget* parent)
    : QSplitter(Qt::Vertical, parent), lower_(new QWidget), tabs_(new QTabBar),
      pages_(new QStackedWidget) {
  addWidget(table);
  auto* column = new QVBoxLayout(lower_);
  column->setContentsMargins({});
  column->setSpacing(0);
  tabs_->setDocumentMode(true);
  tabs_->setExpanding(false);
  tabs_->setDrawBase(false);
  tabs_->setAccessibleName(tr("What she knits from"));
  column->addWidget(tabs_);
  column->addWidget(pages_, 1);
  addWidget(lower_);
  lower_->hide();
  setStretchFactor(0, 3);
  setStretchFactor(1, 2);
  connect(tabs_, &QTabBar::currentChanged, pages_, &QStackedWidget::setCurrentIndex);
}

void WorkArea::addPage(const QString& title, QWidget* page) {
  pages_->addWidget(page);
  tabs_->addTab(title);
  lower_->show();
}

void WorkArea::showPage(QWidget* page) {
  tabs_->setCurrentIndex(pages_->indexOf(page));
  if (sizes().value(1) == 0) setSizes({height() / 2, height() / 2});
}

} // namespace scye
