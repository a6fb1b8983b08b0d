#include "document/disk.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>

namespace scye {
namespace {

struct DiskText {
  Q_DECLARE_TR_FUNCTIONS(Disk)
};

QString noName() {
  return DiskText::tr("its name cannot be written on this disk");
}

} // namespace

std::optional<std::filesystem::path> diskPath(const QString& path) {
  const QByteArray name = QFile::encodeName(path);
  // What a name that is no UTF-8 was read as holds this character in place of what is lost.
  if (path.contains(QChar::ReplacementCharacter) || QFile::decodeName(name) != path)
    return std::nullopt;
  return std::filesystem::path(name.toStdString());
}

FileText readPlainFile(const QString& path, std::size_t bytes) {
  const auto name = diskPath(path);
  if (!name) return {{}, noName().toStdString()};
  std::error_code error;
  const auto kind = std::filesystem::status(*name, error).type();
  using Type = std::filesystem::file_type;
  if (kind != Type::regular && kind != Type::not_found && kind != Type::none &&
      kind != Type::directory)
    return {{}, DiskText::tr("it is a device or a pipe").toStdString()};
  return readFirst(*name, bytes);
}

bool makeFolderOf(const QString& path) {
  return QDir().mkpath(QFileInfo(path).absolutePath());
}

std::optional<QString> writeFile(const QString& path, std::string_view bytes) {
  const auto name = diskPath(path);
  if (!name) return noName();
  const auto problem = writeWhole(*name, bytes, Pipe::Refuse);
  if (!problem) return std::nullopt;
  return QString::fromStdString(*problem);
}

} // namespace scye
