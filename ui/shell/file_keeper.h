// New, open, save: what passes between the document and the disk, and the one question that is
// asked before unsaved work is left behind.
#pragma once

#include "document/document.h"
#include "settings/settings.h"

#include <QSet>

class QWidget;

namespace scye {

class FileKeeper : public QObject {
  Q_OBJECT
public:
  enum class Answer { Save, Discard, Stay };
  // How she is asked; replaced in tests.
  struct Asking {
    std::function<QString()> whichToOpen;
    std::function<QString(const QString& suggestion)> whereToSave;
    std::function<Answer(const QString& name)> aboutUnsaved;
  };

  FileKeeper(Document& document, Settings& settings, QWidget* window);
  void setAsking(Asking asking) { asking_ = std::move(asking); }

  // Each returns whether it went through.
  bool open();
  bool openFile(const QString& path);
  // A copy without a name of its own: a style of the library, a recovered design.
  bool openUntitled(const QString& path);
  bool save();
  bool saveAs();
  bool saveTo(const QString& path);
  // Whether what is open may be left: it is saved, or she has said so.
  bool mayLeave();

Q_SIGNALS:
  void opened();
  void refused(const QString& title, const QString& reason);

private:
  std::optional<Design> read(const QString& path);

  Document& document_;
  Settings& settings_;
  Asking asking_;
  QSet<QString> unreadable_; // files that were refused; they are never written over
};

[[nodiscard]] FileKeeper::Asking askingWithDialogs(QWidget* window, Settings& settings);

} // namespace scye
