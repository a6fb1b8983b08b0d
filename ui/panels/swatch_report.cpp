#include "panels/swatch_report.h"

#include "body/yarn_classes.h"
#include "panels/swatch_band.h"

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <cmath>

namespace scye {
namespace {

// Gauge is told over 10 cm, or over 4 in.
double gaugeLength(LengthUnit unit) {
  return unit == LengthUnit::Inch ? 4 * kCmPerInch : 10;
}

std::string plainCount(const Phrases& phrases, double count) {
  return phrases.number(count, 1);
}

// How many stitches or rows the count may be off, 90 of 100 readings.
std::string countReach(const Phrases& phrases, const UncertainSize& size, double over) {
  const double reach = over * size.reach() / (size.value * size.value);
  return phrases.number(reach, reach < 0.1 ? 2 : 1);
}

// A reach is small: in inches it is told in hundredths, not in the quarters of a tape.
QString reachText(const Phrases& phrases, double cm, LengthUnit unit) {
  const double shown = unit == LengthUnit::Inch ? cm / kCmPerInch : cm;
  const std::string number = phrases.number(shown, unit == LengthUnit::Inch || shown < 0.1 ? 2 : 1);
  return QStringLiteral("± %1").arg(
      withUnit(phrases, lengthPhrase(unit), QString::fromStdString(number)));
}

std::string percentChange(const Phrases& phrases, double share) {
  return phrases.percent(std::abs(share), 1);
}

} // namespace

SwatchReport::SwatchReport(const PanelContext& context, QWidget* parent)
    : QWidget(parent), context_(context), gauge_(new QLabel), more_(new QLabel),
      effects_(new QWidget), wider_(new QLabel) {
  const int gap = fontMetrics().averageCharWidth();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, gap / 2, 0, gap / 2);
  column->setSpacing(gap / 2);
  for (QLabel* label : {gauge_, more_, wider_})
    label->setWordWrap(true);
  more_->setForegroundRole(QPalette::PlaceholderText);
  wider_->setForegroundRole(QPalette::PlaceholderText);
  gauge_->setToolTip(phraseText(context_.phrases(), "swatch.reading"));
  auto* grid = new QGridLayout(effects_);
  grid->setContentsMargins({});
  grid->setHorizontalSpacing(gap);
  grid->setVerticalSpacing(gap / 3);
  grid->setColumnStretch(2, 1);
  auto* head = new QLabel(phraseText(context_.phrases(), "swatch.effects"));
  head->setWordWrap(true);
  head->setForegroundRole(QPalette::PlaceholderText);
  grid->addWidget(head, 0, 0, 1, 3);
  addEffect(tr("Bust, finished"), grid);
  addEffect(fieldName(context_.phrases(), Field::HemToUnderarm), grid);
  addEffect(fieldName(context_.phrases(), Field::SleeveLength), grid);
  addEffect(tr("Cap against armhole"), grid);
  for (QWidget* part : {static_cast<QWidget*>(gauge_), static_cast<QWidget*>(more_), effects_,
                        static_cast<QWidget*>(wider_)})
    column->addWidget(part);

  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refresh();
  });
  connect(&context_.settings, &Settings::changed, this, &SwatchReport::refresh);
  refresh();
}

void SwatchReport::addEffect(const QString& name, QGridLayout* grid) {
  const int line = grid->rowCount();
  const Effect row{new QLabel(name), new QLabel, new SwatchBand};
  row.name->setWordWrap(true);
  grid->addWidget(row.name, line, 0);
  grid->addWidget(row.figure, line, 1, Qt::AlignRight);
  grid->addWidget(row.band, line, 2);
  rows_.push_back(row);
}

QString SwatchReport::gaugeText(const std::optional<SwatchGauge>& across,
                                const std::optional<SwatchGauge>& along) const {
  const LengthUnit unit = context_.settings.unit();
  const double over = gaugeLength(unit);
  Params params{lengthParam("over", over)};
  if (across) {
    params.push_back(
        textParam("stitches", plainCount(context_.phrases(), over / across->size.value)));
    params.push_back(
        textParam("stitchesReach", countReach(context_.phrases(), across->size, over)));
  }
  if (along) {
    params.push_back(textParam("rows", plainCount(context_.phrases(), over / along->size.value)));
    params.push_back(textParam("rowsReach", countReach(context_.phrases(), along->size, over)));
  }
  if (across && along) return phraseText(context_.phrases(), "swatch.gauge", params, unit);
  if (across) return phraseText(context_.phrases(), "swatch.gauge.stitches", params, unit);
  if (along) return phraseText(context_.phrases(), "swatch.gauge.rows", params, unit);
  const StitchSize usual = context_.document.draft().sizes.stitch;
  params.push_back(textParam("stitches", plainCount(context_.phrases(), over / usual.width)));
  params.push_back(textParam("rows", plainCount(context_.phrases(), over / usual.height)));
  return phraseText(context_.phrases(), "swatch.gauge.usual", params, unit);
}

