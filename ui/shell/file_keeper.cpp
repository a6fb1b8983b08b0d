#include "shell/file_keeper.h"

#include "document/design_store.h"
#include "document/wait_beside.h"
#include "io/design_file.h"
#include "look/save_dialog.h"

#include <QApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPointer>
#include <QPushButton>
#include <QScopedValueRollback>
#include <QSignalBlocker>

namespace scye {
namespace {

const QLatin1String kEnding(".scye");

QString whole(const QString& path) {
  const QFileInfo file(path);
  const QString canonical = file.canonicalFilePath();
  return canonical.isEmpty() ? file.absoluteFilePath() : canonical;
}

} // namespace

FileKeeper::FileKeeper(Document& document, FileWatch& watch, PlaceKeeper& places,
                       Settings& settings, QWidget* window)
    : QObject(window), document_(document), watch_(watch), places_(places), window_(window),
      settings_(settings), asking_(askingWithDialogs(window, settings)) {
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.file && document_.path().isEmpty()) watch_.watch({}, {});
  });
}

std::optional<FileKeeper::Read> FileKeeper::read(const QString& path) {
  FileText file;
  Work work;
  auto result = resultBeside<std::variant<Design, ReadRefusal>>([&] {
    file = readDesignText(path);
    return designOf(file, settings_.phrases(), &work);
  });
  if (auto* design = std::get_if<Design>(&result)) {
    unreadable_.remove(whole(path));
    return Read{std::move(*design), std::move(work), FileWatch::fingerprint(*file.text)};
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
  const auto file = read(path);
  if (!file) return false;
  const QString there = QFileInfo(path).absoluteFilePath();
  watch_.watch(there, file->print);
  document_.replace(file->design, there, false, file->work);
  settings_.addRecentFile(path);
  settings_.setLastFolder(QFileInfo(path).absolutePath());
  Q_EMIT opened();
  return true;
}

bool FileKeeper::openUntitled(const QString& path) {
  const auto file = read(path);
  if (!file) return false;
  document_.replace(file->design, {});
  Q_EMIT opened();
  return true;
}

bool FileKeeper::openRecovered(const Recovery::Copy& copy) {
  if (!mayLeave()) return false;
  const auto file = read(copy.file);
  if (!file) return false;
  watch_.watch(copy.original, copy.known);
  document_.replace(file->design, copy.original, true, file->work);
  Q_EMIT opened();
  return true;
}

bool FileKeeper::save() {
  return document_.path().isEmpty() ? saveAs() : saveTo(document_.path());
}

bool FileKeeper::saveAs() {
  QString at = document_.path().isEmpty()
                   ? settings_.lastFolder() + u'/' + document_.suggestedName() + kEnding
                   : document_.path();
  while (true) {
    const QString typed = asking_.whereToSave(at);
    if (typed.isEmpty()) return false;
    at = withEnding(typed, {kEnding}, kEnding);
    // The dialog has asked about the name as it was typed.
    if (at == typed || !QFileInfo::exists(at)) return saveTo(at);
    if (asking_.mayReplace(at)) return saveTo(at);
  }
}

bool FileKeeper::mayOverwrite(bool& done) {
  const auto state = resultBeside<FileWatch::State>([this] { return watch_.state(); });
  if (state != FileWatch::State::Changed) return true;
  switch (asking_.aboutConflict(QFileInfo(watch_.path()).fileName())) {
  case Conflict::KeepMine:
    return true;
  case Conflict::ReadOther:
    done = readOther();
    break;
  case Conflict::OtherName:
    done = saveAs();
    break;
  case Conflict::Stay:
    break;
  }
  return false;
}

void FileKeeper::takeTyped() {
  document_.endGesture();
  const QPointer<QWidget> box = QApplication::focusWidget();
  if (!box || !window_->isAncestorOf(box)) return;
  box->clearFocus();
  if (box) box->setFocus();
}

// What is seen of the file meanwhile is this very writing.
std::optional<QString> FileKeeper::written(const QString& path, const std::string& text) {
  const QScopedValueRollback saving(saving_, true);
  const QSignalBlocker quiet(watch_);
  auto problem = resultBeside<std::optional<QString>>(
      [&] { return writeDesignText(path, text, settings_.phrases()); });
  if (problem) watch_.watch(watch_.path(), watch_.known());
  return problem;
}

bool FileKeeper::saveTo(const QString& path) {
  if (saving_) return false;
  takeTyped();
  if (unreadable_.contains(whole(path))) {
    Q_EMIT refused(
        tr("Not saved."),
        tr("%1 could not be read before, so it is not written over. Choose another name.")
            .arg(QFileInfo(path).fileName()));
    return false;
  }
  bool done = false;
  if (whole(path) == whole(watch_.path()) && !mayOverwrite(done)) return done;
  waitBeside([this] { places_.wait(); }); // an older one must not come after this one
  const std::string text = designToJson(document_.design(), document_.work());
  const auto problem = written(path, text);
  if (problem) {
    Q_EMIT refused(tr("Not saved."), *problem);
    return false;
  }
  const QString there = QFileInfo(path).absoluteFilePath();
  watch_.watch(there, FileWatch::fingerprint(text));
  document_.markSaved(there);
  settings_.addRecentFile(path);
  settings_.setLastFolder(QFileInfo(path).absolutePath());
  return true;
}

bool FileKeeper::readOther() {
  document_.endGesture();
  const auto file = read(watch_.path());
  if (!file) return false;
  document_.edit(tr("Read the file again"), file->design);
  document_.setWork(file->work);
  watch_.watch(watch_.path(), file->print);
  document_.markSaved(watch_.path());
  return true;
}

void FileKeeper::keepMine() {
  watch_.accept();
  document_.markUnsaved();
}

bool FileKeeper::mayLeave() {
  if (saving_) return false; // the window's manager need not wait
  takeTyped();
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

namespace {

FileKeeper::Conflict askAboutConflict(QWidget* window, const QString& name) {
  QMessageBox box(QMessageBox::Question, FileKeeper::tr("The file has changed"),
                  FileKeeper::tr("Another program or window has changed %1 since it was read here. "
                                 "Saving would write over that.")
                      .arg(name),
                  QMessageBox::Cancel, window);
  box.setTextFormat(Qt::PlainText);
  const QPushButton* other =
      box.addButton(FileKeeper::tr("Save under another &name…"), QMessageBox::ActionRole);
  const QPushButton* read =
      box.addButton(FileKeeper::tr("&Read the file"), QMessageBox::ActionRole);
  const QPushButton* mine =
      box.addButton(FileKeeper::tr("&Write over it"), QMessageBox::DestructiveRole);
  box.setDefaultButton(QMessageBox::Cancel);
  box.exec();
  const QAbstractButton* answer = box.clickedButton();
  return answer == other  ? FileKeeper::Conflict::OtherName
         : answer == read ? FileKeeper::Conflict::ReadOther
         : answer == mine ? FileKeeper::Conflict::KeepMine
                          : FileKeeper::Conflict::Stay;
}

bool askToThrowAway(QWidget* window, const QString& name) {
  QMessageBox box(QMessageBox::Question, FileKeeper::tr("Throw the copy away"),
                  FileKeeper::tr("The copy of %1 is then gone for good.").arg(name),
                  QMessageBox::Cancel, window);
  box.setTextFormat(Qt::PlainText);
  const QPushButton* away =
      box.addButton(FileKeeper::tr("&Throw it away"), QMessageBox::DestructiveRole);
  box.setDefaultButton(QMessageBox::Cancel);
  box.exec();
  return box.clickedButton() == away;
}

} // namespace

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
  asking.mayReplace = [=](const QString& path) { return askToReplace(window, path); };
  asking.aboutConflict = [=](const QString& name) { return askAboutConflict(window, name); };
  asking.mayThrowAway = [=](const QString& name) { return askToThrowAway(window, name); };
  asking.aboutUnsaved = [=](const QString& name) {
    QMessageBox box(QMessageBox::Question, FileKeeper::tr("Unsaved changes"),
                    FileKeeper::tr("\"%1\" has changes that are not saved.").arg(name),
                    QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, window);
    box.setTextFormat(Qt::PlainText);
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
