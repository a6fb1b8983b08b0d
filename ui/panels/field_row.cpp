#include "panels/field_row.h"

#include "fit/finding_card.h"
#include "fit/severity.h"
#include "io/refusal_text.h"
#include "look/quiet_button.h"
#include "panels/field_slider.h"
#include "panels/row_slider.h"
#include "values/field_box.h"

#include <QApplication>
#include <QGridLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QToolButton>

namespace scye {
namespace {

bool isDoubt(const Finding& finding) {
  return finding.code.starts_with("doubt.");
}

} // namespace

FieldRow::FieldRow(const PanelContext& context, QGridLayout* grid, const QString& name,
                   const std::vector<CellSpec>& cells, bool unitInHead, QObject* parent)
    : QObject(parent), context_(context), grid_(grid), line_(grid->rowCount()),
      unitInHead_(unitInHead), nameArea_(new QWidget), name_(new QLabel(name)),
      mark_(new QToolButton), source_(new QuietButton(QuietButton::Looks::Aside)) {
  auto* line = new QHBoxLayout(nameArea_);
  line->setContentsMargins({});
  line->setSpacing(name_->fontMetrics().averageCharWidth());
  line->addWidget(name_, 1);
  line->addWidget(mark_);
  name_->setWordWrap(true);
  mark_->setAutoRaise(true);
  mark_->setFocusPolicy(Qt::StrongFocus);
  const int sign = name_->fontMetrics().ascent();
  mark_->setIconSize({sign, sign});
  mark_->hide();
  connect(mark_, &QToolButton::clicked, this, &FieldRow::askFinding);
  grid->addWidget(nameArea_, line_, column::kName);
  for (const CellSpec& cell : cells)
    addCell(cell, name);
  name_->setBuddy(cells_.front().box);

  source_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  connect(source_, &QuietButton::clicked, this, &FieldRow::openSourceMenu);
  grid->addWidget(source_, line_, column::kSource);
  refresh();
}

void FieldRow::addCell(const CellSpec& spec, const QString& name) {
  auto* box = new FieldBox(info(spec.field).kind, context_.phrases());
  const std::size_t at = cells_.size();
  box->setAccessibleName(spec.finished ? tr("%1, finished").arg(name)
                         : at == 0     ? name
                                       : fieldName(context_.phrases(), spec.field));
  // With its unit a figure needs more than its column.
  const int from = unitInHead_ || spec.column == column::kFirst ? spec.column : spec.column - 1;
  grid_->addWidget(box, line_, from, 1, spec.column - from + 1, Qt::AlignRight);
  cells_.push_back({spec, box});
  connect(box, &FieldBox::focused, this, [this, at] { take(at); });
  connect(box, &FieldBox::entered, this, [this, at](double v) { enter(at, v, 0); });
  connect(box, &FieldBox::stepped, this, [this, at](double v) { enter(at, v, run_); });
  connect(box, &FieldBox::gaveUp, this, [this] {
    if (slider_) slider_->quiet();
    if (slider_ && open_ == false) slider_->setOpen(false);
  });
  connect(box, &FieldBox::done, this, [this, column = spec.column] {
    // Where the figure is questioned, the question comes first.
    const Finding* worst = worstFinding();
    if (!worst || !isDoubt(*worst)) Q_EMIT wentDown(this, column);
  });
  connect(box, &FieldBox::unreadable, this, [this, at](const QString& text) {
    if (text.trimmed().isEmpty())
      clear(target(cells_[at]));
    else
      refuse(at, cells_[at].spec.field, Refusal::NotANumber);
  });
}

bool FieldRow::has(Field field) const {
  return std::any_of(cells_.begin(), cells_.end(),
                     [&](const Cell& c) { return c.spec.field == field; });
}

std::optional<Field> FieldRow::measurement() const {
  const Field first = cells_.front().spec.field;
  return isMeasurement(first) ? std::optional(first) : std::nullopt;
}

bool FieldRow::holds(const QWidget* widget) const {
  const auto isIn = [widget](const QWidget* part) {
    return part && (part == widget || part->isAncestorOf(widget));
  };
  return isIn(nameArea_) || isIn(source_) || isIn(slider_) || isIn(card_) ||
         std::any_of(cells_.begin(), cells_.end(), [&](const Cell& c) { return isIn(c.box); });
}

Field FieldRow::target(const Cell& cell) const {
  if (!cell.spec.finished || isWorkedOut(context_.document.design(), cell.spec.field))
    return cell.spec.field;
  return easeOf(cell.spec.field).value_or(cell.spec.field);
}

void FieldRow::take(std::size_t cell) {
  inHand_ = cell;
  run_ = context_.document.newRun();
  if (slider_ && open_) showSlider();
  Q_EMIT inUse(this);
}

void FieldRow::showSlider() {
  const Field field = target(cells_[inHand_]);
  if (!slider_) {
    slider_ = new RowSlider(context_, grid_->parentWidget());
    grid_->addWidget(slider_, line_ + 1, 0, 1, column::kAll);
    // In the order of the keyboard the slider follows its row.
    QWidget::setTabOrder(source_, slider_->slider());
    slider_->setField(field);
    connect(slider_, &RowSlider::howWanted, this, &FieldRow::howWanted);
  } else if (slider_->isHidden() || slider_->field() != field) {
    slider_->setField(field);
  }
  open_ = true;
  slider_->setOpen(true);
  refreshCard(worstFinding());
}

void FieldRow::close() {
  open_ = false;
  if (slider_) slider_->setOpen(false);
  if (card_) card_->hide();
  asked_ = false;
}

void FieldRow::askFinding() {
  asked_ = true;
  cells_.front().box->setFocus(Qt::OtherFocusReason); // which opens what lies beneath
  if (!card_ || card_->isHidden()) showSlider();
  if (!card_) return;
  if (auto* remedy = card_->findChild<QPushButton*>(); remedy && remedy->isEnabled())
    remedy->setFocus(Qt::TabFocusReason);
  else
    card_->setFocus(Qt::TabFocusReason);
}

QWidget* FieldRow::lowest() const {
  if (card_ && !card_->isHidden()) return card_;
  return slider_ && open_ ? slider_.data() : nullptr;
}

void FieldRow::enter(std::size_t at, double value, int run) {
  const Design& design = context_.document.design();
  const CellSpec& spec = cells_[at].spec;
  const Design next = spec.finished
                          ? withFinished(design, sizes(), spec.field, value)
                          : Design(design).set(spec.field, value, whereTaken(design, spec.field));
  const Field written = target(cells_[at]);
  if (const auto refusal = check(written, *next.given(written), next.source(written))) {
    cells_[at].box->refuse();
    refuse(at, written, *refusal);
    refresh();
    return;
  }
  if (slider_) slider_->quiet();
  context_.document.edit(fieldName(context_.phrases(), written), next, run);
  refresh();
}

void FieldRow::clear(Field field) {
  if (slider_) slider_->quiet();
  context_.document.edit(fieldName(context_.phrases(), field),
                         Design(context_.document.design()).clear(field));
}

void FieldRow::refuse(std::size_t at, Field field, Refusal refusal) {
  inHand_ = at;
  showSlider();
  slider_->say(QString::fromStdString(refusalText(field, refusal, context_.phrases(),
                                                  context_.settings.unit(),
                                                  whereTaken(context_.document.design(), field))));
  Q_EMIT inUse(this);
}

bool FieldRow::focusColumn(int column) {
  FieldBox* best = nullptr;
  for (const Cell& c : cells_)
    if (c.box->isVisible() && !c.box->isReadOnly() && (!best || c.spec.column == column))
      best = c.box;
  if (!best) return false;
  best->setFocus(Qt::TabFocusReason);
  best->selectAll();
  return true;
}

void FieldRow::focus(Field field, bool finished) {
  const Cell* best = &cells_.front();
  for (const Cell& c : cells_) {
    if (c.spec.field == field && c.spec.finished == finished) best = &c;
    if (finished && c.spec.finished && measurementOf(field) == c.spec.field) best = &c;
  }
  best->box->setFocus(Qt::OtherFocusReason);
  best->box->selectAll();
}

void FieldRow::refresh() {
  const Design& design = context_.document.design();
  const Sizes& s = sizes();
  const bool wanted = matters(cells_.front().spec.field, s.style);
  nameArea_->setVisible(wanted);
  source_->setVisible(wanted);
  const LengthUnit unit = context_.settings.unit();
  for (const Cell& c : cells_) {
    const Field f = c.spec.field;
    c.box->setVisible(wanted);
    c.box->setValueStyle(styleOf(f, unit, !unitInHead_));
    if (isUnsaid(f, s[f]))
      c.box->setBlank();
    else
      c.box->setValue(c.spec.finished ? s.finished(f) : shownIn(design, s, f));
    const bool workedOut = isWorkedOut(design, target(c));
    c.box->setReadOnly(workedOut);
    c.box->setFilledIn(!c.spec.finished && !design.has(f));
    const QString from =
        c.spec.finished ? QString() : estimateText(context_.phrases(), design, s, f, unit);
    c.box->setToolTip(workedOut ? workedOutText(context_.phrases()) : from);
    c.box->setAccessibleDescription(c.box->toolTip());
  }
  if (!wanted) close();
  const Field first = cells_.front().spec.field;
  const bool flat = flatShare(first, whereTaken(design, first)) < 1;
  source_->setText(sourceText(first, flat));
  if (flat) {
    const double around = shownIn(design, s, first) / flatShare(first, Source::Garment);
    const Params girth{lengthParam("girth", around)};
    cells_.front().box->setToolTip(phraseText(context_.phrases(), "garment.girth", girth, unit));
    cells_.front().box->setAccessibleDescription(cells_.front().box->toolTip());
  }
  source_->setSign(isWorkedOut(design, first) ? QStringLiteral("=") : originSign(s, first));
  source_->setToolTip(tr("Where the value came from: %1").arg(source_->text()));
  source_->setAccessibleName(tr("%1, source: %2").arg(name_->text(), source_->text()));
  if (slider_ && open_) slider_->refresh();
  refreshFinding();
}

QString FieldRow::sourceText(Field first, bool flat) const {
  const Design& design = context_.document.design();
  const Sizes& s = sizes();
  if (isWorkedOut(design, first)) return tr("worked out");
  if (isUnsaid(first, s[first]))
    return first == Field::SwatchWeight ? tr("not weighed") : tr("not said");
  if (flat && design.has(first)) return phraseText(context_.phrases(), "garment.flat");
  const QString origin = originName(context_.phrases(), s, first);
  if (flat)
    return phraseText(context_.phrases(), "garment.flatFilled",
                      {textParam("origin", origin.toStdString())});
  const bool apart = design.as<Source>() == Source::Garment && canTakeOn(first, Source::Garment) &&
                     s.origin(first) == Origin::GivenBody;
  return apart ? phraseText(context_.phrases(), "origin.onBody") : origin;
}

void FieldRow::refreshFinding() {
  const Finding* worst = worstFinding();
  refreshMark(worst);
  refreshCard(worst);
}

const Finding* FieldRow::worstFinding() const {
  const Finding* worst = nullptr;
  for (const Finding& f : context_.document.derived().findings)
    if (!f.fields.empty() && f.severity != Severity::Note && has(f.fields.front()) &&
        (!worst || f.severity > worst->severity))
      worst = &f;
  return worst;
}

void FieldRow::refreshMark(const Finding* worst) {
  mark_->setVisible(worst && nameArea_->isVisibleTo(nameArea_->parentWidget()));
  if (!worst) return;
  mark_->setIcon(severityIcon(worst->severity));
  const QString text = findingText(context_.phrases(), *worst, context_.settings.unit());
  mark_->setToolTip(text);
  mark_->setAccessibleName(text);
}

void FieldRow::refreshCard(const Finding* worst) {
  if (context_.document.inGesture()) return; // nothing moves under a held slider
  const bool open = slider_ && open_;
  if (!open || !worst || !(asked_ || isDoubt(*worst))) {
    if (!card_) return;
    if (card_->isAncestorOf(QApplication::focusWidget())) cells_.front().box->setFocus();
    card_->hide();
    return;
  }
  if (!card_) {
    card_ = new FindingCard(context_.document, context_.attention, context_.phrases(),
                            grid_->parentWidget());
    grid_->addWidget(card_, line_ + 2, 0, 1, column::kAll);
  }
  // Remedies of doubts come with them; others are found in a pause.
  card_->setFinding(*worst, context_.settings.unit(),
                    isDoubt(*worst) || context_.document.remediesFound(),
                    card_->underMouse() || card_->isAncestorOf(QApplication::focusWidget()));
  QWidget* before = slider_->slider();
  QWidget::setTabOrder(before, card_);
  before = card_;
  for (QPushButton* remedy : card_->findChildren<QPushButton*>())
    QWidget::setTabOrder(std::exchange(before, remedy), remedy);
  card_->show();
}

void FieldRow::openSourceMenu() {
  auto* menu = new QMenu(source_);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  const Design design = context_.document.design();
  const LengthUnit unit = context_.settings.unit();
  const Field first = cells_.front().spec.field;
  if (isMeasurement(first)) {
    const auto offer = [&](const QString& text, Source source) {
      QAction* action = menu->addAction(text);
      action->setCheckable(true);
      action->setChecked(design.has(first) && design.source(first) == source);
      connect(action, &QAction::triggered, this, [this, first, source] {
        context_.document.edit(fieldName(context_.phrases(), first),
                               withSource(context_.document.design(), sizes(), first, source));
      });
    };
    offer(tr("Measured on the body"), Source::Body);
    offer(tr("Measured flat on a garment that fits"), Source::Garment);
    menu->addAction(tr("How to measure it"), this, [this, first] { Q_EMIT howWanted(first); });
    menu->addSeparator();
  }
  for (const Cell& c : cells_) {
    if (c.spec.finished) continue;
    const Field f = c.spec.field;
    QAction* action =
        menu->addAction(tr("%1: back to %2")
                            .arg(fieldName(context_.phrases(), f),
                                 shownValue(context_.phrases(), f, filledIn(design, f), unit)));
    action->setEnabled(design.has(f));
    connect(action, &QAction::triggered, this, [this, f] { clear(f); });
  }
  menu->popup(source_->mapToGlobal(QPoint(0, source_->height())));
}

} // namespace scye
