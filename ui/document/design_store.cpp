#include "document/design_store.h"

#include "document/disk.h"
#include "io/design_file.h"

#include <QCoreApplication>
#include <QFile>

#include <cerrno>

namespace scye {
namespace {

struct StoreText {
  Q_DECLARE_TR_FUNCTIONS(DesignStore)
};

} // namespace

std::variant<Design, ReadRefusal> designOf(const FileText& file, const Phrases& phrases,
                                           Work* work) {
  if (!file.text) return ReadRefusal{reasonText(file.problem, phrases)};
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
    if (!file.open(QIODevice::ReadOnly)) return {{}, systemProblem(ENOENT)};
    return {file.readAll().toStdString(), {}};
  }
  return readPlainFile(path, kLargestDesign + 1);
}

std::variant<Design, ReadRefusal> readDesign(const QString& path, const Phrases& phrases) {
  return designOf(readDesignText(path), phrases);
}

std::optional<QString> writeDesignText(const QString& path, const std::string& text,
                                       const Phrases& phrases) {
  const auto unsaved = [&](const QString& reason) {
    return StoreText::tr("%1 could not be saved: %2").arg(path, reason);
  };
  if (text.size() > kLargestDesign) return unsaved(StoreText::tr("its texts are too long"));
  if (const auto problem = writeFile(path, text)) return unsaved(reasonText(*problem, phrases));
  return std::nullopt;
}

std::optional<QString> writeDesign(const QString& path, const Design& design,
                                   const Phrases& phrases) {
  return writeDesignText(path, designToJson(design), phrases);
}

} // namespace scye
