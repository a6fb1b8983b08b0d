#include "knitting/chart_view.h"

#include "canvas/picture_fit.h"
#include "schematic/chart_drawing.h"

#include <QFontInfo>
#include <QPainter>

#include <cmath>

namespace scye {
namespace {

constexpr double kCell = 0.5; // cm of the picture
// Pixels a cell: what can be read at least, and how far the view can go.
constexpr double kReadable = 9, kLeast = 1, kMost = 80;
constexpr double kLegendCell = 13;

} // namespace

ChartView::ChartView(const Phrases& phrases, QWidget* parent) : QWidget(parent), phrases_(phrases) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setCursor(Qt::CrossCursor);
  setAccessibleName(tr("Chart"));
}

QSize ChartView::sizeHint() const {
  const int em = fontMetrics().averageCharWidth();
  return {80 * em, 40 * em};
}
QSize ChartView::minimumSizeHint() const {
  return sizeHint() / 4;
}

double ChartView::letters() const {
  return 0.82 * QFontInfo(font()).pixelSize();
}

Chart ChartView::make(double textHeight) const {
  ChartOptions options;
  options.cellWidth = kCell;
  options.textHeight = textHeight;
  options.lit = lit_;
  Chart chart = pieceChart(piece_, size_, phrases_, options);
  std::erase_if(chart.picture.groups, [](const Group& group) { return group.id == "legend"; });
  return chart;
}

void ChartView::setPiece(const KnitPiece& piece, const StitchSize& size, bool another) {
  piece_ = piece;
  size_ = size;
  if (another) {
    stand_ = Stand::Beginning;
    place(std::nullopt, false);
  }
  redraw();
  layLegend();
  stand();
  if (place_) place(placeOf(place_->row, place_->section), byKey_);
}

void ChartView::setNothing() {
  piece_ = {};
  chart_ = {};
  legend_ = {};
  place(std::nullopt, false);
  update();
}

void ChartView::setLit(std::optional<Span> rows) {
  if (lit_ == rows) return;
  lit_ = rows;
  redraw();
}

void ChartView::redraw() {
  if (!piece_.rows.empty()) chart_ = make(letters() / view_.scale);
  update();
}

void ChartView::stand() {
  switch (stand_) {
  case Stand::Beginning:
    return begin();
  case Stand::Whole:
    return fit();
  case Stand::Chosen:
    return redraw();
  }
}

// In a room that has grown, a chart that is higher than it leaves no part of it empty.
void ChartView::fillRoom() {
  if (piece_.rows.empty()) return;
  const Box box = chart_.picture.box();
  const QRectF space = room();
  const double bottom = view_.map(box.low).y(), top = view_.map(box.high).y();
  if (bottom - top < space.height()) return;
  view_.origin +=
      QPointF(0, std::max(0.0, space.bottom() - bottom) + std::min(0.0, space.top() - top));
}

QRectF ChartView::room() const {
  const double margin = letters();
  const double below =
      legend_.groups.empty() ? 0 : legend_.box().size().y() * legendView_.scale + margin;
  return QRectF(rect()).adjusted(margin, margin, -margin, -margin - below);
}

void ChartView::fit() {
  stand_ = Stand::Whole;
  if (piece_.rows.empty() || room().height() < 1) return;
  const auto picture = [this](double textHeight) { return make(textHeight).picture; };
  view_ = fitPicture(picture, bareSize(picture), letters(), room()).view;
  redraw();
}

void ChartView::begin() {
  fit();
  stand_ = Stand::Beginning;
  if (view_.scale * kCell >= kReadable || piece_.rows.empty()) return;
  view_.scale = kReadable / kCell;
  redraw();
  const Box box = chart_.picture.box();
  const QRectF space = room();
  view_.centre(box, space);
  view_.origin.setY(space.bottom() + box.low.y() * view_.scale);
  // Where it is wider than the room the right edge is seen, where rows begin to be read.
  if (box.size().x() * view_.scale > space.width())
    view_.origin.setX(space.right() - box.high.x() * view_.scale);
  update();
}

void ChartView::zoomBy(double factor, const QPointF& about) {
  const Vec2 at = view_.unmap(about);
  view_.scale = std::clamp(view_.scale * factor, kLeast / kCell, kMost / kCell);
  stand_ = Stand::Chosen;
  redraw();
  view_.origin = {about.x() - at.x() * view_.scale, about.y() + at.y() * view_.scale};
}

QRectF ChartView::rowsRect(int first, int last) const {
  return QRectF(view_.map({0, chart_.rows.at(first - 1)}),
                view_.map({chart_.columns.end(), chart_.rows.at(last)}))
      .normalized();
}

