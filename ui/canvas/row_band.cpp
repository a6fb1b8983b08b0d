#include "canvas/row_band.h"

#include <QPainter>

namespace scye {
namespace {

constexpr double kLeastHeight = 3; // pens: a single row seen from far away

const Group* groupOf(const Picture& picture, PieceId piece) {
  for (const Group& group : picture.groups)
    if (group.piece == piece) return &group;
  return piece == PieceId::LeftSleeve ? groupOf(picture, PieceId::Sleeve) : nullptr;
}

// The piece's face as it is painted.
QPainterPath faceOf(const Group& group, const PictureView& view) {
  for (const Stroke& stroke : group.strokes)
    if (stroke.role == Role::Fabric || stroke.role == Role::Outline)
      return mapped(stroke.path, view);
  return {};
}

void paintPointer(QPainter& painter, double tip, double y, double length) {
  painter.drawPolygon(
      QPolygonF{{tip, y}, {tip + length, y - 0.6 * length}, {tip + length, y + 0.6 * length}});
}

} // namespace

Box rowBand(const KnitPiece& piece, const StitchSize& size, const PieceRows& rows) {
  Box band;
  const RowLine* before = nullptr;
  const auto across = [&](const RowLine& line, Rows row) {
    const double low = size.up(std::max(Rows(0), row - Rows(1))), high = size.up(row);
    band.add(Vec2(line.leftEdge * size.width, low));
    band.add(Vec2(line.rightEdge * size.width, high));
  };
  for (const RowLine& line : piece.rows) {
    if (line.section != rows.section) continue;
    if (line.row >= Rows(rows.first) && line.row <= Rows(rows.last)) {
      across(line, line.row);
      if (before) across(*before, line.row); // with the stitches that are bound off in it
    }
    before = &line;
  }
  return band;
}

void paintRowBand(QPainter& painter, const Picture& picture, const KnitGarment& knit,
                  const PieceRows& rows, const PictureColours& colours, const PictureView& view) {
  const Group* group = groupOf(picture, rows.piece);
  const KnitPiece* piece = group && group->piece ? knit.piece(*group->piece) : nullptr;
  if (!piece) return;
  const Box cm = rowBand(*piece, piece->fabric(knit.lattice.size), rows);
  if (cm.empty()) return;
  QRectF band =
      QRectF(view.map(group->origin + cm.low), view.map(group->origin + cm.high)).normalized();
  const double short_ = kLeastHeight * view.pen - band.height();
  if (short_ > 0) band.adjust(0, -short_ / 2, 0, short_ / 2);

  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  QColor tint = colours[Role::Lit];
  tint.setAlphaF(0.32f);
  QPainterPath stripe;
  stripe.addRect(band);
  const QPainterPath lit = stripe.intersected(faceOf(*group, view));
  painter.fillPath(lit, tint);
  painter.strokePath(lit, QPen(colours[Role::Lit], view.pen));
  const QRectF ends = lit.isEmpty() ? band : lit.boundingRect();
  const double length = 8 * view.pen, y = ends.center().y();
  painter.setPen(Qt::NoPen);
  painter.setBrush(colours[Role::Lit]);
  paintPointer(painter, ends.left() - view.pen, y, -length);
  paintPointer(painter, ends.right() + view.pen, y, length);
  painter.restore();
}

} // namespace scye
