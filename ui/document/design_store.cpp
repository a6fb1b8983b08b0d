#include "document/design_store.h"

#include "document/disk.h"
#include "io/design_file.h"

#include <QCoreApplication>
#include <QFile>

namespace scye {
namespace {

struct StoreText {
  Q_DECLARE_TR_FUNCTIONS(DesignStore)
};

} // namespace

std::variant<Design, ReadRefusal> designOf(const FileText& file, const Phrases& phrases,
                                           Work* work) {
  if (!file.text) return ReadRefusal{QString::fromStdString(file.problem)};
  const DesignRead read = designFromJson(*file.text, phrases);
  if (read.design && work) *work = read.work;
  if (read.design) return *read.design;
  const QString reason = QString::fromStdString(read.problem.reason);
  if (read.problem.line == 0) return ReadRefusal{reason};
  return ReadRefusal{StoreText::tr("line %L1: %2").arg(read.problem.line).arg(reason)};
}

FileText readDesignText(const QString& path) {
  // A design of the library is built into the program and lies on no disk.
  if (path.startsWith(QStringLiteral(":/"))) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return {{}, file.errorString().toStdString()};
    return {file.readAll().toStdString(), {}};
  }
  return readPlainFile(path, kLargestDesign + 1);
}

std::variant<Design, ReadRefusal> readDesign(const QString& path, const Phrases& phrases) {
  return designOf(readDesignText(path), phrases);
}

std::optional<QString> writeDesignText(const QString& path, const std::string& text) {
  const auto problem = text.size() > kLargestDesign
                           ? std::optional(StoreText::tr("its texts are too long"))
                           : writeFile(path, text);
  if (!problem) return std::nullopt;
  return StoreText::tr("%1 could not be saved: %2").arg(path, *problem);
}

std::optional<QString> writeDesign(const QString& path, const Design& design) {
  return writeDesignText(path, designToJson(design));
}

} // namespace scye
