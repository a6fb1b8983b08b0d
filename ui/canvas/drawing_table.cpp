#include "canvas/drawing_table.h"

#include "canvas/row_band.h"
#include "model/plain_text.h"
#include "model/units.h"
#include "model/wearer.h"
#include "schematic/schematic.h"

#include <QEvent>
#include <QFontInfo>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <utility>

namespace scye {
namespace {

constexpr double kLeastZoom = 0.5, kMostZoom = 200; // pixels to a cm

// A little smaller than the desktop's letters: there are many figures, and the pieces matter more.
// Never smaller than can be read.
constexpr double kLetters = 0.82, kSmallLetters = 0.7, kLeastLetters = 9;
// The higher letters are (cm of the drawing), the fewer dimensions: first the lesser go, then all
// but those a garment is told by; from so far away that these would hide the pieces, all.
constexpr double kAllTextHeight = 2.6, kShapeTextHeight = 3.4, kMostTextHeight = 7;

constexpr int kShape = 2;            // figures that tell a piece's shape, not only a garment's size
constexpr double kMoreFigures = 0.9; // a scale so much smaller is taken for them

int detailAt(double textHeight) {
  return textHeight <= kAllTextHeight ? 3 : textHeight <= kShapeTextHeight ? kShape : 1;
}

// What is drawn of the work. Of two sleeves on one outline the one that is being knitted.
std::vector<WorkedPart> workedParts(const GarmentDraft& draft, const Work& work) {
  std::vector<WorkedPart> parts;
  for (const PieceWork& p : work.pieces) {
    if (!p.begun()) continue;
    const bool other = p.piece == PieceId::LeftSleeve && !draft.piece(p.piece);
    const PieceWork* right = work.find(PieceId::Sleeve);
    const PieceWork* left = work.find(PieceId::LeftSleeve);
    if (other && right && right->begun() && (!right->finished() || p.finished())) continue;
    if (p.piece == PieceId::Sleeve && p.finished() && left && left->begun() && !left->finished() &&
        !draft.piece(PieceId::LeftSleeve))
      continue;
    parts.push_back({other ? PieceId::Sleeve : p.piece, &p.plan, p.worked, other});
  }
  return parts;
}

} // namespace

DrawingTable::DrawingTable(Document& document, Attention& attention, Settings& settings,
                           QWidget* parent)
    : QWidget(parent), document_(document), attention_(attention), settings_(settings),
      handles_(new HandleHand(document, attention, settings, this)) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setCursor(Qt::OpenHandCursor);
  setAccessibleName(tr("Drawing table"));
  connect(&document_, &Document::changed, this, &DrawingTable::onChanged);
  connect(&attention_, &Attention::changed, this, [this] {
    previewDraft_.reset();
    redraw();
  });
  connect(handles_, &HandleHand::changed, this, [this] {
    setToolTip(handles_->tip());
    describe();
    update();
  });
  connect(&attention_, &Attention::rowsChanged, this, qOverload<>(&QWidget::update));
  connect(&settings_, &Settings::changed, this, &DrawingTable::redraw);
}

QSize DrawingTable::sizeHint() const {
  const int em = fontMetrics().averageCharWidth();
  return {80 * em, 60 * em};
}
QSize DrawingTable::minimumSizeHint() const {
  return sizeHint() / 3;
}

void DrawingTable::onChanged(const Document::Event& event) {
  if (event.replaced) {
    previewDraft_.reset();
    draftOthers();
    fit();
  } else if (event.work && !event.derived) {
    redraw();
  } else if (event.derived) {
    redraw();
    if (fitted_ && !waits_ && !fitsWell()) fit();
  }
}

const GarmentDraft* DrawingTable::ghost() {
  if (attention_.preview()) {
    if (!previewDraft_) previewDraft_ = draftGarment(*attention_.preview());
    return &*previewDraft_;
  }
  return document_.draftBefore();
}

Picture DrawingTable::make(double textHeight, int perRow, bool figures) const {
  SchematicOptions options;
  options.unit = settings_.unit();
  options.textHeight = textHeight;
  options.dimensions = figures && textHeight <= kMostTextHeight;
  options.detail = detailAt(textHeight);
  options.leaveOut = true;
  options.perRow = perRow;
  options.lit = attention_.lit();
  auto* self = const_cast<DrawingTable*>(this);
  if (const GarmentDraft* other = self->ghost()) options.behind.push_back({other, {}});
  for (const GarmentDraft& other : others_)
    options.behind.push_back({&other, plainLine(other.design.wearer)});
  const Derived& derived = self->document_.derived();
  options.curves = &derived.knit;
  if (settings_.stitchesShown()) options.knitted = &derived.knit;
  options.worked = workedParts(derived.draft, document_.work());
  return pieceSchematic(derived.draft, settings_.phrases(), options);
}

