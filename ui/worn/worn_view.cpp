#include "worn/worn_view.h"

#include "paint/picture_colours.h"

#include <QKeyEvent>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <vector>

namespace scye {
namespace {

constexpr double kDegreesAPixel = 0.4, kKeyTurn = 10, kKeyZoom = 1.15;
constexpr int kSmallestNumber = 9; // pixels

} // namespace

WornView::WornView(QWidget* parent) : QWidget(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  setCursor(Qt::OpenHandCursor);
  setAccessibleName(tr("The garment worn"));
  setMessage({});
  turned_.lift = 0;
}

QSize WornView::sizeHint() const {
  const int em = fontMetrics().averageCharWidth();
  return {30 * em, 13 * em}; // what there is more of it takes
}
QSize WornView::minimumSizeHint() const {
  return sizeHint();
}

bool WornView::isDark() const {
  return scye::isDark(palette());
}

QSize WornView::pictureSize() const {
  const QSize all = size() * devicePixelRatioF();
  return two_ ? QSize(all.width() / 2, all.height()) : all;
}

void WornView::setFrames(const WornFrame& garment, const WornFrame& beside) {
  frame_[0] = garment, frame_[1] = beside;
  update();
  describe();
}

void WornView::setTwo(bool two, const QString& left, const QString& right) {
  const bool other = two != two_;
  two_ = two, caption_[0] = left, caption_[1] = right;
  if (other) frame_[1] = {};
  update();
  describe();
  if (other) Q_EMIT moved();
}

void WornView::setMessage(const QString& text) {
  message_ = text.isEmpty() ? tr("The garment is being put on …") : text;
  update();
  describe();
}

// What is painted instead of a picture is said, too.
void WornView::describe() {
  const bool waits = frame_[0].image.isNull() || (two_ && frame_[1].image.isNull());
  setAccessibleDescription(waits ? message_ : QString());
}

void WornView::setPulls(bool pulls) {
  pulls_ = pulls;
  update();
}

void WornView::look(NamedView view) {
  named_ = view;
  turned_ = {};
  turned_.lift = 0;
  Q_EMIT looked(view);
  Q_EMIT moved();
}

void WornView::turn(double degrees, double up) {
  turned_.turn += degrees;
  turned_.lift = std::clamp(turned_.lift + up, -60.0, 80.0);
  Q_EMIT moved();
}

void WornView::zoom(double by) {
  turned_.zoom = std::clamp(turned_.zoom * by, 0.4, 8.0);
  Q_EMIT moved();
}

void WornView::mousePressEvent(QMouseEvent* event) {
  from_ = event->position();
}

void WornView::mouseMoveEvent(QMouseEvent* event) {
  if (!(event->buttons() & Qt::LeftButton)) return;
  const QPointF way = event->position() - from_;
  from_ = event->position();
  turn(-kDegreesAPixel * way.x(), kDegreesAPixel * way.y());
}

void WornView::wheelEvent(QWheelEvent* event) {
  zoom(std::pow(kKeyZoom, event->angleDelta().y() / 120.0));
  event->accept();
}

void WornView::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
  case Qt::Key_Left:
    return turn(-kKeyTurn, 0);
  case Qt::Key_Right:
    return turn(kKeyTurn, 0);
  case Qt::Key_Up:
    return turn(0, kKeyTurn);
  case Qt::Key_Down:
    return turn(0, -kKeyTurn);
  case Qt::Key_Plus:
  case Qt::Key_Equal:
    return zoom(kKeyZoom);
  case Qt::Key_Minus:
    return zoom(1 / kKeyZoom);
  case Qt::Key_1:
    return look(NamedView::Front);
  case Qt::Key_2:
    return look(NamedView::Side);
  case Qt::Key_3:
    return look(NamedView::Back);
  case Qt::Key_4:
    return look(NamedView::Armhole);
  default:
    QWidget::keyPressEvent(event);
  }
}

void WornView::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  Q_EMIT moved();
}

