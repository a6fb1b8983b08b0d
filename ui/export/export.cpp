#include "export/export.h"

#include "document/disk.h"
#include "export/sheet_painter.h"
#include "io/design_file.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr int kPdfDpi = 2540; // 100 dots to a millimetre: nothing is rounded
constexpr int kMostPixels = 30000;
constexpr qint64 kBandDots = 2'000'000;
constexpr double kPainted = 0.5; // of making a PNG, the rest being its compression

struct ExportText {
  Q_DECLARE_TR_FUNCTIONS(Export)
};

FileBytes failedWith(const QString& problem) {
  return {{}, problem.toStdString()};
}

FileBytes bytesOf(const QByteArray& bytes) {
  return {bytes.toStdString(), {}};
}

// Takes bytes in until it is not to go on: then whoever writes them stops.
class StoppableBuffer : public QBuffer {
public:
  explicit StoppableBuffer(const GoOn& goOn) : goOn_(goOn) {}

protected:
  qint64 writeData(const char* data, qint64 length) override {
    return goOn_ && !goOn_(kPainted) ? -1 : QBuffer::writeData(data, length);
  }

private:
  const GoOn& goOn_;
};

// In bands, so that it can be given up between them.
bool paintBands(QImage& image, const Sheet& sheet, double perMm, const GoOn& goOn) {
  const int bands = std::clamp(int(qint64(image.width()) * image.height() / kBandDots), 1, 16);
  QPainter painter(&image);
  for (int i = 0; i < bands; ++i) {
    if (goOn && !goOn(kPainted * i / bands)) return false;
    const int from = int(qint64(image.height()) * i / bands);
    const int to = int(qint64(image.height()) * (i + 1) / bands);
    painter.save();
    painter.setClipRect(0, from, image.width(), to - from);
    paintSheet(painter, sheet, perMm);
    painter.restore();
  }
  return true;
}

FileBytes asPng(const Sheet& sheet, const ExportOptions& options) {
  const int perMetre = int(std::lround(options.dpi / kMmPerInch * 1000));
  const double perMm = perMetre / 1000.0;
  const int width = int(std::ceil(sheet.size.x() * perMm));
  const int height = int(std::ceil(sheet.size.y() * perMm));
  const qint64 megabytes = qint64(width) * height * 4 / 1000000;
  const QString tooLarge =
      ExportText::tr("A picture of %L1 x %L2 dots is too large: it would take %L3 MB of memory and "
                     "%L4 MB are allowed. Choose fewer dots per inch.")
          .arg(width)
          .arg(height)
          .arg(megabytes)
          .arg(kMostPngMegabytes);
  if (perMetre < 1 || width > kMostPixels || height > kMostPixels || megabytes > kMostPngMegabytes)
    return failedWith(tooLarge);
  QImage image(width, height, QImage::Format_RGB32);
  if (image.isNull()) return failedWith(tooLarge);
  image.setDotsPerMeterX(perMetre);
  image.setDotsPerMeterY(perMetre);
  image.fill(Qt::white);
  if (!paintBands(image, sheet, perMm, options.goOn)) return failedWith(givenUp());
  StoppableBuffer buffer(options.goOn);
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "PNG"))
    return failedWith(options.goOn && !options.goOn(kPainted)
                          ? givenUp()
                          : ExportText::tr("No PNG could be made of it."));
  return bytesOf(buffer.data());
}

FileBytes asPdf(const std::vector<Sheet>& sheets, const GoOn& goOn) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter pdf(&buffer);
  pdf.setResolution(kPdfDpi);
  pdf.setTitle(QString::fromStdString(sheets.front().picture.title));
  pdf.setCreator(QStringLiteral("Scyewright"));
  QPainter painter;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const Sheet& sheet = sheets[i];
    if (goOn && !goOn(double(i) / double(sheets.size()))) return failedWith(givenUp());
    // The fuzzy match of page sizes would snap to a standard size near by.
    pdf.setPageSize(QPageSize(QSizeF(sheet.size.x(), sheet.size.y()), QPageSize::Millimeter, {},
                              QPageSize::ExactMatch));
    pdf.setPageOrientation(QPageLayout::Portrait);
    pdf.setPageMargins({});
    const bool ready = painter.isActive() ? pdf.newPage() : painter.begin(&pdf);
    if (!ready) return failedWith(ExportText::tr("No PDF could be made of it."));
    paintSheet(painter, sheet, kPdfDpi / kMmPerInch);
  }
  painter.end();
  return bytesOf(bytes);
}

} // namespace

