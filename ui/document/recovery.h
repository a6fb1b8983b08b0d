// A copy of the unsaved design, kept while the program runs and gone once the design is saved or
// given up. A copy that nobody holds the lock of was left behind by a program that ended badly.
#pragma once

#include "document/document.h"

#include <QLockFile>

namespace scye {

class Recovery : public QObject {
  Q_OBJECT
public:
  // Copies lie in `folder`, which is made when the first is written.
  Recovery(Document& document, QString folder, QObject* parent = nullptr);
  ~Recovery() override; // leaves nothing behind

  struct Copy {
    QString file;     // the copy
    QString original; // where the design was saved; empty for one never saved
  };
  [[nodiscard]] QList<Copy> leftBehind() const;
  void discard(const Copy& copy);

  void writeNow();
  [[nodiscard]] const QString& file() const { return file_; }

private:
  void onChanged(const Document::Event& event);
  void remove();

  Document& document_;
  QString folder_, file_;
  QTimer timer_;
  std::unique_ptr<QLockFile> lock_;
};

} // namespace scye
