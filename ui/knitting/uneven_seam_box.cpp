#include "knitting/uneven_seam_box.h"

#include "directions/finishing_words.h"

#include <QLabel>
#include <QSignalBlocker>
#include <QSpinBox>

namespace scye {

UnevenSeamBox::UnevenSeamBox(QWidget* parent)
    : AnswerBox(tr("How to sew them"), parent), first_(new QSpinBox(this)),
      second_(new QSpinBox(this)) {
  for (QSpinBox* box : {first_, second_}) {
    box->setRange(1, 2000);
    box->setFocusPolicy(Qt::StrongFocus); // the wheel scrolls the page
    connect(box, &QSpinBox::valueChanged, this, [this] {
      touched_ = true;
      answer();
    });
  }
  ask(tr("&Rows of one edge"), tr("Rows of one edge"), first_);
  ask(tr("of the &other"), tr("Rows of the other edge"), second_);
}

void UnevenSeamBox::setWording(const Wording& wording) {
  wording_.emplace(wording);
  answer();
}

void UnevenSeamBox::suggest(int first, int second) {
  if (touched_) return;
  const QSignalBlocker quietFirst(first_), quietSecond(second_);
  first_->setValue(first);
  second_->setValue(second);
  answer();
}

void UnevenSeamBox::answer() {
  if (!wording_) return;
  const Words words(*wording_);
  answerLabel().setText(tr("sew %1").arg(
      QString::fromStdString(seamRecipe(words, sewRows(first_->value(), second_->value())))));
}

} // namespace scye
