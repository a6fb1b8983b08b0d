#include "panels/row_slider.h"

#include "look/quiet_button.h"
#include "paint/picture_colours.h"
#include "values/value_slider.h"

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
      slider_(new ValueSlider(this)), high_(smallLabel(this)),
      how_(new QuietButton(QuietButton::Looks::Aside, this)), likely_(smallLabel(this)),
      worked_(new QLabel(workedOutText(), this)), refusal_(new QLabel(this)) {
  auto* grid = new QGridLayout(this);
  const int gap = fontMetrics().averageCharWidth();
  grid->setContentsMargins(2 * gap, 0, 0, gap);
  grid->setHorizontalSpacing(gap);
  grid->setVerticalSpacing(gap / 2);
  grid->addWidget(name_, 0, 0);
  grid->addWidget(low_, 0, 1);
  grid->addWidget(slider_, 0, 2);
  grid->addWidget(high_, 0, 3);
  auto* below = new QHBoxLayout;
  below->addWidget(how_);
  below->addStretch(1);
  below->addWidget(likely_);
  grid->addLayout(below, 1, 0, 1, 4);
  how_->setText(tr("How to measure"));
  connect(how_, &QuietButton::clicked, this, [this] { Q_EMIT howWanted(field_); });
  grid->addWidget(worked_, 2, 0, 1, 4);
  grid->addWidget(refusal_, 3, 0, 1, 4);
  grid->setColumnStretch(2, 1);
  for (QLabel* label : {worked_, refusal_}) {
    label->setWordWrap(true);
    label->hide();
  }
  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.design) quiet();
  });

  connect(slider_, &ValueSlider::taken, this, [this] {
    context_.attention.light(field_);
    context_.document.beginGesture(fieldName(field_));
  });
  connect(slider_, &ValueSlider::moved, this, &RowSlider::move);
  connect(slider_, &ValueSlider::letGo, this, [this] { context_.document.endGesture(); });
  connect(slider_, &ValueSlider::gaveUp, this, [this] { context_.document.cancelGesture(); });
  connect(slider_, &ValueSlider::focusChanged, this, [this](bool has) {
    run_ = context_.document.newRun();
    context_.attention.light(has ? std::optional(field_) : std::nullopt);
  });
}

void RowSlider::setField(Field field) {
  field_ = field;
  run_ = context_.document.newRun();
  name_->setText(fieldName(field));
  how_->setVisible(isMeasurement(field));
  how_->setAccessibleName(tr("How to measure: %1").arg(fieldName(field)));
  slider_->setAccessibleName(tr("%1, slider").arg(fieldName(field)));
  setSpan();
  quiet();
  refresh();
}

void RowSlider::setSpan() {
  const FieldInfo& i = info(field_);
  const LengthUnit unit = context_.settings.unit();
  const Design& design = context_.document.design();
  const double middle = filledIn(design, field_), now = shown();
  const Source where = whereTaken(design, field_);
  const ValueRange range = rangeOf(field_, where);
  const double span = flatShare(field_, where) * i.span;
  const double low = std::max(range.low, std::min(now, middle - span));
  const double high = std::min(range.high, std::max(now, middle + span));
  slider_->setSpan(low, high, sliderStep(i.kind, unit));
  low_->setText(valueText(i.kind, slider_->low(), styleOf(field_, unit, false)));
  high_->setText(valueText(i.kind, slider_->high(), styleOf(field_, unit, false)));
}

double RowSlider::shown() const {
  return shownIn(context_.document.design(), context_.document.draft().sizes, field_);
}

void RowSlider::refresh() {
  const double now = shown();
  if (now < slider_->low() || now > slider_->high()) setSpan();
  slider_->showValue(now);
  const bool workedOut = isWorkedOut(context_.document.design(), field_);
  slider_->setEnabled(!workedOut);
  worked_->setVisible(workedOut);
  showLikely();
}

void RowSlider::showLikely() {
  const Sizes& sizes = context_.document.draft().sizes;
  const LengthUnit unit = context_.settings.unit();
  // Where bodies lie says nothing of a garment's width.
  const bool body = whereTaken(context_.document.design(), field_) == Source::Body;
  const auto likely = body ? sizes.likely[std::size_t(field_)] : std::nullopt;
  likely_->setVisible(likely.has_value());
  if (!likely) {
    slider_->setLikely({});
    slider_->setAccessibleDescription({});
    return;
  }
  slider_->setLikely(std::pair(likely->low, likely->high));
  likely_->setText(phraseText("estimate.likely",
                              {lengthParam("low", likely->low), lengthParam("high", likely->high)},
                              unit));
  const QString source = estimateText(context_.document.design(), sizes, field_, unit);
  likely_->setToolTip(source);
  slider_->setToolTip(source);
  slider_->setAccessibleDescription(source);
}

void RowSlider::move(double value) {
  Design next = context_.document.design();
  const Source where = whereTaken(next, field_);
  if (check(field_, value, where)) return;
  next.set(field_, value, where);
  context_.document.edit(fieldName(field_), next, run_);
}

void RowSlider::say(const QString& refusal) {
  QPalette p;
  p.setColor(QPalette::WindowText, blockingColour(isDark(p)));
  refusal_->setPalette(p);
  refusal_->setText(refusal);
  refusal_->show();
}

void RowSlider::quiet() {
  refusal_->hide();
}

} // namespace scye
