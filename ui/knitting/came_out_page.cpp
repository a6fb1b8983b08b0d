#include "knitting/came_out_page.h"

#include "canvas/picture_widget.h"
#include "io/outputs.h"
#include "knitting/said.h"
#include "look/flow_layout.h"
#include "look/scrolled_column.h"
#include "progress/diary.h"
#include "schematic/replanned.h"
#include "values/choice_box.h"
#include "values/value_text.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace scye {
namespace {

bool isCount(Reading reading) {
  return reading == Reading::StitchCount || reading == Reading::RowCount;
}

QLabel* wrapped() {
  auto* label = new QLabel;
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  return label;
}

} // namespace

CameOutPage::CameOutPage(Document& document, Settings& settings, QWidget* parent)
    : KnitPage(document, settings, parent), pieces_(new ChoiceBox), as_(new ChoiceBox),
      warning_(wrapped()), answer_(wrapped()), plan_(new QPushButton(tr("&Plan the sleeves anew"))),
      recount_(new QPushButton(tr("&Other stitch counts from here"))),
      drawn_(new PictureWidget(
          [this](double textHeight, int perRow) { return oldOverNew(textHeight, perRow); },
          {0, 1})) {
  QVBoxLayout* column = scrolledColumn(*this);
  auto* head = new FlowLayout;
  head->addWidget(pieces_);
  head->addWidget(as_);
  column->addLayout(head);
  pieces_->setAccessibleName(tr("Piece that was measured"));
  as_->setAccessibleName(tr("How it was measured"));
  as_->addItem(tr("Measured blocked"), int(MeasuredAs::Blocked));
  as_->addItem(tr("Measured unwashed"), int(MeasuredAs::Unwashed));
  auto* form = new QFormLayout;
  form->setRowWrapPolicy(QFormLayout::WrapLongRows);
  for (int i = 0; i < kReadings; ++i) {
    const Reading reading = Reading(i);
    auto* box = new QDoubleSpinBox;
    boxes_[std::size_t(i)] = box;
    box->setDecimals(1);
    box->setKeyboardTracking(false);
    box->setFocusPolicy(Qt::StrongFocus); // the wheel scrolls the page
    box->setSpecialValueText(tr("not measured"));
    const QString name =
        said(settings.phrases().say("reading." + std::string(kReadingKeys[reading])));
    box->setAccessibleName(name);
    form->addRow(name, box);
    connect(box, &QDoubleSpinBox::valueChanged, this,
            [this, reading](double value) { take(reading, value); });
  }
  column->addLayout(form);
  column->addWidget(warning_);
  column->addWidget(answer_);
  auto* buttons = new FlowLayout;
  buttons->addWidget(plan_);
  buttons->addWidget(recount_);
  column->addLayout(buttons);
  drawn_->setMinimumHeight(18 * fontMetrics().height());
  drawn_->setAccessibleName(tr("As it is planned anew over as it was planned"));
  drawn_->hide();
  column->addWidget(drawn_, 1);
  column->addStretch(1);
  setFocusProxy(pieces_);
  QFont bold = warning_->font();
  bold.setBold(true);
  warning_->setFont(bold);

  connect(pieces_, &QComboBox::activated, this, &CameOutPage::refreshSoon);
  connect(as_, &QComboBox::activated, this, [this] {
    measure([this](Measured& m) { m.as = MeasuredAs(as_->currentData().toInt()); });
  });
  connect(plan_, &QPushButton::clicked, this, [this] { settle(false); });
  connect(recount_, &QPushButton::clicked, this, [this] { settle(true); });
  refreshWithWork();
}

QString CameOutPage::answer() const {
  return answer_->text();
}
QString CameOutPage::warning() const {
  return warning_->text();
}

std::optional<PieceId> CameOutPage::piece() const {
  if (pieces_->currentIndex() < 0) return std::nullopt;
  return PieceId(pieces_->currentData().toInt());
}

double CameOutPage::perUnit(Reading reading) const {
  return !isCount(reading) && settings_.unit() == LengthUnit::Inch ? kCmPerInch : 1;
}

void CameOutPage::fillPieces() {
  const auto before = piece();
  const QSignalBlocker quiet(pieces_);
  pieces_->clear();
  for (const PieceId id : piecesToKnit(document_.derived().knit))
    pieces_->addItem(said(workPieceName(settings_.phrases(), id)), int(id));
  if (before) pieces_->setCurrentIndex(std::max(0, pieces_->findData(int(*before))));
}

