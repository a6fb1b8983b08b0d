#include "panels/field_slider.h"

namespace scye {

FieldSlider::FieldSlider(const PanelContext& context, QWidget* parent)
    : ValueSlider(parent), context_(context) {
  connect(this, &ValueSlider::taken, this, [this] {
    context_.attention.light(field_);
    context_.document.beginGesture(fieldName(context_.phrases(), field_));
  });
  connect(this, &ValueSlider::moved, this, &FieldSlider::move);
  connect(this, &ValueSlider::letGo, this, [this] {
    const int before = context_.document.history().index();
    context_.document.endGesture();
    const int now = context_.document.history().index();
    step_ = now != before ? now : 0;
  });
  // What the first of two presses moved was not meant.
  connect(this, &ValueSlider::pressedTwice, this, [this] {
    if (step_ > 0 && step_ == context_.document.history().index()) context_.document.undo();
  });
  connect(this, &ValueSlider::gaveUp, this, [this] { context_.document.cancelGesture(); });
  connect(this, &ValueSlider::startWanted, this, [this] {
    context_.document.edit(fieldName(context_.phrases(), field_),
                           Design(context_.document.design()).clear(field_));
  });
  connect(this, &ValueSlider::focusChanged, this, [this](bool has) {
    run_ = context_.document.newRun();
    context_.attention.light(has ? std::optional(field_) : std::nullopt);
  });
}

void FieldSlider::setField(Field field) {
  field_ = field;
  run_ = context_.document.newRun();
  setAccessibleName(tr("%1, slider").arg(fieldName(context_.phrases(), field)));
  setOwnSpan();
  refresh();
}

void FieldSlider::setOwnSpan() {
  const FieldInfo& i = info(field_);
  const Design& design = context_.document.design();
  const double middle = filledIn(design, field_), now = shown();
  const Source where = whereTaken(design, field_);
  const ValueRange range = rangeOf(field_, where);
  const double span = flatShare(field_, where) * i.span;
  const double low = std::max(range.low, std::min(now, middle - span));
  const double high = std::min(range.high, std::max(now, middle + span));
  setSpan(low, high, sliderStep(i.kind, context_.settings.unit()));
  Q_EMIT spanned();
}

double FieldSlider::shown() const {
  return shownIn(context_.document.design(), context_.document.draft().sizes, field_);
}

void FieldSlider::refresh() {
  const double now = shown();
  if (now < low() || now > high()) setOwnSpan();
  showValue(now);
  setEnabled(!isWorkedOut(context_.document.design(), field_));
}

QString FieldSlider::lowText() const {
  return valueText(context_.phrases(), info(field_).kind, low(),
                   styleOf(field_, context_.settings.unit(), false));
}
QString FieldSlider::highText() const {
  return valueText(context_.phrases(), info(field_).kind, high(),
                   styleOf(field_, context_.settings.unit(), false));
}

void FieldSlider::move(double value) {
  Design next = context_.document.design();
  const Source where = whereTaken(next, field_);
  if (check(field_, value, where)) return;
  next.set(field_, value, where);
  context_.document.edit(fieldName(context_.phrases(), field_), next, run_);
}

} // namespace scye
