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
  QList<std::pair<QString, QString>> keys;
  for (const QAction* action : window.findChildren<QAction*>(Qt::FindDirectChildrenOnly))
    if (!action->shortcut().isEmpty())
      keys.append({QKeySequence::listToString(action->shortcuts(), QKeySequence::NativeText),
                   action->text().remove(u'&').section(u':', 0, 0)});
  keys.append({
      {KeyText::tr("F6, Shift+F6"), KeyText::tr("from part to part of the window")},
      {KeyText::tr("Alt+1 to Alt+8"), KeyText::tr("to a section of the measurements")},
      {KeyText::tr("Return"), KeyText::tr("in a box: take the figure, and down a row")},
      {KeyText::tr("Escape"), KeyText::tr("in a box: the old figure again; in a drag: give it up")},
      {KeyText::tr("H, Shift+H"), KeyText::tr("on the drawing: from handle to handle")},
      {KeyText::tr("arrows"), KeyText::tr("on the drawing: move the handle, or the drawing")},
      {KeyText::tr("Shift+arrows"), KeyText::tr("move the handle by whole stitches and rows")},
      {KeyText::tr("F"), KeyText::tr("on the drawing: all pieces")},
      {KeyText::tr("double click"), KeyText::tr("on a slider: back to the start value")},
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
