#include "settings/preference_store.h"

#include <QFile>

namespace scye {
namespace {

constexpr int kWriteAfterMs = 300;

std::optional<Preferences> readFrom(const QString& path) {
  const FileText file = readPlainFile(path, kLargestPreferences + 1);
  return file.text ? preferencesFromJson(*file.text) : std::nullopt;
}

QString textOf(const Preferences& preferences, const QString& name, const QString& otherwise) {
  const auto at = preferences.texts.find(name.toStdString());
  return at == preferences.texts.end() ? otherwise : QString::fromStdString(at->second);
}

template <class Map>
void overlay(Map& under, const Map& over) {
  for (const auto& [name, value] : over)
    under.insert_or_assign(name, value);
}

// The file with the changes in it, all else as it is now.
std::optional<QString> writeChanges(const QString& path, const Preferences& changes,
                                    const Phrases& phrases) {
  const auto before = readFrom(path);
  // What cannot be read may have been written by hand: it is kept under another name.
  if (!before && QFile::exists(path)) {
    const QString aside = path + QLatin1String(".unreadable");
    QFile::remove(aside);
    QFile::rename(path, aside);
  }
  Preferences next = before.value_or(Preferences());
  overlay(next.texts, changes.texts);
  overlay(next.lists, changes.lists);
  if (before == next) return std::nullopt;
  if (!makeFolderOf(path)) return PreferenceStore::tr("%1 cannot be made").arg(path);
  if (const auto problem = writeFile(path, preferencesToJson(next)))
    return reasonText(*problem, phrases);
  return std::nullopt;
}

} // namespace

PreferenceStore::PreferenceStore(const QString& path, const Phrases& phrases, QObject* parent)
    : QObject(parent), path_(path), phrases_(phrases),
      now_(readFrom(path).value_or(Preferences())) {
  pause_.setSingleShot(true);
  pause_.setInterval(kWriteAfterMs);
  connect(&pause_, &QTimer::timeout, this, &PreferenceStore::writeNow);
  connect(&writer_, &FileWriter::failed, this, &PreferenceStore::failed);
}

PreferenceStore::~PreferenceStore() {
  writeNow();
}

QString PreferenceStore::textIn(const QString& path, const QString& name) {
  return textOf(readFrom(path).value_or(Preferences()), name, {});
}

QString PreferenceStore::text(const QString& name, const QString& otherwise) const {
  return textOf(now_, name, otherwise);
}

QStringList PreferenceStore::list(const QString& name) const {
  QStringList out;
  if (const auto at = now_.lists.find(name.toStdString()); at != now_.lists.end())
    for (const std::string& entry : at->second)
      out.append(QString::fromStdString(entry));
  return out;
}

bool PreferenceStore::put(const QString& name, const QString& text) {
  const auto [at, isNew] = now_.texts.try_emplace(name.toStdString());
  if (!isNew && at->second == text.toStdString()) return false;
  changes_.texts[at->first] = at->second = text.toStdString();
  if (!pause_.isActive()) pause_.start();
  return true;
}

bool PreferenceStore::put(const QString& name, const QStringList& list) {
  std::vector<std::string> entries;
  for (const QString& entry : list)
    entries.push_back(entry.toStdString());
  const auto [at, isNew] = now_.lists.try_emplace(name.toStdString());
  if (!isNew && at->second == entries) return false;
  changes_.lists[at->first] = at->second = std::move(entries);
  if (!pause_.isActive()) pause_.start();
  return true;
}

void PreferenceStore::writeNow() {
  pause_.stop();
  const Preferences changes = std::exchange(changes_, {});
  if (changes == Preferences()) return;
  writer_.add([path = path_, changes, this] { return writeChanges(path, changes, phrases_); });
}

void PreferenceStore::flush() {
  writeNow();
  writer_.wait();
}

} // namespace scye
