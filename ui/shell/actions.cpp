#include "shell/actions.h"

#include "look/icons.h"

#include <QAction>
#include <QActionGroup>
#include <QCoreApplication>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QToolBar>

namespace scye {
namespace {

struct ActionText {
  Q_DECLARE_TR_FUNCTIONS(Actions)
};

QAction* make(QMainWindow& window, const char* sign, const QString& text,
              const QList<QKeySequence>& keys = {}) {
  auto* action = new QAction(text, &window);
  if (sign) action->setIcon(icon(sign));
  action->setShortcuts(keys);
  return action;
}

} // namespace

Actions::Actions(QMainWindow& w) {
  const auto tr = [](const char* text) { return ActionText::tr(text); };
  newDesign = make(w, "new", tr("&New design"), {QKeySequence::New});
  newFromStyle =
      make(w, nullptr, tr("New from a s&tyle…"), {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N)});
  open = make(w, "open", tr("&Open…"), {QKeySequence::Open});
  save = make(w, "save", tr("&Save"), {QKeySequence::Save});
  saveAs = make(w, nullptr, tr("Save &as…"), {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S)});
  exportSvg = make(w, nullptr, tr("As &SVG…"));
  exportPng = make(w, nullptr, tr("As &PNG…"));
  exportPdf = make(w, "export", tr("As P&DF…"), {QKeySequence(Qt::CTRL | Qt::Key_E)});
  exportPdf->setIconText(tr("Export"));
  exportPdf->setToolTip(tr("Export the schematic"));
  print = make(w, "print", tr("&Print…"), {QKeySequence::Print});
  exportDirections = make(w, nullptr, tr("Export &directions…"));
  exportChart = make(w, nullptr, tr("Export &chart…"));
  exportRows = make(w, nullptr, tr("Export &row table…"));
  printDirections = make(w, nullptr, tr("Print d&irections…"));
  printChart = make(w, nullptr, tr("Print c&hart…"));
  quit = make(w, nullptr, tr("&Quit"), {QKeySequence(Qt::CTRL | Qt::Key_Q)});
  undo = make(w, "undo", tr("&Undo"), {QKeySequence::Undo});
  redo = make(w, "redo", tr("&Redo"), {QKeySequence::Redo, QKeySequence(Qt::CTRL | Qt::Key_Y)});
  zoomIn = make(w, "zoom-in", tr("Zoom &in"),
                {QKeySequence::ZoomIn, QKeySequence(Qt::CTRL | Qt::Key_Equal)});
  zoomOut = make(w, "zoom-out", tr("Zoom &out"), {QKeySequence::ZoomOut});
  fit = make(w, "fit", tr("&All pieces"), {QKeySequence(Qt::CTRL | Qt::Key_0)});
  grid = make(w, "grid", tr("&Grid"), {QKeySequence(Qt::CTRL | Qt::Key_G)});
  grid->setCheckable(true);
  wholeStitches = make(w, "stitches", tr("&Whole stitches"), {QKeySequence(Qt::CTRL | Qt::Key_K)});
  wholeStitches->setCheckable(true);
  wholeStitches->setToolTip(tr("The knitted outline over the drafted one"));
  drafting = make(w, nullptr, tr("&Draft"), {QKeySequence(Qt::Key_F2)});
  knitting = make(w, nullptr, tr("&Knit"), {QKeySequence(Qt::Key_F3)});
  makingUp = make(w, nullptr, tr("&Make up"), {QKeySequence(Qt::Key_F4)});
  drafting->setToolTip(tr("Measure and draft: the pieces and their ease (F2)"));
  knitting->setToolTip(tr("Knit: directions and chart (F3)"));
  makingUp->setToolTip(tr("Make up: pins, finished sizes, seams (F4)"));
  auto* stages = new QActionGroup(&w);
  for (QAction* a : {drafting, knitting, makingUp}) {
    a->setCheckable(true);
    stages->addAction(a);
  }
  drafting->setChecked(true);
  directions = make(w, nullptr, tr("&Directions"), {QKeySequence(Qt::CTRL | Qt::Key_1)});
  chart = make(w, nullptr, tr("&Chart"), {QKeySequence(Qt::CTRL | Qt::Key_2)});
  sizes = make(w, nullptr, tr("&Finished sizes and pins"), {QKeySequence(Qt::CTRL | Qt::Key_3)});
  enlarge = make(w, "enlarge", tr("The &page alone"), {QKeySequence(Qt::Key_F9)});
  enlarge->setCheckable(true);
  answers = make(w, "fits", tr("&Fit and findings"), {QKeySequence(Qt::CTRL | Qt::Key_4)});
  answers->setCheckable(true);
  answers->setChecked(true);
  centimetres = make(w, nullptr, tr("&Centimetres"));
  inches = make(w, nullptr, tr("&Inches"));
  centimetres->setIconText(tr("cm"));
  inches->setIconText(tr("in"));
  auto* units = new QActionGroup(&w);
  for (QAction* a : {centimetres, inches}) {
    a->setCheckable(true);
    units->addAction(a);
  }
  guide = make(w, nullptr, tr("&Measuring guide"), {QKeySequence::HelpContents});
  keys = make(w, nullptr, tr("&Keys"), {QKeySequence(Qt::Key_Question)});
  about = make(w, nullptr, tr("&About Scyewright"));
  before =
      make(w, nullptr, tr("Lay the state &before under it"), {QKeySequence(Qt::CTRL | Qt::Key_B)});
  before->setCheckable(true);
  before->setToolTip(
      tr("The garment as it was before the last change; Undo takes the change back"));
  nextPart = make(w, nullptr, tr("Next &part of the window"), {QKeySequence(Qt::Key_F6)});
  partBefore = make(w, nullptr, tr("Part before"), {QKeySequence(Qt::SHIFT | Qt::Key_F6)});
  makeMenus(w);
}

