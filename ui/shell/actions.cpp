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

Actions::Actions(QMainWindow& w, const Phrases& phrases) {
  newDesign = make(w, "new", ActionText::tr("&New design"), {QKeySequence::New});
  newFromStyle = make(w, nullptr, ActionText::tr("New from a s&tyle…"),
                      {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N)});
  open = make(w, "open", ActionText::tr("&Open…"), {QKeySequence::Open});
  save = make(w, "save", ActionText::tr("&Save"), {QKeySequence::Save});
  saveAs = make(w, nullptr, ActionText::tr("Save &as…"),
                {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S)});
  makeExports(w, phrases);
  print = make(w, "print", ActionText::tr("&Print…"), {QKeySequence::Print});
  printDirections = make(w, nullptr, ActionText::tr("Print d&irections…"));
  printChart = make(w, nullptr, ActionText::tr("Print c&hart…"));
  printBooklet = make(w, nullptr, ActionText::tr("Print &booklet…"));
  everything = make(w, nullptr, ActionText::tr("E&verything into a folder…"));
  wearerTable = make(w, nullptr, ActionText::tr("Sizes for a &table of wearers…"));
  wearerBooklets = make(w, nullptr, ActionText::tr("Boo&klets for a table of wearers…"));
  quit = make(w, nullptr, ActionText::tr("&Quit"), {QKeySequence(Qt::CTRL | Qt::Key_Q)});
  undo = make(w, "undo", ActionText::tr("&Undo"), {QKeySequence::Undo});
  redo = make(w, "redo", ActionText::tr("&Redo"),
              {QKeySequence::Redo, QKeySequence(Qt::CTRL | Qt::Key_Y)});
  zoomIn = make(w, "zoom-in", ActionText::tr("Zoom &in"),
                {QKeySequence::ZoomIn, QKeySequence(Qt::CTRL | Qt::Key_Equal)});
  zoomOut = make(w, "zoom-out", ActionText::tr("Zoom &out"), {QKeySequence::ZoomOut});
  fit = make(w, "fit", ActionText::tr("&All pieces"), {QKeySequence(Qt::CTRL | Qt::Key_0)});
  grid = make(w, "grid", ActionText::tr("&Grid"), {QKeySequence(Qt::CTRL | Qt::Key_G)});
  grid->setCheckable(true);
  wholeStitches =
      make(w, "stitches", ActionText::tr("&Whole stitches"), {QKeySequence(Qt::CTRL | Qt::Key_K)});
  wholeStitches->setCheckable(true);
  wholeStitches->setToolTip(ActionText::tr("The knitted outline over the drafted one"));
  drafting = make(w, nullptr, ActionText::tr("&Draft"), {QKeySequence(Qt::Key_F2)});
  knitting = make(w, nullptr, ActionText::tr("&Knit"), {QKeySequence(Qt::Key_F3)});
  makingUp = make(w, nullptr, ActionText::tr("&Make up"), {QKeySequence(Qt::Key_F4)});
  drafting->setToolTip(ActionText::tr("Measure and draft: the pieces and their ease (F2)"));
  knitting->setToolTip(ActionText::tr("Knit: directions and chart (F3)"));
  makingUp->setToolTip(ActionText::tr("Make up: pins, finished sizes, seams (F4)"));
  auto* stages = new QActionGroup(&w);
  for (QAction* a : {drafting, knitting, makingUp}) {
    a->setCheckable(true);
    stages->addAction(a);
  }
  drafting->setChecked(true);
  directions =
      make(w, nullptr, ActionText::tr("&Directions"), {QKeySequence(Qt::CTRL | Qt::Key_1)});
  chart = make(w, nullptr, ActionText::tr("&Chart"), {QKeySequence(Qt::CTRL | Qt::Key_2)});
  sizes = make(w, nullptr, ActionText::tr("&Finished sizes and pins"),
               {QKeySequence(Qt::CTRL | Qt::Key_3)});
  enlarge = make(w, "enlarge", ActionText::tr("The &page alone"), {QKeySequence(Qt::Key_F9)});
  enlarge->setCheckable(true);
  answers =
      make(w, "fits", ActionText::tr("&Fit and findings"), {QKeySequence(Qt::CTRL | Qt::Key_4)});
  answers->setCheckable(true);
  answers->setChecked(true);
  centimetres = make(w, nullptr, ActionText::tr("&Centimetres"));
  inches = make(w, nullptr, ActionText::tr("&Inches"));
  centimetres->setIconText(ActionText::tr("cm"));
  inches->setIconText(ActionText::tr("in"));
  auto* units = new QActionGroup(&w);
  for (QAction* a : {centimetres, inches}) {
    a->setCheckable(true);
    units->addAction(a);
  }
  guide = make(w, nullptr, ActionText::tr("&Measuring guide"), {QKeySequence::HelpContents});
  keys = make(w, nullptr, ActionText::tr("&Keys"), {QKeySequence(Qt::Key_Question)});
  about = make(w, nullptr, ActionText::tr("&About Scyewright"));
  before = make(w, nullptr, ActionText::tr("Lay the state &before under it"),
                {QKeySequence(Qt::CTRL | Qt::Key_B)});
  before->setCheckable(true);
  before->setToolTip(
      ActionText::tr("The garment as it was before the last change; Undo takes the change back"));
  nextPart =
      make(w, nullptr, ActionText::tr("Next &part of the window"), {QKeySequence(Qt::Key_F6)});
  partBefore =
      make(w, nullptr, ActionText::tr("Part before"), {QKeySequence(Qt::SHIFT | Qt::Key_F6)});
  makeMenus(w);
}