void WornView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) Q_EMIT moved();
}

void WornView::paintFrame(QPainter& painter, const WornFrame& frame, const QRect& place,
                          const QString& caption) const {
  if (!frame.image.isNull()) {
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(place, frame.image);
    const double scale = double(place.width()) / frame.image.width();
    // Of a small picture, small; one for which there is no room between the others stays away.
    QFont small = font();
    small.setBold(true);
    small.setPixelSize(
        std::min(QFontInfo(font()).pixelSize(), std::max(kSmallestNumber, place.width() / 40)));
    painter.setFont(small);
    const QFontMetricsF metrics(small);
    std::vector<QRectF> taken;
    for (const SeenNumber& n : frame.numbers) {
      const QString text = QLocale().toString(n.number);
      QRectF box = metrics.boundingRect(text).adjusted(-3, -1, 3, 1);
      box.moveCenter(QPointF(place.x() + n.x * scale, place.y() + n.y * scale));
      if (std::ranges::any_of(taken, [&](const QRectF& other) { return other.intersects(box); }))
        continue;
      taken.push_back(box);
      painter.setPen(Qt::NoPen);
      painter.setBrush(palette().color(QPalette::Base));
      painter.drawRoundedRect(box, 4, 4);
      painter.setPen(palette().color(QPalette::Text));
      painter.drawText(box, Qt::AlignCenter, text);
    }
    painter.setFont(font());
  }
  painter.setPen(palette().color(QPalette::Text));
  const QRect words = place.adjusted(8, 6, -8, -6);
  if (!caption.isEmpty())
    painter.drawText(words, Qt::AlignTop | Qt::AlignHCenter | Qt::TextWordWrap, caption);
  if (frame.image.isNull()) painter.drawText(words, Qt::AlignCenter | Qt::TextWordWrap, message_);
}

// Less and more, with the colours between; told by darkness, and no figures.
void WornView::paintScale(QPainter& painter) const {
  const QFontMetrics metrics = fontMetrics();
  const QString less = tr("pulls less"), more = tr("more");
  const int high = metrics.height(), gap = high / 2, em = metrics.averageCharWidth();
  const int words = metrics.horizontalAdvance(less) + metrics.horizontalAdvance(more) + 4 * gap;
  const int bar = std::clamp(width() - words - 2 * gap, 3 * em, 10 * em), wide = words + bar;
  QRect box(width() - wide - gap, height() - 2 * high - gap, wide, high + gap);
  painter.fillRect(box, palette().color(QPalette::Base));
  painter.setPen(palette().color(QPalette::Text));
  box.adjust(gap, 0, -gap, 0);
  painter.drawText(box, Qt::AlignVCenter | Qt::AlignLeft, less);
  painter.drawText(box, Qt::AlignVCenter | Qt::AlignRight, more);
  const int x = box.x() + metrics.horizontalAdvance(less) + gap;
  for (int i = 0; i < bar; ++i) {
    const Vec3f c = 255 * pullColour(float(i) / float(bar));
    painter.setPen(QColor(int(c.x()), int(c.y()), int(c.z())));
    painter.drawLine(x + i, box.y() + gap / 2, x + i, box.bottom() - gap / 2);
  }
  painter.setPen(palette().color(QPalette::Mid));
  painter.drawRect(x, box.y() + gap / 2, bar, box.height() - gap);
}

void WornView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette().color(QPalette::Base));
  const int half = two_ ? width() / 2 : width();
  paintFrame(painter, frame_[0], QRect(0, 0, half, height()), caption_[0]);
  if (two_) {
    paintFrame(painter, frame_[1], QRect(half, 0, half, height()), caption_[1]);
    painter.setPen(palette().color(QPalette::Mid));
    painter.drawLine(half, 0, half, height());
  }
  if (pulls_) paintScale(painter);
  if (!hasFocus()) return;
  painter.setPen(palette().color(QPalette::Highlight));
  painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

} // namespace scye
