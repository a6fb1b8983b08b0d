#include "shell/banner.h"

#include "fit/severity.h"
#include "look/flow_layout.h"
#include "look/icons.h"
#include "model/plain_text.h"
#include "paint/picture_colours.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QToolButton>

namespace scye {

Banner::Banner(QWidget* parent)
    : QFrame(parent), sign_(new QLabel(this)), text_(new QLabel(this)), offers_(new FlowLayout),
      close_(new QToolButton(this)) {
  const int gap = fontMetrics().averageCharWidth();
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(2 * gap, gap, gap, gap);
  row->setSpacing(gap);
  row->addWidget(sign_);
  auto* words = new FlowLayout; // the offers below the text where they have no room beside it
  words->setSpacing(gap);
  offers_->setSpacing(gap);
  words->addWidget(text_);
  words->addLayout(offers_);
  row->addLayout(words, 1);
  row->addWidget(close_);
  text_->setWordWrap(true);
  text_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  text_->setTextFormat(Qt::RichText);
  text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  close_->setAutoRaise(true);
  close_->setIcon(icon("close"));
  close_->setToolTip(tr("Close this message"));
  close_->setAccessibleName(close_->toolTip());
  connect(close_, &QToolButton::clicked, this, &Banner::dismiss);
  hide();
}

void Banner::say(Severity severity, const QString& what, const QString& more,
                 const QList<Offer>& offers) {
  working_ = false;
  severity_ = severity;
  // Names and reasons may come from a file.
  const auto plain = [](const QString& words) {
    return QString::fromStdString(plainLine(words.toStdString()));
  };
  const QString title = plain(what), text = plain(more);
  const int size = fontMetrics().height();
  sign_->setPixmap(severityIcon(severity).pixmap(size, size));
  setWords(title, text);
  while (QLayoutItem* item = offers_->takeAt(0)) {
    item->widget()->hide(); // it may be the one that is being pressed
    item->widget()->deleteLater();
    delete item;
  }
  for (const Offer& offer : offers) {
    auto* button = new QPushButton(offer.text, this);
    connect(button, &QPushButton::clicked, this, [this, act = offer.act] {
      hide();
      act();
    });
    offers_->addWidget(button);
  }
  show();
}

void Banner::sayWorking(const QString& title, const QString& text, Offer offer) {
  if (working_)
    setWords(title, text);
  else
    say(Severity::Note, title, text, {std::move(offer)});
  working_ = true;
}

void Banner::setWords(const QString& title, const QString& text) {
  text_->setText(QStringLiteral("<b>%1</b> %2").arg(title.toHtmlEscaped(), text.toHtmlEscaped()));
  setAccessibleName(title + u' ' + text);
}

QString Banner::text() const {
  return accessibleName();
}

void Banner::dismiss() {
  hide();
}

void Banner::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape)
    dismiss();
  else
    QFrame::keyPressEvent(event);
}

void Banner::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const bool dark = isDark(palette());
  const QColor colour = severity_ == Severity::Blocking  ? blockingColour(dark)
                        : severity_ == Severity::Warning ? warningColour(dark)
                                                         : accent(dark);
  painter.fillRect(rect(), mixed(palette().color(QPalette::Base), colour, 0.12));
  painter.fillRect(QRect(0, 0, fontMetrics().averageCharWidth() / 2, height()), colour);
}

} // namespace scye
