#include "knitting/came_out_page.h"

#include "io/outputs.h"
#include "look/scrolled.h"
#include "values/value_text.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace scye {
namespace {

QString said(const std::string& text) {
  return QString::fromStdString(text);
}

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
    : KnitPage(document, settings, parent), pieces_(new QComboBox), as_(new QComboBox),
      warning_(wrapped()), answer_(wrapped()), plan_(new QPushButton(tr("&Plan the sleeves anew"))),
      recount_(new QPushButton(tr("&Other stitch counts from here"))) {
  const int gap = fontMetrics().averageCharWidth();
  auto* inside = new QWidget;
  auto* column = new QVBoxLayout(inside);
  column->setContentsMargins(2 * gap, gap, 2 * gap, gap);
  auto* head = new QHBoxLayout;
  head->addWidget(pieces_);
  head->addWidget(as_);
  head->addStretch(1);
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
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(plan_);
  buttons->addWidget(recount_);
  buttons->addStretch(1);
  column->addLayout(buttons);
  column->addStretch(1);
  fillScrolled(*this, inside);
  setFocusProxy(pieces_);
  QFont bold = warning_->font();
  bold.setBold(true);
  warning_->setFont(bold);

  connect(pieces_, &QComboBox::activated, this, &CameOutPage::refreshSoon);
  connect(as_, &QComboBox::activated, this, [this] {
    Work work = document_.work();
    const Derived& derived = document_.derived();
    if (PieceWork* p = workOn(work, derived.knit, designedIn(derived), *piece()))
      p->measured.as = MeasuredAs(as_->currentData().toInt());
    document_.setWork(work);
  });
  const auto settle = [this](bool recount) {
    if (!shown_) return;
    Work work = recount ? *shown_->recounted : shown_->refit.work;
    std::string words;
    for (const std::string& line : refitText(shown_->refit, settings_.phrases(), settings_.unit()))
      words += (words.empty() ? "" : " ") + line;
    work.diary.push_back({.on = today(),
                          .kind = DiaryEntry::Kind::Refit,
                          .text = recount ? recount_->text().remove(u'&').toStdString() : words});
    document_.setWork(work);
  };
  connect(plan_, &QPushButton::clicked, this, [settle] { settle(false); });
  connect(recount_, &QPushButton::clicked, this, [settle] { settle(true); });
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.work) refreshSoon();
  });
}

QString CameOutPage::answer() const {
  return answer_->text();
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
  const QString unit = QStringLiteral(" ") + unitText(settings_.phrases(), settings_.unit());
  for (int i = 0; i < kReadings; ++i) {
    const Reading reading = Reading(i);
    QDoubleSpinBox* box = boxes_[std::size_t(i)];
    const QSignalBlocker quiet(box);
    box->setEnabled(id.has_value());
    box->setSuffix(isCount(reading) ? QString() : unit);
    box->setRange(0, rangeOf(reading).high / perUnit(reading));
    const auto value = p ? p->measured[reading] : std::nullopt;
    box->setValue(value ? *value / perUnit(reading) : 0);
  }
  const QSignalBlocker quiet(as_);
  as_->setCurrentIndex(p && p->measured.as == MeasuredAs::Unwashed ? 1 : 0);
}

void CameOutPage::take(Reading reading, double value) {
  const Derived& derived = document_.derived();
  Work work = document_.work();
  PieceWork* p = piece() ? workOn(work, derived.knit, designedIn(derived), *piece()) : nullptr;
  if (!p) return;
  const double cm = value * perUnit(reading);
  // Less than a piece can measure is nothing measured.
  p->measured.set(reading, cm >= rangeOf(reading).low ? std::optional(cm) : std::nullopt);
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
    found->refit = refit(derived->draft, designedIn(*derived), work);
    found->warnings = gaugeWarnings(derived->draft, designedIn(*derived), work);
    for (const GaugeWarning& w : found->warnings)
      if (id == w.piece && w.canRecount)
        found->recounted = recounted(derived->draft, designedIn(*derived), work, w.piece);
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
}

} // namespace scye