void DrawingTable::draftOthers() {
  others_.clear();
  for (const Design& wearer : attention_.others())
    others_.push_back(draftGarment(forWearer(document_.draft().design, wearer)));
}

void DrawingTable::redraw() {
  draftOthers();
  if (waits_) return;
  picture_ = make(letters_ / view_.scale, perRow_);
  pictureChanged();
  update();
}

void DrawingTable::pictureChanged() {
  hot_.reset();
  handles_->setPicture(picture_);
  describe();
  Q_EMIT redrawn();
}

// As large as the pieces go alone, but not so large that their figures would come back.
FittedPicture DrawingTable::fitWithoutFigures(int perRow, double letters,
                                              const QRectF& room) const {
  const auto pieces = [&](double textHeight) { return make(textHeight, perRow, false); };
  FittedPicture fitted = fitPicture(pieces, bareSize(pieces), letters, room);
  const double most = 0.999 * letters / kMostTextHeight;
  if (fitted.view.scale <= most) return fitted;
  fitted.view.scale = most;
  fitted.picture = pieces(letters / most);
  fitted.view.centre(fitted.picture.box(), room);
  return fitted;
}

void DrawingTable::fit() {
  fitted_ = true;
  waits_ = true;
  update();
}

// A window that is being laid out gives its parts several sizes, one after the other.
void DrawingTable::settle() {
  if (!std::exchange(waits_, false)) return;
  const double margin = 1.2 * QFontInfo(font()).pixelSize();
  const QRectF room = QRectF(rect()).marginsRemoved({margin, margin, margin, margin});
  if (room.width() < 1 || room.height() < 1) return;
  struct Way {
    int perRow;
    Vec2 bare;
  };
  std::vector<Way> ways;
  const std::size_t count = document_.draft().pieces.size();
  for (const int perRow : {2, 0, 1, 3}) {
    if (perRow == 3 && count == 4) continue; // one alone below three looks forgotten
    ways.push_back({perRow, bareSize([&](double textHeight) { return make(textHeight, perRow); })});
  }
  // What may become largest first: it rules others out.
  std::ranges::stable_sort(ways, std::greater<>(),
                           [&](const Way& way) { return mostScale(way.bare, room); });
  double best = 0;
  int figures = 0; // how many; 0: none
  for (const double share : {kLetters, kSmallLetters}) {
    const double letters = std::max(kLeastLetters, share * QFontInfo(font()).pixelSize());
    for (const auto& [perRow, bare] : ways) {
      const double worth = share == kLetters ? 1.02 : kMoreFigures;
      if (mostScale(bare, room) <= worth * best) break;
      const auto pieces = [&, perRow = perRow](double textHeight) {
        return make(textHeight, perRow);
      };
      FittedPicture fitted = fitPicture(pieces, bare, letters, room);
      const double height = letters / fitted.view.scale;
      const int with = height <= kMostTextHeight ? detailAt(height) : 0;
      if (!with) fitted = fitWithoutFigures(perRow, letters, room);
      if (figures && !with) continue;
      const bool more = with > figures && figures < kShape;
      if (fitted.view.scale <= (more ? kMoreFigures : 1.02) * best) continue;
      best = fitted.view.scale;
      figures = with;
      perRow_ = perRow;
      letters_ = letters;
      picture_ = std::move(fitted.picture);
      view_ = fitted.view;
    }
    if (figures >= kShape) break; // smaller letters only where larger ones leave no room for them
  }
  pictureChanged();
}

QRectF DrawingTable::mappedBox(const Box& box) const {
  return QRectF(view_.map(box.low), view_.map(box.high)).normalized();
}

// The pieces stay where they are unless they would leave the window; once they are let go, also
// when they have become much smaller than it.
double DrawingTable::reach() const {
  return 0.8 * letters_;
}

bool DrawingTable::fitsWell() const {
  const QRectF box = mappedBox(picture_.box());
  if (!QRectF(rect()).contains(box)) return false;
  return document_.inGesture() || std::max(box.width() / width(), box.height() / height()) > 0.82;
}

void DrawingTable::zoomBy(double factor, const QPointF& about) {
  const double scale = std::clamp(view_.scale * factor, kLeastZoom, kMostZoom);
  // The piece under the pointer stays there: its own coordinates are kept, because the lanes
  // between pieces change with the zoom.
  const Vec2 at = view_.unmap(about);
  const Group* nearest = nullptr;
  double least = 1e300;
  for (const Group& g : picture_.groups) {
    const double d = (g.origin - at).squaredNorm();
    if (d < least) least = d, nearest = &g;
  }
  const std::string id = nearest ? nearest->id : std::string();
  const Vec2 inPiece = nearest ? Vec2(at - nearest->origin) : at;
  view_.scale = scale;
  fitted_ = false;
  redraw();
  Vec2 now = inPiece;
  for (const Group& g : picture_.groups)
    if (g.id == id) now += g.origin;
  view_.origin = {about.x() - now.x() * scale, about.y() + now.y() * scale};
  update();
}

