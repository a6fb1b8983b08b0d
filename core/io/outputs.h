// Everything that can be taken out of the program as a file, in one table: read by the command
// line and its help, by menus, dialogs and their filters. A new output is a line of it and what
// makes it; a new kind of file another format.
#pragma once

#include "booklet/booklet.h"
#include "garment/derived.h"
#include "model/enum_keys.h"
#include "schematic/sheet.h"
#include "worn/worn_picture.h"

#include <filesystem>

namespace scye {

enum class FileFormat : std::uint8_t { Svg, Png, Pdf, Dxf, Text, Html, Csv, Json };

struct FormatInfo {
  std::string_view ending{}; // with its point
  bool drawn = false;        // needs fonts and something to draw with: a Drawer
};
[[nodiscard]] const FormatInfo& info(FileFormat format);

// What is taken out, and how. What is made of it refers to the same `derived` and phrases.
struct OutputJob {
  const Derived& derived;
  Wording wording;                // terms, unit, phrases
  ExportOptions page{};           // of pictures
  WornPictureOptions worn{};      // of the picture worn
  std::string date{};             // in the title block of a sheet; empty: none is told
  std::optional<PieceId> piece{}; // of an output that is made piece by piece: this one alone
};
[[nodiscard]] std::string today(); // ISO 8601, by the local clock

enum class OutputId : std::uint8_t {
  Schematic,
  Template,
  Directions,
  Booklet,
  Chart,
  RowList,
  Diary,
  Worn,
  Report
};

struct OutputInfo {
  OutputId id{};
  std::string_view key{};            // "--<key>"; what it is: phrase "output.<key>.help"
  std::vector<FileFormat> formats{}; // the one that is offered first in front
  // One of these makes it, or `text` the Html and `sheets` the rest: on paper of `size` mm.
  // `oneEach`: each piece on a page of its own, where it has pages.
  std::string (*text)(const OutputJob& job, FileFormat format) = nullptr;
  std::vector<PictureMaker> (*pages)(const OutputJob& job, bool oneEach) = nullptr;
  // Of pages with fine details: each of them in parts, where it would come out too small.
  std::vector<PartsMaker> (*parts)(const OutputJob& job) = nullptr;
  std::vector<Sheet> (*sheets)(const OutputJob& job, const Vec2& size) = nullptr;
  std::optional<Image> (*image)(const OutputJob& job) = nullptr; // needs no Drawer
  bool pieceByPiece = false; // of pages: a file a piece can be made as well
  bool toScale = true;       // of pages: false fills a sheet
  bool tiled = false;        // of pages: at true size over as many sheets as it takes
  bool inMenu = true; // phrases "output.<key>.export"; ".menu", ".name" but for the schematic
  // Whether this garment has it (all have, where there is none); else the phrase `none` says why.
  bool (*has)(const Derived& derived) = nullptr;
  std::string_view none{};
};
// Whether a Drawer has to make it.
[[nodiscard]] bool needsDrawer(const OutputInfo& output, FileFormat format);
[[nodiscard]] const OutputInfo& info(OutputId id);
[[nodiscard]] const std::vector<OutputInfo>& allOutputs();

// The format that the ending of a name asks for, in capitals or not; nothing where this output has
// none such.
[[nodiscard]] std::optional<FileFormat> formatOf(const OutputInfo& output, std::string_view path);
// ".svg", ".png"
[[nodiscard]] std::vector<std::string> endingsOf(const OutputInfo& output);

// One file of everything that can be made of a design.
struct OutputFile {
  const OutputInfo* output = nullptr;
  FileFormat format{};
  std::string name{};             // "schematic.svg", "chart-back.png"
  std::optional<PieceId> piece{}; // of this one alone
};
// `draws`: there is a drawer.
[[nodiscard]] std::vector<OutputFile> everyOutput(const Derived& derived, bool draws);

// A file's bytes, or what went wrong, as a sentence.
struct FileBytes {
  std::string bytes{};
  std::optional<std::string> problem{};
};

// What makes files of pictures: the workbench (ui/export/export.h).
class Drawer {
public:
  virtual ~Drawer() = default;
  // As PNG (the first) or PDF, a page each.
  [[nodiscard]] virtual FileBytes draw(const std::vector<Sheet>& sheets, FileFormat format,
                                       const ExportOptions& options) const = 0;
};

// A booklet has sheets: of no paper in particular it is on what is usual where lengths are told so.
[[nodiscard]] Paper bookletPaper(Paper paper, LengthUnit unit);

// The sheets that it is drawn or printed on.
[[nodiscard]] std::vector<Sheet> sheetsOf(const OutputInfo& output, const OutputJob& job,
                                          FileFormat format);

// Its pages on a printer's pages of `size` mm, upright as they are.
[[nodiscard]] std::vector<Sheet> printedSheets(const OutputInfo& output, const OutputJob& job,
                                               const Vec2& size);

// Without a drawer what has to be drawn is a problem.
[[nodiscard]] FileBytes makeOutput(const OutputInfo& output, const OutputJob& job,
                                   FileFormat format, const Drawer* drawer);
// The same by the ending of the name: what has none of the output's endings is a problem.
[[nodiscard]] FileBytes makeOutput(const OutputInfo& output, const OutputJob& job,
                                   std::string_view path, const Drawer* drawer);

} // namespace scye
