#include "panels/swatch_card.h"

#include "io/refusal_text.h"
#include "look/icons.h"
#include "paint/picture_colours.h"
#include "values/choice_box.h"
#include "values/field_box.h"
#include "values/text_box.h"

#include <QGridLayout>
#include <QLabel>
#include <QLocale>
#include <QToolButton>

namespace scye {

SwatchCard::SwatchCard(const PanelContext& context, std::size_t at, QWidget* parent)
    : QWidget(parent), context_(context), at_(at), grid_(new QGridLayout(this)),
      label_(new TextBox(this)), use_(new ChoiceBox(this)), remove_(new QToolButton(this)),
      refusal_(new QLabel(this)) {
  const int gap = fontMetrics().averageCharWidth();
  grid_->setContentsMargins(0, gap, 0, gap);
  grid_->setHorizontalSpacing(gap);
  grid_->setVerticalSpacing(gap / 2);
  grid_->setColumnStretch(0, 1);
  const QString number = QLocale().toString(at + 2);

  label_->setPlaceholderText(tr("Swatch %1: what it is").arg(number));
  label_->setAccessibleName(tr("Swatch %1, what it is").arg(number));
  for (const char* use : {"same", "beforeWashing", "otherPattern"})
    use_->addItem(phraseText(context_.phrases(), std::string("swatch.use.") + use));
  use_->setAccessibleName(tr("Swatch %1, what it is for").arg(number));
  remove_->setIcon(icon("close"));
  remove_->setAutoRaise(true);
  remove_->setFocusPolicy(Qt::StrongFocus);
  remove_->setToolTip(tr("Remove this swatch"));
  remove_->setAccessibleName(tr("Remove swatch %1").arg(number));
  grid_->addWidget(label_, 0, 0, 1, 4);
  grid_->addWidget(remove_, 0, 4);
  grid_->addWidget(use_, 1, 0, 1, 4);

  word(tr("Stitches"), 2, 0);
  addCell(tr("Swatch %1, stitches").arg(number), &SwatchReading::stitches, Field::SwatchStitches, 2,
          1);
  word(tr("over"), 2, 2);
  addCell(tr("Swatch %1, width").arg(number), &SwatchReading::width, Field::SwatchWidth, 2, 3);
  word(tr("Rows"), 3, 0);
  addCell(tr("Swatch %1, rows").arg(number), &SwatchReading::rows, Field::SwatchRows, 3, 1);
  word(tr("over"), 3, 2);
  addCell(tr("Swatch %1, height").arg(number), &SwatchReading::height, Field::SwatchHeight, 3, 3);
  word(tr("Weight"), 4, 0);
  addCell(tr("Swatch %1, weight").arg(number), &SwatchReading::weight, Field::SwatchWeight, 4, 3);
  grid_->addWidget(refusal_, 5, 0, 1, 5);
  refusal_->setWordWrap(true);
  refusal_->hide();

  connect(label_, &TextBox::entered, this, [this](const QString& text) {
    SwatchReading next = reading();
    next.label = text.trimmed().toStdString();
    change(next);
  });
  connect(use_, &QComboBox::activated, this, [this](int use) {
    SwatchReading next = reading();
    next.use = SwatchReading::Use(use);
    change(next);
  });
  connect(remove_, &QToolButton::clicked, this, [this] { Q_EMIT removed(at_); });
  refresh();
}

void SwatchCard::word(const QString& text, int line, int column) {
  grid_->addWidget(new QLabel(text, this), line, column);
}

void SwatchCard::addCell(const QString& name, double SwatchReading::*member, Field like, int line,
                         int column) {
  auto* box = new FieldBox(info(like).kind, context_.phrases(), this);
  box->setAccessibleName(name);
  grid_->addWidget(box, line, column, Qt::AlignRight);
  const bool mayBeMissing = like != Field::SwatchWidth && like != Field::SwatchHeight;
  const Cell cell{box, member, like, mayBeMissing};
  cells_.push_back(cell);
  connect(box, &FieldBox::focused, this, [this] { run_ = context_.document.newRun(); });
  connect(box, &FieldBox::entered, this, [this, cell](double v) { put(cell, v, 0); });
  connect(box, &FieldBox::stepped, this, [this, cell](double v) { put(cell, v, run_); });
  connect(box, &FieldBox::unreadable, this, [this, cell](const QString& text) {
    if (cell.mayBeMissing && text.trimmed().isEmpty())
      put(cell, 0, 0);
    else
      refuse(cell.like, Refusal::NotANumber);
  });
}

const SwatchReading& SwatchCard::reading() const {
  return context_.document.design().swatches[at_];
}

void SwatchCard::put(const Cell& cell, double value, int run) {
  const bool missing = cell.mayBeMissing && value == 0;
  if (const auto refusal = check(cell.like, value); refusal && !missing) {
    refuse(cell.like, *refusal);
    return;
  }
  refusal_->hide();
  SwatchReading next = reading();
  next.*cell.member = value;
  change(next, run);
}

void SwatchCard::refuse(Field field, Refusal refusal) {
  QPalette p;
  p.setColor(QPalette::WindowText, blockingColour(isDark(p)));
  refusal_->setPalette(p);
  refusal_->setText(QString::fromStdString(
      refusalText(field, refusal, context_.phrases(), context_.settings.unit())));
  refusal_->show();
}

void SwatchCard::change(const SwatchReading& next, int run) {
  Design design = context_.document.design();
  design.swatches[at_] = next;
  context_.document.edit(tr("Swatch %1").arg(at_ + 2), design, run);
}

void SwatchCard::refresh() {
  const SwatchReading& now = reading();
  label_->showText(QString::fromStdString(now.label));
  use_->setCurrentIndex(int(now.use));
  for (const Cell& c : cells_) {
    c.box->setValueStyle({context_.settings.unit()});
    if (c.mayBeMissing && now.*c.member == 0)
      c.box->setBlank();
    else
      c.box->setValue(now.*c.member);
  }
}

void SwatchCard::focusFirst() {
  label_->setFocus(Qt::OtherFocusReason);
}

void SwatchCard::followInTabOrder(QWidget* before) {
  QList<QWidget*> stops{label_, remove_, use_};
  for (const Cell& c : cells_)
    stops.append(c.box);
  for (QWidget* stop : stops)
    QWidget::setTabOrder(std::exchange(before, stop), stop);
}

} // namespace scye
