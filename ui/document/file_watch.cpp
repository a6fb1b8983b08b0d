#include "document/file_watch.h"

#include "document/disk.h"
#include "io/design_file.h"

#include <QCryptographicHash>
#include <QFileInfo>

namespace scye {
namespace {

constexpr int kSettleMs = 150;

} // namespace

FileWatch::FileWatch(QObject* parent) : QObject(parent) {
  pause_.setSingleShot(true);
  pause_.setInterval(kSettleMs);
  const auto soon = [this] {
    if (!pause_.isActive()) pause_.start();
  };
  connect(&watcher_, &QFileSystemWatcher::fileChanged, this, soon);
  connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, soon);
  connect(&pause_, &QTimer::timeout, this, &FileWatch::look);
}

QByteArray FileWatch::fingerprint(std::string_view text) {
  return QCryptographicHash::hash(QByteArray::fromRawData(text.data(), qsizetype(text.size())),
                                  QCryptographicHash::Sha256);
}

void FileWatch::watch(const QString& path, const QByteArray& known) {
  path_ = path;
  known_ = said_ = known;
  expected_.clear();
  pause_.stop();
  if (const QStringList before = watcher_.files() + watcher_.directories(); !before.isEmpty())
    watcher_.removePaths(before);
  follow();
}

// The folders too: the file may be put in place anew, behind a link as well.
void FileWatch::follow() {
  if (path_.isEmpty()) return;
  const QFileInfo file(path_);
  const QStringList watched = watcher_.files() + watcher_.directories();
  for (const QString& place :
       {path_, file.absolutePath(), QFileInfo(file.canonicalFilePath()).path()})
    if (!watched.contains(place) && QFileInfo::exists(place)) watcher_.addPath(place);
}

QByteArray FileWatch::onDisk() const {
  if (!QFileInfo::exists(path_)) return {};
  const FileText file = readPlainFile(path_, kLargestDesign + 1);
  // One that cannot be read is another one, whatever stands in it.
  return file.text ? fingerprint(*file.text) : QByteArrayLiteral("unreadable");
}

FileWatch::State FileWatch::stateOf(const QByteArray& print) const {
  if (print.isEmpty()) return State::Gone;
  return print == known_ || expected_.contains(print) ? State::Same : State::Changed;
}

FileWatch::State FileWatch::state() const {
  return path_.isEmpty() ? State::Same : stateOf(onDisk());
}

void FileWatch::expect(const QByteArray& print) {
  expected_.append(print);
}

void FileWatch::wrote(const QByteArray& print) {
  const qsizetype at = expected_.indexOf(print);
  if (at < 0) return; // another file is watched by now
  expected_.remove(0, at + 1);
  known_ = said_ = print;
}

void FileWatch::accept() {
  if (path_.isEmpty()) return;
  known_ = said_ = onDisk();
}

void FileWatch::look() {
  if (path_.isEmpty()) return;
  follow();
  const QByteArray print = onDisk();
  if (print == said_) return;
  said_ = print;
  Q_EMIT changed(stateOf(print));
}

} // namespace scye
