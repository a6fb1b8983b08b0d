#include "document/design_store.h"

#include "io/design_file.h"

#include <QCoreApplication>
#include <QFile>
#include <QSaveFile>

namespace scye {
namespace {

struct StoreText {
  Q_DECLARE_TR_FUNCTIONS(DesignStore)
};

} // namespace

std::variant<Design, ReadRefusal> readDesign(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) return ReadRefusal{file.errorString()};
  const QByteArray bytes = file.readAll();
  const DesignRead read = designFromJson({bytes.constData(), std::size_t(bytes.size())});
  if (read.design) return *read.design;
  const QString reason = QString::fromStdString(read.problem.reason);
  if (read.problem.line == 0) return ReadRefusal{reason};
  return ReadRefusal{StoreText::tr("line %1: %2").arg(read.problem.line).arg(reason)};
}

std::optional<QString> writeDesign(const QString& path, const Design& design) {
  const std::string text = designToJson(design);
  QSaveFile file(path);
  if (file.open(QIODevice::WriteOnly) &&
      file.write(text.data(), qint64(text.size())) == qint64(text.size()) && file.commit())
    return std::nullopt;
  return StoreText::tr("%1 could not be saved: %2").arg(path, file.errorString());
}

} // namespace scye