void Actions::makeMenus(QMainWindow& w) {
  const auto tr = [](const char* text) { return ActionText::tr(text); };
  QMenu* file = w.menuBar()->addMenu(tr("&File"));
  file->addActions({newDesign, newFromStyle, open});
  recent = file->addMenu(tr("Open &recent"));
  file->addSeparator();
  file->addActions({save, saveAs});
  file->addSeparator();
  QMenu* schematic = file->addMenu(tr("&Export schematic"));
  schematic->addActions({exportSvg, exportPng, exportPdf});
  file->addActions({exportDirections, exportChart, exportRows});
  file->addSeparator();
  file->addActions({print, printDirections, printChart});
  file->addSeparator();
  file->addAction(quit);
  QMenu* edit = w.menuBar()->addMenu(tr("&Edit"));
  edit->addActions({undo, redo});
  wearer = w.menuBar()->addMenu(tr("&Wearer"));
  QMenu* view = w.menuBar()->addMenu(tr("&View"));
  view->addActions({fit, zoomIn, zoomOut, grid, wholeStitches, before});
  view->addSeparator();
  view->addActions({drafting, knitting, makingUp});
  view->addSeparator();
  view->addActions({directions, chart, sizes, enlarge, answers});
  view->addSeparator();
  view->addActions({centimetres, inches});
  appearance = view->addMenu(tr("App&earance"));
  view->addActions({nextPart, partBefore});
  QMenu* help = w.menuBar()->addMenu(tr("&Help"));
  help->addActions({guide, keys, about});
}

QToolBar* Actions::makeTools(QWidget* parent) {
  auto* bar = new QToolBar(ActionText::tr("Tools"), parent);
  bar->setToolButtonStyle(Qt::ToolButtonIconOnly);
  const int size = bar->fontMetrics().height() * 3 / 2;
  bar->setIconSize({size, size});
  const auto part = [&](const QList<QAction*>& actions) {
    bar->addActions(actions);
    bar->addSeparator();
  };
  part({newDesign, open, save});
  part({undo, redo});
  part({fit, wholeStitches});
  part({centimetres, inches});
  bar->addActions({exportPdf, print});
  return bar;
}

void Actions::setWorking(bool working) {
  wearer->setEnabled(working);
  for (QAction* a :
       {save,        saveAs,     exportSvg, exportPng,       exportPdf,  exportDirections,
        exportChart, exportRows, print,     printDirections, printChart, zoomIn,
        zoomOut,     fit,        grid,      wholeStitches,   directions, chart,
        sizes,       enlarge,    answers,   drafting,        knitting,   makingUp,
        before,      nextPart,   partBefore})
    a->setEnabled(working);
}

} // namespace scye
