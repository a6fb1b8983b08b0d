#include "wearers/wearer_store.h"

#include "document/design_store.h"
#include "document/disk.h"

#include <QDir>
#include <QUrl>

#include <algorithm>

namespace scye {

QDate WearerStore::Kept::date() const {
  return QDate::fromString(QString::fromStdString(wearer.measuredOn), Qt::ISODate);
}

WearerStore::WearerStore(const QString& folder, const Phrases& phrases, QObject* parent)
    : QObject(parent), folder_(folder), phrases_(phrases) {
  reload();
}

// Any name makes a file name, no two the same, and none a hidden one.
QString WearerStore::fileFor(const QString& name) const {
  return folder_ + u'/' + QString::fromLatin1(QUrl::toPercentEncoding(name, " ", ".")) +
         QStringLiteral(".scye");
}

const WearerStore::Kept* WearerStore::find(const QString& name) const {
  const auto at =
      std::find_if(kept_.begin(), kept_.end(), [&](const Kept& k) { return k.name == name; });
  return at == kept_.end() ? nullptr : &*at;
}

void WearerStore::reload() {
  kept_.clear();
  unreadable_.clear();
  for (const QFileInfo& file :
       QDir(folder_).entryInfoList({QStringLiteral("*.scye")}, QDir::Files)) {
    auto read = readDesign(file.filePath(), phrases_);
    if (auto* wearer = std::get_if<Design>(&read))
      kept_.append({QString::fromStdString(wearer->wearer), file.filePath(), std::move(*wearer)});
    else
      unreadable_.append({file.fileName(), std::get<ReadRefusal>(read).reason});
  }
  std::sort(kept_.begin(), kept_.end(),
            [](const Kept& a, const Kept& b) { return a.name.localeAwareCompare(b.name) < 0; });
  Q_EMIT changed();
}

bool WearerStore::keep(const Design& design, const QDate& date) {
  const QString name = QString::fromStdString(design.wearer);
  const Kept* before = find(name);
  const QString file = before ? before->file : fileFor(name);
  if (!before && QFileInfo::exists(file)) {
    Q_EMIT failed(
        tr("Not kept."),
        tr("%1 cannot be read, so it is not written over.").arg(QDir::toNativeSeparators(file)));
    return false;
  }
  QDir().mkpath(folder_);
  if (const auto problem =
          writeDesign(file, wearerOf(design, date.toString(Qt::ISODate).toStdString()), phrases_)) {
    Q_EMIT failed(tr("Not kept."), *problem);
    return false;
  }
  reload();
  return true;
}

bool WearerStore::remove(const QString& name) {
  const Kept* kept = find(name);
  if (!kept) return false;
  if (const auto problem = removeFile(kept->file)) {
    Q_EMIT failed(tr("Not removed."), reasonText(*problem, phrases_));
    return false;
  }
  reload();
  return true;
}

} // namespace scye
