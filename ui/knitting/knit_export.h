// What is knitted from as files and on paper: directions (.txt, .html), the chart of every piece
// (.svg, .png; a page a piece as .pdf), the row table (.csv). Works without a window.
#pragma once

#include "directions/directions.h"
#include "export/export.h"

namespace scye {

// Each by the ending of the name; written whole or not at all. Returns what went wrong, as a
// sentence, or nothing.
[[nodiscard]] std::optional<QString> exportDirections(const Directions& directions,
                                                      const Wording& wording, const QString& path);
// `title`: of the design; it stands before the piece's name at the foot of a page.
[[nodiscard]] std::optional<QString> exportChart(const Phrases& phrases, const KnitGarment& knit,
                                                 const std::string& title, const QString& path,
                                                 const ExportOptions& options);
[[nodiscard]] Rendered renderChart(const Phrases& phrases, const KnitGarment& knit,
                                   const std::string& title, const QString& name,
                                   ExportOptions options);
[[nodiscard]] std::optional<QString> exportRows(const KnitGarment& knit, const QString& path);

// A piece begins a page.
[[nodiscard]] std::optional<QString> printDirections(const Directions& directions,
                                                     const Wording& wording, QPrinter& printer,
                                                     const GoOn& goOn = {});
[[nodiscard]] std::optional<QString> printChart(const Phrases& phrases, const KnitGarment& knit,
                                                const std::string& title, QPrinter& printer,
                                                const GoOn& goOn = {});

} // namespace scye
