#include "panels/ease_strip.h"

#include "panels/ease_dial.h"

#include <QEvent>
#include <QLabel>

namespace scye {
namespace {

bool isInHand(Field field) {
  return field == Field::EaseBust || field == Field::EaseUpperArm ||
         field == Field::EaseArmholeDepth || field == Field::CapEase;
}

} // namespace

EaseStrip::EaseStrip(const PanelContext& context, QWidget* parent)
    : QFrame(parent), context_(context), worked_(new QLabel(this)) {
  setAccessibleName(tr("Ease in hand"));
  for (const auto& [field, name] :
       {std::pair(Field::EaseBust, tr("Bust ease")), std::pair(Field::EaseUpperArm, tr("Arm ease")),
        std::pair(Field::EaseArmholeDepth, tr("Depth ease")),
        std::pair(Field::CapEase, tr("Cap ease"))})
    dials_.append(new EaseDial(context, field, name, this));
  worked_->setWordWrap(true);
  worked_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  worked_->setToolTip(workedOutText(context_.phrases()));
  QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refresh();
  });
  connect(&context_.settings, &Settings::changed, this, &EaseStrip::refresh);
  refresh();
}

void EaseStrip::refresh() {
  const Design& design = context_.document.design();
  const Field field = workedField(design.as<WorkedOut>());
  const bool apart = !isInHand(field); // else its own slider says so
  // As it is knitted, once that is known.
  double value = context_.document.draft().sizes[field];
  for (const Rounded& r : context_.document.derived().knit.rounded)
    if (r.field == field) value = r.knitted;
  worked_->setText(
      tr("%1\n%2\nworked out for you")
          .arg(fieldName(context_.phrases(), field),
               shownValue(context_.phrases(), field, value, context_.settings.unit())));
  if (apart != worked_->isHidden()) return;
  worked_->setVisible(apart);
  updateGeometry();
  arrange(width(), true);
}

int EaseStrip::arrange(int width, bool place) const {
  const int gap = fontMetrics().averageCharWidth();
  const int room = width - 2 * gap, between = 2 * gap;
  int least = 0, high = 0;
  for (const EaseDial* dial : dials_) {
    least = std::max(least, dial->minimumSizeHint().width());
    high = std::max(high, dial->sizeHint().height());
  }
  least = std::max(least, 16 * gap);
  const bool apart = !worked_->isHidden();
  const int aside = apart ? 19 * gap + between : 0;
  int perRow = int(dials_.size());
  while (perRow > 1 && perRow * least + (perRow - 1) * between + (perRow == 4 ? aside : 0) > room)
    perRow /= 2;
  const bool beside = apart && perRow == dials_.size();
  const int wide = (room - (beside ? aside : 0) - (perRow - 1) * between) / perRow;
  int y = gap / 2;
  for (int i = 0; i < dials_.size(); ++i) {
    if (i > 0 && i % perRow == 0) y += high + gap / 2;
    if (place) dials_[i]->setGeometry(gap + (i % perRow) * (wide + between), y, wide, high);
  }
  y += high;
  if (beside) {
    if (place)
      worked_->setGeometry(gap + room - aside + between, gap / 2 + 2, aside - between, high);
  } else if (apart) {
    const int line = worked_->heightForWidth(room);
    if (place) worked_->setGeometry(gap, y, room, line);
    y += line;
  }
  return y + gap / 2;
}

int EaseStrip::heightForWidth(int width) const {
  return arrange(width, false);
}

QSize EaseStrip::sizeHint() const {
  const int wide = 90 * fontMetrics().averageCharWidth();
  return {wide, arrange(std::max(width(), wide), false)};
}

QSize EaseStrip::minimumSizeHint() const {
  return {34 * fontMetrics().averageCharWidth(), dials_.front()->sizeHint().height()};
}

void EaseStrip::resizeEvent(QResizeEvent*) {
  arrange(width(), true);
}

void EaseStrip::changeEvent(QEvent* event) {
  QFrame::changeEvent(event);
  if (event->type() == QEvent::FontChange) updateGeometry();
}

} // namespace scye
