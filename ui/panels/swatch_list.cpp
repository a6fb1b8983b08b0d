#include "panels/swatch_list.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace scye {

SwatchList::SwatchList(const PanelContext& context, QWidget* parent)
    : QWidget(parent), context_(context), column_(new QVBoxLayout(this)),
      add_(new QPushButton(tr("Add a swatch"), this)) {
  column_->setContentsMargins({});
  column_->setSpacing(0);
  add_->setToolTip(tr("Another piece of the same fabric, the swatch before washing, or another "
                      "stitch pattern"));
  column_->addWidget(add_, 0, Qt::AlignLeft);
  connect(add_, &QPushButton::clicked, this, &SwatchList::add);
  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.design) refresh();
  });
  connect(&context_.settings, &Settings::changed, this, &SwatchList::refresh);
  refresh();
}

void SwatchList::add() {
  Design next = context_.document.design();
  next.swatches.push_back({});
  context_.document.edit(tr("Add a swatch"), next);
  cards_.back()->focusFirst();
}

void SwatchList::remove(std::size_t at) {
  add_->setFocus(Qt::OtherFocusReason); // what is being typed elsewhere is taken first
  Design next = context_.document.design();
  next.swatches.erase(next.swatches.begin() + std::ptrdiff_t(at));
  context_.document.edit(tr("Remove a swatch"), next);
}

void SwatchList::refresh() {
  const auto count = qsizetype(context_.document.design().swatches.size());
  while (cards_.size() > count) {
    // A card may be asking for its own removal just now.
    SwatchCard* card = cards_.takeLast();
    card->hide();
    card->deleteLater();
  }
  while (cards_.size() < count) {
    auto* card = new SwatchCard(context_, std::size_t(cards_.size()), this);
    column_->insertWidget(int(cards_.size()), card);
    connect(card, &SwatchCard::removed, this, &SwatchList::remove);
    card->followInTabOrder(add_->previousInFocusChain());
    card->show();
    cards_.append(card);
  }
  for (SwatchCard* card : cards_)
    card->refresh();
}

} // namespace scye
