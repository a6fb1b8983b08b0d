#include "document/place_keeper.h"

#include "document/design_store.h"
#include "io/design_file.h"

#include <QFileInfo>

namespace scye {

PlaceKeeper::PlaceKeeper(Document& document, FileWatch& watch, const Phrases& phrases,
                         QObject* parent)
    : QObject(parent), document_(document), watch_(watch), phrases_(phrases) {
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.work && !document_.path().isEmpty()) write();
  });
  connect(&writer_, &FileWriter::failed, this, [this](const QString& reason) {
    document_.markUnsaved();
    Q_EMIT failed(reason);
  });
}

PlaceKeeper::~PlaceKeeper() {
  wait();
}

void PlaceKeeper::write() {
  const quint64 number = ++newest_;
  const QString path = document_.path();
  const std::string text = designToJson(document_.savedDesign(), document_.work());
  const QByteArray print = FileWatch::fingerprint(text);
  watch_.expect(print);
  const QByteArray known = watch_.path() == path ? watch_.known() : QByteArray();
  writer_.add([=, this]() -> std::optional<QString> {
    // What comes after it holds it too.
    if (number != newest_) return std::nullopt;
    const FileText now = readDesignText(path);
    const QByteArray there = now.text ? FileWatch::fingerprint(*now.text) : QByteArray();
    if (there != known && there != written_)
      return tr("%1 has been changed or moved by somebody else.").arg(QFileInfo(path).fileName());
    if (auto problem = writeDesignText(path, text, phrases_)) return problem;
    written_ = print;
    QMetaObject::invokeMethod(
        this,
        [this, path, print] {
          if (watch_.path() == path) watch_.wrote(print);
        },
        Qt::QueuedConnection);
    return std::nullopt;
  });
}

} // namespace scye
