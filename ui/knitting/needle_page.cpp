#include "knitting/needle_page.h"

#include "io/outputs.h"
#include "knitting/big_text.h"
#include "knitting/chart_view.h"
#include "knitting/conflict_box.h"
#include "knitting/directions_page.h"
#include "knitting/piece_list.h"
#include "knitting/said.h"
#include "look/flow_layout.h"
#include "look/scrolled_column.h"
#include "progress/diary.h"
#include "values/choice_box.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QProgressBar>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

namespace scye {
namespace {

constexpr int kChartLines = 12;            // of text, as high as the chart on the page
constexpr int kRestAfter = 30 * 60 * 1000; // ms of knitting

QLabel* wrapped(QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  return label;
}

void enlarge(QWidget* widget, double times, bool bold = false) {
  QFont font = widget->font();
  font.setPointSizeF(times * font.pointSizeF());
  font.setBold(bold);
  widget->setFont(font);
}

} // namespace

NeedlePage::NeedlePage(Document& document, Attention& attention, Settings& settings,
                       QWidget* parent)
    : KnitPage(document, settings, parent), attention_(attention), pieces_(new ChoiceBox),
      share_(new QProgressBar), row_(wrapped(nullptr)), what_(new BigText(nullptr)),
      count_(wrapped(nullptr)), repeat_(wrapped(nullptr)), event_(wrapped(nullptr)),
      next_(wrapped(nullptr)), left_(wrapped(nullptr)), gauge_(wrapped(nullptr)),
      rest_(wrapped(nullptr)), note_(new QLineEdit), back_(new QPushButton(tr("Row &back"))),
      forward_(new QPushButton(tr("&Row done"))), rip_(new QPushButton(tr("R&ip back to row"))),
      strayed_(new QPushButton(tr("Rows &more than planned"))), ripTo_(new QSpinBox),
      more_(new QSpinBox), reminder_(new QCheckBox(tr("Remind me to &rest my hands"))),
      conflicts_(new ConflictBox(document, settings)),
      chart_(new ChartView(settings.phrases(), nullptr)) {
  setFocusPolicy(Qt::StrongFocus);
  QVBoxLayout* column = scrolledColumn(*this);
  auto* head = new QHBoxLayout;
  head->addWidget(pieces_);
  head->addWidget(share_, 1);
  column->addLayout(head);
  column->addWidget(conflicts_);
  column->addWidget(row_);
  column->addWidget(what_, 1);
  for (QLabel* label : {count_, repeat_, event_, next_, left_, gauge_, rest_})
    column->addWidget(label);
  auto* buttons = new FlowLayout;
  buttons->addWidget(back_);
  buttons->addWidget(forward_);
  forward_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  column->addLayout(buttons);
  note_->setPlaceholderText(tr("A note on this row"));
  note_->setAccessibleName(note_->placeholderText());
  column->addWidget(note_);
  // It is only looked at: the wheel scrolls the page, the keys belong to it.
  chart_->setAttribute(Qt::WA_TransparentForMouseEvents);
  chart_->setFocusPolicy(Qt::NoFocus);
  chart_->setLegendShown(false);
  chart_->setFixedHeight(kChartLines * fontMetrics().height());
  chart_->setAccessibleName(tr("The row in the chart"));
  column->addWidget(chart_);
  auto* odd = new FlowLayout;
  odd->addTogether({rip_, ripTo_});
  odd->addTogether({strayed_, more_});
  column->addLayout(odd);
  column->addWidget(reminder_);

  enlarge(row_, 2.2, true);
  enlarge(count_, 1.8);
  enlarge(event_, 1.3);
  enlarge(repeat_, 1.3);
  enlarge(forward_, 1.6, true);
  enlarge(back_, 1.6);
  next_->setForegroundRole(QPalette::PlaceholderText);
  enlarge(next_, 1.15);
  pieces_->setAccessibleName(tr("Piece on the needles"));
  share_->setAccessibleName(tr("How much of the piece is worked"));
  ripTo_->setAccessibleName(tr("Row to rip back to"));
  more_->setAccessibleName(tr("Rows more than planned"));
  more_->setRange(-40, 40);
  more_->setSingleStep(2);
  more_->setToolTip(tr("Worked even before the row that is shown; less than nothing: left out."));
  for (QPushButton* button : {back_, forward_})
    button->setFocusPolicy(Qt::NoFocus); // the keys belong to the page

  connect(forward_, &QPushButton::clicked, this, [this] { step(1); });
  connect(back_, &QPushButton::clicked, this, [this] { step(-1); });
  connect(pieces_, &QComboBox::activated, this, [this] {
    refreshSoon();
    setFocus();
  });
  connect(note_, &QLineEdit::editingFinished, this, &NeedlePage::keepNote);
  connect(rip_, &QPushButton::clicked, this, &NeedlePage::ripBack);
  connect(strayed_, &QPushButton::clicked, this, &NeedlePage::stray);
  reminder_->setChecked(settings.restReminder());
  connect(reminder_, &QCheckBox::toggled, &settings, &Settings::setRestReminder);
  refreshWithWork();
}

std::optional<PieceId> NeedlePage::piece() const {
  if (pieces_->currentIndex() < 0) return std::nullopt;
  return PieceId(pieces_->currentData().toInt());
}

void NeedlePage::choosePiece(PieceId piece) {
  const int at = pieces_->findData(int(piece));
  if (at >= 0) pieces_->setCurrentIndex(at);
  refreshSoon();
}

NeedlePage::Here NeedlePage::here() const {
  const auto id = piece();
  if (!id) return {};
  if (const PieceWork* p = document_.work().find(*id)) return {&p->plan, p->worked};
  return {plannedPiece(document_.derived().knit, *id), 0};
}

std::pair<Work, PieceWork*> NeedlePage::begun() const {
  std::pair<Work, PieceWork*> out{document_.work(), nullptr};
  const Derived& derived = document_.derived();
  if (const auto id = piece())
    out.second = workOn(out.first, derived.knit, designedIn(derived), *id);
  return out;
}

void NeedlePage::step(int rows) {
  auto [work, p] = begun();
  if (!p) return;
  const int lines = int(p->plan.rows.size()), before = p->worked;
  p->worked = std::clamp(before + rows, 0, lines);
  if (p->worked == before) return;
  if (rows > 0) {
    if (sinceStep_.isValid()) keepPace(p->pace, double(sinceStep_.elapsed()) / 1000);
    sinceStep_.start();
    writeDownStep(work, p->piece, before, today());
  } else {
    sinceStep_.invalidate();
  }
  remind();
  document_.setWork(work);
}

// After half an hour of knitting, and not again before another.
void NeedlePage::remind() {
  if (!sinceRest_.isValid() || !settings_.restReminder()) sinceRest_.start();
  const bool due = settings_.restReminder() && sinceRest_.elapsed() > kRestAfter;
  rest_->setVisible(due);
  if (!due) return;
  rest_->setText(tr("Half an hour: let your hands rest for a while."));
  sinceRest_.start();
}

void NeedlePage::keepNote() {
  const Here at = here();
  if (!at.plan || at.worked >= int(at.plan->rows.size())) return;
  auto [work, p] = begun();
  const RowLine& line = p->plan.rows[std::size_t(p->worked)];
  const auto same = [&](const RowNote& n) {
    return n.section == line.section && n.row == line.row.value();
  };
  const std::string text = note_->text().trimmed().toStdString();
  std::erase_if(p->notes, same);
  if (!text.empty()) p->notes.push_back({line.section, line.row.value(), text});
  if (document_.work() != work) document_.setWork(work);
}

void NeedlePage::ripBack() {
  auto [work, p] = begun();
  if (!p || p->worked == 0) return;
  const int from = p->plan.rows[std::size_t(p->worked) - 1].row.value();
  const auto line = lineOf(p->plan, ripTo_->value());
  if (!line || *line + 1 >= p->worked) return;
  work = ripped(work, p->piece, *line + 1);
  writeDown(work, {.on = today(),
                   .kind = DiaryEntry::Kind::Ripped,
                   .piece = *piece(),
                   .row = from,
                   .to = ripTo_->value()});
  document_.setWork(work);
}

void NeedlePage::stray() {
  const Here at = here();
  if (!at.plan || at.worked == 0 || more_->value() == 0) return;
  const Derived& derived = document_.derived();
  const Rows after = at.plan->rows[std::size_t(at.worked) - 1].row;
  auto work = withStrayedRows(derived.knit, designedIn(derived), document_.work(), *piece(), after,
                              Rows(more_->value()));
  if (!work) {
    rest_->setText(tr("That cannot be: rows more or fewer come in pairs, so that the right side "
                      "stays the right side, and rows in which something is shaped are not left "
                      "out."));
    rest_->setVisible(true);
    return;
  }
  writeDown(*work, {.on = today(),
                    .kind = DiaryEntry::Kind::Strayed,
                    .piece = *piece(),
                    .row = after.value(),
                    .to = more_->value()});
  more_->setValue(0);
  document_.setWork(*work);
}

void NeedlePage::fillPieces() {
  const std::vector<PieceId> all = piecesToKnit(document_.derived().knit);
  const auto before = piece();
  const QSignalBlocker quiet(pieces_);
  pieces_->clear();
  for (const PieceId id : all)
    pieces_->addItem(said(workPieceName(settings_.phrases(), id)), int(id));
  if (before) pieces_->setCurrentIndex(std::max(0, pieces_->findData(int(*before))));
}

void NeedlePage::refresh() {
  fillPieces();
  conflicts_->refresh();
  const Here at = here();
  for (QWidget* part : {static_cast<QWidget*>(share_), static_cast<QWidget*>(forward_),
                        static_cast<QWidget*>(back_), static_cast<QWidget*>(note_)})
    part->setEnabled(at.plan);
  if (!at.plan) {
    what_->setText(said(settings_.phrases().say("page.nothing")));
    for (QLabel* label : {row_, count_, repeat_, event_, next_, left_})
      label->clear();
    gauge_->hide();
    chart_->hide();
    return;
  }
  const Place place = placeOf(*at.plan, at.worked);
  tell(place);
  tellLeft(place);
  tellGauge(at);
  showChart(at, place);
  lightRows(place);
}

void NeedlePage::tell(const Place& place) {
  const Words words(wordingOf(settings_));
  share_->setRange(0, std::max(1, place.lines));
  share_->setValue(place.line);
  back_->setEnabled(place.line > 0);
  forward_->setEnabled(place.now.has_value());
  ripTo_->setRange(0, std::max(0, place.line - 1));
  if (!place.now) {
    row_->setText(tr("Finished"));
    what_->setText(said(settings_.phrases().say(
        "place.finished", {textParam("piece", pieces_->currentText().toStdString())})));
    for (QLabel* label : {count_, repeat_, event_, next_})
      label->clear();
    return;
  }
  const RowToWork& now = *place.now;
  const LocaleRules& rules = settings_.phrases().rules();
  row_->setText(said(rowName(words, now)));
  what_->setText(said(rules.capitalised(doText(words, now))));
  const QString edges = said(edgeText(words, now));
  QString count =
      now.before == now.after || now.row == 0
          ? tr("%n stitches", nullptr, now.after.value())
          : tr("%L1 to %n stitches", nullptr, now.after.value()).arg(now.before.value());
  if (!edges.isEmpty()) count = tr("%1; %2").arg(count, edges);
  count_->setText(count);
  repeat_->setText(place.repeat
                       ? said(rules.capitalised(repeatText(settings_.phrases(), *place.repeat)))
                       : QString());
  event_->setText(said(rules.capitalised(toEventText(words, place))));
  QStringList next;
  for (const RowToWork& row : place.next)
    next.append(tr("%1: %2").arg(said(rowName(words, row)), said(doText(words, row))));
  next_->setText(next.join(u'\n'));
  const PieceWork* p = document_.work().find(*piece());
  QString note;
  if (p)
    for (const RowNote& n : p->notes)
      if (n.section == now.section && n.row == now.row) note = said(n.text);
  if (!note_->hasFocus()) note_->setText(note);
}

void NeedlePage::tellLeft(const Place& place) {
  const Phrases& phrases = settings_.phrases();
  left_->clear();
  if (!place.now) return;
  std::vector<std::string> left{tr("%n rows left", nullptr, place.rowsLeft()).toStdString()};
  const PieceWork* p = document_.work().find(*piece());
  if (const auto seconds = p ? secondsLeft(*p) : std::nullopt)
    left.push_back(phrases.say("progress.time", {textParam("time", timeText(phrases, *seconds))}));
  if (std::string yarn =
          yarnLeftText(phrases, yarnLeft(place, document_.derived().directions.materials.yarn));
      !yarn.empty())
    left.push_back(std::move(yarn));
  left_->setText(said(phrases.rules().commas(left)));
}

// Early, while other needles or other counts still help.
void NeedlePage::tellGauge(const Here& at) {
  const PieceWork* p = document_.work().find(*piece());
  const bool wanted = p && !p->finished() && at.worked > 0 && isLongEnough(*p, document_.draft()) &&
                      !p->measured[Reading::StitchCount] && !p->measured[Reading::RowCount];
  gauge_->setVisible(wanted);
  if (wanted)
    gauge_->setText(
        tr("There is enough of it now to count its stitches and rows: on the page As it "
           "came out it is told whether they are the swatch's."));
}

void NeedlePage::showChart(const Here& at, const Place& place) {
  chart_->setVisible(place.now.has_value());
  if (!place.now) return;
  if (charted_ != *at.plan) {
    chart_->setPiece(*at.plan, at.plan->fabric(document_.derived().knit.lattice.size),
                     charted_.id != at.plan->id);
    charted_ = *at.plan;
  }
  const int row = place.now->row, last = at.plan->lastRow().value();
  chart_->setLit(row > 0 ? std::optional(Span{row, row + 1}) : std::nullopt);
  for (const int near : {row + 3, row - 2, row})
    chart_->showRow(std::clamp(near, 1, last));
}

// On the drawing; directions and chart go to the row.
void NeedlePage::lightRows(const Place& place) {
  if (!place.now) return;
  const PieceId id = *piece();
  const PieceId shown = document_.derived().knit.piece(id) ? id : PieceId::Sleeve;
  attention_.goToRows({shown, place.now->section, place.now->row, place.now->row});
  attention_.chooseRows(PieceRows{shown, place.now->section, place.now->row, place.now->row});
}

void NeedlePage::showEvent(QShowEvent* event) {
  KnitPage::showEvent(event);
  sinceStep_.invalidate();
  refreshSoon();
}

void NeedlePage::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
  case Qt::Key_Space:
  case Qt::Key_Return:
  case Qt::Key_Enter:
  case Qt::Key_PageDown:
  case Qt::Key_Right:
  case Qt::Key_Down:
    return step(1);
  case Qt::Key_Backspace:
  case Qt::Key_PageUp:
  case Qt::Key_Left:
  case Qt::Key_Up:
    return step(-1);
  default:
    KnitPage::keyPressEvent(event);
  }
}

} // namespace scye
