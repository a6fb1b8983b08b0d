// A picture as a file, by the ending of the name.
#pragma once

#include "document/disk.h"
#include "export/export.h"
#include "schematic/svg.h"

namespace scye::test {

// What went wrong, as a sentence, or nothing.
inline std::optional<QString> exportPicture(const PictureMaker& make, const QString& path,
                                            const ExportOptions& options = {}) {
  const auto format = formatOf(info(OutputId::Schematic), path.toStdString());
  if (!format) return QStringLiteral("no such format");
  const FileBytes made =
      *format == FileFormat::Svg
          ? FileBytes{pictureAsSvg(make(kTrueLettersMm / 10)), {}}
          : PageDrawer().draw({sheetFor(make, options, builtinPhrases())}, *format, options);
  if (made.problem) return QString::fromStdString(*made.problem);
  if (const auto problem = writeFile(path, made.bytes))
    return reasonText(*problem, builtinPhrases());
  return std::nullopt;
}
inline std::optional<QString> exportPicture(const Picture& picture, const QString& path,
                                            const ExportOptions& options = {}) {
  return exportPicture([&](double) { return picture; }, path, options);
}

} // namespace scye::test
