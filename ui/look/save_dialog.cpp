#include "look/save_dialog.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>

#include <algorithm>

namespace scye {
namespace {

struct DialogText {
  Q_DECLARE_TR_FUNCTIONS(SaveDialog)
};

} // namespace

QString withEnding(const QString& path, const QStringList& endings, const QString& ending) {
  const bool has = std::any_of(endings.begin(), endings.end(), [&](const QString& e) {
    return path.endsWith(e, Qt::CaseInsensitive);
  });
  return has ? path : path + ending;
}

bool askToReplace(QWidget* parent, const QString& path) {
  QMessageBox box(QMessageBox::Question, DialogText::tr("Replace the file"),
                  DialogText::tr("%1 is there already.").arg(QFileInfo(path).fileName()),
                  QMessageBox::Cancel, parent);
  box.setTextFormat(Qt::PlainText);
  QPushButton* replace = box.addButton(DialogText::tr("&Replace it"), QMessageBox::AcceptRole);
  box.setDefaultButton(QMessageBox::Cancel);
  box.exec();
  return box.clickedButton() == replace;
}

QString askWhereToWrite(QWidget* parent, const QString& title, const QString& suggestion,
                        const QStringList& endings) {
  QStringList filters;
  for (const QString& ending : endings)
    filters.append(u'*' + ending);
  QString filter = filters.front(), at = suggestion;
  while (true) {
    QString typed = QFileDialog::getSaveFileName(parent, title, at,
                                                 filters.join(QStringLiteral(";;")), &filter);
    if (typed.isEmpty()) return typed;
    at = withEnding(typed, endings, filter.mid(1));
    if (at == typed || !QFileInfo::exists(at) || askToReplace(parent, at)) return at;
  }
}

} // namespace scye
