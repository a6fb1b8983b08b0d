#include "export/page.h"

#include "paint/picture_painter.h"

#include <QCoreApplication>
#include <QPainter>

#include <vector>

namespace scye {
namespace {

constexpr double kFooterMm = 8, kLettersMm = 2.5;
constexpr double kScales[] = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30, 40, 50};
constexpr double kFinely = 1.04, kSmallest = 50; // steps where the scale need not be a whole number

QSizeF boxMm(const Picture& picture, double oneTo) {
  const Vec2 size = picture.box().size();
  return {10 * size.x() / oneTo, 10 * size.y() / oneTo};
}

} // namespace

Page truePage(const PictureMaker& make) {
  Page page{make(kTrueLettersMm / 10), {}, 1, false, false, {kMarginMm, kMarginMm}};
  page.size = boxMm(page.picture, 1) + QSizeF(2 * kMarginMm, 2 * kMarginMm);
  return page;
}

Page fittedPage(const PictureMaker& make, QSizeF size, bool mayTurn, bool toScale) {
  Page page;
  page.footer = true;
  page.scaleTold = toScale;
  std::vector<double> scales(std::begin(kScales), std::end(kScales));
  if (!toScale) {
    scales.clear();
    for (double n = 1; n < kSmallest; n *= kFinely)
      scales.push_back(n);
  }
  for (const double n : scales) {
    page.picture = make(kLettersMm / 10 * n);
    page.oneTo = n;
    const QSizeF box = boxMm(page.picture, n);
    for (const bool turned : {false, true}) {
      if (turned && !mayTurn) break;
      page.size = turned ? size.transposed() : size;
      const QSizeF room = page.size - QSizeF(2 * kMarginMm, 2 * kMarginMm + kFooterMm);
      page.corner = {(page.size.width() - box.width()) / 2,
                     kMarginMm + (room.height() - box.height()) / 2};
      if (box.width() <= room.width() && box.height() <= room.height()) return page;
    }
  }
  page.size = size;
  return page;
}

Page pageFor(const PictureMaker& make, const ExportOptions& options) {
  switch (options.paper) {
  case Paper::A4:
    return fittedPage(make, {210, 297}, true, options.toScale);
  case Paper::Letter:
    return fittedPage(make, {215.9, 279.4}, true, options.toScale);
  case Paper::TrueSize:
    break;
  }
  return truePage(make);
}

void paintPage(QPainter& painter, const Page& page, double unitsPerMm) {
  const PictureColours colours = paperColours();
  const Box box = page.picture.box();
  PictureView view;
  view.scale = 10 * unitsPerMm / page.oneTo;
  view.pen = kPenMm * unitsPerMm;
  if (!box.empty())
    view.origin = {page.corner.x() * unitsPerMm - box.low.x() * view.scale,
                   page.corner.y() * unitsPerMm + box.high.y() * view.scale};
  paintPicture(painter, page.picture, colours, view);
  if (!page.footer) return;
  const double base = (page.size.height() - kMarginMm) * unitsPerMm;
  QFont font = painter.font();
  font.setPixelSize(std::max(1, qRound(kLettersMm * 1.1 * unitsPerMm)));
  painter.setFont(font);
  painter.setPen(colours[Role::Note]);
  painter.drawText(QPointF(kMarginMm * unitsPerMm, base),
                   QString::fromStdString(page.picture.title));
  if (!page.scaleTold) return;
  const QString scale = QCoreApplication::translate("Export", "Scale 1 : %L1").arg(page.oneTo);
  const double right = (page.size.width() - kMarginMm) * unitsPerMm;
  const QFontMetricsF metrics(font, painter.device());
  painter.drawText(QPointF(right - metrics.horizontalAdvance(scale), base), scale);
}

} // namespace scye
