// Everything that can be done from menus, toolbar and keyboard, and where it stands there.
#pragma once

#include "io/outputs.h"

#include <QObject>

#include <map>

class QAction;
class QMainWindow;
class QMenu;
class QToolBar;
class QWidget;

namespace scye {

struct Actions {
  Actions(QMainWindow& window, const Phrases& phrases);

  QAction *newDesign, *newFromStyle, *open, *save, *saveAs, *print, *quit;
  // By the table of outputs (io/outputs.h): the schematic by its formats, all else by what it is.
  std::map<FileFormat, QAction*> exportSchematic;
  std::map<OutputId, QAction*> exports;
  QAction *printDirections, *printChart, *printBooklet;
  QAction *everything, *wearerTable, *wearerBooklets; // to files
  QAction *undo, *redo;
  QAction *zoomIn, *zoomOut, *fit, *grid, *wholeStitches, *centimetres, *inches;
  QAction *drafting, *knitting, *makingUp;       // the stages of the work
  QAction *directions, *chart, *sizes, *enlarge; // the pages
  QAction* answers;                              // the part at the right: fit and findings
  QAction* before; // the garment before the last change, laid under the present one
  QAction *nextPart, *partBefore;
  QAction *guide, *keys, *about;
  QMenu *recent, *wearer, *appearance, *language;

  // What needs a design on the drawing table.
  void setWorking(bool working);
  // The tools of the head bar.
  [[nodiscard]] QToolBar* makeTools(QWidget* parent);

private:
  void makeExports(QMainWindow& window, const Phrases& phrases);
  void makeMenus(QMainWindow& window);
};

} // namespace scye
