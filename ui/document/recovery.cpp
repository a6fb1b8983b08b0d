#include "document/recovery.h"

#include "document/design_store.h"

#include <QDir>
#include <QSaveFile>
#include <QUuid>

namespace scye {
namespace {

constexpr int kWaitMs = 2000; // after the last change
const QLatin1String kOriginal(".original"), kLock(".lock");

} // namespace

Recovery::Recovery(Document& document, QString folder, QObject* parent)
    : QObject(parent), document_(document), folder_(std::move(folder)) {
  file_ =
      folder_ + u'/' + QUuid::createUuid().toString(QUuid::WithoutBraces) + QLatin1String(".scye");
  timer_.setSingleShot(true);
  timer_.setInterval(kWaitMs);
  connect(&timer_, &QTimer::timeout, this, &Recovery::writeNow);
  connect(&document_, &Document::changed, this, &Recovery::onChanged);
}

Recovery::~Recovery() {
  remove();
}

void Recovery::onChanged(const Document::Event& event) {
  if (event.file && !document_.isModified())
    remove();
  else if ((event.design || event.replaced) && document_.isModified())
    timer_.start();
}

void Recovery::writeNow() {
  if (!document_.isModified() || !QDir().mkpath(folder_)) return;
  if (!lock_) {
    lock_ = std::make_unique<QLockFile>(file_ + kLock);
    lock_->setStaleLockTime(0); // held as long as the program lives
    if (!lock_->tryLock(0)) lock_.reset();
  }
  QSaveFile original(file_ + kOriginal);
  if (original.open(QIODevice::WriteOnly)) {
    original.write(document_.path().toUtf8());
    original.commit();
  }
  // A failure here is not worth a word: the design itself is safe in the window.
  (void)writeDesign(file_, document_.design());
}

void Recovery::remove() {
  timer_.stop();
  if (!lock_) return;
  discard({file_, {}});
  lock_.reset();
}

QList<Recovery::Copy> Recovery::leftBehind() const {
  QList<Copy> copies;
  const QDir folder(folder_);
  for (const QString& name :
       folder.entryList({QStringLiteral("*.scye")}, QDir::Files, QDir::Time)) {
    const QString path = folder.filePath(name);
    if (path == file_) continue;
    QLockFile lock(path + kLock);
    lock.setStaleLockTime(0);
    if (!lock.tryLock(0)) continue;
    QFile original(path + kOriginal);
    copies.append({path, original.open(QIODevice::ReadOnly) ? QString::fromUtf8(original.readAll())
                                                            : QString()});
  }
  return copies;
}

void Recovery::discard(const Copy& copy) {
  QFile::remove(copy.file);
  QFile::remove(copy.file + kOriginal);
}

} // namespace scye
