#include "export/export.h"

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
#include <QSaveFile>

#include <cmath>

namespace scye {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr int kPdfDpi = 2540; // 100 dots to a millimetre: nothing is rounded
constexpr int kMostPixels = 30000;

struct ExportText {
  Q_DECLARE_TR_FUNCTIONS(Export)
};

std::optional<QString> writeWhole(const QString& path, const QByteArray& bytes) {
  QSaveFile file(path);
  if (file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit())
    return std::nullopt;
  return ExportText::tr("%1 could not be written: %2.").arg(path, file.errorString());
}

std::optional<QString> writePng(const Page& page, const QString& path, double dpi) {
  const int perMetre = int(std::lround(dpi / kMmPerInch * 1000));
  const double perMm = perMetre / 1000.0;
  const int width = int(std::ceil(page.size.width() * perMm));
  const int height = int(std::ceil(page.size.height() * perMm));
  const auto tooLarge =
      ExportText::tr("A picture of %1 x %2 dots is too large; choose fewer dots per inch.");
  if (perMetre < 1 || width > kMostPixels || height > kMostPixels)
    return tooLarge.arg(width).arg(height);
  QImage image(width, height, QImage::Format_RGB32);
  if (image.isNull()) return tooLarge.arg(width).arg(height);
  image.setDotsPerMeterX(perMetre);
  image.setDotsPerMeterY(perMetre);
  image.fill(Qt::white);
  QPainter painter(&image);
  paintPage(painter, page, perMm);
  painter.end();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "PNG"))
    return ExportText::tr("%1 could not be written as a PNG.").arg(path);
  return writeWhole(path, bytes);
}

std::optional<QString> writePdf(const std::vector<Page>& pages, const QString& path) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter pdf(&buffer);
  pdf.setResolution(kPdfDpi);
  pdf.setTitle(QString::fromStdString(pages.front().picture.title));
  pdf.setCreator(QStringLiteral("Scyewright"));
  QPainter painter;
  for (const Page& page : pages) {
    // The fuzzy match of page sizes would snap to a standard size near by.
    pdf.setPageSize(QPageSize(page.size, QPageSize::Millimeter, {}, QPageSize::ExactMatch));
    pdf.setPageOrientation(QPageLayout::Portrait);
    pdf.setPageMargins({});
    const bool ready = painter.isActive() ? pdf.newPage() : painter.begin(&pdf);
    if (!ready) return ExportText::tr("%1 could not be written as a PDF.").arg(path);
    paintPage(painter, page, kPdfDpi / kMmPerInch);
  }
  painter.end();
  return writeWhole(path, bytes);
}

} // namespace

std::optional<QString> exportPicture(const PictureMaker& make, const QString& path,
                                     const ExportOptions& options) {
  const QString suffix = QFileInfo(path).suffix().toLower();
  if (suffix == QLatin1String("svg")) return writeWhole(path, pictureAsSvg(truePage(make).picture));
  if (suffix == QLatin1String("png")) return writePng(pageFor(make, options), path, options.dpi);
  if (suffix == QLatin1String("pdf")) return writePdf({pageFor(make, options)}, path);
  return ExportText::tr("%1: pictures end in .svg, .png or .pdf.").arg(path);
}

std::optional<QString> exportPicture(const Picture& picture, const QString& path,
                                     const ExportOptions& options) {
  return exportPicture([&](double) { return picture; }, path, options);
}

std::optional<QString> exportPages(const std::vector<PictureMaker>& pages, const QString& path,
                                   const ExportOptions& options) {
  std::vector<Page> set;
  for (const PictureMaker& make : pages)
    set.push_back(pageFor(make, options));
  if (set.empty()) return ExportText::tr("There is nothing to write.");
  return writePdf(set, path);
}

std::optional<QString> printPicture(const PictureMaker& make, QPrinter& printer) {
  return printPages({make}, printer);
}

std::optional<QString> printPages(const std::vector<PictureMaker>& pages, QPrinter& printer,
                                  bool toScale) {
  if (pages.empty()) return ExportText::tr("There is nothing to write.");
  printer.setFullPage(true);
  const QSizeF size = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
  QPainter painter;
  for (const PictureMaker& make : pages) {
    const bool ready = painter.isActive() ? printer.newPage() : painter.begin(&printer);
    if (!ready) return ExportText::tr("The printer could not be started.");
    paintPage(painter, fittedPage(make, size, false, toScale), printer.resolution() / kMmPerInch);
  }
  painter.end();
  return std::nullopt;
}

} // namespace scye