QStringList SwatchReport::sentences() const {
  const Derived& derived = context_.document.derived();
  const GaugeReport& gauge = derived.gauge;
  QStringList out;
  if (gauge.across) {
    out.append(phraseText(context_.phrases(), "swatch.reading"));
    const double perCm = 1 / derived.draft.sizes.stitch.width;
    if (const YarnClass* named = yarnClassByGauge(perCm))
      out.append(phraseText(context_.phrases(), "swatch.class",
                            {phraseParam("class", "yarn." + std::string(named->key)),
                             numberParam("number", named->number)}));
  }
  const auto washed = [&](const std::optional<double>& share, const char* shorter,
                          const char* longer) {
    if (share)
      out.append(phraseText(context_.phrases(), *share < 0 ? shorter : longer,
                            {textParam("share", percentChange(context_.phrases(), *share))}));
  };
  washed(gauge.washedAcross(), "swatch.washed.narrower", "swatch.washed.wider");
  washed(gauge.washedAlong(), "swatch.washed.shorter", "swatch.washed.longer");
  if (gauge.otherAcross || gauge.otherAlong) {
    const QString label = gauge.otherLabel.empty() ? tr("The other stitch pattern")
                                                   : QString::fromStdString(gauge.otherLabel);
    out.append(QStringLiteral("%1: %2").arg(label, gaugeText(gauge.otherAcross, gauge.otherAlong)));
  }
  if (gauge.gramsPerSquareMetre > 0)
    out.append(
        phraseText(context_.phrases(), "swatch.weight",
                   {textParam("grams", context_.phrases().number(gauge.gramsPerSquareMetre, 0))}));
  return out;
}

void SwatchReport::refresh() {
  const GaugeReport& gauge = context_.document.derived().gauge;
  gauge_->setText(gaugeText(gauge.across, gauge.along));
  const QStringList lines = sentences();
  more_->setText(lines.join(u'\n'));
  more_->setVisible(!lines.isEmpty());
  showEffects();
}

void SwatchReport::showEffects() {
  const Derived& derived = context_.document.derived();
  effects_->setVisible(derived.gaugeEffect.has_value());
  wider_->setVisible(derived.gaugeEffect.has_value());
  if (!derived.gaugeEffect) return;
  const GaugeEffect& effect = *derived.gaugeEffect;
  const LengthUnit unit = context_.settings.unit();
  const auto show = [&](const Effect& row, std::optional<double> value, double reach, bool known) {
    QString text = known ? reachText(context_.phrases(), reach, unit) : tr("rows not counted");
    if (value)
      text.prepend(valueText(context_.phrases(), FieldKind::Length, *value, {unit, false}) + u' ');
    row.figure->setText(text);
    row.band->setReach(reach);
    row.band->setVisible(known);
    row.figure->setAccessibleName(QStringLiteral("%1: %2").arg(row.name->text(), text));
  };
  const bool along = derived.gauge.along.has_value();
  show(rows_[0], derived.draft.sizes.finished(Field::Bust), effect.bust, true);
  show(rows_[1], derived.draft.bodice.at.underarm - derived.draft.bodice.at.fold,
       effect.hemToUnderarm, along);
  show(rows_[2], derived.draft.sleeve.length, effect.sleeveLength, along);
  show(rows_[3], std::nullopt, effect.match, derived.knit.capKnitted);
  rows_[3].name->setVisible(derived.knit.capKnitted);
  rows_[3].figure->setVisible(derived.knit.capKnitted);
  wider_->setText(phraseText(context_.phrases(), "swatch.wider",
                             {lengthParam("length", std::ceil(effect.swatchForBust))}, unit));
  // No wider swatch helps while the swatches contradict each other.
  wider_->setVisible(!findCode(derived.findings, "swatch.disagree"));
}

} // namespace scye
