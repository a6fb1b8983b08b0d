#include "export/export.h"

#include "document/disk.h"
#include "export/page.h"
#include "export/svg_writer.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFileInfo>
#include <QImage>
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

Rendered failedWith(const QString& problem) {
  return {{}, problem};
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
bool paintBands(QImage& image, const Page& page, double perMm, const GoOn& goOn) {
  const int bands = std::clamp(int(qint64(image.width()) * image.height() / kBandDots), 1, 16);
  QPainter painter(&image);
  for (int i = 0; i < bands; ++i) {
    if (goOn && !goOn(kPainted * i / bands)) return false;
    const int from = int(qint64(image.height()) * i / bands);
    const int to = int(qint64(image.height()) * (i + 1) / bands);
    painter.save();
    painter.setClipRect(0, from, image.width(), to - from);
    paintPage(painter, page, perMm);
    painter.restore();
  }
  return true;
}

Rendered asPng(const Page& page, const QString& name, const ExportOptions& options) {
  const int perMetre = int(std::lround(options.dpi / kMmPerInch * 1000));
  const double perMm = perMetre / 1000.0;
  const int width = int(std::ceil(page.size.width() * perMm));
  const int height = int(std::ceil(page.size.height() * perMm));
  const qint64 megabytes = qint64(width) * height * 4 / 1000000;
  const QString tooLarge =
      ExportText::tr("A picture of %1 x %2 dots is too large: it would take %3 MB of memory and "
                     "%4 MB are allowed. Choose fewer dots per inch.")
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
  if (!paintBands(image, page, perMm, options.goOn)) return failedWith(givenUp());
  StoppableBuffer buffer(options.goOn);
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "PNG"))
    return failedWith(options.goOn && !options.goOn(kPainted)
                          ? givenUp()
                          : ExportText::tr("%1 could not be written as a PNG.").arg(name));
  return {buffer.data(), {}};
}

Rendered asPdf(const std::vector<Page>& pages, const QString& name, const GoOn& goOn) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter pdf(&buffer);
  pdf.setResolution(kPdfDpi);
  pdf.setTitle(QString::fromStdString(pages.front().picture.title));
  pdf.setCreator(QStringLiteral("Scyewright"));
  QPainter painter;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const Page& page = pages[i];
    if (goOn && !goOn(double(i) / double(pages.size()))) return failedWith(givenUp());
    // The fuzzy match of page sizes would snap to a standard size near by.
    pdf.setPageSize(QPageSize(page.size, QPageSize::Millimeter, {}, QPageSize::ExactMatch));
    pdf.setPageOrientation(QPageLayout::Portrait);
    pdf.setPageMargins({});
    const bool ready = painter.isActive() ? pdf.newPage() : painter.begin(&pdf);
    if (!ready) return failedWith(ExportText::tr("%1 could not be written as a PDF.").arg(name));
    paintPage(painter, page, kPdfDpi / kMmPerInch);
  }
  painter.end();
  return {bytes, {}};
}

} // namespace

QString givenUp() {
  return ExportText::tr("It was given up.");
}

Rendered renderPicture(const PictureMaker& make, const QString& name,
                       const ExportOptions& options) {
  const QString suffix = QFileInfo(name).suffix().toLower();
  if (suffix == QLatin1String("svg")) return {pictureAsSvg(truePage(make).picture), {}};
  if (suffix == QLatin1String("png")) return asPng(pageFor(make, options), name, options);
  if (suffix == QLatin1String("pdf")) return asPdf({pageFor(make, options)}, name, options.goOn);
  return failedWith(ExportText::tr("%1: pictures end in .svg, .png or .pdf.").arg(name));
}

Rendered renderPages(const std::vector<PictureMaker>& pages, const QString& name,
                     const ExportOptions& options) {
  std::vector<Page> set;
  for (const PictureMaker& make : pages) {
    if (options.goOn && !options.goOn(0)) return failedWith(givenUp());
    set.push_back(pageFor(make, options));
  }
  if (set.empty()) return failedWith(ExportText::tr("There is nothing to write."));
  return asPdf(set, name, options.goOn);
}

std::optional<QString> writeRendered(const Rendered& rendered, const QString& path) {
  if (rendered.problem) return rendered.problem;
  const auto problem =
      writeFile(path, {rendered.bytes.constData(), std::size_t(rendered.bytes.size())});
  if (!problem) return std::nullopt;
  return ExportText::tr("%1 could not be written: %2.").arg(path, *problem);
}

std::optional<QString> exportPicture(const PictureMaker& make, const QString& path,
                                     const ExportOptions& options) {
  return writeRendered(renderPicture(make, path, options), path);
}

std::optional<QString> exportPicture(const Picture& picture, const QString& path,
                                     const ExportOptions& options) {
  return exportPicture([&](double) { return picture; }, path, options);
}

std::optional<QString> printPicture(const PictureMaker& make, QPrinter& printer, const GoOn& goOn) {
  return printPages({make}, printer, true, goOn);
}

std::optional<QString> printPages(const std::vector<PictureMaker>& pages, QPrinter& printer,
                                  bool toScale, const GoOn& goOn) {
  if (pages.empty()) return ExportText::tr("There is nothing to write.");
  printer.setFullPage(true);
  const QSizeF size = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
  QPainter painter;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (goOn && !goOn(double(i) / double(pages.size()))) {
      printer.abort();
      return givenUp();
    }
    const bool ready = painter.isActive() ? printer.newPage() : painter.begin(&printer);
    if (!ready) return ExportText::tr("The printer could not be started.");
    paintPage(painter, fittedPage(pages[i], size, false, toScale),
              printer.resolution() / kMmPerInch);
  }
  painter.end();
  return std::nullopt;
}

} // namespace scye
