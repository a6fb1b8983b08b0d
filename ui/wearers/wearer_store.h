// Wearers' measurements that are kept for other designs: one design file for each wearer in a
// folder of the program's own, written whole or not at all. A file that cannot be read is named
// and left alone: it is neither taken away nor written over.
#pragma once

#include "model/phrases.h"
#include "model/wearer.h"

#include <QDate>
#include <QList>
#include <QObject>

#include <optional>

namespace scye {

class WearerStore : public QObject {
  Q_OBJECT
public:
  struct Kept {
    QString name, file;
    Design wearer; // see model/wearer.h
    [[nodiscard]] QDate date() const;
  };
  struct Unreadable {
    QString file, reason;
  };

  WearerStore(const QString& folder, const Phrases& phrases, QObject* parent = nullptr);

  [[nodiscard]] const QList<Kept>& wearers() const { return kept_; } // by name
  [[nodiscard]] const QList<Unreadable>& unreadable() const { return unreadable_; }
  [[nodiscard]] const Kept* find(const QString& name) const;
  void reload(); // the folder may have changed since

  // Each returns whether it went through; otherwise failed() says why.
  bool keep(const Design& design, const QDate& date);
  bool remove(const QString& name);

Q_SIGNALS:
  void changed();
  void failed(const QString& title, const QString& reason);

private:
  [[nodiscard]] QString fileFor(const QString& name) const;

  QString folder_;
  const Phrases& phrases_;
  QList<Kept> kept_;
  QList<Unreadable> unreadable_;
};

} // namespace scye
