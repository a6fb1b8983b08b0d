#include "io/outputs.h"

#include "directions/row_table_csv.h"
#include "io/report.h"
#include "model/plain_text.h"
#include "schematic/chart.h"
#include "schematic/schematic.h"
#include "schematic/svg.h"

#include <algorithm>

namespace scye {
namespace {

constexpr EnumTable<FileFormat, FileFormat::Json, FormatInfo> kFormats{{
    {FileFormat::Svg, {".svg"}},
    {FileFormat::Png, {".png", true}},
    {FileFormat::Pdf, {".pdf", true}},
    {FileFormat::Text, {".txt"}},
    {FileFormat::Html, {".html"}},
    {FileFormat::Csv, {".csv"}},
    {FileFormat::Json, {".json"}},
}};

std::vector<PictureMaker> schematicPage(const OutputJob& job, bool) {
  return {[&derived = job.derived, words = job.wording](double textHeight) {
    SchematicOptions options;
    options.unit = words.unit;
    options.textHeight = textHeight;
    options.curves = &derived.knit;
    return pieceSchematic(derived.draft, words.phrases, options);
  }};
}

// The design's title stands before what it is a picture of.
Picture titled(const std::string& title, Picture picture, const Phrases& phrases) {
  if (!title.empty())
    picture.title = phrases.say("chart.titled", {textParam("design", plainLine(title)),
                                                 textParam("picture", picture.title)});
  return picture;
}

std::vector<PictureMaker> chartPages(const OutputJob& job, bool oneEach) {
  const KnitGarment& knit = job.derived.knit;
  const Phrases& phrases = job.wording.phrases;
  const std::string& title = job.derived.draft.design.title;
  if (!oneEach)
    return {[all = titled(title, garmentCharts(knit, phrases), phrases)](double) { return all; }};
  std::vector<PictureMaker> pages;
  for (const KnitPiece& piece : knit.pieces)
    pages.push_back([&knit, &phrases, &title, &piece](double textHeight) {
      ChartOptions options;
      options.textHeight = textHeight;
      return titled(title, chartPicture(piece, knit.lattice.size, phrases, options), phrases);
    });
  return pages;
}

std::string directionsAs(const OutputJob& job, FileFormat format) {
  return format == FileFormat::Html ? directionsHtml(job.derived.directions, job.wording)
                                    : directionsText(job.derived.directions, job.wording);
}

std::string rowTable(const OutputJob& job, FileFormat) {
  return rowTableCsv(job.derived.knit);
}

std::string report(const OutputJob& job, FileFormat) {
  return reportToJson(job.derived, job.wording.phrases);
}

std::optional<Image> worn(const OutputJob& job) {
  return wornPicture(job.derived, job.worn);
}

bool canBeWorn(const Derived& derived) {
  return wornPattern(derived).has_value();
}

FileBytes problem(const OutputJob& job, std::string_view phrase, const Params& params = {}) {
  return {{}, job.wording.phrases.say(phrase, params)};
}

} // namespace

const FormatInfo& info(FileFormat format) {
  return kFormats[format];
}

const std::vector<OutputInfo>& allOutputs() {
  using enum FileFormat;
  static const std::vector<OutputInfo> all{
      {.id = OutputId::Schematic,
       .key = "schematic",
       .formats = {Svg, Png, Pdf},
       .pages = &schematicPage},
      {.id = OutputId::Directions,
       .key = "directions",
       .formats = {Html, Text},
       .text = &directionsAs},
      {.id = OutputId::Chart,
       .key = "chart",
       .formats = {Pdf, Svg, Png},
       .pages = &chartPages,
       .toScale = false},
      {.id = OutputId::RowList, .key = "rows", .formats = {Csv}, .text = &rowTable},
      {.id = OutputId::Worn,
       .key = "worn",
       .formats = {Png},
       .image = &worn,
       .inMenu = false, // it is taken from its page, as it is seen there
       .has = &canBeWorn,
       .none = "worn.none"},
      {.id = OutputId::Report,
       .key = "report",
       .formats = {Json},
       .text = &report,
       .inMenu = false},
  };
  return all;
}

const OutputInfo& info(OutputId id) {
  const auto& all = allOutputs();
  return *std::find_if(all.begin(), all.end(), [&](const OutputInfo& o) { return o.id == id; });
}

std::optional<FileFormat> formatOf(const OutputInfo& output, std::string_view path) {
  std::string name(path);
  std::transform(name.begin(), name.end(), name.begin(),
                 [](unsigned char c) { return char(c >= 'A' && c <= 'Z' ? c + 32 : c); });
  for (const FileFormat format : output.formats)
    if (name.size() > info(format).ending.size() && name.ends_with(info(format).ending))
      return format;
  return std::nullopt;
}

std::vector<std::string> endingsOf(const OutputInfo& output) {
  std::vector<std::string> endings;
  for (const FileFormat format : output.formats)
    endings.emplace_back(info(format).ending);
  return endings;
}

FileBytes makeOutput(const OutputInfo& output, const OutputJob& job, FileFormat format,
                     const Drawer* drawer) {
  if (output.text) return {output.text(job, format), {}};
  if (format == FileFormat::Svg)
    return {pictureAsSvg(output.pages(job, false).front()(kTrueLettersMm / 10)), {}};
  if (!drawer) return problem(job, "output.notDrawn");
  if (output.image) {
    const auto image = output.image(job);
    return image ? drawer->encode(*image) : problem(job, output.none);
  }
  ExportOptions page = job.page;
  page.toScale = output.toScale;
  return drawer->draw(output.pages(job, format == FileFormat::Pdf), format, page);
}

FileBytes makeOutput(const OutputInfo& output, const OutputJob& job, std::string_view path,
                     const Drawer* drawer) {
  if (const auto format = formatOf(output, path)) return makeOutput(output, job, *format, drawer);
  return problem(job, "output.ending",
                 {textParam("path", std::string(path)),
                  textParam("endings", job.wording.phrases.rules().commas(endingsOf(output)))});
}

} // namespace scye