void CameOutPage::fillBoxes() {
  const auto id = piece();
  const PieceWork* p = id ? document_.work().find(*id) : nullptr;
  const UnitWords unit = unitWords(settings_.phrases(), lengthPhrase(settings_.unit()));
  for (int i = 0; i < kReadings; ++i) {
    const Reading reading = Reading(i);
    QDoubleSpinBox* box = boxes_[std::size_t(i)];
    const QSignalBlocker quiet(box);
    box->setEnabled(id.has_value());
    box->setPrefix(isCount(reading) ? QString() : unit.before);
    box->setSuffix(isCount(reading) ? QString() : unit.after);
    box->setRange(0, rangeOf(reading).high / perUnit(reading));
    const auto value = p ? p->measured[reading] : std::nullopt;
    box->setValue(value ? *value / perUnit(reading) : 0);
  }
  const QSignalBlocker quiet(as_);
  as_->setCurrentIndex(p && p->measured.as == MeasuredAs::Unwashed ? 1 : 0);
}

void CameOutPage::take(Reading reading, double value) {
  const double cm = value * perUnit(reading);
  // Less than a piece can measure is nothing measured.
  measure([&](Measured& m) {
    m.set(reading, cm >= rangeOf(reading).low ? std::optional(cm) : std::nullopt);
  });
}

void CameOutPage::measure(const std::function<void(Measured&)>& set) {
  const auto id = piece();
  if (!id) return;
  const Derived& derived = document_.derived();
  Work work = document_.work();
  PieceWork* p = workOn(work, derived.knit, designedIn(derived), *id);
  if (!p) return;
  const Measured before = p->measured;
  set(p->measured);
  writeDownMeasured(work, *id, before, today(), settings_.phrases(), settings_.unit());
  document_.setWork(work);
}

void CameOutPage::settle(bool recount) {
  // What has been worked or measured since is still to be answered.
  if (!shown_ || shown_->before != document_.work() || (recount && !shown_->recounted)) return;
  Work work = recount ? *shown_->recounted : shown_->refit.work;
  DiaryEntry entry = refitEntry(shown_->refit, today(), settings_.phrases(), settings_.unit());
  if (recount) {
    entry.piece = piece();
    entry.text = settings_.phrases().say("progress.recounted");
  }
  writeDown(work, std::move(entry));
  document_.setWork(work);
}

void CameOutPage::refresh() {
  fillPieces();
  fillBoxes();
  ask();
}

void CameOutPage::ask() {
  const quint64 number = ++asked_;
  beside_.start([this, number, present = document_.present(), work = document_.work(),
                 id = piece()](const std::stop_token& stop) {
    const std::shared_ptr<const Derived> derived = present();
    if (stop.stop_requested()) return;
    auto found = std::make_shared<Answer>();
    found->before = work;
    found->refit = refit(derived->draft, designedIn(*derived), work);
    found->warnings = gaugeWarnings(derived->draft, designedIn(*derived), work);
    for (const GaugeWarning& w : found->warnings)
      if (id == w.piece && w.canRecount)
        found->recounted = recounted(derived->draft, designedIn(*derived), work, w.piece);
    for (const PieceWork& p : found->refit.work.pieces) {
      const PieceWork* before = work.find(p.piece);
      const KnitPiece* was = before ? &before->plan : plannedPiece(derived->knit, p.piece);
      if (was && was->rows != p.plan.rows)
        found->pieces.push_back(
            {*was, p.plan, fabricOf(work, p.piece, derived->draft).size, p.worked});
    }
    QMetaObject::invokeMethod(
        this,
        [this, number, found] {
          if (number == asked_) show(*found);
        },
        Qt::QueuedConnection);
  });
}

void CameOutPage::show(const Answer& answer) {
  shown_ = answer;
  QStringList warnings, lines;
  for (const GaugeWarning& w : answer.warnings)
    for (const std::string& line : gaugeWarningText(w, settings_.phrases(), settings_.unit()))
      warnings.append(said(line));
  for (const std::string& line : refitText(answer.refit, settings_.phrases(), settings_.unit()))
    lines.append(said(line));
  warning_->setText(warnings.join(u'\n'));
  warning_->setVisible(!warnings.isEmpty());
  answer_->setText(lines.join(u'\n'));
  plan_->setEnabled(!answer.refit.changes.empty());
  recount_->setVisible(answer.recounted.has_value());
  drawn_->setVisible(!answer.pieces.empty());
  drawn_->refresh();
}

Picture CameOutPage::oldOverNew(double textHeight, int perRow) const {
  std::vector<Replanned> pieces;
  if (shown_)
    for (const PieceChange& p : shown_->pieces)
      pieces.push_back({workPieceName(settings_.phrases(), p.after.id), &p.before, &p.after, p.size,
                        p.worked, p.after.selvedge});
  return replannedPicture(pieces, textHeight, perRow, settings_.phrases());
}

} // namespace scye
