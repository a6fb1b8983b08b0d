#include "library/style_card.h"

#include "paint/picture_colours.h"

#include <QPainter>

namespace scye {
namespace {

int em(const QFontMetrics& metrics) {
  return metrics.averageCharWidth();
}
int margin(const QFontMetrics& metrics) {
  return em(metrics);
} // half of the gap between cards
int padding(const QFontMetrics& metrics) {
  return 3 * em(metrics) / 2;
}

} // namespace

int StyleCard::height(const QFontMetrics& metrics, int cardWidth) {
  return 2 * margin(metrics) + 3 * padding(metrics) + pictureSize(metrics, cardWidth).height() +
         (2 + kBriefLines) * metrics.lineSpacing();
}

QSize StyleCard::pictureSize(const QFontMetrics& metrics, int cardWidth) {
  const int width = wordsWidth(metrics, cardWidth);
  return {width, 4 * width / 5}; // a garment with long sleeves above its pieces
}

int StyleCard::wordsWidth(const QFontMetrics& metrics, int cardWidth) {
  return cardWidth - 2 * margin(metrics) - 2 * padding(metrics);
}

int StyleCard::headHeight(const QFontMetrics& metrics) {
  return 5 * metrics.lineSpacing() / 2;
}

QSize StyleCard::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const QSize given = index.data(Qt::SizeHintRole).toSize(); // by the gallery
  const int width = kLeastWidth * em(option.fontMetrics);
  return given.isValid() ? given : QSize(width, height(option.fontMetrics, width));
}

void StyleCard::paint(QPainter* painter, const QStyleOptionViewItem& option,
                      const QModelIndex& index) const {
  const QFontMetrics& metrics = option.fontMetrics;
  const QPalette& palette = option.palette;
  if (index.data(HeadRole).toBool()) {
    painter->save();
    QFont large = option.font;
    large.setBold(true);
    large.setPointSizeF(1.15 * large.pointSizeF());
    painter->setFont(large);
    painter->setPen(palette.color(QPalette::Active, QPalette::Text));
    painter->drawText(option.rect.adjusted(margin(metrics), 0, 0, -margin(metrics) / 2),
                      Qt::AlignLeft | Qt::AlignBottom, index.data().toString());
    painter->restore();
    return;
  }
  const QColor ground = palette.color(QPalette::Base), ink = palette.color(QPalette::Text),
               lead = palette.color(QPalette::Highlight);
  const bool chosen =
      (option.state & QStyle::State_Selected) && (option.state & QStyle::State_HasFocus);
  const bool pointed = option.state & QStyle::State_MouseOver;
  const double line = chosen ? 2 : 1;
  const int away = margin(metrics);
  const QRectF card = QRectF(option.rect).adjusted(away, away, -away, -away);

  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen({chosen || pointed ? lead : mixed(ground, ink, 0.18), line});
  painter->setBrush(pointed ? mixed(ground, lead, 0.05) : ground);
  painter->drawRoundedRect(card.adjusted(line / 2, line / 2, -line / 2, -line / 2), away / 2.0,
                           away / 2.0);

  const int pad = padding(metrics), high = metrics.lineSpacing();
  QRect words = card.toAlignedRect().adjusted(pad, pad, -pad, -pad);
  const auto picture = index.data(Qt::DecorationRole).value<QPixmap>();
  if (!picture.isNull()) {
    const QSizeF size = picture.deviceIndependentSize();
    painter->drawPixmap(QPointF(words.center().x() - size.width() / 2, words.top()), picture);
  }
  words.setTop(words.top() + pictureSize(metrics, option.rect.width()).height() + pad);

  const auto say = [&](const QString& text, int lines, const QFont& font, const QColor& colour) {
    const QRect room(words.left(), words.top(), words.width(), lines * high);
    painter->setFont(font);
    painter->setPen(colour);
    if (lines > 1)
      painter->drawText(room, Qt::TextWordWrap, text);
    else
      painter->drawText(room, Qt::AlignLeft,
                        QFontMetrics(font).elidedText(text, Qt::ElideRight, room.width()));
    words.setTop(room.top() + room.height());
  };
  QFont bold = option.font;
  bold.setBold(true);
  say(index.data(Qt::DisplayRole).toString(), 1, bold, ink);
  say(index.data(BriefRole).toString(), kBriefLines, option.font, ink);
  say(index.data(WearerRole).toString(), 1, option.font, palette.color(QPalette::PlaceholderText));
  painter->restore();
}

} // namespace scye
