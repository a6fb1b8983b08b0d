#include "io/outputs.h"

#include "directions/row_table_csv.h"
#include "image/png.h"
#include "io/report.h"
#include "model/plain_text.h"
#include "progress/diary.h"
#include "schematic/blocking.h"
#include "schematic/chart.h"
#include "schematic/chart_tiles.h"
#include "schematic/dxf.h"
#include "schematic/schematic.h"
#include "schematic/svg.h"

#include <algorithm>
#include <ctime>

namespace scye {
namespace {

constexpr EnumTable<FileFormat, FileFormat::Json, FormatInfo> kFormats{{
    {FileFormat::Svg, {".svg"}},
    {FileFormat::Png, {".png", true}},
    {FileFormat::Pdf, {".pdf", true}},
    {FileFormat::Dxf, {".dxf"}},
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

std::vector<PictureMaker> templatePages(const OutputJob& job, bool oneEach) {
  const auto drawing = [&derived = job.derived, words = job.wording](PieceId id, double letters) {
    return blockingTemplate(derived.draft, derived.knit, id, letters, words.phrases, words.unit);
  };
  std::vector<PictureMaker> pages;
  if (oneEach) {
    for (const KnitPiece& piece : job.derived.knit.pieces)
      pages.push_back([drawing, id = piece.id](double letters) { return drawing(id, letters); });
    return pages;
  }
  // Beside one another, on one base line.
  return {[drawing, &knit = job.derived.knit](double letters) {
    Picture all;
    double right = 0;
    for (const KnitPiece& piece : knit.pieces) {
      Picture one = drawing(piece.id, letters);
      const Box box = one.box();
      for (Group& g : one.groups) {
        moveGroup(g, Vec2(right - box.low.x(), 0));
        all.groups.push_back(std::move(g));
      }
      right += box.size().x() + 3 * letters;
      all.title = one.title;
      all.textHeight = letters;
    }
    return all;
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
  // At its true size the letters follow the cells, the smaller side of which has room for 2.5 mm.
  const StitchSize& size = knit.lattice.size;
  ChartOptions atLeast;
  if (size.height > 0)
    atLeast.cellWidth = std::max(atLeast.cellWidth, 0.32 * size.width / size.height);
  const auto optionsOf = [atLeast, paper = job.page.paper](double textHeight) {
    ChartOptions options = atLeast;
    if (paper != Paper::TrueSize) options.textHeight = textHeight;
    return options;
  };
  if (!oneEach && !job.piece)
    return {[&knit, &phrases, &title, optionsOf](double textHeight) {
      return titled(title, garmentCharts(knit, phrases, optionsOf(textHeight)), phrases);
    }};
  std::vector<PictureMaker> pages;
  for (const KnitPiece& piece : knit.pieces)
    if (!job.piece || piece.id == *job.piece)
      pages.push_back([&knit, &phrases, &title, &piece, optionsOf](double textHeight) {
        return titled(
            title,
            chartPicture(piece, piece.fabric(knit.lattice.size), phrases, optionsOf(textHeight)),
            phrases);
      });
  return pages;
}

std::vector<PartsMaker> chartPartMakers(const OutputJob& job) {
  const KnitGarment& knit = job.derived.knit;
  std::vector<PartsMaker> makers;
  for (const KnitPiece& piece : knit.pieces)
    if (!job.piece || piece.id == *job.piece)
      makers.push_back(chartPartsOf(piece, piece.fabric(knit.lattice.size), job.wording.phrases));
  return makers;
}

Booklet bookletOf(const OutputJob& job) {
  constexpr int kCoverPixels = 900;
  auto worn = wornPicture(job.derived, shownAlone(kCoverPixels, kCoverPixels));
  return scye::bookletOf(job.derived, job.wording, job.date,
                         worn ? std::make_shared<const Image>(*std::move(worn)) : nullptr);
}

double pointsOf(const OutputJob& job) {
  return job.page.largePrint ? kLargePrintPoints : kBookletPoints;
}

std::string bookletPage(const OutputJob& job, FileFormat) {
  return bookletHtml(bookletOf(job), pointsOf(job), job.wording.phrases);
}

std::vector<Sheet> bookletPages(const OutputJob& job, const Vec2& size) {
  return bookletSheets(bookletOf(job), size, pointsOf(job), job.wording.phrases);
}

std::string directionsAs(const OutputJob& job, FileFormat format) {
  return format == FileFormat::Html ? directionsHtml(job.derived.directions, job.wording)
                                    : directionsText(job.derived.directions, job.wording);
}

std::string rowTable(const OutputJob& job, FileFormat) {
  return rowTableCsv(job.derived.knit);
}

std::string diary(const OutputJob& job, FileFormat) {
  return diaryText(job.derived.draft.design, job.derived.work, job.wording.phrases,
                   job.wording.unit);
}

std::string report(const OutputJob& job, FileFormat) {
  return reportToJson(job.derived, job.wording.phrases);
}

std::optional<Image> worn(const OutputJob& job) {
  return wornPicture(job.derived, job.worn);
}

bool isKnitted(const Derived& derived) {
  return !derived.knit.pieces.empty();
}

bool canBeWorn(const Derived& derived) {
  return wornPattern(derived).has_value();
}

TitleBlock blockOf(const OutputJob& job) {
  const Design& design = job.derived.draft.design;
  TitleBlock block{plainLine(design.title), plainLine(design.wearer), {}, job.date};
  const StitchSize& size = job.derived.knit.lattice.size;
  if (size.width > 0 && size.height > 0)
    block.gauge = job.wording.phrases.say(
        job.wording.unit == LengthUnit::Inch ? "sheet.gaugeIn" : "sheet.gaugeCm",
        {numberParam("stitches", 10 / size.width), numberParam("rows", 10 / size.height),
         numberParam("stitchesIn", 4 * kCmPerInch / size.width),
         numberParam("rowsIn", 4 * kCmPerInch / size.height)});
  return block;
}

std::vector<PartsMaker> partsOf(const OutputInfo& output, const OutputJob& job) {
  return output.parts ? output.parts(job) : std::vector<PartsMaker>{};
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
       .formats = {Svg, Png, Pdf, Dxf},
       .pages = &schematicPage},
      {.id = OutputId::Template,
       .key = "template",
       .formats = {Pdf, Svg, Dxf},
       .pages = &templatePages,
       .tiled = true,
       .has = &isKnitted,
       .none = "template.none"},
      {.id = OutputId::Directions,
       .key = "directions",
       .formats = {Html, Text},
       .text = &directionsAs},
      {.id = OutputId::Booklet,
       .key = "booklet",
       .formats = {Pdf, Html},
       .text = &bookletPage,
       .sheets = &bookletPages,
       .has = &isKnitted,
       .none = "booklet.none"},
      {.id = OutputId::Chart,
       .key = "chart",
       .formats = {Pdf, Svg, Png},
       .pages = &chartPages,
       .parts = &chartPartMakers,
       .pieceByPiece = true,
       .toScale = false},
      {.id = OutputId::RowList, .key = "rows", .formats = {Csv}, .text = &rowTable},
      {.id = OutputId::Diary, .key = "diary", .formats = {Text}, .text = &diary},
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

std::string today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  char text[16];
  return {text, std::strftime(text, sizeof text, "%Y-%m-%d", &local)};
}

std::vector<Sheet> printedSheets(const OutputInfo& output, const OutputJob& job, const Vec2& size) {
  ExportOptions page = job.page;
  page.paper = Paper::A4; // whatever its size
  page.toScale = output.toScale;
  page.block = blockOf(job);
  OutputJob onPaper = job;
  onPaper.page.paper = page.paper;
  if (output.sheets) return output.sheets(onPaper, size);
  return legibleSheets(output.pages(onPaper, true), partsOf(output, onPaper), size, false, page,
                       job.wording.phrases);
}

Paper bookletPaper(Paper paper, LengthUnit unit) {
  if (paper != Paper::TrueSize) return paper;
  return unit == LengthUnit::Inch ? Paper::Letter : Paper::A4;
}

std::vector<Sheet> sheetsOf(const OutputInfo& output, const OutputJob& job, FileFormat format) {
  ExportOptions page = job.page;
  page.toScale = output.toScale;
  page.block = blockOf(job);
  const Phrases& phrases = job.wording.phrases;
  const bool paged = format == FileFormat::Pdf;
  if (output.sheets)
    return output.sheets(job, sheetSize(bookletPaper(page.paper, job.wording.unit)));
  if (output.tiled && !paged) page.paper = Paper::TrueSize;
  const std::vector<PictureMaker> pages = output.pages(job, paged);
  if (output.tiled) return tiledSheets(pages, page, phrases);
  if (paged && page.paper != Paper::TrueSize)
    return legibleSheets(pages, partsOf(output, job), sheetSize(page.paper), true, page, phrases);
  std::vector<Sheet> sheets;
  for (const PictureMaker& make : pages)
    sheets.push_back(sheetFor(make, page, phrases));
  return sheets;
}

bool needsDrawer(const OutputInfo& output, FileFormat format) {
  return info(format).drawn && !output.image;
}

FileBytes makeOutput(const OutputInfo& output, const OutputJob& job, FileFormat format,
                     const Drawer* drawer) {
  if (output.text && !output.sheets) return {output.text(job, format), {}};
  if (output.has && !output.has(job.derived)) return problem(job, output.none);
  if (output.pieceByPiece && job.piece && !job.derived.knit.piece(*job.piece))
    return problem(job, "chart.noPiece",
                   {textParam("piece", job.wording.phrases.say(
                                           "piece." + std::string(pieceKey(*job.piece))))});
  if (output.text && format == FileFormat::Html) return {output.text(job, format), {}};
  if (format == FileFormat::Dxf)
    return {pictureAsDxf(output.pages(job, false).front()(kTrueLettersMm / 10)), {}};
  if (format == FileFormat::Svg) return {sheetAsSvg(sheetsOf(output, job, format).front()), {}};
  if (output.image) {
    const auto image = output.image(job);
    if (!image) return problem(job, output.none);
    std::string png = pngOf(*image);
    return png.empty() ? problem(job, "output.noPng") : FileBytes{std::move(png), {}};
  }
  if (!drawer) return problem(job, "output.notDrawn");
  return drawer->draw(sheetsOf(output, job, format), format, job.page);
}

std::vector<OutputFile> everyOutput(const Derived& derived, bool draws) {
  std::vector<OutputFile> files;
  for (const OutputInfo& output : allOutputs()) {
    if (output.has && !output.has(derived)) continue;
    for (const FileFormat format : output.formats)
      if (draws || !needsDrawer(output, format))
        files.push_back(
            {&output, format, std::string(output.key) + std::string(info(format).ending)});
    if (!output.pieceByPiece) continue;
    for (const KnitPiece& piece : derived.knit.pieces)
      for (const FileFormat format : {FileFormat::Svg, FileFormat::Png})
        if (draws || !needsDrawer(output, format))
          files.push_back({&output, format,
                           std::string(output.key) + "-" + std::string(pieceKey(piece.id)) +
                               std::string(info(format).ending),
                           piece.id});
  }
  return files;
}

FileBytes makeOutput(const OutputInfo& output, const OutputJob& job, std::string_view path,
                     const Drawer* drawer) {
  if (const auto format = formatOf(output, path)) return makeOutput(output, job, *format, drawer);
  return problem(job, "output.ending",
                 {textParam("path", std::string(path)),
                  textParam("endings", job.wording.phrases.rules().commas(endingsOf(output)))});
}

} // namespace scye
