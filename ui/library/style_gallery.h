// The style library as cards: a picture, the title, what it is and for whom. Arrows go from card to
// card, Return or a click chooses one. The pictures are painted one by one after the gallery has
// first been shown, so that nothing waits for them.
#pragma once

#include "library/style_library.h"

#include <QBasicTimer>
#include <QListWidget>

#include <optional>

namespace scye {

class StyleGallery : public QListWidget {
  Q_OBJECT
public:
  explicit StyleGallery(const Phrases& phrases, QWidget* parent = nullptr);

  [[nodiscard]] const std::vector<Style>& styles() const { return styles_; }
  [[nodiscard]] bool isPainted() const { return next_ == styles_.size(); }
  [[nodiscard]] QListWidgetItem* card(int style) const { return cards_[std::size_t(style)]; }
  [[nodiscard]] QSize cardSize() const { return cardSize_; }

Q_SIGNALS:
  void chosen(const QString& path);

protected:
  void changeEvent(QEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void timerEvent(QTimerEvent* event) override;

private:
  void addHead(Figure figure);
  void addCard(std::size_t style);
  void choose(const QListWidgetItem* item);
  void layCards();
  void paintAfresh(); // all pictures, from the first
  [[nodiscard]] QPixmap paintedPicture(std::size_t at);

  const Phrases& phrases_;
  std::vector<Style> styles_;
  std::vector<QListWidgetItem*> cards_; // of the styles
  std::vector<std::optional<StylePictures>> pictures_;
  QSize cardSize_;
  int room_ = 0;         // px across
  std::size_t next_ = 0; // the first whose picture is still to be painted
  QBasicTimer painting_;
};

} // namespace scye
