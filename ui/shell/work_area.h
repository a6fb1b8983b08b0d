// The middle of the window: the drawing table, and below it pages with what she knits from. The
// line between them can be drawn all the way, so that a page stands below the drawing or in its
// place. While there is no page, only the drawing table shows.
#pragma once

#include <QSplitter>

class QStackedWidget;
class QTabBar;

namespace scye {

class WorkArea : public QSplitter {
  Q_OBJECT
public:
  explicit WorkArea(QWidget* table, QWidget* parent = nullptr);

  void addPage(const QString& title, QWidget* page);
  void showPage(QWidget* page);

private:
  QWidget* lower_;
  QTabBar* tabs_;
  QStackedWidget* pages_;
};

} // namespace scye