void ChartView::showRow(int row) {
  if (row < 1 || row > chart_.grid.rows) return;
  const QRectF at = rowsRect(row, row), space = room();
  const double up = std::min(0.0, space.bottom() - at.bottom()),
               down = std::max(0.0, space.top() - at.top());
  if (up == 0 && down == 0) return;
  stand_ = Stand::Chosen;
  view_.origin += QPointF(0, up + down);
  update();
}

void ChartView::setLegendShown(bool shown) {
  legendShown_ = shown;
  layLegend();
  stand();
}

void ChartView::layLegend() {
  if (!legendShown_) {
    legend_ = {};
    return;
  }
  SymbolsUsed used{};
  for (const ChartMark& mark : chart_.grid.marks)
    used[std::size_t(mark.symbol)] = true;
  legendView_.scale = kLegendCell / kCell;
  ChartOptions options;
  options.cellWidth = kCell;
  options.textHeight = letters() / legendView_.scale;
  const double wide = (width() - 2 * letters()) / legendView_.scale;
  legend_ = {};
  legend_.groups.push_back(
      chartLegend(used, ChartMetrics::of(size_, options), Vec2(0, 0), wide, phrases_));
  const Box box = legend_.box();
  legendView_.origin = {letters() - box.low.x() * legendView_.scale,
                        height() - 0.7 * letters() + box.low.y() * legendView_.scale};
}

void ChartView::place(std::optional<ChartPlace> place, bool byKey) {
  byKey_ = byKey;
  const bool moved = place.has_value() != place_.has_value() ||
                     (place && (place->row != place_->row || place->section != place_->section ||
                                place->stitch != place_->stitch));
  place_ = std::move(place);
  if (!moved) return;
  update();
  Q_EMIT placeMoved();
}

void ChartView::pointAt(const QPointF& at) {
  if (piece_.rows.empty()) return;
  auto found = chartPlaceAt(chart_, view_.unmap(at));
  if (found || !byKey_) place(std::move(found), false);
}

// A row, not a stitch of it; of that section if it has such a row.
std::optional<ChartPlace> ChartView::placeOf(int row, SectionId section) const {
  const auto lines = chart_.grid.in(row);
  if (lines.empty()) return std::nullopt;
  const ChartLine* line = lines.front();
  for (const ChartLine* l : lines)
    if (l->section == section) line = l;
  const Vec2 at(0.5 * (chart_.columns.at(line->cells.from) + chart_.columns.at(line->cells.to)),
                chart_.rows.middle(row - 1));
  auto found = chartPlaceAt(chart_, at);
  if (found) found->stitch = 0;
  return found;
}

// By keyboard: the next row, a stretch that is left out as one.
void ChartView::step(int rows) {
  const int count = chart_.grid.rows;
  if (count == 0) return;
  int row = 1;
  if (place_) row = std::clamp(rows > 0 ? place_->lastRow + rows : place_->row + rows, 1, count);
  place(placeOf(row, place_ ? place_->section : SectionId::Undivided), true);
  showRow(row);
}

// Of a piece that is divided: the same row on the other side.
void ChartView::otherSide() {
  if (!place_) return;
  for (const ChartLine* l : chart_.grid.in(place_->row))
    if (l->section != place_->section) {
      place(placeOf(place_->row, l->section), true);
      return;
    }
}

void ChartView::paintPlace(QPainter& painter, const PictureColours& colours) const {
  if (!place_ || place_->lastRow > chart_.grid.rows) return;
  QRectF band = rowsRect(place_->row, place_->lastRow);
  for (const ChartLine* l : chart_.grid.in(place_->row))
    if (l->section == place_->section) {
      band.setLeft(view_.map({chart_.columns.at(l->cells.from), 0}).x());
      band.setRight(view_.map({chart_.columns.at(l->cells.to), 0}).x());
    }
  painter.setRenderHint(QPainter::Antialiasing);
  QColor tint = colours[Role::Lit];
  tint.setAlphaF(0.25f);
  painter.fillRect(band, tint);
  painter.setPen(QPen(colours[Role::Lit], 1.6));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(band);
}

void ChartView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const PictureColours colours = screenColours(palette());
  painter.fillRect(rect(), colours.ground);
  painter.setFont(font());
  if (piece_.rows.empty()) {
    painter.setPen(colours[Role::Note]);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                     QString::fromStdString(phrases_.say("page.nothing")));
    return;
  }
  paintPicture(painter, chart_.picture, colours, view_);
  paintPlace(painter, colours);
  const double top = room().bottom() + 0.5 * letters();
  painter.fillRect(QRectF(0, top, width(), height() - top), colours.ground);
  painter.setPen(mixed(colours.ground, colours[Role::Outline], 0.18));
  painter.drawLine(QPointF(0, top), QPointF(width(), top));
  paintPicture(painter, legend_, colours, legendView_);
  if (!ringed_) return;
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.setPen(QPen(colours[Role::Lit], 1));
  painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

} // namespace scye
