// A copy of the unsaved design, kept while the program runs and gone once the design is saved or
// given up. It is never more than kBehindMs behind what is on the screen, a slider that is still
// held included. A copy that nobody holds the lock of was left behind by a program that ended
// badly.
#pragma once

#include "document/document.h"
#include "document/file_watch.h"
#include "document/file_writer.h"

#include <QDateTime>
#include <QLockFile>

namespace scye {

inline constexpr int kBehindMs = 1500; // and the time that writing takes

class Recovery : public QObject {
  Q_OBJECT
public:
  // Copies lie in `folder`, which is made when the first is written.
  Recovery(Document& document, const FileWatch& watch, QString folder, const Phrases& phrases,
           QObject* parent = nullptr);
  ~Recovery() override; // leaves nothing behind

  struct Copy {
    QString file;     // the copy
    QString original; // where the design was saved; empty for one never saved
    QByteArray known; // fingerprint of what was then known to stand there
    QDateTime when;
  };
  [[nodiscard]] QList<Copy> leftBehind() const; // the newest first
  void discard(const Copy& copy);

  // On the disk when it returns; whether it is.
  bool writeNow();
  void wait() { writer_.wait(); } // until all that was to be written or removed is
  [[nodiscard]] const QString& file() const { return file_; }

Q_SIGNALS:
  void failed(const QString& reason); // no copy could be kept; once, until one could

private:
  void onChanged(const Document::Event& event);
  void write();
  void remove();
  [[nodiscard]] bool hold();

  Document& document_;
  const FileWatch& watch_;
  QString folder_, file_;
  const Phrases& phrases_;
  QTimer timer_;
  std::unique_ptr<QLockFile> lock_; // the writer's
  std::atomic<bool> failing_ = false;
  FileWriter writer_; // last: what it still does needs the others
};

} // namespace scye
