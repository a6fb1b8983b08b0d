// Files and prints are made beside the window, one after the other. What is to be made is handed
// over with everything it needs; nothing of it may read the document. How far it is is told once it
// has taken kTellMs; it can be given up, and then leaves no file.
#pragma once

#include "document/document.h"
#include "export/export.h"

#include <QObject>

#include <deque>

namespace scye {

class ExportQueue : public QObject {
  Q_OBJECT
public:
  static constexpr int kTellMs = 200;
  // Returns what went wrong, as a sentence, or nothing.
  using Work = std::function<std::optional<QString>(const GoOn&)>;

  explicit ExportQueue(QObject* parent = nullptr) : QObject(parent) {}

  // `what`: the path of a file, or what is printed.
  void add(const QString& what, Work work);
  // An output of the design as it is now, by the ending of its path.
  void add(OutputId output, const QString& path, Document& document, const Wording& wording,
           const ExportOptions& page);
  void cancel(); // the one that is being made
  [[nodiscard]] bool isIdle() const { return queue_.empty(); }

Q_SIGNALS:
  void progressed(const QString& what, double share);
  void made(const QString& what);
  void failed(const QString& reason);
  void cancelled(const QString& what);

private:
  struct Item {
    QString what;
    Work work;
  };
  void begin();
  void end(const std::optional<QString>& problem, bool given);

  std::deque<Item> queue_; // the first is being made
  Beside beside_;
};

} // namespace scye
