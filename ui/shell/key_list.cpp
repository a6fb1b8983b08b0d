#include "shell/key_list.h"

#include <QAction>
#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QScreen>
#include <QTableWidget>
#include <QVBoxLayout>

namespace scye {
namespace {

struct KeyText {
  Q_DECLARE_TR_FUNCTIONS(KeyList)
};

QList<std::pair<QString, QString>> keysOf(const QWidget& window) {
  const auto tr = [](const char* text) { return KeyText::tr(text); };
  QList<std::pair<QString, QString>> keys;
  for (const QAction* action : window.findChildren<QAction*>(Qt::FindDirectChildrenOnly))
    if (!action->shortcut().isEmpty())
      keys.append({QKeySequence::listToString(action->shortcuts(), QKeySequence::NativeText),
                   action->text().remove(u'&').section(u':', 0, 0)});
  keys.append({
      {tr("F6, Shift+F6"), tr("from part to part of the window")},
      {tr("Alt+1 to Alt+8"), tr("to a section of the measurements")},
      {tr("Return"), tr("in a box: take the figure, and down a row")},
      {tr("Escape"), tr("in a box: the old figure again; in a drag: give it up")},
      {tr("H, Shift+H"), tr("on the drawing: from handle to handle")},
      {tr("arrows"), tr("on the drawing: move the handle, or the drawing")},
      {tr("Shift+arrows"), tr("move the handle by whole stitches and rows")},
      {tr("F"), tr("on the drawing: all pieces")},
      {tr("double click"), tr("on a slider: back to the start value")},
  });
  return keys;
}

} // namespace

void showKeyList(QWidget& window) {
  QDialog dialog(&window);
  dialog.setWindowTitle(KeyText::tr("Keys"));
  const auto keys = keysOf(window);
  auto* table = new QTableWidget(int(keys.size()), 2, &dialog);
  table->setHorizontalHeaderLabels({KeyText::tr("Key"), KeyText::tr("What it does")});
  table->setAccessibleName(dialog.windowTitle());
  table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  table->verticalHeader()->hide();
  table->setShowGrid(false);
  for (int i = 0; i < keys.size(); ++i) {
    table->setItem(i, 0, new QTableWidgetItem(keys[i].first));
    table->setItem(i, 1, new QTableWidgetItem(keys[i].second));
  }
  table->resizeColumnsToContents();
  table->horizontalHeader()->setStretchLastSection(true);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, &dialog);
  QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
  auto* column = new QVBoxLayout(&dialog);
  column->addWidget(table);
  column->addWidget(buttons);
  const int em = dialog.fontMetrics().averageCharWidth();
  dialog.resize(QSize(90 * em, 80 * em).boundedTo(0.9 * window.screen()->availableSize()));
  dialog.exec();
}

} // namespace scye
