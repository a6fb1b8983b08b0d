// Files written beside the window, which never waits for a disk: one after another, in the order in
// which they were asked for.
#pragma once

#include "document/disk.h"

#include <QObject>
#include <QThreadPool>

#include <functional>

namespace scye {

class FileWriter : public QObject {
  Q_OBJECT
public:
  explicit FileWriter(QObject* parent = nullptr);
  ~FileWriter() override; // what was asked for is done

  // `work` touches files and nothing else; what it returns is a problem, told by failed().
  void add(std::function<std::optional<QString>()> work);
  // Until all is done.
  void wait() { pool_.waitForDone(); }

Q_SIGNALS:
  void failed(const QString& reason); // in the thread of this object

private:
  QThreadPool pool_;
};

} // namespace scye
