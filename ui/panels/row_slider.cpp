#include "panels/row_slider.h"

#include "look/quiet_button.h"
#include "paint/picture_colours.h"
#include "panels/field_slider.h"

#include <QGridLayout>
#include <QLabel>

namespace scye {
namespace {

QLabel* smallLabel(QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setForegroundRole(QPalette::PlaceholderText);
  return label;
}

} // namespace

RowSlider::RowSlider(const PanelContext& context, QWidget* parent)
    : QWidget(parent), context_(context), name_(smallLabel(this)), low_(smallLabel(this)),
      slider_(new FieldSlider(context, this)), high_(smallLabel(this)),
      how_(new QuietButton(QuietButton::Looks::Aside, this)), likely_(smallLabel(this)),
      worked_(new QLabel(workedOutText(context_.phrases()), this)), refusal_(new QLabel(this)) {
  auto* grid = new QGridLayout(this);
  const int gap = fontMetrics().averageCharWidth();
  grid->setContentsMargins(2 * gap, 0, 0, gap);
  grid->setHorizontalSpacing(gap);
  grid->setVerticalSpacing(gap / 2);
  name_->setWordWrap(true);
  grid->addWidget(name_, 0, 0, 1, 3);
  grid->addWidget(low_, 1, 0);
  grid->addWidget(slider_, 1, 1);
  grid->addWidget(high_, 1, 2);
  auto* below = new QHBoxLayout;
  below->addWidget(how_);
  below->addStretch(1);
  below->addWidget(likely_);
  grid->addLayout(below, 2, 0, 1, 3);
  how_->setText(tr("How to measure"));
  connect(how_, &QuietButton::clicked, this, [this] { Q_EMIT howWanted(field()); });
  grid->addWidget(worked_, 3, 0, 1, 3);
  grid->addWidget(refusal_, 4, 0, 1, 3);
  grid->setColumnStretch(1, 1);
  for (QLabel* label : {worked_, refusal_}) {
    label->setWordWrap(true);
    label->hide();
  }
  connect(slider_, &FieldSlider::spanned, this, [this] {
    low_->setText(slider_->lowText());
    high_->setText(slider_->highText());
  });
}

Field RowSlider::field() const {
  return slider_->field();
}

void RowSlider::setField(Field field) {
  name_->setText(fieldName(context_.phrases(), field));
  how_->setVisible(isMeasurement(field));
  how_->setAccessibleName(tr("How to measure: %1").arg(fieldName(context_.phrases(), field)));
  slider_->setField(field);
  refresh();
}

void RowSlider::refresh() {
  slider_->refresh();
  worked_->setVisible(isWorkedOut(context_.document.design(), field()));
  showLikely();
}

void RowSlider::showLikely() {
  const Sizes& sizes = context_.document.draft().sizes;
  const LengthUnit unit = context_.settings.unit();
  // Where bodies lie says nothing of a garment's width.
  const bool body = whereTaken(context_.document.design(), field()) == Source::Body;
  const auto likely = body ? sizes.likely[std::size_t(field())] : std::nullopt;
  likely_->setVisible(likely.has_value());
  if (!likely) {
    slider_->setLikely({});
    slider_->setAccessibleDescription({});
    return;
  }
  slider_->setLikely(std::pair(likely->low, likely->high));
  likely_->setText(phraseText(context_.phrases(), "estimate.likely",
                              {lengthParam("low", likely->low), lengthParam("high", likely->high)},
                              unit));
  const QString source =
      estimateText(context_.phrases(), context_.document.design(), sizes, field(), unit);
  likely_->setToolTip(source);
  slider_->setToolTip(source);
  slider_->setAccessibleDescription(source);
}

void RowSlider::say(const QString& refusal) {
  QPalette p;
  p.setColor(QPalette::WindowText, legible(blockingColour(isDark(p)), p.color(QPalette::Window)));
  refusal_->setPalette(p);
  refusal_->setText(refusal);
  refusal_->show();
}

bool RowSlider::refuses() const {
  return !refusal_->isHidden();
}

void RowSlider::setOpen(bool open) {
  for (QWidget* part : {static_cast<QWidget*>(name_), static_cast<QWidget*>(low_),
                        static_cast<QWidget*>(slider_), static_cast<QWidget*>(high_)})
    part->setVisible(open);
  how_->setVisible(open && isMeasurement(field()));
  if (open)
    refresh();
  else
    likely_->hide(), worked_->hide();
  setVisible(open || refuses());
}

void RowSlider::quiet() {
  refusal_->hide();
}

} // namespace scye
