// Everything that can be done from menus, toolbar and keyboard, and where it stands there.
#pragma once

#include <QObject>

class QAction;
class QMainWindow;
class QMenu;

namespace scye {

struct Actions {
  explicit Actions(QMainWindow& window);

  QAction *newDesign, *newFromStyle, *open, *save, *saveAs, *exportSvg, *exportPng, *exportPdf,
      *print, *quit;
  QAction *exportDirections, *exportChart, *exportRows, *printDirections, *printChart;
  QAction *undo, *redo;
  QAction *zoomIn, *zoomOut, *fit, *grid, *wholeStitches, *centimetres, *inches;
  QAction *directions, *chart, *sizes, *enlarge; // the pages below the drawing table
  QAction* answers;                              // the part at the right: fit and findings
  QAction *guide, *about;
  QMenu *recent, *wearer;

  // What needs a design on the drawing table.
  void setWorking(bool working);

private:
  void makeMenus(QMainWindow& window);
  void makeToolbar(QMainWindow& window);
};

} // namespace scye
