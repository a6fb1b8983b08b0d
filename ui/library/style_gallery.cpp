#include "library/style_gallery.h"

#include "library/style_card.h"
#include "paint/picture_painter.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QTimerEvent>

#include <algorithm>

namespace scye {

StyleGallery::StyleGallery(const Phrases& phrases, QWidget* parent)
    : QListWidget(parent), phrases_(phrases), styles_(styleLibrary(phrases)),
      pictures_(styles_.size()) {
  setAccessibleName(tr("Styles"));
  setItemDelegate(new StyleCard(this));
  setFlow(QListView::LeftToRight);
  setWrapping(true);
  setResizeMode(QListView::Adjust);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  viewport()->setAutoFillBackground(false);
  viewport()->setAttribute(Qt::WA_Hover);
  viewport()->setCursor(Qt::PointingHandCursor);
  std::optional<Figure> group;
  for (std::size_t i = 0; i < styles_.size(); ++i) {
    Figure figure = styles_[i].design.as<Figure>();
    if (figure == Figure::Baby) figure = Figure::Child;
    if (figure != std::exchange(group, figure)) addHead(figure);
    addCard(i);
  }
  setMinimumWidth(StyleCard::kLeastWidth * fontMetrics().averageCharWidth());
  connect(this, &QListWidget::itemClicked, this, &StyleGallery::choose);
}

void StyleGallery::addHead(Figure figure) {
  auto* head = new QListWidgetItem(figure == Figure::Woman ? tr("For women")
                                   : figure == Figure::Man ? tr("For men")
                                                           : tr("For children and babies"),
                                   this);
  head->setFlags(Qt::NoItemFlags);
  head->setData(HeadRole, true);
}

void StyleGallery::addCard(std::size_t at) {
  const Style& style = styles_[at];
  const QString title = QString::fromStdString(style.design.title),
                wearer = tr("for %1").arg(QString::fromStdString(style.design.wearer)),
                notes = QString::fromStdString(style.design.notes);
  auto* card = new QListWidgetItem(title, this);
  card->setData(BriefRole, style.brief);
  card->setData(WearerRole, wearer);
  card->setData(StyleRoleAt, int(at));
  card->setData(Qt::AccessibleTextRole,
                QStringLiteral("%1. %2, %3").arg(title, style.brief, wearer));
  card->setData(Qt::AccessibleDescriptionRole, notes);
  card->setToolTip(QStringLiteral("<p>%1</p>").arg(notes.toHtmlEscaped()));
  cards_.push_back(card);
}

void StyleGallery::choose(const QListWidgetItem* item) {
  if (item && !item->data(HeadRole).toBool())
    Q_EMIT chosen(styles_[item->data(StyleRoleAt).toUInt()].path);
}

void StyleGallery::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    choose(currentItem());
  else
    QListWidget::keyPressEvent(event);
}

void StyleGallery::focusInEvent(QFocusEvent* event) {
  QListWidget::focusInEvent(event);
  // Under a click the first card would be scrolled to, away from the one that is meant.
  if (!currentItem() && !cards_.empty() && event->reason() != Qt::MouseFocusReason)
    setCurrentItem(cards_.front());
}

void StyleGallery::layCards() {
  const QFontMetrics metrics = fontMetrics();
  const int least = StyleCard::kLeastWidth * metrics.averageCharWidth();
  // The view keeps the bar's room free whether or not it is shown, and breaks a row that fills it.
  const int room = width() - verticalScrollBar()->sizeHint().width() - 1;
  const int width = room / std::clamp(room / least, 1, std::max(1, int(cards_.size())));
  const QSize size(width, StyleCard::height(metrics, width));
  if (size == cardSize_ && room == room_) return;
  cardSize_ = size;
  room_ = room;
  for (int i = 0; i < count(); ++i)
    item(i)->setSizeHint(
        item(i)->data(HeadRole).toBool() ? QSize(room, StyleCard::headHeight(metrics)) : size);
  scheduleDelayedItemsLayout();
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
    cards_[next_]->setData(Qt::DecorationRole, paintedPicture(next_));
    ++next_;
  }
  if (isPainted()) painting_.stop();
}

QPixmap StyleGallery::paintedPicture(std::size_t at) {
  std::optional<StylePictures>& pictures = pictures_[at];
  if (!pictures) pictures = stylePictures(phrases_, styles_[at].design);
  const QSize size = StyleCard::pictureSize(fontMetrics(), cardSize_.width());
  QPixmap pixmap(size * devicePixelRatioF());
  pixmap.setDevicePixelRatio(devicePixelRatioF());
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  const QRectF all = QRectF({}, size).adjusted(1, 1, -1, -1); // the outline has a width
  const auto paint = [&](const Picture& picture, const QRectF& room, double pen) {
    const scye::Box box = picture.box(); // a frame has a Box too
    PictureView view;
    view.scale = std::min(room.width() / box.size().x(), room.height() / box.size().y());
    view.centre(box, room);
    view.pen = pen;
    paintPicture(painter, picture, screenColours(palette()), view);
  };
  constexpr double kWorn = 0.68; // of the height
  const double worn = kWorn * all.height(), gap = 0.03 * all.height();
  const QRectF above(all.left(), all.top(), all.width(), worn);
  if (const QImage photograph = wornPhotograph(styles_[at].path); !photograph.isNull()) {
    QRectF fitted({}, QSizeF(photograph.size()).scaled(above.size(), Qt::KeepAspectRatio));
    fitted.moveCenter(above.center());
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(fitted, photograph);
  } else {
    paint(pictures->worn, above, 1);
  }
  paint(pictures->pieces,
        {all.left(), all.top() + worn + gap, all.width(), all.height() - worn - gap}, 0.7);
  return pixmap;
}

} // namespace scye
