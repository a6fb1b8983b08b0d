// How a card of the style gallery looks, in the palette and letters of its view.
#pragma once

#include <QStyledItemDelegate>

namespace scye {

// Beside the item's text, its title, and its decoration, the picture. Heads of groups are items
// too.
enum StyleRole { BriefRole = Qt::UserRole, WearerRole, StyleRoleAt, HeadRole };

class StyleCard : public QStyledItemDelegate {
  Q_OBJECT
public:
  using QStyledItemDelegate::QStyledItemDelegate;

  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                               const QModelIndex& index) const override;

  static constexpr int kLeastWidth = 46; // characters
  static constexpr int kBriefLines = 2;
  // The room that a card of a width needs and gives.
  [[nodiscard]] static int headHeight(const QFontMetrics& metrics);
  [[nodiscard]] static int height(const QFontMetrics& metrics, int cardWidth);
  [[nodiscard]] static QSize pictureSize(const QFontMetrics& metrics, int cardWidth);
  [[nodiscard]] static int wordsWidth(const QFontMetrics& metrics, int cardWidth);
};

} // namespace scye
