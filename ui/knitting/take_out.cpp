#include "knitting/take_out.h"

#include "document/disk.h"
#include "export/export.h"

#include <QApplication>
#include <QClipboard>
#include <QDrag>
#include <QMimeData>
#include <QMouseEvent>
#include <QToolTip>
#include <QUrl>

#include <algorithm>
#include <utility>

namespace scye {
namespace {

QByteArray bytesOf(const std::string& bytes) {
  return {bytes.data(), qsizetype(bytes.size())};
}

// Where a name has what no file may be called.
QString fileIn(const QDir& folder, QString name, const char* ending) {
  for (QChar& c : name)
    if (c == u'/' || c == u'\\' || c == u':' || !c.isPrint()) c = u'-';
  return folder.filePath(name + QLatin1String(ending));
}

void asFile(TakenOut& made, const QString& path, const std::string& bytes, const Phrases& phrases) {
  if (const auto problem = writeFile(path, bytes))
    made.problem = reasonText(*problem, phrases);
  else
    made.file = path;
}

} // namespace

std::unique_ptr<QMimeData> mimeOf(const TakenOut& made, bool withFile) {
  auto mime = std::make_unique<QMimeData>();
  for (const auto& [type, bytes] : made.data)
    mime->setData(type, bytes);
  if (withFile && !made.file.isEmpty()) mime->setUrls({QUrl::fromLocalFile(made.file)});
  return mime;
}

TakenOut pictureTaken(OutputId output, const OutputJob& job, const QString& name,
                      const QDir& folder) {
  const PageDrawer drawer;
  const OutputInfo& what = info(output);
  TakenOut made;
  const auto add = [&](FileFormat format, const char* type) {
    const bool has =
        std::find(what.formats.begin(), what.formats.end(), format) != what.formats.end();
    if (!has || made.problem) return;
    const FileBytes bytes = makeOutput(what, job, format, &drawer);
    if (bytes.problem) {
      made.problem = QString::fromStdString(*bytes.problem);
      return;
    }
    made.data[QLatin1String(type)] = bytesOf(bytes.bytes);
    if (made.file.isEmpty())
      asFile(made, fileIn(folder, name, std::string(info(format).ending).c_str()), bytes.bytes,
             job.wording.phrases);
  };
  add(FileFormat::Svg, "image/svg+xml");
  add(FileFormat::Png, "image/png");
  return made;
}

TakenOut directionsTaken(const OutputJob& job, const QString& name, const QDir& folder) {
  const OutputInfo& what = info(OutputId::Directions);
  const std::string text = makeOutput(what, job, FileFormat::Text, nullptr).bytes;
  const std::string html = makeOutput(what, job, FileFormat::Html, nullptr).bytes;
  TakenOut made;
  made.data[QStringLiteral("text/plain")] = bytesOf(text);
  made.data[QStringLiteral("text/html")] = bytesOf(html);
  asFile(made, fileIn(folder, name, ".html"), html, job.wording.phrases);
  return made;
}

TakeOut::TakeOut(const QString& name, Begin begin, QWidget* parent)
    : QToolButton(parent), begin_(std::move(begin)) {
  setText(tr("Copy"));
  setAccessibleName(name);
  setToolTip(
      tr("%1: click for the clipboard, or drag it into another program or a folder").arg(name));
  setFocusPolicy(Qt::StrongFocus);
  connect(this, &QToolButton::clicked, this, [this] { make(Way::Copy); });
}

TakeOut::~TakeOut() = default;

void TakeOut::mousePressEvent(QMouseEvent* event) {
  pressed_ = event->position();
  QToolButton::mousePressEvent(event);
}

void TakeOut::mouseMoveEvent(QMouseEvent* event) {
  const bool away =
      (event->position() - pressed_).manhattanLength() >= QApplication::startDragDistance();
  if (way_ != Way::Drag && away && (event->buttons() & Qt::LeftButton)) make(Way::Drag);
  if (way_ != Way::Drag) QToolButton::mouseMoveEvent(event);
}

void TakeOut::mouseReleaseEvent(QMouseEvent* event) {
  if (way_ != Way::Drag) return QToolButton::mouseReleaseEvent(event);
  way_ = Way::None; // let go before there was anything to drag
  setDown(false);
}

void TakeOut::make(Way way) {
  way_ = way;
  if (!folder_) folder_ = std::make_unique<QTemporaryDir>();
  beside_.start(
      [this, work = begin_(), folder = QDir(folder_->path())](const std::stop_token& stop) {
        const TakenOut made = work(folder, [&](double) { return !stop.stop_requested(); });
        if (stop.stop_requested()) return;
        QMetaObject::invokeMethod(
            this, [this, made] { take(made); }, Qt::QueuedConnection);
      });
}

void TakeOut::take(const TakenOut& made) {
  const Way way = std::exchange(way_, Way::None);
  if (way == Way::None) return;
  if (made.problem) {
    setDown(false);
    tell(*made.problem);
    Q_EMIT failed(*made.problem);
  } else if (way == Way::Copy) {
    QGuiApplication::clipboard()->setMimeData(mimeOf(made, false).release());
    tell(tr("It is on the clipboard."));
    Q_EMIT copied();
  } else {
    auto* drag = new QDrag(this); // Qt deletes it
    drag->setMimeData(mimeOf(made, true).release());
    drag->exec(Qt::CopyAction);
    setDown(false);
  }
}

void TakeOut::tell(const QString& words) {
  setAccessibleDescription(words);
  QToolTip::showText(mapToGlobal(rect().bottomLeft()), words, this);
}

} // namespace scye
