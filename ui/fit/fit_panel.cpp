#include "fit/fit_panel.h"

#include "canvas/picture_widget.h"
#include "fit/severity.h"
#include "look/icons.h"
#include "schematic/schematic.h"
#include "values/value_text.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace scye {

FitPanel::FitPanel(Document& document, Settings& settings, QWidget* parent)
    : QWidget(parent), document_(document), settings_(settings), sign_(new QLabel(this)),
      sentence_(new QLabel(this)),
      picture_(new PictureWidget([this](double h, int perRow) { return comparison(h, perRow); },
                                 {2, 1}, this)) {
  const int gap = fontMetrics().averageCharWidth();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(2 * gap, 2 * gap, 2 * gap, gap);
  column->setSpacing(2 * gap);

  auto* head = new QHBoxLayout;
  head->setSpacing(gap);
  head->addWidget(sign_, 0, Qt::AlignTop);
  head->addWidget(sentence_, 1);
  sentence_->setWordWrap(true);
  QFont large = font();
  large.setPointSizeF(1.15 * large.pointSizeF());
  large.setBold(true);
  sentence_->setFont(large);
  sentence_->setAccessibleName(tr("Does the sleeve fit?"));
  column->addLayout(head);

  auto* row = new QGridLayout;
  row->setHorizontalSpacing(2 * gap);
  row->setVerticalSpacing(0);
  const QString names[] = {tr("Armhole"), tr("Cap"), tr("Ease")};
  for (int i = 0; i < 3; ++i) {
    numbers_[i] = {new QLabel(names[i], this), new QLabel(this)};
    numbers_[i].name->setForegroundRole(QPalette::PlaceholderText);
    numbers_[i].value->setFont(large);
    for (QLabel* label : {numbers_[i].name, numbers_[i].value})
      label->setAlignment(Qt::AlignRight);
    numbers_[i].value->setAccessibleName(names[i]);
    row->addWidget(numbers_[i].name, 0, i);
    row->addWidget(numbers_[i].value, 1, i);
    row->setColumnStretch(i, 1);
  }
  column->addLayout(row);
  picture_->setAccessibleName(tr("Cap laid over the armhole"));
  column->addWidget(picture_, 1);

  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refresh();
  });
  connect(&settings_, &Settings::changed, this, &FitPanel::refresh);
  refresh();
}

Picture FitPanel::comparison(double textHeight, int perRow) const {
  SchematicOptions options;
  options.unit = settings_.unit();
  options.textHeight = textHeight;
  options.perRow = perRow;
  return fitComparison(document_.derived().draft, builtinPhrases(), options);
}

void FitPanel::refresh() {
  const LengthUnit unit = settings_.unit();
  const FitVerdict verdict = fitVerdict(document_.derived().draft, builtinPhrases(), unit);
  sentence_->setText(unbroken(verdict.sentence));
  const int size = QFontMetrics(sentence_->font()).height();
  const QIcon sign = verdict.fits ? icon("fits", palette().color(QPalette::Highlight))
                                  : severityIcon(Severity::Blocking);
  sign_->setPixmap(sign.pixmap(size, size));
  const double values[] = {verdict.armhole, verdict.cap, verdict.ease};
  for (int i = 0; i < 3; ++i)
    numbers_[i].value->setText(valueText(FieldKind::Length, values[i], {unit, true, i == 2, true}));
  picture_->refresh();
}

void FitPanel::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) refresh();
}

} // namespace scye