QString givenUp() {
  return ExportText::tr("It was given up.");
}

FileBytes PageDrawer::draw(const std::vector<Sheet>& sheets, FileFormat format,
                           const ExportOptions& options) const {
  if (sheets.empty()) return failedWith(ExportText::tr("There is nothing to write."));
  if (format == FileFormat::Png) return asPng(sheets.front(), options);
  return asPdf(sheets, options.goOn);
}

QStringList endingsOf(OutputId output) {
  QStringList endings;
  for (const std::string& ending : endingsOf(info(output)))
    endings.append(QString::fromStdString(ending));
  return endings;
}

namespace {

std::optional<QString> written(const FileBytes& made, const QString& path, const Phrases& phrases) {
  if (made.problem) return QString::fromStdString(*made.problem);
  const auto problem = writeFile(path, made.bytes);
  if (!problem) return std::nullopt;
  return ExportText::tr("%1 could not be written: %2.").arg(path, reasonText(*problem, phrases));
}

} // namespace

std::optional<QString> exportOutput(OutputId output, const OutputJob& job, const QString& path) {
  const PageDrawer drawer;
  return written(makeOutput(info(output), job, path.toStdString(), &drawer), path,
                 job.wording.phrases);
}

std::optional<QString> exportEverything(const OutputJob& job, const QString& folder) {
  const PageDrawer drawer;
  const auto at = [&](const std::string& name) {
    return folder + u'/' + QString::fromStdString(name);
  };
  if (auto problem = written({designToJson(job.derived.draft.design, job.derived.work), {}},
                             at("design.scye"), job.wording.phrases))
    return problem;
  const std::vector<OutputFile> files = everyOutput(job.derived, true);
  for (const OutputFile& file : files) {
    const double before = double(&file - files.data()), all = double(files.size());
    OutputJob one = job;
    one.piece = file.piece;
    if (job.page.goOn)
      one.page.goOn = [&](double share) { return job.page.goOn((before + share) / all); };
    if (one.page.goOn && !one.page.goOn(0)) return givenUp();
    if (auto problem = written(makeOutput(*file.output, one, file.format, &drawer), at(file.name),
                               job.wording.phrases))
      return problem;
  }
  return std::nullopt;
}

std::optional<QString> printSheets(const SheetsMaker& make, QPrinter& printer, const GoOn& goOn) {
  printer.setFullPage(true);
  const QSizeF paper = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
  const std::vector<Sheet> sheets = make({paper.width(), paper.height()});
  if (sheets.empty()) return ExportText::tr("There is nothing to write.");
  QPainter painter;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    if (goOn && !goOn(double(i) / double(sheets.size()))) {
      printer.abort();
      return givenUp();
    }
    const bool across = sheets[i].size.x() > sheets[i].size.y();
    printer.setPageOrientation(across ? QPageLayout::Landscape : QPageLayout::Portrait);
    const bool ready = painter.isActive() ? printer.newPage() : painter.begin(&printer);
    if (!ready) return ExportText::tr("The printer could not be started.");
    paintSheet(painter, sheets[i], printer.resolution() / kMmPerInch);
  }
  painter.end();
  return std::nullopt;
}

std::optional<QString> printOutput(OutputId output, const OutputJob& job, QPrinter& printer) {
  return printSheets([&](const Vec2& size) { return printedSheets(info(output), job, size); },
                     printer, job.page.goOn);
}

} // namespace scye
