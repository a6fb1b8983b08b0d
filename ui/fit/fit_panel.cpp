#include "fit/fit_panel.h"

#include "canvas/picture_widget.h"
#include "garment/verdict.h"
#include "look/flow_layout.h"
#include "schematic/comparison_text.h"
#include "schematic/schematic.h"
#include "values/value_text.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

namespace scye {
namespace {

// Letters high: back and front, one below the other, the curves 180 px at usual letters.
constexpr int kLeastPicture = 88;

} // namespace

FitPanel::FitPanel(Document& document, Settings& settings, QWidget* parent)
    : QWidget(parent), document_(document), settings_(settings),
      picture_(new PictureWidget([this](double h, int perRow) { return comparison(h, perRow); },
                                 {2, 1}, this)) {
  const int gap = fontMetrics().averageCharWidth();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(gap / 2, gap, gap, gap / 2);
  column->setSpacing(gap);

  QFont large = font();
  large.setBold(true);
  auto* row = new QGridLayout;
  row->setHorizontalSpacing(gap);
  row->setVerticalSpacing(0);
  const QString names[] = {tr("Armhole"), tr("Cap"), tr("Ease")};
  const auto pale = [this](const QString& text) {
    auto* label = new QLabel(text, this);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
  };
  unit_ = pale({});
  row->addWidget(unit_, 0, 0);
  row->addWidget(pale(tr("Drafted")), 1, 0);
  knittedName_ = pale(tr("Knitted"));
  row->addWidget(knittedName_, 2, 0);
  for (int i = 0; i < 3; ++i) {
    numbers_[i] = {pale(names[i]), new QLabel(this), new QLabel(this)};
    for (QLabel* label : {numbers_[i].name, numbers_[i].drafted, numbers_[i].knitted})
      label->setAlignment(Qt::AlignRight);
    for (QLabel* label : {numbers_[i].drafted, numbers_[i].knitted})
      label->setFont(large);
    row->addWidget(numbers_[i].name, 0, i + 1);
    row->addWidget(numbers_[i].drafted, 1, i + 1);
    row->addWidget(numbers_[i].knitted, 2, i + 1);
    row->setColumnStretch(i + 1, 1);
  }
  column->addLayout(row);
  auto* ways = new FlowLayout;
  ways->setSpacing(gap);
  straight_ = makeSwitch(tr("Straightened"), tr("Both edges laid out straight, as pinned"));
  asKnitted_ = makeSwitch(tr("As knitted"), tr("The edges in whole stitches and rows as well"));
  ways->addWidget(straight_);
  ways->addWidget(asKnitted_);
  column->addLayout(ways);
  picture_->setAccessibleName(tr("Cap laid over the armhole"));
  column->addWidget(picture_, 1);

  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refresh();
  });
  connect(&settings_, &Settings::changed, this, &FitPanel::refresh);
  refresh();
}

QToolButton* FitPanel::makeSwitch(const QString& text, const QString& tip) {
  auto* button = new QToolButton(this);
  button->setText(text);
  button->setToolTip(tip);
  button->setAccessibleName(text);
  button->setAccessibleDescription(tip);
  button->setCheckable(true);
  button->setFocusPolicy(Qt::StrongFocus);
  connect(button, &QToolButton::toggled, this, &FitPanel::refresh);
  return button;
}

Picture FitPanel::comparison(double textHeight, int perRow) const {
  SchematicOptions options;
  options.unit = settings_.unit();
  options.textHeight = textHeight;
  options.perRow = perRow;
  const Derived& derived = document_.derived();
  options.curves = &derived.knit;
  if (straight_->isChecked())
    return straightComparison(derived.draft, settings_.phrases(), options);
  if (derived.draft.cap.found && asKnitted_->isChecked()) options.knitted = &derived.knit;
  return fitComparison(derived.draft, settings_.phrases(), options);
}

int FitPanel::leastHeight(int width) const {
  layout()->activate();
  return layout()->totalMinimumHeightForWidth(width) - picture_->minimumSizeHint().height() +
         kLeastPicture * fontMetrics().averageCharWidth();
}

void FitPanel::refresh() {
  const LengthUnit unit = settings_.unit();
  const Derived& derived = document_.derived();
  const FitVerdict verdict = fitVerdict(derived, settings_.phrases(), unit);
  unit_->setText(unit == LengthUnit::Inch ? tr("in inches") : tr("in cm"));
  const auto show = [this, unit](QLabel* label, const QString& name, double cm, bool signed_) {
    label->setText(
        valueText(settings_.phrases(), FieldKind::Length, cm, {unit, false, signed_, true}));
    label->setAccessibleName(name.arg(
        valueText(settings_.phrases(), FieldKind::Length, cm, {unit, true, signed_, true})));
  };
  show(numbers_[0].drafted, tr("Armhole, drafted: %1"), verdict.armhole, false);
  show(numbers_[1].drafted, tr("Cap, drafted: %1"), verdict.cap, false);
  show(numbers_[2].drafted, tr("Ease, drafted: %1"), verdict.ease, true);
  // Beside a cap that cannot fit these would read as if it did.
  const bool knitted = verdict.knitted && derived.draft.cap.found;
  if (knitted) {
    const KnitGarment& knit = derived.knit;
    const bool left = verdict.knitted->mismatch == knit.left.mismatch(knit.easeWanted);
    const ArmholeFit& side = left ? knit.left : knit.right;
    show(numbers_[0].knitted, tr("Armhole, knitted: %1"), side.armhole.mean(), false);
    show(numbers_[1].knitted, tr("Cap, knitted: %1"), side.cap.mean(), false);
    show(numbers_[2].knitted, tr("Ease, knitted: %1"), (side.cap - side.armhole).mean(), true);
    for (const Number& number : numbers_)
      number.knitted->setToolTip(unbroken(settings_.phrases(), verdict.knitted->sentence));
  }
  for (const Number& number : numbers_)
    number.knitted->setVisible(knitted);
  knittedName_->setVisible(knitted);
  asKnitted_->setEnabled(knitted && !straight_->isChecked());
  picture_->setAccessibleDescription(
      QString::fromStdString(comparisonText(derived.draft, settings_.phrases(), unit)));
  picture_->refresh();
}

void FitPanel::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) refresh();
}

} // namespace scye
