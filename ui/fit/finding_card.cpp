#include "fit/finding_card.h"

#include "fit/severity.h"
#include "paint/picture_colours.h"

#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace scye {
namespace {

constexpr int kButton = 34; // letters: a card has room for so many in the narrowest panel

// A button's text in as many lines as it needs.
QString inLines(const QString& text, const QFontMetrics& metrics) {
  const int most = kButton * metrics.averageCharWidth();
  QStringList lines;
  for (const QString& word : text.split(u' ')) {
    const QString longer = lines.isEmpty() ? word : lines.last() + u' ' + word;
    if (lines.isEmpty() || metrics.horizontalAdvance(longer) > most)
      lines.append(word);
    else
      lines.last() = longer;
  }
  return lines.join(u'\n');
}

} // namespace

FindingCard::FindingCard(Document& document, Attention& attention, const Phrases& phrases,
                         QWidget* parent)
    : QFrame(parent), document_(document), attention_(attention), phrases_(phrases),
      sign_(new QLabel(this)), severity_(new QLabel(this)), text_(new QLabel(this)),
      buttons_(new QVBoxLayout) {
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
  const int gap = fontMetrics().averageCharWidth();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(2 * gap, gap, gap, gap);
  column->setSpacing(gap / 2);
  auto* head = new QHBoxLayout;
  head->setSpacing(gap);
  head->addWidget(sign_);
  head->addWidget(severity_, 1);
  severity_->setForegroundRole(QPalette::PlaceholderText);
  column->addLayout(head);
  text_->setWordWrap(true);
  column->addWidget(text_);
  buttons_->setSpacing(gap / 2);
  column->addLayout(buttons_);
}

void FindingCard::setFinding(const Finding& finding, LengthUnit unit, bool remediesFound,
                             bool held) {
  if (finding_.code != finding.code || finding_.fields != finding.fields) offers_.clear();
  finding_ = finding;
  unit_ = unit;
  const int size = severity_->fontMetrics().height();
  sign_->setPixmap(severityIcon(finding.severity).pixmap(size, size));
  severity_->setText(severityName(finding.severity));
  text_->setText(findingText(phrases_, finding, unit));
  setAccessibleName(tr("%1: %2").arg(severity_->text(), text_->text()));
  offer(finding.remedies, remediesFound, held);
  fitButtons();
  update();
}

void FindingCard::offer(const std::vector<Remedy>& found, bool all, bool held) {
  const auto isFound = [&found](const Offer& o) {
    return std::any_of(found.begin(), found.end(),
                       [&o](const Remedy& remedy) { return remedy.key == o.remedy.key; });
  };
  if (held) {
    for (Offer& o : offers_)
      o.fresh = isFound(o);
    for (const Remedy& remedy : found) {
      const auto at = std::find_if(offers_.begin(), offers_.end(), [&remedy](const Offer& o) {
        return o.remedy.key == remedy.key;
      });
      if (at == offers_.end())
        offers_.push_back({remedy});
      else
        at->remedy = remedy;
    }
    return;
  }
  const std::vector<Offer> before = std::exchange(offers_, {});
  for (const Remedy& remedy : found)
    offers_.push_back({remedy});
  if (all) return;
  for (const Offer& o : before)
    if (!isFound(o)) offers_.push_back({o.remedy, false});
}

void FindingCard::fitButtons() {
  const auto count = qsizetype(offers_.size());
  while (remedies_.size() > count)
    delete remedies_.takeLast();
  while (remedies_.size() < count) {
    auto* button = new QPushButton(this);
    button->setCursor(Qt::ArrowCursor);
    button->installEventFilter(this);
    connect(button, &QPushButton::clicked, this, [this, at = int(remedies_.size())] { apply(at); });
    buttons_->addWidget(button);
    button->show();
    remedies_.append(button);
  }
  for (qsizetype i = 0; i < count; ++i) {
    const QString text = remedyText(phrases_, offers_[std::size_t(i)].remedy, unit_);
    remedies_[i]->setText(inLines(text, remedies_[i]->fontMetrics()));
    remedies_[i]->setAccessibleName(text);
    remedies_[i]->setEnabled(offers_[std::size_t(i)].fresh);
  }
}

void FindingCard::activate() {
  if (!finding_.fields.empty()) attention_.goTo(finding_.fields.front(), false);
}

void FindingCard::apply(int remedy) {
  attention_.setPreview({});
  const Remedy r = offers_[std::size_t(remedy)].remedy;
  document_.edit(remedyText(phrases_, r, unit_), applied(document_.design(), r));
}

bool FindingCard::eventFilter(QObject* watched, QEvent* event) {
  // Compared as what it still is: a button that is being destroyed sends events too.
  const auto found = std::find_if(remedies_.cbegin(), remedies_.cend(),
                                  [&](const QObject* button) { return button == watched; });
  const auto at = found - remedies_.cbegin();
  if (found != remedies_.cend()) {
    if (event->type() == QEvent::Enter || event->type() == QEvent::FocusIn)
      attention_.setPreview(applied(document_.design(), offers_[std::size_t(at)].remedy));
    else if (event->type() == QEvent::Leave || event->type() == QEvent::FocusOut)
      attention_.setPreview({});
  }
  return QFrame::eventFilter(watched, event);
}

void FindingCard::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && rect().contains(event->position().toPoint())) activate();
}

void FindingCard::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
  case Qt::Key_Return:
  case Qt::Key_Enter:
  case Qt::Key_Space:
    activate();
    return;
  default:
    QFrame::keyPressEvent(event);
  }
}

void FindingCard::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const bool dark = isDark(palette());
  const QColor stripe = finding_.severity == Severity::Blocking  ? blockingColour(dark)
                        : finding_.severity == Severity::Warning ? warningColour(dark)
                                                                 : accent(dark);
  const double round = fontMetrics().averageCharWidth() * 0.6;
  const QRectF area = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
  painter.setPen(hasFocus() ? QPen(palette().color(QPalette::Highlight), 1.5)
                            : QPen(mixed(palette().color(QPalette::Base),
                                         palette().color(QPalette::Text), 0.14)));
  painter.setBrush(palette().color(QPalette::Base));
  painter.drawRoundedRect(area, round, round);
  painter.setPen(Qt::NoPen);
  painter.setBrush(stripe);
  painter.drawRoundedRect(
      QRectF(area.left(), area.top() + round, round * 0.7, area.height() - 2 * round), round * 0.35,
      round * 0.35);
}

} // namespace scye
