// The measuring sheet as a file and on paper, at its true size: a centimetre of the sheet is a
// centimetre of the paper.
#pragma once

#include "export/export.h"
#include "schematic/guide_sheet.h"

#include <QString>

#include <optional>

class QPrinter;

namespace scye {

// A4, a page for each page of the sheet; written whole or not at all. What went wrong, as a
// sentence, or nothing.
[[nodiscard]] std::optional<QString> writeSheet(const std::vector<Picture>& pages,
                                                const Phrases& phrases, const QString& path,
                                                const GoOn& goOn = {});
// In the middle of the printer's paper, whatever its size.
[[nodiscard]] std::optional<QString> printSheet(const std::vector<Picture>& pages,
                                                QPrinter& printer, const GoOn& goOn = {});

} // namespace scye
