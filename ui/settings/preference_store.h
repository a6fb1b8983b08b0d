// Preferences in a file (io/preferences.h): known at once, written a little later beside the
// window. Another window's changes in the same file stay.
#pragma once

#include "document/file_writer.h"
#include "io/preferences.h"

#include <QStringList>
#include <QTimer>

namespace scye {

class PreferenceStore : public QObject {
  Q_OBJECT
public:
  PreferenceStore(const QString& path, const Phrases& phrases, QObject* parent = nullptr);
  ~PreferenceStore() override; // what has changed is on the disk

  // Of a file that is only read, before there are words.
  [[nodiscard]] static QString textIn(const QString& path, const QString& name);
  [[nodiscard]] QString text(const QString& name, const QString& otherwise = {}) const;
  [[nodiscard]] QStringList list(const QString& name) const;
  // Each returns whether that is a change.
  bool put(const QString& name, const QString& text);
  bool put(const QString& name, const QStringList& list);
  void writeNow();
  void flush(); // and waits until it is written

Q_SIGNALS:
  void failed(const QString& reason); // they could not be written

private:
  QString path_;
  const Phrases& phrases_;
  Preferences now_, changes_; // changes_: since they were last handed to the writer
  QTimer pause_;
  FileWriter writer_;
};

} // namespace scye
