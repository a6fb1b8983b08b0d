#include "guide/guide_sheet_file.h"

#include "document/disk.h"
#include "paint/picture_painter.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>

namespace scye {
namespace {

struct SheetText {
  Q_DECLARE_TR_FUNCTIONS(GuideSheet)
};

constexpr double kPenCm = 0.025;

// `paper`: the whole page, in dots.
// Whether it was done, and not given up.
bool paintSheet(QPainter& painter, QPagedPaintDevice& device, const std::vector<Picture>& pages,
                const QSizeF& paper, double dotsPerCm, const GoOn& goOn) {
  PictureView view;
  view.scale = dotsPerCm;
  view.pen = kPenCm * dotsPerCm;
  view.origin = {0.5 * (paper.width() - kSheetWidth * dotsPerCm),
                 0.5 * (paper.height() + kSheetHeight * dotsPerCm)};
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (goOn && !goOn(double(i) / double(pages.size()))) return false;
    if (i > 0) device.newPage();
    paintPicture(painter, pages[i], paperColours(), view);
  }
  return true;
}

} // namespace

std::optional<QString> writeSheet(const std::vector<Picture>& pages, const Phrases& phrases,
                                  const QString& path, const GoOn& goOn) {
  QBuffer bytes;
  bytes.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&bytes);
    constexpr int kDpi = 1200;
    writer.setResolution(kDpi);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageMargins({});
    writer.setTitle(SheetText::tr("Measuring sheet"));
    writer.setCreator(QStringLiteral("Scyewright"));
    QPainter painter(&writer);
    const double dotsPerCm = kDpi / 2.54;
    if (!paintSheet(painter, writer, pages, QSizeF(kSheetWidth, kSheetHeight) * dotsPerCm,
                    dotsPerCm, goOn))
      return givenUp();
  }
  const auto problem =
      writeFile(path, {bytes.data().constData(), std::size_t(bytes.data().size())});
  if (!problem) return std::nullopt;
  return SheetText::tr("%1 could not be saved: %2").arg(path, reasonText(*problem, phrases));
}

std::optional<QString> printSheet(const std::vector<Picture>& pages, QPrinter& printer,
                                  const GoOn& goOn) {
  printer.setFullPage(true);
  QPainter painter;
  if (!painter.begin(&printer)) return SheetText::tr("The printer cannot be reached.");
  if (paintSheet(painter, printer, pages, printer.paperRect(QPrinter::DevicePixel).size(),
                 printer.resolution() / 2.54, goOn))
    return std::nullopt;
  printer.abort();
  return givenUp();
}

} // namespace scye
