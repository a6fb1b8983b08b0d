// A button that copies what its page shows: a click puts it on the clipboard, dragging it takes it
// into another program or, as a file, into a folder. It is made beside the window; a drag begins
// once it is ready, if the button is still held then.
#pragma once

#include "document/beside.h"
#include "document/document.h"
#include "io/outputs.h"
#include "settings/settings.h"

#include <QDir>
#include <QPointF>
#include <QTemporaryDir>
#include <QToolButton>

#include <map>
#include <memory>

class QMimeData;

namespace scye {

// What is handed over, by its MIME type, and the file that a folder gets.
struct TakenOut {
  std::map<QString, QByteArray> data;
  QString file; // written already
  std::optional<QString> problem;
};

class TakeOut : public QToolButton {
  Q_OBJECT
public:
  // Called on the window's thread for what is then made on another.
  using Work = std::function<TakenOut(const QDir& folder, const GoOn& goOn)>;
  using Begin = std::function<Work()>;

  TakeOut(const QString& name, Begin begin, QWidget* parent);
  ~TakeOut() override;

Q_SIGNALS:
  void copied();
  void failed(const QString& reason);

protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;

private:
  enum class Way { None, Copy, Drag };

  void make(Way way);
  void take(const TakenOut& made);
  void tell(const QString& words);

  Begin begin_;
  Way way_ = Way::None;
  QPointF pressed_;
  std::unique_ptr<QTemporaryDir> folder_; // of files that are dragged; once there is one
  Beside beside_;                         // last: its thread ends before what it hands over to
};

[[nodiscard]] std::unique_ptr<QMimeData> mimeOf(const TakenOut& made, bool withFile);

// Pictures of an output as SVG and PNG; of a chart one piece.
[[nodiscard]] TakenOut pictureTaken(OutputId output, const OutputJob& job, const QString& name,
                                    const QDir& folder);
// The directions as text and HTML.
[[nodiscard]] TakenOut directionsTaken(const OutputJob& job, const QString& name,
                                       const QDir& folder);

} // namespace scye
