// Whether the file of the open design still is what was last read from it or written to it. Content
// decides, not time stamps. Other programs may write into the file or put another in its place.
#pragma once

#include <QByteArray>
#include <QFileSystemWatcher>
#include <QObject>
#include <QTimer>

#include <string_view>

namespace scye {

class FileWatch : public QObject {
  Q_OBJECT
public:
  enum class State { Same, Changed, Gone };

  explicit FileWatch(QObject* parent = nullptr);

  // Nothing is watched where the path is empty. `known`: fingerprint of what stands in the file;
  // an empty one is nothing's.
  void watch(const QString& path, const QByteArray& known);
  [[nodiscard]] const QString& path() const { return path_; }
  [[nodiscard]] const QByteArray& known() const { return known_; }
  [[nodiscard]] static QByteArray fingerprint(std::string_view text);

  // As it is at this moment.
  [[nodiscard]] State state() const;
  // This program is about to write that; and has.
  void expect(const QByteArray& print);
  void wrote(const QByteArray& print);
  // What stands there now is known from here on.
  void accept();
  // Looks, and says changed() where it has not been said yet.
  void look();

Q_SIGNALS:
  void changed(scye::FileWatch::State state);

private:
  [[nodiscard]] QByteArray onDisk() const; // empty: there is none
  [[nodiscard]] State stateOf(const QByteArray& print) const;
  void follow();

  QString path_;
  QByteArray known_, said_;
  QList<QByteArray> expected_;
  QFileSystemWatcher watcher_;
  QTimer pause_; // a file that is being replaced is gone for a moment
};

} // namespace scye
