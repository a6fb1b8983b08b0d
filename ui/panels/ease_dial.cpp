#include "panels/ease_dial.h"

#include "io/refusal_text.h"
#include "paint/picture_colours.h"
#include "panels/ease_marks.h"
#include "panels/field_slider.h"
#include "values/field_box.h"

#include <QGridLayout>
#include <QLabel>
#include <QPainter>

#include <cmath>

namespace scye {

// Ticks where the slider's marks are, names under them as far as they have room: the mark the value
// stands at first, in bold.
class EaseDial::Scale : public QWidget {
public:
  Scale(const FieldSlider& slider, QWidget* parent) : QWidget(parent), slider_(slider) {
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  }
  void show(const QList<EaseMark>& marks, double now, const QString& instead, bool refused) {
    marks_ = marks, now_ = now, instead_ = instead, refused_ = refused;
    setToolTip(instead);
    update();
  }
  [[nodiscard]] QSize sizeHint() const override {
    return {10, smallMetrics().height() + kTick + 1};
  }

protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    const QColor ground = palette().color(QPalette::Window),
                 ink = palette().color(QPalette::WindowText);
    painter.setPen(mixed(ground, ink, 0.72));
    painter.setFont(smallFont(false));
    if (!instead_.isEmpty()) {
      if (refused_) painter.setPen(legible(blockingColour(isDark(palette())), ground));
      painter.drawText(rect().adjusted(0, kTick / 2, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                       smallMetrics().elidedText(instead_, Qt::ElideRight, width()));
      return;
    }
    qsizetype nearest = -1;
    for (qsizetype i = 0; i < marks_.size(); ++i) {
      if (!within(marks_[i].value)) continue;
      const double x = slider_.placeOf(marks_[i].value);
      painter.drawLine(QPointF(x, 0), QPointF(x, kTick));
      if (nearest < 0 || distance(i) < distance(nearest)) nearest = i;
    }
    QList<QRectF> taken;
    if (nearest >= 0) name(painter, nearest, distance(nearest) < 0.25, taken);
    for (qsizetype i = 0; i < marks_.size(); ++i)
      if (i != nearest && within(marks_[i].value)) name(painter, i, false, taken);
  }

private:
  static constexpr int kTick = 4;
  [[nodiscard]] QFont smallFont(bool bold) const {
    QFont f = font();
    f.setPointSizeF(0.85 * f.pointSizeF());
    f.setBold(bold);
    return f;
  }
  [[nodiscard]] QFontMetrics smallMetrics() const { return QFontMetrics(smallFont(false)); }
  [[nodiscard]] bool within(double value) const {
    return value >= slider_.low() - 1e-9 && value <= slider_.high() + 1e-9;
  }
  [[nodiscard]] double distance(qsizetype i) const { return std::abs(marks_[i].value - now_); }
  void name(QPainter& painter, qsizetype i, bool bold, QList<QRectF>& taken) {
    const QFont f = smallFont(bold);
    const double wide = QFontMetricsF(f).horizontalAdvance(marks_[i].name);
    const double left =
        std::clamp(slider_.placeOf(marks_[i].value) - wide / 2, 0.0, std::max(0.0, width() - wide));
    const QRectF room(left, kTick + 1, wide, height() - kTick - 1);
    const double air = smallMetrics().averageCharWidth();
    for (const QRectF& other : taken)
      if (room.adjusted(-air, 0, air, 0).intersects(other)) return;
    taken.append(room);
    painter.setFont(f);
    painter.drawText(room.adjusted(0, 0, 2, 0), Qt::AlignLeft | Qt::AlignVCenter, marks_[i].name);
  }

  const FieldSlider& slider_;
  QList<EaseMark> marks_;
  double now_ = 0;
  QString instead_;
  bool refused_ = false;
};

EaseDial::EaseDial(const PanelContext& context, Field ease, const QString& name, QWidget* parent)
    : QWidget(parent), context_(context), ease_(ease), name_(new QLabel(name, this)),
      box_(new FieldBox(info(ease).kind, context.phrases(), this)),
      slider_(new FieldSlider(context, this)), scale_(new Scale(*slider_, this)) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins({});
  grid->setHorizontalSpacing(fontMetrics().averageCharWidth() / 2);
  grid->setVerticalSpacing(1);
  grid->addWidget(name_, 0, 0);
  grid->addWidget(box_, 0, 1, Qt::AlignRight);
  grid->addWidget(slider_, 1, 0, 1, 2);
  grid->addWidget(scale_, 2, 0, 1, 2);
  grid->setColumnStretch(0, 1);
  name_->setBuddy(box_);
  box_->setAccessibleName(tr("%1, in hand").arg(fieldName(context_.phrases(), ease)));
  slider_->setField(ease);
  slider_->setAccessibleName(tr("%1, slider in hand").arg(fieldName(context_.phrases(), ease)));
  setTabOrder(slider_, box_);

  connect(box_, &FieldBox::focused, this, [this] { run_ = context_.document.newRun(); });
  connect(box_, &FieldBox::entered, this, [this](double v) { enter(v, 0); });
  connect(box_, &FieldBox::stepped, this, [this](double v) { enter(v, run_); });
  connect(box_, &FieldBox::gaveUp, this, &EaseDial::refresh);
  connect(box_, &FieldBox::unreadable, this, [this](const QString& text) {
    if (text.trimmed().isEmpty())
      Q_EMIT slider_->startWanted();
    else
      say(QString::fromStdString(
          refusalText(ease_, Refusal::NotANumber, context_.phrases(), context_.settings.unit())));
  });
  connect(slider_, &FieldSlider::spanned, scale_, qOverload<>(&QWidget::update));
  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.replaced) {
      box_->forgive();
      slider_->setField(ease_);
    }
    if (event.derived) refresh();
  });
  connect(&context_.settings, &Settings::changed, this, [this] {
    slider_->setField(ease_);
    refresh();
  });
  refresh();
}

void EaseDial::enter(double value, int run) {
  const Design& design = context_.document.design();
  if (const auto refusal = check(ease_, value)) {
    box_->refuse();
    say(QString::fromStdString(
        refusalText(ease_, *refusal, context_.phrases(), context_.settings.unit())));
    return;
  }
  context_.document.edit(fieldName(context_.phrases(), ease_), Design(design).set(ease_, value),
                         run);
  refresh();
}

void EaseDial::refresh() {
  const Design& design = context_.document.design();
  const Sizes& sizes = context_.document.draft().sizes;
  const LengthUnit unit = context_.settings.unit();
  box_->setValueStyle(styleOf(ease_, unit, false));
  box_->setValue(sizes[ease_]);
  const bool worked = isWorkedOut(design, ease_);
  box_->setReadOnly(worked);
  box_->setFilledIn(!design.has(ease_));
  slider_->refresh();
  slider_->setToolTip(
      worked ? workedOutText(context_.phrases())
             : tr("Double click: back to %1")
                   .arg(shownValue(context_.phrases(), ease_, filledIn(design, ease_), unit)));
  if (box_->isRefused()) return; // what is wrong stays told
  scale_->show(easeMarks(context_.phrases(), design, sizes, ease_), sizes[ease_],
               worked ? tr("worked out for you") : QString(), false);
}

void EaseDial::say(const QString& refusal) {
  scale_->show({}, 0, refusal, true);
}

} // namespace scye
