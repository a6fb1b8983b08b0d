// New, open, save: what passes between the document and the disk, and the questions that are asked
// before work is left behind or a file is replaced.
#pragma once

#include "document/file_watch.h"
#include "document/place_keeper.h"
#include "document/recovery.h"
#include "settings/settings.h"

#include <QSet>

class QWidget;

namespace scye {

class FileKeeper : public QObject {
  Q_OBJECT
public:
  enum class Answer { Save, Discard, Stay };
  // About a file that another program or window has changed since.
  enum class Conflict { KeepMine, ReadOther, OtherName, Stay };
  // How questions are asked; replaced in tests.
  struct Asking {
    std::function<QString()> whichToOpen;
    std::function<QString(const QString& suggestion)> whereToSave;
    std::function<Answer(const QString& name)> aboutUnsaved;
    std::function<bool(const QString& path)> mayReplace = [](const QString&) { return false; };
    std::function<Conflict(const QString& name)> aboutConflict = [](const QString&) {
      return Conflict::Stay;
    };
    std::function<bool(const QString& name)> mayThrowAway = [](const QString&) { return false; };
  };

  FileKeeper(Document& document, FileWatch& watch, PlaceKeeper& places, Settings& settings,
             QWidget* window);
  void setAsking(Asking asking) { asking_ = std::move(asking); }
  [[nodiscard]] const Asking& asking() const { return asking_; }

  // Each returns whether it went through.
  bool open();
  bool openFile(const QString& path);
  // A copy without a name of its own: a style of the library.
  bool openUntitled(const QString& path);
  // What was left behind, as unsaved work on the file it belongs to.
  bool openRecovered(const Recovery::Copy& copy);
  bool save();
  bool saveAs();
  bool saveTo(const QString& path);
  // What stands in the file now instead of what is open, as a step that can be undone.
  bool readOther();
  // The file may be written over as it is now.
  void keepMine();
  // Whether what is open may be left: it is saved, or may be lost.
  bool mayLeave();

Q_SIGNALS:
  void opened();
  void refused(const QString& title, const QString& reason);

private:
  // What is still being typed counts: a box takes its text when the keyboard leaves it.
  void takeTyped();
  struct Read {
    Design design;
    Work work;
    QByteArray print; // of the file
  };
  std::optional<Read> read(const QString& path);
  [[nodiscard]] std::optional<QString> written(const QString& path, const std::string& text);
  // Whether the file may be written over; another answer is acted on, and `done` tells how that
  // went.
  bool mayOverwrite(bool& done);

  Document& document_;
  FileWatch& watch_;
  PlaceKeeper& places_;
  QWidget* window_;
  Settings& settings_;
  Asking asking_;
  bool saving_ = false;
  QSet<QString> unreadable_; // files that were refused; they are never written over
};

[[nodiscard]] FileKeeper::Asking askingWithDialogs(QWidget* window, Settings& settings);

} // namespace scye
