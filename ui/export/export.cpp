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

#include <cmath>

namespace scye {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr int kPdfDpi = 2540; // 100 dots to a millimetre: nothing is rounded
constexpr int kMostPixels = 30000;

struct ExportText {
  Q_DECLARE_TR_FUNCTIONS(Export)
};

Rendered failedWith(const QString& problem) {
  return {{}, problem};
}

Rendered asPng(const Page& page, const QString& name, double dpi) {
  const int perMetre = int(std::lround(dpi / kMmPerInch * 1000));
  const double perMm = perMetre / 1000.0;
  const int width = int(std::ceil(page.size.width() * perMm));
  const int height = int(std::ceil(page.size.height() * perMm));
  const auto tooLarge =
      ExportText::tr("A picture of %1 x %2 dots is too large; choose fewer dots per inch.");
  if (perMetre < 1 || width > kMostPixels || height > kMostPixels)
    return failedWith(tooLarge.arg(width).arg(height));
  QImage image(width, height, QImage::Format_RGB32);
  if (image.isNull()) return failedWith(tooLarge.arg(width).arg(height));
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
    return failedWith(ExportText::tr("%1 could not be written as a PNG.").arg(name));
  return {bytes, {}};
}

Rendered asPdf(const std::vector<Page>& pages, const QString& name) {
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
    if (!ready) return failedWith(ExportText::tr("%1 could not be written as a PDF.").arg(name));
    paintPage(painter, page, kPdfDpi / kMmPerInch);
  }
  painter.end();
  return {bytes, {}};
}

} // namespace

Rendered renderPicture(const PictureMaker& make, const QString& name,
                       const ExportOptions& options) {
  const QString suffix = QFileInfo(name).suffix().toLower();
  if (suffix == QLatin1String("svg")) return {pictureAsSvg(truePage(make).picture), {}};
  if (suffix == QLatin1String("png")) return asPng(pageFor(make, options), name, options.dpi);
  if (suffix == QLatin1String("pdf")) return asPdf({pageFor(make, options)}, name);
  return failedWith(ExportText::tr("%1: pictures end in .svg, .png or .pdf.").arg(name));
}

Rendered renderPages(const std::vector<PictureMaker>& pages, const QString& name,
                     const ExportOptions& options) {
  std::vector<Page> set;
  for (const PictureMaker& make : pages)
    set.push_back(pageFor(make, options));
  if (set.empty()) return failedWith(ExportText::tr("There is nothing to write."));
  return asPdf(set, name);
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
