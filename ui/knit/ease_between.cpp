#include "knit/ease_between.h"

#include "values/choice_box.h"
#include "values/value_text.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace scye {
namespace {

QString sideName(const SeamMarks& side) {
  const bool back = side.side == BodySide::Back;
  if (side.wearersLeft)
    return back ? EaseBetween::tr("Left armhole, back") : EaseBetween::tr("Left armhole, front");
  return back ? EaseBetween::tr("Right armhole, back") : EaseBetween::tr("Right armhole, front");
}

void refill(QComboBox* box, const QStringList& names, int at) {
  const QSignalBlocker quiet(box);
  box->clear();
  box->addItems(names);
  box->setCurrentIndex(std::min(at, int(names.size()) - 1));
}

} // namespace

EaseBetween::EaseBetween(QWidget* parent)
    : QWidget(parent), side_(new ChoiceBox(this)), from_(new ChoiceBox(this)),
      to_(new ChoiceBox(this)), answer_(new QLabel(this)) {
  const int gap = fontMetrics().averageCharWidth();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins({});
  column->setSpacing(gap / 2);
  auto* row = new QHBoxLayout;
  row->setSpacing(gap);
  const auto add = [&](const QString& word, const QString& name, ChoiceBox* box) {
    auto* label = new QLabel(word, this);
    label->setBuddy(box);
    row->addWidget(label);
    box->setAccessibleName(name);
    row->addWidget(box);
  };
  side_->setAccessibleName(tr("Side of the armhole"));
  column->addWidget(side_, 0, Qt::AlignLeft);
  add(tr("&from"), tr("From mark"), from_);
  add(tr("&to"), tr("To mark"), to_);
  row->addStretch(1);
  column->addLayout(row);
  column->addWidget(answer_);
  answer_->setAccessibleName(tr("Ease between the marks"));
  answer_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  connect(side_, &QComboBox::currentIndexChanged, this, &EaseBetween::fillMarks);
  for (ChoiceBox* box : {from_, to_})
    connect(box, &QComboBox::currentIndexChanged, this, &EaseBetween::answer);
}

void EaseBetween::setMarks(const std::vector<SeamMarks>& marks, LengthUnit unit) {
  marks_ = marks, unit_ = unit;
  QStringList names;
  for (const SeamMarks& side : marks_)
    names.append(sideName(side));
  refill(side_, names, std::max(0, side_->currentIndex()));
  fillMarks();
}

void EaseBetween::fillMarks() {
  const int side = side_->currentIndex();
  QStringList names;
  if (side >= 0)
    for (const SeamMark& mark : marks_[std::size_t(side)].marks)
      names.append(tr("%1 %2")
                       .arg(names.size() + 1)
                       .arg(QString::fromStdString(
                           builtinPhrases().say("mark." + std::string(notchKey(mark.kind))))));
  // At first from the underarm to the shoulder, which stays the shoulder when marks are added.
  const bool last = to_->currentIndex() == to_->count() - 1;
  refill(from_, names, std::max(0, from_->currentIndex()));
  refill(to_, names, last ? int(names.size()) - 1 : to_->currentIndex());
  answer();
}

void EaseBetween::answer() {
  const int side = side_->currentIndex(), from = from_->currentIndex(), to = to_->currentIndex();
  if (side < 0 || from < 0 || to < 0) {
    answer_->clear();
    return;
  }
  const BetweenMarks between =
      betweenMarks(marks_[std::size_t(side)], std::size_t(from), std::size_t(to));
  const auto length = [&](double cm, bool sign) {
    return valueText(FieldKind::Length, std::abs(cm) < 0.05 ? 0 : cm, {unit_, true, sign, true});
  };
  answer_->setText(tr("ease %1 (armhole %2, cap %3)")
                       .arg(length(between.ease, true), length(between.armhole, false),
                            length(between.cap, false)));
}

} // namespace scye
