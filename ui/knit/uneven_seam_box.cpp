#include "knit/uneven_seam_box.h"

#include "directions/finishing_words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

namespace scye {

UnevenSeamBox::UnevenSeamBox(QWidget* parent)
    : QWidget(parent), first_(new QSpinBox(this)), second_(new QSpinBox(this)),
      answer_(new QLabel(this)) {
  const int gap = fontMetrics().averageCharWidth();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins({});
  column->setSpacing(gap / 2);
  auto* row = new QHBoxLayout;
  row->setSpacing(gap);
  const auto add = [&](const QString& word, const QString& name, QSpinBox* box) {
    auto* label = new QLabel(word, this);
    label->setBuddy(box);
    row->addWidget(label);
    box->setRange(1, 2000);
    box->setFocusPolicy(Qt::StrongFocus); // the wheel scrolls the page
    box->setAccessibleName(name);
    row->addWidget(box);
    connect(box, &QSpinBox::valueChanged, this, [this] {
      touched_ = true;
      answer();
    });
  };
  add(tr("&Rows of one edge"), tr("Rows of one edge"), first_);
  add(tr("of the &other"), tr("Rows of the other edge"), second_);
  answer_->setAccessibleName(tr("How to sew them"));
  answer_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  row->addStretch(1);
  column->addLayout(row);
  column->addWidget(answer_);
}

void UnevenSeamBox::setWording(const Wording& wording) {
  wording_ = wording;
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
  const Words words(wording_);
  answer_->setText(tr("sew %1").arg(
      QString::fromStdString(seamRecipe(words, sewRows(first_->value(), second_->value())))));
}

} // namespace scye