void Actions::makeExports(QMainWindow& w, const Phrases& phrases) {
  const auto words = [&](const char* of, std::string_view key, const char* what) {
    return QString::fromStdString(phrases.say(of + std::string(key) + what));
  };
  for (const OutputInfo& output : allOutputs())
    if (output.inMenu && output.id != OutputId::Schematic)
      exports[output.id] = make(w, nullptr, words("output.", output.key, ".menu"));
  const OutputInfo& schematic = info(OutputId::Schematic);
  for (const FileFormat format : schematic.formats)
    exportSchematic[format] = make(w, nullptr, words("format", info(format).ending, ".menu"));
  QAction* usual = exportSchematic.at(FileFormat::Pdf); // the one among the tools
  usual->setIcon(icon("export"));
  usual->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_E));
  usual->setIconText(ActionText::tr("Export"));
  usual->setToolTip(words("output.", schematic.key, ".export"));
}

void Actions::makeMenus(QMainWindow& w) {
  QMenu* file = w.menuBar()->addMenu(ActionText::tr("&File"));
  file->addActions({newDesign, newFromStyle, open});
  recent = file->addMenu(ActionText::tr("Open &recent"));
  file->addSeparator();
  file->addActions({save, saveAs});
  file->addSeparator();
  QMenu* schematic = file->addMenu(ActionText::tr("&Export schematic"));
  for (const auto& [format, action] : exportSchematic)
    schematic->addAction(action);
  for (const auto& [output, action] : exports)
    file->addAction(action);
  file->addActions({everything, wearerTable, wearerBooklets});
  file->addSeparator();
  file->addActions({print, printDirections, printChart, printBooklet});
  file->addSeparator();
  file->addAction(quit);
  QMenu* edit = w.menuBar()->addMenu(ActionText::tr("&Edit"));
  edit->addActions({undo, redo});
  wearer = w.menuBar()->addMenu(ActionText::tr("&Wearer"));
  QMenu* view = w.menuBar()->addMenu(ActionText::tr("&View"));
  view->addActions({fit, zoomIn, zoomOut, grid, wholeStitches, before});
  view->addSeparator();
  view->addActions({drafting, knitting, makingUp});
  view->addSeparator();
  view->addActions({directions, chart, sizes, enlarge, answers});
  view->addSeparator();
  view->addActions({centimetres, inches});
  appearance = view->addMenu(ActionText::tr("App&earance"));
  language = view->addMenu(ActionText::tr("&Language"));
  view->addActions({nextPart, partBefore});
  QMenu* help = w.menuBar()->addMenu(ActionText::tr("&Help"));
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
  bar->addActions({exportSchematic.at(FileFormat::Pdf), print});
  return bar;
}

void Actions::setWorking(bool working) {
  wearer->setEnabled(working);
  for (const auto& [format, action] : exportSchematic)
    action->setEnabled(working);
  for (const auto& [output, action] : exports)
    action->setEnabled(working);
  for (QAction* a :
       {everything, wearerTable,  wearerBooklets, save,      saveAs,  print,    printDirections,
        printChart, printBooklet, zoomIn,         zoomOut,   fit,     grid,     wholeStitches,
        directions, chart,        sizes,          enlarge,   answers, drafting, knitting,
        makingUp,   before,       nextPart,       partBefore})
    a->setEnabled(working);
}

} // namespace scye
