#include "fit/findings_panel.h"

#include "seam/hang.h"
#include "seam/room.h"
#include "values/value_text.h"

#include <QApplication>
#include <QEvent>
#include <QLabel>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>

namespace scye {
namespace {

constexpr int kLookingMs = 400;

} // namespace

FindingsPanel::FindingsPanel(Document& document, Attention& attention, Settings& settings,
                             QWidget* parent)
    : QScrollArea(parent), document_(document), attention_(attention), settings_(settings),
      content_(new QWidget), column_(new QVBoxLayout(content_)), head_(new QLabel),
      none_(new QLabel), givenUp_(new QLabel), hang_(new QLabel), room_(new QLabel) {
  setFrameShape(NoFrame);
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFocusPolicy(Qt::NoFocus);
  setAccessibleName(tr("Findings"));
  const int gap = fontMetrics().averageCharWidth();
  column_->setContentsMargins(gap, gap, gap, gap);
  column_->setSpacing(gap);
  QFont bold = font();
  bold.setBold(true);
  head_->setFont(bold);
  none_->setText(tr("No findings: it can be knitted as it is drawn."));
  none_->setWordWrap(true);
  none_->setForegroundRole(QPalette::PlaceholderText);
  column_->addWidget(head_);
  column_->addWidget(none_);
  givenUp_->setText(QString::fromStdString(settings_.phrases().say("remedies.givenUp")));
  givenUp_->setWordWrap(true);
  givenUp_->setForegroundRole(QPalette::PlaceholderText);
  column_->addWidget(givenUp_);
  hang_->setWordWrap(true);
  hang_->setToolTip(unbroken(settings_.phrases(), settings_.phrases().say("hang.source")));
  hang_->setAccessibleName(tr("How the sleeve hangs"));
  column_->addWidget(hang_);
  room_->setWordWrap(true);
  room_->setAccessibleName(tr("Room in the armhole"));
  column_->addWidget(room_);
  column_->addStretch(1);
  looking_.setSingleShot(true);
  looking_.setInterval(kLookingMs);
  connect(&looking_, &QTimer::timeout, this, [this] {
    lookingTold_ = true;
    tellSearch();
  });
  setWidget(content_);

  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived)
      refresh();
    else if (event.remedies)
      addRemedies();
  });
  connect(&settings_, &Settings::changed, this, &FindingsPanel::refresh);
  refresh();
}

int FindingsPanel::heightWanted(int width) const {
  content_->layout()->activate();
  // Until it has its height a scroll bar takes some of the width, and lines are broken by that.
  return content_->layout()->totalHeightForWidth(width - verticalScrollBar()->sizeHint().width());
}

Findings FindingsPanel::sorted() {
  Findings findings = document_.derived().findings;
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
  return findings;
}

void FindingsPanel::refresh() {
  const Findings findings = sorted();
  none_->setVisible(findings.empty());
  // A cap that fits nothing hangs nowhere.
  const GarmentDraft& draft = document_.derived().draft;
  hang_->setVisible(draft.cap.found);
  hang_->setText(unbroken(settings_.phrases(), hangText(sleeveHang(draft), settings_.phrases())));
  room_->setText(unbroken(settings_.phrases(),
                          roomText(armholeRoom(draft), settings_.phrases(), settings_.unit())));
  for (QLabel* label : {hang_, room_})
    label->setAccessibleDescription(label->text());
  while (cards_.size() > qsizetype(findings.size()))
    delete cards_.takeLast();
  while (cards_.size() < qsizetype(findings.size())) {
    auto* card = new FindingCard(document_, attention_, settings_.phrases(), content_);
    column_->insertWidget(2 + int(cards_.size()), card);
    card->show(); // at once, so that it counts in heightWanted
    cards_.append(card);
  }
  for (int i = 0; i < cards_.size(); ++i)
    cards_[i]->setFinding(findings[i], settings_.unit(), document_.remediesFound(),
                          cards_[i]->isAncestorOf(QApplication::focusWidget()));
  tellSearch();
}

void FindingsPanel::addRemedies() {
  const Findings findings = sorted();
  if (cards_.size() != qsizetype(findings.size())) return;
  const auto under =
      std::find_if(cards_.begin(), cards_.end(), [](QWidget* card) { return card->underMouse(); });
  const auto pointed = under == cards_.end() ? -1 : int(under - cards_.begin());
  for (int i = std::max(pointed, 0); i < cards_.size(); ++i)
    cards_[i]->setFinding(findings[i], settings_.unit(), document_.remediesFound(),
                          i == pointed || cards_[i]->isAncestorOf(QApplication::focusWidget()));
  tellSearch();
}

void FindingsPanel::tellSearch() {
  const auto count = cards_.size();
  const bool over = document_.remediesFound() || count == 0;
  if (over)
    looking_.stop();
  else if (!looking_.isActive() && !lookingTold_)
    looking_.start();
  if (over) lookingTold_ = false;
  head_->setVisible(count > 0);
  head_->setText(lookingTold_ ? tr("Findings (%L1), looking for remedies").arg(count)
                              : tr("Findings (%L1)").arg(count));
  givenUp_->setVisible(document_.remediesGivenUp());
}

void FindingsPanel::leaveEvent(QEvent* event) {
  QScrollArea::leaveEvent(event);
  refresh(); // what was held back
}

void FindingsPanel::changeEvent(QEvent* event) {
  QScrollArea::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) refresh();
}

} // namespace scye
