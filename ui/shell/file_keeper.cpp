#include "shell/file_keeper.h"

#include "document/design_store.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>

namespace scye {
namespace {

const QLatin1String kEnding(".scye");

QString whole(const QString& path) {
  const QFileInfo file(path);
  const QString canonical = file.canonicalFilePath();
  return canonical.isEmpty() ? file.absoluteFilePath() : canonical;
}

} // namespace

FileKeeper::FileKeeper(Document& document, Settings& settings, QWidget* window)
    : QObject(window), document_(document), settings_(settings),
      asking_(askingWithDialogs(window, settings)) {}

std::optional<Design> FileKeeper::read(const QString& path) {
  auto result = readDesign(path);
  if (auto* design = std::get_if<Design>(&result)) {
    unreadable_.remove(whole(path));
    return std::move(*design);
  }
  const QString name = QFileInfo(path).fileName();
  if (QFileInfo::exists(path)) unreadable_.insert(whole(path));
  settings_.removeRecentFile(path);
  Q_EMIT refused(
      tr("%1 cannot be opened.").arg(name),
      tr("The file was left as it is. Reason: %1").arg(std::get<ReadRefusal>(result).reason));
  return std::nullopt;
}

bool FileKeeper::open() {
  const QString path = asking_.whichToOpen();
  return !path.isEmpty() && openFile(path);
}

bool FileKeeper::openFile(const QString& path) {
  if (!mayLeave()) return false;
  const auto design = read(path);
  if (!design) return false;
  document_.replace(*design, QFileInfo(path).absoluteFilePath());
  settings_.addRecentFile(path);
  settings_.setLastFolder(QFileInfo(path).absolutePath());
  Q_EMIT opened();
  return true;
}

bool FileKeeper::openUntitled(const QString& path) {
  const auto design = read(path);
  if (!design) return false;
  document_.replace(*design, {});
  Q_EMIT opened();
  return true;
}

bool FileKeeper::save() {
  return document_.path().isEmpty() ? saveAs() : saveTo(document_.path());
}

bool FileKeeper::saveAs() {
  const QString suggestion = document_.path().isEmpty()
                                 ? settings_.lastFolder() + u'/' + document_.displayName() + kEnding
                                 : document_.path();
  QString path = asking_.whereToSave(suggestion);
  if (path.isEmpty()) return false;
  if (QFileInfo(path).suffix().isEmpty()) path += kEnding;
  return saveTo(path);
}

bool FileKeeper::saveTo(const QString& path) {
  if (unreadable_.contains(whole(path))) {
    Q_EMIT refused(
        tr("Not saved."),
        tr("%1 could not be read before, so it is not written over. Choose another name.")
            .arg(QFileInfo(path).fileName()));
    return false;
  }
  if (const auto problem = writeDesign(path, document_.design())) {
    Q_EMIT refused(tr("Not saved."), *problem);
    return false;
  }
  document_.markSaved(QFileInfo(path).absoluteFilePath());
  settings_.addRecentFile(path);
  settings_.setLastFolder(QFileInfo(path).absolutePath());
  return true;
}

bool FileKeeper::mayLeave() {
  document_.endGesture();
  if (!document_.isModified()) return true;
  switch (asking_.aboutUnsaved(document_.displayName())) {
  case Answer::Save:
    return save();
  case Answer::Discard:
    return true;
  case Answer::Stay:
    break;
  }
  return false;
}

FileKeeper::Asking askingWithDialogs(QWidget* window, Settings& settings) {
  const QString kinds = FileKeeper::tr("Designs (*.scye)");
  FileKeeper::Asking asking;
  asking.whichToOpen = [=, &settings] {
    return QFileDialog::getOpenFileName(window, FileKeeper::tr("Open a design"),
                                        settings.lastFolder(), kinds);
  };
  asking.whereToSave = [=](const QString& suggestion) {
    return QFileDialog::getSaveFileName(window, FileKeeper::tr("Save the design"), suggestion,
                                        kinds);
  };
  asking.aboutUnsaved = [=](const QString& name) {
    QMessageBox box(QMessageBox::Question, FileKeeper::tr("Unsaved changes"),
                    FileKeeper::tr("\"%1\" has changes that are not saved.").arg(name),
                    QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, window);
    box.setDefaultButton(QMessageBox::Save);
    switch (box.exec()) {
    case QMessageBox::Save:
      return FileKeeper::Answer::Save;
    case QMessageBox::Discard:
      return FileKeeper::Answer::Discard;
    default:
      return FileKeeper::Answer::Stay;
    }
  };
  return asking;
}

} // namespace scye
