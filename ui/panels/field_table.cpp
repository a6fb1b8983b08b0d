#include "panels/field_table.h"

#include "values/field_box.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>

namespace scye {
namespace {

// Finished sizes are told for what has ease, and for the lengths that the armhole's ease shortens.
bool hasFinished(Field m) {
  return easeOf(m) || m == Field::HemToUnderarm || m == Field::SleeveToUnderarm;
}

// Columns as wide as a box of a length, where a table has none either: what lies over several of
// them has their room.
void fitBoxes(QGridLayout& grid, const Phrases& phrases) {
  FieldBox box(FieldKind::Girth, phrases);
  box.setValueStyle({LengthUnit::Centimetre, false, false});
  for (const int at : {column::kFirst, column::kSecond, column::kThird})
    grid.setColumnMinimumWidth(at, box.sizeHint().width());
}

} // namespace

FieldTable::FieldTable(const PanelContext& context, QWidget* parent)
    : QWidget(parent), context_(context), grid_(new QGridLayout(this)) {
  const int gap = fontMetrics().averageCharWidth();
  grid_->setContentsMargins(gap, gap / 2, gap / 2, gap);
  grid_->setHorizontalSpacing(gap / 2);
  grid_->setVerticalSpacing(gap / 3);
  grid_->setColumnStretch(column::kName, 1);
  grid_->setColumnMinimumWidth(column::kName, 14 * gap);            // longer names wrap
  grid_->setColumnMinimumWidth(column::kSource, 2 * gap + gap / 2); // its sign; words with room
  fitBoxes(*grid_, context_.phrases());
  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.replaced)
      for (FieldBox* refused : findChildren<FieldBox*>())
        refused->forgive(); // what was refused belonged to another design
    if (event.derived) refresh();
    if (event.remedies)
      for (FieldRow* row : rows_)
        row->refreshFinding();
  });
  connect(&context_.settings, &Settings::changed, this, &FieldTable::refresh);
}

void FieldTable::addHeads() {
  const int line = grid_->rowCount();
  const auto head = [&](const QString& text, int at, Qt::Alignment alignment) {
    auto* label = new QLabel(text);
    label->setAlignment(alignment);
    label->setForegroundRole(QPalette::PlaceholderText);
    grid_->addWidget(label, line, at);
    return label;
  };
  unitHead_ = head({}, column::kName, Qt::AlignLeft);
  takenHead_ = head({}, column::kFirst, Qt::AlignRight);
  easeHead_ = head({}, column::kSecond, Qt::AlignRight);
  head(tr("Finished"), column::kThird, Qt::AlignRight);
  refresh();
}

void FieldTable::add(const QString& name, std::vector<CellSpec> cells, bool unitInHead) {
  auto* row = new FieldRow(context_, grid_, name, std::move(cells), unitInHead, this);
  connect(row, &FieldRow::inUse, this, &FieldTable::inUse);
  connect(row, &FieldRow::howWanted, this, &FieldTable::howWanted);
  connect(row, &FieldRow::wentDown, this, [this](FieldRow* from, int column) {
    const auto at = std::find(rows_.begin(), rows_.end(), from);
    for (auto next = at == rows_.end() ? at : at + 1; next != rows_.end(); ++next)
      if ((*next)->focusColumn(column)) return;
  });
  rows_.push_back(row);
  // The next row begins below the lines of the slider and the finding.
  grid_->setRowMinimumHeight(grid_->rowCount() + 1, 0);
}

void FieldTable::addMeasurement(Field m) {
  std::vector<CellSpec> cells{{m, column::kFirst}};
  if (const auto ease = easeOf(m)) cells.push_back({*ease, column::kSecond});
  if (hasFinished(m)) cells.push_back({m, column::kThird, true});
  add(fieldName(context_.phrases(), m), std::move(cells), true);
}

void FieldTable::addValue(Field field) {
  add(fieldName(context_.phrases(), field), {{field, column::kThird}}, false);
}

void FieldTable::addCount(const QString& name, Field count, Field over) {
  const int line = grid_->rowCount();
  add(name, {{count, column::kFirst}, {over, column::kThird}}, false);
  auto* word = new QLabel(tr("over"));
  word->setAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  grid_->addWidget(word, line, column::kSecond);
}

void FieldTable::addChoice(Choice choice) {
  choices_.push_back(new ChoiceRow(context_, grid_, choice, this));
}

void FieldTable::addNamed(const QString& name, QWidget* editor) {
  auto* label = new QLabel(name);
  label->setBuddy(editor);
  const int line = grid_->rowCount();
  grid_->addWidget(label, line, column::kName);
  grid_->addWidget(editor, line, column::kFirst, 1, column::kAll - column::kFirst);
}

void FieldTable::addWide(QWidget* widget) {
  grid_->addWidget(widget, grid_->rowCount(), 0, 1, column::kAll);
}

FieldRow* FieldTable::rowOf(Field field) const {
  for (FieldRow* row : rows_)
    if (row->has(field)) return row;
  return nullptr;
}

void FieldTable::refresh() {
  if (unitHead_) refreshHeads();
  for (ChoiceRow* choice : choices_)
    choice->refresh();
  for (FieldRow* row : rows_)
    row->refresh();
}

void FieldTable::refreshHeads() {
  const bool garment = context_.document.design().as<Source>() == Source::Garment;
  const QString unit =
      context_.settings.unit() == LengthUnit::Inch ? tr("in inches") : tr("in centimetres");
  unitHead_->setText(garment ? phraseText(context_.phrases(), "measure.unit.flat",
                                          {textParam("unit", unit.toStdString())})
                             : unit);
  takenHead_->setText(
      phraseText(context_.phrases(), garment ? "measure.head.garment" : "measure.head.body"));
  easeHead_->setText(garment ? phraseText(context_.phrases(), "measure.head.change") : tr("Ease"));
  easeHead_->setToolTip(garment ? phraseText(context_.phrases(), "garment.change") : QString());
}

void FieldTable::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) refresh();
  if (event->type() == QEvent::FontChange) fitBoxes(*grid_, context_.phrases());
}

} // namespace scye
