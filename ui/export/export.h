// What needs fonts of an output (core/io/outputs.h), and pictures on paper. Works without a window:
// a QGuiApplication on the offscreen platform is enough. Sizes are true: 100 mm of the drawing at
// scale 1 : 1 are 100.0 mm in the file.
#pragma once

#include "io/outputs.h"

#include <QImage>
#include <QStringList>

class QPrinter;

namespace scye {

// What is returned as having gone wrong where GoOn gave it up.
[[nodiscard]] QString givenUp();

inline constexpr int kMostPngMegabytes = 1024;

// Draws on any thread. A PNG that would take more memory than kMostPngMegabytes is refused before
// it is begun.
class PageDrawer : public Drawer {
public:
  [[nodiscard]] FileBytes draw(const std::vector<Sheet>& sheets, FileFormat format,
                               const ExportOptions& options) const override;
};

// ".svg", ".png"
[[nodiscard]] QStringList endingsOf(OutputId output);

// By the ending of the name; written whole or not at all. Returns what went wrong, as a sentence,
// or nothing.
[[nodiscard]] std::optional<QString> exportOutput(OutputId output, const OutputJob& job,
                                                  const QString& path);

// The design and everything that can be made of it, in a folder that is there.
[[nodiscard]] std::optional<QString> exportEverything(const OutputJob& job, const QString& folder);

// Makes the sheets for paper of that size, mm.
using SheetsMaker = std::function<std::vector<Sheet>(const Vec2& size)>;
[[nodiscard]] std::optional<QString> printSheets(const SheetsMaker& make, QPrinter& printer,
                                                 const GoOn& goOn = {});
// Each page of an output on the printer's page as it is set, at the largest whole scale that fits
// or, where it is not drawn to scale, as large as it fits; over several pages what would come out
// too small.
[[nodiscard]] std::optional<QString> printOutput(OutputId output, const OutputJob& job,
                                                 QPrinter& printer);

} // namespace scye
