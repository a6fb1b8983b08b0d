// Everything that can be done from menus, toolbar and keyboard, and where it stands there.
#pragma once

#include <QObject>

class QAction;
class QMainWindow;
class QMenu;

namespace scye {

struct Actions {
  explicit Actions(QMainWindow& window);

  QAction *newDesign, *open, *save, *saveAs, *exportSvg, *exportPng, *exportPdf, *print, *quit;
  QAction *undo, *redo;
  QAction *zoomIn, *zoomOut, *fit, *grid, *centimetres, *inches;
  QAction *demo, *about;
  QMenu *recent, *wearer;

  // What needs a design on the drawing table.
  void setWorking(bool working);

private:
  void makeMenus(QMainWindow& window);
  void makeToolbar(QMainWindow& window);
};

} // namespace scye
