// The middle of the window: the drawing table, and below it pages with what she knits from. A page
// stands below the drawing or in its place, or is folded away to its tab: so it begins where the
// pieces would become too small for their figures. While there is no page, only the drawing table
// shows.
#pragma once

#include <QSplitter>

class QStackedWidget;
class QTabBar;
class QToolButton;

namespace scye {

class WorkArea : public QSplitter {
  Q_OBJECT
public:
  explicit WorkArea(QWidget* table, QWidget* parent = nullptr);

  void addPage(const QString& title, QWidget* page);
  void showPage(QWidget* page);
  bool takeState(const QByteArray& state);
  // The page alone in the middle, or the drawing table with it.
  void setEnlarged(bool enlarged);
  [[nodiscard]] bool isEnlarged() const;

Q_SIGNALS:
  void enlarged(bool enlarged);

protected:
  void resizeEvent(QResizeEvent* event) override;

private:
  [[nodiscard]] bool isFolded() const;
  void fold();

  bool placed_ = false; // the line has been drawn, by us or the last time
  QWidget* table_;
  QWidget* lower_;
  QTabBar* tabs_;
  QStackedWidget* pages_;
  QToolButton* larger_;
};

} // namespace scye
