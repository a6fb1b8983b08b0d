#include "document/recovery.h"

#include "document/design_store.h"
#include "document/wait_beside.h"
#include "io/design_file.h"

#include <QDir>
#include <QUuid>

namespace scye {
namespace {

const QLatin1String kOriginal(".original"), kLock(".lock");

} // namespace

Recovery::Recovery(Document& document, const FileWatch& watch, QString folder,
                   const Phrases& phrases, QObject* parent)
    : QObject(parent), document_(document), watch_(watch), folder_(std::move(folder)),
      phrases_(phrases) {
  file_ =
      folder_ + u'/' + QUuid::createUuid().toString(QUuid::WithoutBraces) + QLatin1String(".scye");
  timer_.setSingleShot(true);
  timer_.setInterval(kBehindMs);
  connect(&timer_, &QTimer::timeout, this, &Recovery::write);
  connect(&document_, &Document::changed, this, &Recovery::onChanged);
  connect(&writer_, &FileWriter::failed, this, &Recovery::failed);
}

Recovery::~Recovery() {
  remove();
  writer_.wait();
}

void Recovery::onChanged(const Document::Event& event) {
  if (event.work && document_.isModified())
    write(); // a place is lost by one step at most
  else if (event.file && !document_.isModified())
    remove();
  else if ((event.design || event.file) && !timer_.isActive())
    // Not started anew by what comes next: changes may come faster than it runs out. Whether there
    // is something to keep is seen then: a change is told before it stands in the history.
    timer_.start();
}

void Recovery::write() {
  if (!document_.isModified() && !document_.inGesture()) return remove();
  timer_.stop();
  // Which file it belongs to, and what was known to stand there.
  const bool isOriginal = watch_.path() == document_.path();
  const QByteArray original =
      (isOriginal ? watch_.known().toHex() : QByteArray()) + '\n' + document_.path().toUtf8();
  writer_.add(
      [this, original = original.toStdString(),
       text = designToJson(document_.design(), document_.work())]() -> std::optional<QString> {
        std::optional<QString> problem;
        if (!hold())
          problem = tr("%1 cannot be written into.").arg(folder_);
        else if (const auto first = writeFile(file_ + kOriginal, original))
          problem = reasonText(*first, phrases_);
        else
          problem = writeDesignText(file_, text, phrases_);
        const bool before = failing_.exchange(problem.has_value());
        return before ? std::nullopt : problem;
      });
}

// On the writer's thread, as all that touches the files of this program's own copy.
bool Recovery::hold() {
  if (lock_) return true;
  if (!QDir().mkpath(folder_)) return false;
  auto lock = std::make_unique<QLockFile>(file_ + kLock);
  lock->setStaleLockTime(0); // held as long as the program lives
  if (lock->tryLock(0)) lock_ = std::move(lock);
  return lock_ != nullptr;
}

bool Recovery::writeNow() {
  write();
  waitBeside([this] { writer_.wait(); });
  return lock_ && !failing_ && QFile::exists(file_);
}

void Recovery::remove() {
  timer_.stop();
  writer_.add([this]() -> std::optional<QString> {
    if (lock_) discard({file_, {}, {}, {}});
    lock_.reset();
    return std::nullopt;
  });
}

QList<Recovery::Copy> Recovery::leftBehind() const {
  QList<Copy> copies;
  const QDir folder(folder_);
  for (const QFileInfo& found :
       folder.entryInfoList({QStringLiteral("*.scye")}, QDir::Files, QDir::Time)) {
    const QString path = folder.filePath(found.fileName());
    if (path == file_) continue;
    QLockFile lock(path + kLock);
    lock.setStaleLockTime(0);
    if (!lock.tryLock(0)) continue;
    Copy copy{path, {}, {}, found.lastModified()};
    if (QFile original(path + kOriginal); original.open(QIODevice::ReadOnly)) {
      const QByteArray text = original.readAll();
      const qsizetype line = text.indexOf('\n');
      copy.known = QByteArray::fromHex(text.left(line < 0 ? 0 : line));
      copy.original = QString::fromUtf8(text.mid(line + 1));
    }
    copies.append(copy);
  }
  return copies;
}

void Recovery::discard(const Copy& copy) {
  QFile::remove(copy.file);
  QFile::remove(copy.file + kOriginal);
}

} // namespace scye
