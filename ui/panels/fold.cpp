#include "panels/fold.h"

#include "look/quiet_button.h"

#include <QVBoxLayout>

#include <utility>

namespace scye {
namespace {

// What is made late stands last in the keyboard's order: it is moved to follow `before`.
void followInTabOrder(QWidget* before, const QWidget* body) {
  QList<QWidget*> stops;
  for (QWidget* w = body->nextInFocusChain(); body->isAncestorOf(w); w = w->nextInFocusChain())
    if (w->focusPolicy() != Qt::NoFocus && !w->focusProxy()) stops.append(w);
  for (QWidget* stop : stops)
    QWidget::setTabOrder(std::exchange(before, stop), stop);
}

} // namespace

Fold::Fold(Rank rank, const QString& title, Make make, QWidget* parent)
    : QWidget(parent), rank_(rank),
      head_(new QuietButton(
          rank == Rank::Section ? QuietButton::Looks::Heading : QuietButton::Looks::Link, this)),
      make_(std::move(make)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins({});
  column->setSpacing(0);
  head_->setText(title);
  head_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  head_->setAccessibleName(title);
  column->addWidget(head_);
  connect(head_, &QuietButton::toggled, this, &Fold::setOpen);
}

bool Fold::isOpen() const {
  return head_->isChecked();
}

QWidget* Fold::body() {
  if (!body_) {
    body_ = make_();
    layout()->addWidget(body_);
    followInTabOrder(head_, body_);
    body_->setVisible(isOpen());
  }
  return body_;
}

QWidget* Fold::firstStop() {
  const QWidget* inside = body();
  for (QWidget* w = head_->nextInFocusChain(); w != head_; w = w->nextInFocusChain())
    if (inside->isAncestorOf(w) && (w->focusPolicy() & Qt::TabFocus) != 0) return w;
  return head_;
}

void Fold::setOpen(bool open) {
  head_->setChecked(open);
  if (open || body_) body()->setVisible(open);
  Q_EMIT opened(open);
}

} // namespace scye
