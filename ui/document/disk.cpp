#include "document/disk.h"

#include <QDir>
#include <QFile>

namespace scye {

std::optional<std::filesystem::path> diskPath(const QString& path) {
  const QByteArray name = QFile::encodeName(path);
  // What a name that is no UTF-8 was read as holds this character in place of what is lost.
  if (path.contains(QChar::ReplacementCharacter) || QFile::decodeName(name) != path)
    return std::nullopt;
  return std::filesystem::path(name.toStdString());
}

FileText readPlainFile(const QString& path, std::size_t bytes) {
  const auto name = diskPath(path);
  if (!name) return {{}, kNoName};
  std::error_code error;
  const auto kind = std::filesystem::status(*name, error).type();
  using Type = std::filesystem::file_type;
  if (kind != Type::regular && kind != Type::not_found && kind != Type::none &&
      kind != Type::directory)
    return {{}, kNotPlain};
  return readFirst(*name, bytes);
}

bool makeFolderOf(const QString& path) {
  return QDir().mkpath(QFileInfo(path).absolutePath());
}

std::optional<DiskProblem> writeFile(const QString& path, std::string_view bytes) {
  const auto name = diskPath(path);
  if (!name) return kNoName;
  return writeWhole(*name, bytes, Pipe::Refuse);
}

std::optional<DiskProblem> removeFile(const QString& path) {
  const auto name = diskPath(path);
  if (!name) return kNoName;
  std::error_code error;
  std::filesystem::remove(*name, error);
  if (error) return systemProblem(error.value());
  return std::nullopt;
}

QString reasonText(const DiskProblem& problem, const Phrases& phrases) {
  return QString::fromStdString(problemText(problem, phrases));
}

} // namespace scye
