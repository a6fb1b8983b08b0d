#include "panels/fold.h"

#include "look/icons.h"

#include <QToolButton>
#include <QVBoxLayout>

namespace scye {

Fold::Fold(Rank rank, const QString& title, Make make, QWidget* parent)
    : QWidget(parent), rank_(rank), head_(new QToolButton(this)), make_(std::move(make)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins({});
  column->setSpacing(0);
  head_->setText(title);
  head_->setCheckable(true);
  head_->setAutoRaise(true);
  head_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  head_->setFocusPolicy(Qt::StrongFocus);
  head_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  head_->setAccessibleName(title);
  column->addWidget(head_);
  connect(head_, &QToolButton::toggled, this, &Fold::setOpen);
  dress();
}

void Fold::dress() {
  QFont font = this->font();
  font.setBold(rank_ == Rank::Section);
  head_->setFont(font);
  head_->setIcon(icon(isOpen() ? "open-down" : "open-right"));
  const int size = fontMetrics().ascent();
  head_->setIconSize({size, size});
}

bool Fold::isOpen() const { return head_->isChecked(); }

QWidget* Fold::body() {
  if (!body_) {
    body_ = make_();
    layout()->addWidget(body_);
    body_->setVisible(isOpen());
  }
  return body_;
}

void Fold::setOpen(bool open) {
  head_->setChecked(open);
  if (open || body_) body()->setVisible(open);
  dress();
  Q_EMIT opened(open);
}

void Fold::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) dress();
}

} // namespace scye
