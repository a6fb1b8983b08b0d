#include "knitting/answer_box.h"

#include "look/flow_layout.h"

#include <QLabel>
#include <QVBoxLayout>

namespace scye {

AnswerBox::AnswerBox(const QString& answerName, QWidget* parent)
    : QWidget(parent), column_(new QVBoxLayout(this)), row_(new FlowLayout),
      answer_(new QLabel(this)) {
  const int gap = fontMetrics().averageCharWidth();
  column_->setContentsMargins({});
  column_->setSpacing(gap / 2);
  row_->setSpacing(gap);
  column_->addLayout(row_);
  column_->addWidget(answer_);
  answer_->setAccessibleName(answerName);
  answer_->setTextInteractionFlags(Qt::TextSelectableByMouse);
}

void AnswerBox::ask(const QString& word, const QString& name, QWidget* box) {
  auto* label = new QLabel(word, this);
  label->setBuddy(box);
  box->setAccessibleName(name);
  row_->addTogether({label, box});
}

} // namespace scye
