// The pages of a booklet as they come out on paper, to be looked through: below one another, or
// beside one another where there is room. Pages are painted beside the window, those that are seen
// and their neighbours; of the others no picture is kept.
#pragma once

#include "document/beside.h"
#include "schematic/sheet.h"

#include <QAbstractScrollArea>
#include <QHash>
#include <QImage>

#include <memory>

namespace scye {

class BookletView : public QAbstractScrollArea {
  Q_OBJECT
public:
  using Pages = std::shared_ptr<const std::vector<Sheet>>;

  explicit BookletView(QWidget* parent = nullptr);

  // The place in the booklet stays. Without pages `message` is shown.
  void setPages(Pages pages, const QString& message);
  [[nodiscard]] const std::vector<Sheet>& pages() const { return *pages_; }
  [[nodiscard]] const QString& message() const { return message_; }
  [[nodiscard]] int pageCount() const { return pages_ ? int(pages_->size()) : 0; }
  [[nodiscard]] int page() const; // the first that is seen, from 0
  void showPage(int page);
  // Whether all that is seen is painted.
  [[nodiscard]] bool isPainted() const;

Q_SIGNALS:
  void pageMoved();
  void painted(); // another page is

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void scrollContentsBy(int dx, int dy) override;
  void showEvent(QShowEvent* event) override;

private:
  [[nodiscard]] QSize pageSize() const;
  [[nodiscard]] QSize sizeOf(int page) const;
  [[nodiscard]] int gap() const;
  [[nodiscard]] int columns() const;
  [[nodiscard]] QRect placeOf(int page) const; // in the viewport
  [[nodiscard]] std::pair<int, int> seen() const;
  void arrange();
  void paintSoon();
  void take(quint64 version, int page, const QImage& image);

  Pages pages_;
  QString message_;
  QHash<int, QImage> images_;
  quint64 version_ = 0; // of pages and their size: pictures of another are not shown
  Beside beside_;
};

} // namespace scye
