#include "library/style_gallery.h"

#include "library/style_card.h"
#include "paint/picture_painter.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QTimerEvent>

#include <algorithm>

namespace scye {

StyleGallery::StyleGallery(QWidget* parent)
    : QListWidget(parent), styles_(styleLibrary()), pictures_(styles_.size()) {
  setAccessibleName(tr("Styles"));
  setItemDelegate(new StyleCard(this));
  setFlow(QListView::LeftToRight);
  setWrapping(true);
  setResizeMode(QListView::Adjust);
  setUniformItemSizes(true);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  viewport()->setAutoFillBackground(false);
  viewport()->setAttribute(Qt::WA_Hover);
  viewport()->setCursor(Qt::PointingHandCursor);
  for (const Style& style : styles_) {
    const QString title = QString::fromStdString(style.design.title),
                  wearer = tr("for %1").arg(QString::fromStdString(style.design.wearer)),
                  notes = QString::fromStdString(style.design.notes);
    auto* card = new QListWidgetItem(title, this);
    card->setData(BriefRole, style.brief);
    card->setData(WearerRole, wearer);
    card->setData(Qt::AccessibleTextRole,
                  QStringLiteral("%1. %2, %3").arg(title, style.brief, wearer));
    card->setData(Qt::AccessibleDescriptionRole, notes);
    card->setToolTip(QStringLiteral("<p>%1</p>").arg(notes.toHtmlEscaped()));
  }
  setMinimumWidth(StyleCard::kLeastWidth * fontMetrics().averageCharWidth());
  connect(this, &QListWidget::itemClicked, this, &StyleGallery::choose);
}

void StyleGallery::choose(const QListWidgetItem* item) {
  if (item) Q_EMIT chosen(styles_[std::size_t(row(item))].path);
}

void StyleGallery::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    choose(currentItem());
  else
    QListWidget::keyPressEvent(event);
}

void StyleGallery::focusInEvent(QFocusEvent* event) {
  QListWidget::focusInEvent(event);
  if (!currentItem()) setCurrentRow(0);
}

void StyleGallery::layCards() {
  const QFontMetrics metrics = fontMetrics();
  const int least = StyleCard::kLeastWidth * metrics.averageCharWidth();
  // The view keeps the bar's room free whether or not it is shown, and breaks a row that fills it.
  const int room = width() - verticalScrollBar()->sizeHint().width() - 1;
  const int width = room / std::clamp(room / least, 1, std::max(1, count()));
  const QSize card(width, StyleCard::height(metrics, width));
  if (card == gridSize()) return;
  setGridSize(card);
  paintAfresh();
}

void StyleGallery::resizeEvent(QResizeEvent* event) {
  layCards();
  QListWidget::resizeEvent(event);
}

void StyleGallery::changeEvent(QEvent* event) {
  QListWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) layCards();
  if (event->type() == QEvent::PaletteChange) paintAfresh();
}

void StyleGallery::paintEvent(QPaintEvent* event) {
  QListWidget::paintEvent(event);
  if (!isPainted() && !painting_.isActive()) painting_.start(0, this);
}

void StyleGallery::paintAfresh() {
  next_ = 0;
  viewport()->update();
}

void StyleGallery::timerEvent(QTimerEvent* event) {
  if (event->timerId() != painting_.timerId()) {
    QListWidget::timerEvent(event);
    return;
  }
  if (!isPainted()) {
    item(int(next_))->setData(Qt::DecorationRole, paintedPicture(next_));
    ++next_;
  }
  if (isPainted()) painting_.stop();
}

QPixmap StyleGallery::paintedPicture(std::size_t at) {
  std::optional<Picture>& picture = pictures_[at];
  if (!picture) picture = stylePicture(styles_[at].design);
  const QSize size = StyleCard::pictureSize(fontMetrics(), gridSize().width());
  QPixmap pixmap(size * devicePixelRatioF());
  pixmap.setDevicePixelRatio(devicePixelRatioF());
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  const scye::Box box = picture->box();                        // a frame has a Box too
  const QRectF room = QRectF({}, size).adjusted(1, 1, -1, -1); // the outline has a width
  PictureView view;
  view.scale = std::min(room.width() / box.size().x(), room.height() / box.size().y());
  view.centre(box, room);
  view.pen = 0.8;
  paintPicture(painter, *picture, screenColours(palette()), view);
  return pixmap;
}

} // namespace scye
