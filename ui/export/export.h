// Pictures as files and on paper. Works without a window: a QGuiApplication on the offscreen
// platform is enough. Sizes are true: 100 mm of the drawing at scale 1 : 1 are 100.0 mm in the
// file.
#pragma once

#include "schematic/picture.h"

#include <QByteArray>
#include <QString>

#include <functional>
#include <optional>
#include <vector>

class QPrinter;

namespace scye {

enum class Paper : int {
  TrueSize, // a page as large as the drawing
  A4,       // scaled down to 1 : n, n a whole number; the scale is printed
  Letter,
};

// Asked while something is being made, with the share that is done; false: it is given up. Empty:
// it is made to its end.
using GoOn = std::function<bool(double share)>;
[[nodiscard]] QString givenUp(); // what is then returned as having gone wrong

struct ExportOptions {
  Paper paper = Paper::TrueSize; // PDF and PNG; an SVG is always of true size
  double dpi = 100;              // PNG; rounded to whole dots in a metre
  bool toScale = true;           // false: a sheet is filled, and no scale is told
  GoOn goOn{};
};

inline constexpr int kMostPngMegabytes = 1024;

// A picture whose letters are to be `textHeight` (cm of the drawing) high; asked for once the scale
// on the paper is known, so that letters are readable there.
using PictureMaker = std::function<Picture(double textHeight)>;

// A file's bytes before they are written, or what went wrong, as a sentence.
struct Rendered {
  QByteArray bytes;
  std::optional<QString> problem;
};
// By the ending of the name: .svg, .png, .pdf. On any thread. A PNG that would take more memory
// than kMostPngMegabytes is refused before it is begun.
[[nodiscard]] Rendered renderPicture(const PictureMaker& make, const QString& name,
                                     const ExportOptions& options = {});
// A PDF, each picture on a page of its own.
[[nodiscard]] Rendered renderPages(const std::vector<PictureMaker>& pages, const QString& name,
                                   const ExportOptions& options = {});
// Writes them whole or not at all. Returns what went wrong, as a sentence, or nothing.
[[nodiscard]] std::optional<QString> writeRendered(const Rendered& rendered, const QString& path);

// Rendered and written.
[[nodiscard]] std::optional<QString> exportPicture(const PictureMaker& make, const QString& path,
                                                   const ExportOptions& options = {});
[[nodiscard]] std::optional<QString> exportPicture(const Picture& picture, const QString& path,
                                                   const ExportOptions& options = {});

// On the printer's page as it is set, at the largest whole scale that fits.
[[nodiscard]] std::optional<QString> printPicture(const PictureMaker& make, QPrinter& printer,
                                                  const GoOn& goOn = {});
[[nodiscard]] std::optional<QString> printPages(const std::vector<PictureMaker>& pages,
                                                QPrinter& printer, bool toScale = true,
                                                const GoOn& goOn = {});

} // namespace scye
