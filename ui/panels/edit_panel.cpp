#include "panels/edit_panel.h"

#include "panels/cap_shape_view.h"
#include "panels/ease_fit.h"
#include "panels/estimate_note.h"
#include "panels/person_rows.h"
#include "panels/sleeve_reach.h"
#include "panels/swatch_list.h"
#include "panels/swatch_report.h"
#include "panels/wearer_row.h"
#include "values/taken_on_box.h"

#include <QApplication>
#include <QGridLayout>
#include <QMouseEvent>
#include <QScrollBar>
#include <QShortcut>
#include <QTimer>
#include <QVBoxLayout>

namespace scye {
namespace {

// Sections and their folds that fill the first view.
constexpr std::size_t kFirstParts = 1;

void fillBody(FieldTable& t) {
  t.addChoice(Choice::Neckline);
  t.addValue(Field::FrontNeckDrop);
  t.addChoice(Choice::BackNeck);
  t.addValue(Field::BackNeckDrop);
  t.addValue(Field::NeckBand);
  t.addChoice(Choice::ShoulderWork);
  t.addChoice(Choice::ShoulderJoin);
  t.addChoice(Choice::BandMade);
  t.addValue(Field::ButtonBand);
  t.addValue(Field::Buttons);
  t.addChoice(Choice::ButtonSide);
  t.addChoice(Choice::BodyLength);
  t.addChoice(Choice::SideSeam);
  t.addValue(Field::WaistHeight);
  t.addChoice(Choice::Hem);
  t.addChoice(Choice::PlainEdge);
  t.addValue(Field::HemDepth);
  t.addChoice(Choice::BustShaping);
  t.addValue(Field::BustDepth);
  t.addValue(Field::BustReach);
}

void fillBodyRarer(FieldTable& t) {
  t.addValue(Field::UnderarmBack);
  t.addValue(Field::UnderarmFront);
  t.addValue(Field::RiseShare);
  t.addValue(Field::ScoopBack);
  t.addValue(Field::ScoopFront);
  t.addValue(Field::BackShare);
  t.addValue(Field::BackOpening);
}

void fillSleeve(FieldTable& t, const PanelContext& context) {
  t.addChoice(Choice::SleeveLine);
  t.addChoice(Choice::SleeveFrom);
  t.addNamed(SleeveReach::tr("The sleeve is"), new SleeveReach(context));
  t.addValue(Field::SleeveLength);
  t.addValue(Field::CuffDepth);
  t.addValue(Field::CuffGirth);
  t.addValue(Field::FlareFrom);
  t.addValue(Field::FullGirth);
  t.addChoice(Choice::CapRise);
  t.addChoice(Choice::CapTop);
  t.addValue(Field::CapEase);
  t.addValue(Field::GatherWidth);
  t.addValue(Field::Pleats);
  t.addValue(Field::CapHeight);
  t.addValue(Field::CrownWidth);
  t.addChoice(Choice::WorkedOut);
}

void fillSleeveRarer(FieldTable& t, const PanelContext& context) {
  t.addWide(new CapShapeView(context));
  t.addValue(Field::LowerFullness);
  t.addValue(Field::UpperFullness);
  t.addChoice(Choice::CapLean);
}

// One choice for all measurements; a row may differ.
QWidget* makeTakenOn(const PanelContext& context) {
  auto* box = new TakenOnBox(context.phrases());
  const auto refresh = [box, &document = context.document] {
    box->setWhere(document.design().as<Source>());
  };
  QObject::connect(box, &TakenOnBox::chosen, box,
                   [&document = context.document, &phrases = context.phrases()](Source where) {
                     document.edit(choiceName(phrases, Choice::TakenOn),
                                   takenOn(document.design(), where));
                   });
  QObject::connect(&context.document, &Document::changed, box,
                   [refresh](const Document::Event& event) {
                     if (event.design) refresh();
                   });
  refresh();
  return box;
}

void fillMeasurements(FieldTable& t, const PanelContext& context) {
  t.addNamed(choiceName(context.phrases(), Choice::TakenOn), makeTakenOn(context));
  t.addChoice(Choice::FillFrom);
  t.addWide(new EstimateNote(context));
  t.addHeads();
  t.addMeasurement(Field::Bust);
  t.addNamed(EaseFit::tr("Fit at the bust"), new EaseFit(context));
  for (const Field f :
       {Field::Waist, Field::Hip, Field::CrossShoulder, Field::ArmholeDepth, Field::UpperArm,
        Field::Wrist, Field::HemToUnderarm, Field::SleeveToUnderarm})
    t.addMeasurement(f);
}

void fillMeasurementsRarer(FieldTable& t) {
  for (const Field f : {Field::CrossFront, Field::CrossBack, Field::ScyeGirth, Field::TipToUnderarm,
                        Field::BackWaistLength, Field::FrontWaistLength, Field::Elbow,
                        Field::SleeveToShoulder, Field::NeckWidth, Field::ShoulderLength,
                        Field::ShoulderDrop, Field::NeckBase, Field::HeadGirth, Field::HandGirth})
    t.addMeasurement(f);
}

void fillKnitting(FieldTable& t) {
  t.addChoice(Choice::Rib);
  t.addValue(Field::RibMultiple);
  t.addChoice(Choice::RibChange);
  t.addValue(Field::NeedleBody);
  t.addValue(Field::NeedleRib);
  t.addValue(Field::BallWeight);
  t.addValue(Field::BallLength);
  t.addValue(Field::YarnReserve);
  t.addValue(Field::Selvedge);
  t.addValue(Field::PatternMultiple);
  t.addValue(Field::PatternExtra);
  t.addValue(Field::Fidelity);
  t.addChoice(Choice::EveryRow);
}

void fillLimits(FieldTable& t) {
  for (int f = int(Field::LimitUpperArm); f < kFieldCount; ++f)
    t.addValue(Field(f));
}

} // namespace

EditPanel::EditPanel(const PanelContext& context, QWidget* parent)
    : QScrollArea(parent), context_(context), content_(new QWidget) {
  setWidgetResizable(true);
  setFrameShape(NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setAccessibleName(tr("The design"));
  setFocusPolicy(Qt::NoFocus);
  auto* column = new QVBoxLayout(content_);
  const int gap = fontMetrics().averageCharWidth();
  column->setContentsMargins(gap / 2, gap, 0, gap);
  column->setSpacing(gap / 2);
  ballast_ = new QWidget(content_);
  ballast_->setFixedHeight(0);
  column->addWidget(ballast_);
  setWidget(content_);

  addSection(tr("Who it is for"), true, [this](FieldTable& t) {
    t.addChoice(Choice::Figure);
    t.addChoice(Choice::Garment);
    t.addNamed(tr("Title"), makeTextBox(context_, tr("Title"), &Design::title));
    t.addNamed(tr("Wearer"), new WearerRow(context_));
  });
  addSection(
      tr("Measurements and ease"), true, [this](FieldTable& t) { fillMeasurements(t, context_); },
      fillMeasurementsRarer, tr("More measurements"));
  addSection(tr("Swatch"), true, [this](FieldTable& t) {
    t.addCount(tr("Stitches"), Field::SwatchStitches, Field::SwatchWidth);
    t.addCount(tr("Rows"), Field::SwatchRows, Field::SwatchHeight);
    t.addValue(Field::SwatchWeight);
    t.addChoice(Choice::Washed);
    t.addChoice(Choice::YarnClass);
    t.addWide(new SwatchList(context_));
    t.addWide(new SwatchReport(context_));
  });
  addSection(tr("Body"), true, fillBody, fillBodyRarer, tr("Shape of the armhole"));
  addSection(
      tr("Sleeve and cap"), true, [this](FieldTable& t) { fillSleeve(t, context_); },
      [this](FieldTable& t) { fillSleeveRarer(t, context_); }, tr("Shape of the cap"));
  addSection(tr("Knitting and yarn"), false, [this](FieldTable& t) {
    fillKnitting(t);
    t.addNamed(tr("Edge stitch of your own"),
               makeTextBox(context_, tr("Edge stitch of your own"), &Design::ribName));
  });
  addSection(tr("When to warn"), false, fillLimits);
  addSection(tr("Notes"), false, [this](FieldTable& t) { t.addWide(makeNotes(context_)); });
  column->addStretch(1);

  connect(&context_.attention, &Attention::asked, this, &EditPanel::focusField);
}

std::size_t EditPanel::addPart(Fold::Rank rank, const QString& title, Fill fill) {
  auto part = std::make_unique<Part>();
  Part* p = part.get();
  p->fold = new Fold(rank, title, [this, p, fill = std::move(fill)]() -> QWidget* {
    p->table = new FieldTable(context_);
    fill(*p->table);
    connect(p->table, &FieldTable::inUse, this, &EditPanel::useRow);
    connect(p->table, &FieldTable::howWanted, this, &EditPanel::howWanted);
    return p->table;
  });
  content_->layout()->addWidget(p->fold);
  parts_.push_back(std::move(part));
  return parts_.size() - 1;
}

void EditPanel::addSection(const QString& title, bool open, Fill fill, Fill rarer,
                           const QString& rarerTitle) {
  Part* section = parts_[addPart(Fold::Rank::Section, title, std::move(fill))].get();
  if (rarer) {
    Fold* fold = parts_[addPart(Fold::Rank::Rarer, rarerTitle, std::move(rarer))]->fold;
    fold->setVisible(open);
    connect(section->fold, &Fold::opened, fold, &QWidget::setVisible);
  }
  if (open && parts_.size() > kFirstParts)
    toOpen_.push_back(section->fold);
  else
    section->fold->setOpen(open);
  // Alt and its number.
  const int number = ++sections_;
  auto* key = new QShortcut(QKeySequence(Qt::ALT | Qt::Key(Qt::Key_0 + number)), this);
  connect(key, &QShortcut::activated, this, [this, section] {
    openRest();
    section->fold->setOpen(true);
    content_->layout()->activate();
    section->fold->firstStop()->setFocus(Qt::ShortcutFocusReason);
    ensureWidgetVisible(section->fold, 0, 0);
  });
}

void EditPanel::openRest() {
  for (Fold* fold : std::exchange(toOpen_, {}))
    fold->setOpen(true);
}

void EditPanel::focusField(Field field, bool finished) {
  openRest();
  const Field home = finished || info(field).group == FieldGroup::Ease
                         ? measurementOf(field).value_or(field)
                         : field;
  for (std::size_t i = 0; i < parts_.size(); ++i) {
    Part& part = *parts_[i];
    part.fold->body();
    FieldRow* row = part.table->rowOf(home);
    if (!row) continue;
    if (part.fold->rank() == Fold::Rank::Rarer) parts_[i - 1]->fold->setOpen(true);
    part.fold->setOpen(true);
    row->focus(field, finished);
    // The row and its slider must have their places before the panel can scroll to them.
    content_->layout()->activate();
    if (QWidget* box = QApplication::focusWidget(); box && content_->isAncestorOf(box))
      ensureWidgetVisible(box, 0, 4 * box->height());
    return;
  }
}

std::optional<Field> EditPanel::measurementInUse() const {
  return row_ && row_->holds(window()->focusWidget()) ? row_->measurement() : std::nullopt;
}

void EditPanel::useRow(FieldRow* row) {
  waiting_ = row;
  // Under a held mouse button nothing may move.
  if (QApplication::mouseButtons() == Qt::NoButton)
    settle();
  else
    qApp->installEventFilter(this);
}

void EditPanel::settle() {
  QWidget* inUse = QApplication::focusWidget();
  if (!inUse || !content_->isAncestorOf(inUse)) inUse = nullptr;
  const int y = inUse ? inUse->mapTo(viewport(), QPoint()).y() : 0;
  if (row_ && row_ != waiting_) row_->close();
  row_ = std::exchange(waiting_, nullptr);
  if (!row_) return;
  row_->showSlider();
  if (inUse) keepInPlace(inUse, y);
  // What has just been opened has its place only after the layouts have had their turn.
  QTimer::singleShot(0, this, &EditPanel::showLowest);
}

// What closes above the row in use must not pull it from under the pointer.
void EditPanel::keepInPlace(const QWidget* widget, int y) {
  content_->layout()->activate();
  content_->resize(
      content_->width(),
      std::max(viewport()->height(), content_->layout()->totalHeightForWidth(content_->width())));
  QScrollBar* bar = verticalScrollBar();
  const int by = widget->mapTo(viewport(), QPoint()).y() - y;
  if (by == 0) return;
  const int wanted = bar->value() + by;
  ballast_->setFixedHeight(std::max(0, ballast_->height() - std::min(0, wanted)));
  content_->layout()->activate();
  bar->setValue(std::max(0, wanted));
}

void EditPanel::showLowest() {
  if (QWidget* lowest = row_ ? row_->lowest() : nullptr)
    ensureWidgetVisible(lowest, 0, fontMetrics().height());
}

bool EditPanel::eventFilter(QObject* watched, QEvent* event) {
  // What lies below the first view is made when that has been seen, and may need more width.
  if (watched == content_ && event->type() == QEvent::Paint && !toOpen_.empty())
    QTimer::singleShot(0, this, &EditPanel::openRest);
  if (watched == content_ && event->type() == QEvent::LayoutRequest) updateGeometry();
  if (event->type() == QEvent::MouseButtonRelease) {
    qApp->removeEventFilter(this);
    settle();
  }
  return QScrollArea::eventFilter(watched, event);
}

QSize EditPanel::sizeHint() const {
  const int width = content_->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width();
  return {width, 100 * fontMetrics().averageCharWidth()};
}

QSize EditPanel::minimumSizeHint() const {
  return {sizeHint().width(), 0};
}

} // namespace scye