void DrawingTable::setHandlesOffered(bool offered) {
  handles_->setOffered(offered);
  handles_->setPicture(picture_);
  update();
}

void DrawingTable::zoomIn() {
  zoomBy(1.25, QRectF(rect()).center());
}
void DrawingTable::zoomOut() {
  zoomBy(0.8, QRectF(rect()).center());
}

void DrawingTable::panBy(const QPointF& by) {
  fitted_ = false;
  view_.origin += by;
  update();
}

const HotSpot* DrawingTable::hotSpotAt(const QPointF& at) const {
  const Vec2 p = view_.unmap(at);
  for (const Group& g : picture_.groups)
    for (const HotSpot& h : g.hotSpots)
      if ((p.array() >= h.box.low.array()).all() && (p.array() <= h.box.high.array()).all())
        return &h;
  return nullptr;
}

void DrawingTable::describe() {
  QStringList pieces;
  for (const Group& g : picture_.groups) {
    const Vec2 size = [&] {
      const Piece* piece = g.piece ? document_.derived().draft.piece(*g.piece) : nullptr;
      return piece ? piece->box().size() : Vec2(0, 0);
    }();
    pieces.append(
        tr("%1: %2 wide, %3 high")
            .arg(QString::fromStdString(g.title),
                 QString::fromStdString(settings_.phrases().length(size.x(), settings_.unit())),
                 QString::fromStdString(settings_.phrases().length(size.y(), settings_.unit()))));
  }
  if (const QString tip = handles_->tip(); !tip.isEmpty()) pieces.prepend(tip);
  setAccessibleDescription(pieces.join(QStringLiteral("; ")));
}

void DrawingTable::paintGrid(QPainter& painter) const {
  // Lines a round number of centimetres (or inches) apart, never crowded.
  const double unit = settings_.unit() == LengthUnit::Inch ? kCmPerInch : 1;
  const double least = 0.8 * letters_ / view_.scale;
  double step = unit;
  for (const double n : {1., 2., 5., 10., 20., 50.}) {
    step = n * unit;
    if (step >= least) break;
  }
  const PictureColours colours = screenColours(palette());
  const auto draw = [&](double every, double strength) {
    painter.setPen(QPen(mixed(colours.ground, colours[Role::Outline], strength), 0));
    const Vec2 low = view_.unmap({0, double(height())}), high = view_.unmap({double(width()), 0});
    for (double x = std::ceil(low.x() / every) * every; x <= high.x(); x += every)
      painter.drawLine(QPointF(view_.map({x, 0}).x(), 0), QPointF(view_.map({x, 0}).x(), height()));
    for (double y = std::ceil(low.y() / every) * every; y <= high.y(); y += every)
      painter.drawLine(QPointF(0, view_.map({0, y}).y()), QPointF(width(), view_.map({0, y}).y()));
  };
  draw(step, 0.045);
  draw(5 * step, 0.09);
  painter.setPen(colours[Role::Note]);
  const QString text =
      tr("Grid %1").arg(QString::fromStdString(settings_.phrases().length(step, settings_.unit())));
  const int gap = fontMetrics().averageCharWidth();
  painter.drawText(gap, height() - gap, text);
}

bool DrawingTable::event(QEvent* event) {
  switch (event->type()) {
  case QEvent::Paint:
  case QEvent::Enter:
  case QEvent::MouseButtonPress:
  case QEvent::MouseMove:
  case QEvent::Wheel:
  case QEvent::KeyPress:
    settle();
    break;
  default:
    break;
  }
  return QWidget::event(event);
}

void DrawingTable::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const PictureColours colours = screenColours(palette());
  painter.fillRect(rect(), colours.ground);
  if (settings_.gridShown()) paintGrid(painter);
  if (hot_) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(mixed(colours.ground, colours[Role::Lit], 0.18));
    const double round = 0.25 * letters_;
    painter.drawRoundedRect(mappedBox(hot_->box), round, round);
  }
  paintPicture(painter, picture_, colours, view_);
  if (attention_.rows())
    paintRowBand(painter, picture_, document_.derived().knit, *attention_.rows(), colours, view_);
  handles_->paint(painter, colours, view_, letters_);
  if (!ringed_) return;
  painter.setPen(QPen(colours[Role::Lit], 1));
  painter.setBrush(Qt::NoBrush);
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

} // namespace scye
