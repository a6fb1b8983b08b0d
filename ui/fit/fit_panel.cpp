#include "fit/fit_panel.h"

#include "canvas/picture_widget.h"
#include "fit/severity.h"
#include "garment/verdict.h"
#include "look/icons.h"
#include "schematic/schematic.h"
#include "seam/hang.h"
#include "seam/room.h"
#include "values/value_text.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace scye {
namespace {

constexpr int kLeastPicture = 56; // letters high: back and front, one below the other

} // namespace

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
  const auto pale = [this](const QString& text) {
    auto* label = new QLabel(text, this);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
  };
  row->addWidget(pale(tr("Drafted")), 1, 0);
  knittedName_ = pale(tr("Knitted"));
  row->addWidget(knittedName_, 2, 0);
  for (int i = 0; i < 3; ++i) {
    numbers_[i] = {pale(names[i]), new QLabel(this), new QLabel(this)};
    for (QLabel* label : {numbers_[i].name, numbers_[i].drafted, numbers_[i].knitted})
      label->setAlignment(Qt::AlignRight);
    for (QLabel* label : {numbers_[i].drafted, numbers_[i].knitted})
      label->setFont(large);
    numbers_[i].drafted->setAccessibleName(names[i]);
    numbers_[i].knitted->setAccessibleName(tr("%1, knitted").arg(names[i]));
    row->addWidget(numbers_[i].name, 0, i + 1);
    row->addWidget(numbers_[i].drafted, 1, i + 1);
    row->addWidget(numbers_[i].knitted, 2, i + 1);
    row->setColumnStretch(i + 1, 1);
  }
  column->addLayout(row);
  hang_ = new QLabel(this);
  hang_->setWordWrap(true);
  hang_->setAccessibleName(tr("How the sleeve hangs"));
  hang_->setToolTip(unbroken(builtinPhrases().say("hang.source")));
  column->addWidget(hang_);
  room_ = new QLabel(this);
  room_->setWordWrap(true);
  room_->setAccessibleName(tr("Room in the armhole"));
  column->addWidget(room_);
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
  const Derived& derived = document_.derived();
  if (derived.draft.cap.found) options.knitted = &derived.knit;
  return fitComparison(derived.draft, builtinPhrases(), options);
}

int FitPanel::leastHeight(int width) const {
  layout()->activate();
  return layout()->totalMinimumHeightForWidth(width) - picture_->minimumSizeHint().height() +
         kLeastPicture * fontMetrics().averageCharWidth();
}

void FitPanel::refresh() {
  const LengthUnit unit = settings_.unit();
  const Derived& derived = document_.derived();
  const FitVerdict verdict = fitVerdict(derived, builtinPhrases(), unit);
  sentence_->setText(unbroken(verdict.sentence));
  const int size = QFontMetrics(sentence_->font()).height();
  const QIcon sign = verdict.fits ? icon("fits", palette().color(QPalette::Highlight))
                                  : severityIcon(Severity::Blocking);
  sign_->setPixmap(sign.pixmap(size, size));
  const auto show = [unit](QLabel* label, double cm, bool signed_) {
    label->setText(valueText(FieldKind::Length, cm, {unit, true, signed_, true}));
  };
  show(numbers_[0].drafted, verdict.armhole, false);
  show(numbers_[1].drafted, verdict.cap, false);
  show(numbers_[2].drafted, verdict.ease, true);
  // Beside a cap that cannot fit these would read as if it did.
  const bool knitted = verdict.knitted && derived.draft.cap.found;
  if (knitted) {
    const KnitGarment& knit = derived.knit;
    const bool left = verdict.knitted->mismatch == knit.left.mismatch(knit.easeWanted);
    const ArmholeFit& side = left ? knit.left : knit.right;
    show(numbers_[0].knitted, side.armhole.mean(), false);
    show(numbers_[1].knitted, side.cap.mean(), false);
    show(numbers_[2].knitted, (side.cap - side.armhole).mean(), true);
    for (const Number& number : numbers_)
      number.knitted->setToolTip(unbroken(verdict.knitted->sentence));
  }
  for (const Number& number : numbers_)
    number.knitted->setVisible(knitted);
  knittedName_->setVisible(knitted);
  // A cap that fits nothing hangs nowhere.
  hang_->setVisible(derived.draft.cap.found);
  hang_->setText(unbroken(hangText(sleeveHang(derived.draft), builtinPhrases())));
  room_->setText(unbroken(roomText(armholeRoom(derived.draft), builtinPhrases(), unit)));
  picture_->refresh();
}

void FitPanel::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) refresh();
}

} // namespace scye
