#include "knitting/ease_between.h"

#include "values/choice_box.h"
#include "values/value_text.h"

#include <QLabel>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace scye {
namespace {

QString sideName(const SeamMarks& side) {
  const bool back = side.half == ArmholeHalf::Back;
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

EaseBetween::EaseBetween(const Phrases& phrases, QWidget* parent)
    : AnswerBox(tr("Ease between the marks"), parent), phrases_(phrases),
      side_(new ChoiceBox(this)), from_(new ChoiceBox(this)), to_(new ChoiceBox(this)) {
  side_->setAccessibleName(tr("Side of the armhole"));
  column().insertWidget(0, side_, 0, Qt::AlignLeft);
  ask(tr("&from"), tr("From mark"), from_);
  ask(tr("&to"), tr("To mark"), to_);
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
      names.append(tr("%L1 %2")
                       .arg(names.size() + 1)
                       .arg(QString::fromStdString(
                           phrases_.say("mark." + std::string(notchKey(mark.kind))))));
  // At first from the underarm to the shoulder, which stays the shoulder when marks are added.
  const bool last = to_->currentIndex() == to_->count() - 1;
  refill(from_, names, std::max(0, from_->currentIndex()));
  refill(to_, names, last ? int(names.size()) - 1 : to_->currentIndex());
  answer();
}

void EaseBetween::answer() {
  const int side = side_->currentIndex(), from = from_->currentIndex(), to = to_->currentIndex();
  if (side < 0 || from < 0 || to < 0) {
    answerLabel().clear();
    return;
  }
  const BetweenMarks between =
      betweenMarks(marks_[std::size_t(side)], std::size_t(from), std::size_t(to));
  const auto length = [&](double cm, bool sign) {
    return valueText(phrases_, FieldKind::Length, std::abs(cm) < 0.05 ? 0 : cm,
                     {unit_, true, sign, true});
  };
  answerLabel().setText(tr("ease %1 (armhole %2, cap %3)")
                            .arg(length(between.ease, true), length(between.armhole, false),
                                 length(between.cap, false)));
}

} // namespace scye
