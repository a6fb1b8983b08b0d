#include "knit/on_stitches.h"
#include "model/plain_text.h"
#include "schematic/dimension.h"
#include "schematic/edges_shaped.h"
#include "schematic/knitted.h"
#include "schematic/notches.h"
#include "schematic/schematic.h"

#include <algorithm>
#include <cmath>
#include <deque>

namespace scye {
namespace {

class PieceDrawer {
public:
  PieceDrawer(const GarmentDraft& g, const Phrases& phrases, const SchematicOptions& o,
              const Piece& piece)
      : g_(g), phrases_(phrases), o_(o), piece_(piece), box_(piece.box()), h_(o.textHeight),
        dimensions_(group_, o.textHeight) {}

  // Everything but the caption, which fronts have at one height.
  void draw() {
    group_.id = pieceKey(piece_.id);
    group_.title = phrases_.say("piece." + group_.id);
    group_.piece = piece_.id;
    outline();
    notches_ =
        o_.notches && o_.dimensions ? pieceNotches(g_, piece_.id) : std::vector<PieceNotch>{};
    ticks(notches_);
    if (piece_.id == PieceId::Sleeve) {
      sleeve();
    } else {
      bodice();
    }
    placeWanted();
  }
  [[nodiscard]] int captionHeights() const { return int(captions_.size()); }
  [[nodiscard]] bool captionFits(int height) const {
    const std::vector<Vec2>& places = captions_[height];
    return std::any_of(places.begin(), places.end(),
                       [&](const Vec2& at) { return dimensions_.isFree(captionAt(at)); });
  }
  void setCaption(int height) { caption_ = height; }
  [[nodiscard]] PieceId id() const { return piece_.id; }
  Group finish() {
    dimensions_.label(captionAt(Vec2::Zero()), captions_[caption_]);
    numbers(notches_);
    return std::move(group_);
  }

private:
  enum class Way : std::uint8_t { Level, Upright, Sloping };

  // What a garment is told by, what shapes it, and the rest.
  enum class Rank : std::uint8_t { Main = 1, Shape, Rest };
  struct Wanted {
    Way way;
    Dimension dimension;
    std::vector<double> lines;
    Rank rank;
  };

  // `lines`: where the dimension line may run, as y, x, or distance from the edge.
  void dim(Way way, const Vec2& from, const Vec2& to, const std::vector<double>& lines,
           std::optional<Field> field, Rank rank, const char* told = nullptr) {
    const Vec2 d = to - from;
    const double size = way == Way::Level     ? std::abs(d.x())
                        : way == Way::Upright ? std::abs(d.y())
                                              : d.norm();
    if (!o_.dimensions || size < 0.3) return;
    const bool lit = field && o_.lit && related(*field, *o_.lit);
    if (lit) rank = Rank::Main; // what is in hand is always told
    if (int(rank) > o_.detail) return;
    wanted_.push_back({way,
                       {from, to, textOf(size, told), field, lit ? Role::Lit : Role::Measure,
                        o_.leaveOut && rank != Rank::Main},
                       lines,
                       rank});
  }
  // A length as it is knitted where it is told as `told` (Rounded::key), else as it is drawn.
  [[nodiscard]] std::string textOf(double size, const char* told) const {
    std::string drawn = phrases_.length(size, o_.unit);
    if (!o_.curves || !told) return drawn;
    for (const Rounded& r : o_.curves->rounded) {
      if (r.key != told) continue;
      std::string knitted = phrases_.length(r.knitted, o_.unit);
      // What is worked out follows from the rest: nobody wanted it otherwise.
      const bool workedOut = r.field == workedField(g_.cap.unknown);
      if (workedOut || std::abs(r.knitted - r.wanted) <= r.grain + 1e-6) return knitted;
      return phrases_.say("dimension.wanted",
                          {textParam("knitted", knitted), lengthParam("wanted", r.wanted)},
                          o_.unit);
    }
    return drawn;
  }
  // The weightier first, so that they have the places.
  void placeWanted() {
    std::stable_sort(wanted_.begin(), wanted_.end(), [](const Wanted& a, const Wanted& b) {
      return (a.rank == Rank::Main) > (b.rank == Rank::Main);
    });
    for (const Wanted& w : wanted_) {
      switch (w.way) {
      case Way::Level:
        dimensions_.level(w.dimension, w.lines);
        break;
      case Way::Upright:
        dimensions_.upright(w.dimension, w.lines);
        break;
      case Way::Sloping:
        dimensions_.sloping(w.dimension, w.lines);
        break;
      }
    }
    wanted_.clear();
  }
  [[nodiscard]] static bool related(Field a, Field b) {
    return measurementOf(a).value_or(a) == measurementOf(b).value_or(b);
  }
  // Lanes beside the piece, the first so many lanes' widths from it; `toward` -1 or 1.
  [[nodiscard]] std::vector<double> lanes(double edge, int toward, double first) const {
    std::vector<double> at;
    for (int i = 0; i < 5; ++i)
      at.push_back(edge + toward * (first + 0.9 * i) * kLane * h_);
    return at;
  }

  void outline() {
    const Path path = piece_.outline();
    if (o_.worked.empty()) group_.strokes.push_back({path, Role::Fabric, true});
    for (const WorkedPart& part : o_.worked)
      if (part.piece == piece_.id && o_.curves) worked(part);
    for (const Behind& other : o_.behind)
      if (const Piece* piece = other.draft->piece(piece_.id))
        group_.strokes.push_back({piece->outline(), Role::Ghost, false});
    group_.strokes.push_back({path, Role::Outline, false});
    dimensions_.avoid(path);
    if (o_.knitted)
      if (const KnitPiece* knitted = o_.knitted->piece(piece_.id))
        group_.strokes.push_back(
            {knittedOutline(*knitted, knitted->fabric(o_.knitted->lattice.size),
                            edgeFinish(g_, *o_.knitted)),
             Role::Knitted, false});
    if (!o_.lit) return;
    for (const PieceEdge& e : piece_.edges)
      if (shapes(*o_.lit, piece_.id, e.kind)) group_.strokes.push_back({e.path, Role::Lit, false});
  }

  void worked(const WorkedPart& part) {
    Path path = workedOutline(*part.plan, part.lines, part.plan->fabric(o_.curves->lattice.size),
                              edgeFinish(g_, *o_.curves));
    if (path.empty()) return;
    if (part.mirrored) path = path.mirroredX();
    group_.strokes.push_back({path, Role::Worked, true});
    group_.strokes.push_back({path, Role::Knitted, false});
  }

  // Whose outline it is: beside its cast-on corner, each name a line lower.
  void namesBehind() {
    double line = 0;
    for (const Behind& other : o_.behind) {
      const Piece* piece = other.draft->piece(piece_.id);
      if (!piece || other.name.empty()) continue;
      const Box box = piece->box();
      std::vector<Vec2> places;
      for (const double lower : {0.0, 1.1, 2.2, 3.3})
        places.push_back({box.high.x() + 0.3 * h_, box.low.y() + (0.4 - line - lower) * h_});
      dimensions_.labelIfFree({{}, other.name, Role::Note, 0.85 * h_, Anchor::Start, 0}, places);
      line += 1.1;
    }
  }

  void ticks(const std::vector<PieceNotch>& notches) {
    for (const PieceNotch& n : notches) {
      const Path tick = Path::polyline({n.at, n.at + 0.6 * h_ * n.inward});
      group_.strokes.push_back({tick, Role::Notch, false});
      dimensions_.avoid(tick);
    }
  }
  // Small, beside their ticks within the piece; those for which there is no room stay away.
  void numbers(const std::vector<PieceNotch>& notches) {
    const double small = 0.75 * h_;
    for (const PieceNotch& n : notches) {
      std::vector<Vec2> places;
      for (const double in : {1.25, 1.6, 2.0})
        for (const double along : {0.0, 0.5, -0.5})
          places.push_back(n.at + in * h_ * n.inward +
                           along * h_ * Vec2(-n.inward.y(), n.inward.x()) - Vec2(0, 0.36 * small));
      dimensions_.labelIfFree({{}, std::to_string(n.number), Role::Notch, small, Anchor::Middle, 0},
                              places);
    }
  }

  void guide(const Vec2& a, const Vec2& b) {
    const Path path = Path::polyline({a, b});
    group_.strokes.push_back({path, Role::Guide, false});
    dimensions_.avoid(path);
  }
  // In the middle between the lower two heights, or where there is room near by, or between the
  // upper two; else below everything.
  void caption(double low, double high, double top) {
    const double x = 0.5 * (box_.low.x() + box_.high.x()), wide = box_.size().x();
    for (const auto& [from, to] : {std::pair(low, high), std::pair(high, top)})
      for (const double share : {0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2}) {
        std::vector<Vec2> places;
        for (const double aside : {0.0, -0.22, 0.22})
          places.push_back({x + aside * wide, from + share * (to - from) - 0.4 * h_});
        captions_.push_back(std::move(places));
      }
    placeWanted(); // what lies lowest is known then
    namesBehind();
    captions_.push_back({{x, group_.box().low.y() - 1.6 * h_}});
  }
  [[nodiscard]] Label captionAt(const Vec2& at) const {
    return {at, group_.title, Role::Caption, 1.25 * h_, Anchor::Middle, 0};
  }

  // x of the piece's left and right edge at height y on its side seam.
  [[nodiscard]] std::pair<double, double> across(double y) const {
    double left = box_.high.x(), right = box_.low.x();
    for (const PieceEdge& e : piece_.edges)
      for (const Cubic& c : e.path.segments()) {
        const double y0 = c.start().y(), y1 = c.end().y();
        if (y0 == y1 || y < std::min(y0, y1) || y > std::max(y0, y1)) continue;
        const double x = c.at((y - y0) / (y1 - y0)).x();
        left = std::min(left, x), right = std::max(right, x);
      }
    return {left, right};
  }
  [[nodiscard]] std::pair<Vec2, Vec2> ends(double y) const {
    const auto [left, right] = across(y);
    return {Vec2(left, y), Vec2(right, y)};
  }
  void dimAcross(double y, const std::vector<double>& lines, Field field, Rank rank,
                 const char* told = nullptr) {
    const auto [left, right] = ends(y);
    dim(Way::Level, left, right, lines, field, rank, told);
  }

  void bodice() {
    const Bodice& b = g_.bodice;
    const bool back = piece_.id == PieceId::Back, whole = back || piece_.id == PieceId::Front;
    const BodiceHeights& at = heights();
    const ArmholeShape& armhole = back ? b.back : b.front;
    const double right = box_.high.x(), left = box_.low.x();
    const Rank main = back ? Rank::Main : Rank::Shape; // told once
    // The armhole side of a half front; a whole piece is dimensioned as if from its left.
    const double s = piece_.id == PieceId::LeftFront ? 1 : -1;
    const Vec2 tip(s * armhole.halfShoulder, at.tip), neck(s * b.halfNeck, at.neckPoint);
    const Vec2 underarm(s * armhole.halfBust, at.underarm);
    const auto edgeAt = [&](double y) {
      return Vec2(s > 0 ? across(y).second : across(y).first, y);
    };
    const Vec2 corner = edgeAt(0), lower = edgeAt(at.fold);

    const auto [hemLeft, hemRight] = ends(at.hem);
    if (at.hem > 0) guide(hemLeft, hemRight);
    const double slit = g_.sizes[Field::BackOpening];
    if (back && slit > 0) guide({0, at.neckLow}, {0, at.neckLow - slit});

    dimAcross(0, lanes(0, -1, 1), at.hip >= 0 ? Field::Hip : Field::EaseHip, Rank::Shape);
    dim(Way::Level, {whole ? -underarm.x() : s * b.openingX, at.underarm}, underarm,
        {at.underarm - 1.2 * h_, at.underarm - 2.6 * h_, at.underarm}, Field::Bust, main,
        back    ? "backWidth"
        : whole ? "frontWidth"
                : nullptr);
    if (g_.sizes.style.waisted() && at.waist > at.hem + 3 * h_ && at.waist < at.underarm - 5 * h_)
      dimAcross(at.waist, {at.waist}, Field::Waist, Rank::Shape, back ? "waist" : nullptr);
    neckDrop(back, whole, s, neck);
    if (whole) crossWidth(armhole, back);

    if (whole) {
      dim(Way::Level, {-b.halfNeck, at.neckPoint}, {b.halfNeck, at.neckPoint},
          lanes(at.neckPoint, 1, 0.8), Field::NeckWidth, Rank::Shape);
      dim(Way::Level, {-armhole.halfShoulder, at.tip}, {armhole.halfShoulder, at.tip},
          lanes(at.neckPoint, 1, 1.8), Field::CrossShoulder, main);
    } else {
      dim(Way::Sloping, s > 0 ? neck : tip, s > 0 ? tip : neck, lanes(0, 1, 0.7),
          Field::ShoulderLength, Rank::Shape);
    }

    const double side = s > 0 ? right : left;
    const int out = s > 0 ? 1 : -1;
    if (at.hem > 0)
      dim(Way::Upright, corner, edgeAt(at.hem), lanes(side, out, 0.7), Field::HemDepth, Rank::Rest);
    if (back || b.bust.depth == 0)
      dim(Way::Upright, lower, underarm, lanes(side, out, 1.6), Field::HemToUnderarm, main,
          "hemToUnderarm");
    else
      bustWedge(side, s);
    dim(Way::Upright, underarm, tip, lanes(side, out, 1.6), Field::ArmholeDepth, main,
        "armholeDepth");
    if (whole) {
      const Vec2 otherTip(-tip.x(), tip.y()), otherNeck(-neck.x(), neck.y());
      dim(Way::Upright, otherTip, otherNeck, lanes(right, 1, 0.7), Field::ShoulderDrop, Rank::Rest);
      dim(Way::Upright, {-lower.x(), at.fold}, otherNeck, lanes(right, 1, 1.6), std::nullopt,
          Rank::Shape);
    }
    caption(at.hem, at.underarm, at.tip);
  }

  [[nodiscard]] const BodiceHeights& heights() const {
    return piece_.id == PieceId::Back ? g_.bodice.at : g_.bodice.frontAt;
  }

  // The open wedge that the bust short rows close.
  void bustWedge(double side, double s) {
    const BustWedge& wedge = g_.bodice.bust;
    const int out = s > 0 ? 1 : -1;
    const double x = s > 0 ? across(wedge.low).second : across(wedge.low).first;
    const double middle = wedge.low + 0.5 * wedge.depth;
    dim(Way::Upright, {x, wedge.low}, {x, wedge.low + wedge.depth}, lanes(side, out, 0.7),
        Field::BustDepth, Rank::Shape);
    dim(Way::Level, {x - s * wedge.reach, middle}, {x, middle},
        {wedge.low - 1.2 * h_, wedge.low - 2.6 * h_, wedge.low + wedge.depth + 0.8 * h_},
        Field::BustReach, Rank::Shape);
  }

  void crossWidth(const ArmholeShape& armhole, bool back) {
    const double y = heights().underarm + std::max(0.5, armhole.rise) * armhole.depth;
    const double x = armhole.halfCross;
    dim(Way::Level, {-x, y}, {x, y},
        {y, y - 1.5 * h_, y - 3 * h_, y + 1.5 * h_, y - 4.5 * h_, y - 6 * h_},
        back ? Field::CrossBack : Field::CrossFront, Rank::Shape,
        back ? "crossBack" : "crossFront");
  }

  // In the opening of a whole piece; beside the front edge of a half.
  void neckDrop(bool back, bool whole, double s, const Vec2& neck) {
    const Bodice& b = g_.bodice;
    const double low = heights().neckLow;
    if (neck.y() - low < 1e-9) return; // straight across
    if (!whole) {
      const double edge = s * b.openingX;
      dim(Way::Upright, {edge, low}, neck, lanes(edge, s > 0 ? -1 : 1, 0.7), Field::FrontNeckDrop,
          Rank::Shape);
      return;
    }
    const bool slit = back && g_.sizes[Field::BackOpening] > 0; // its line is in the middle
    std::vector<double> xs;
    for (const double share : {slit ? 0.4 : 0.0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75})
      xs.push_back(share * b.halfNeck);
    dim(Way::Upright, neck, {0, low}, xs, back ? Field::BackNeckDrop : Field::FrontNeckDrop,
        Rank::Shape);
  }

  void sleeve() {
    const CapMatch& m = g_.cap;
    const SleeveBody& sl = g_.sleeve;
    const double W = sl.halfWidth, L = sl.length, H = m.height, T = m.back.crownHalf;
    const double top = L + H, left = box_.low.x(), right = box_.high.x();
    const auto [cuffLeft, cuffRight] = ends(sl.cuff);
    if (sl.cuff > 0) guide(cuffLeft, cuffRight);
    // The shoulder mark.
    const Path mark =
        Path::polyline({{m.crownMark, top + 0.3 * h_}, {m.crownMark, top - 0.9 * h_}});
    group_.strokes.push_back({mark, Role::Notch, false});
    dimensions_.avoid(mark);

    const SleeveTraits& line = g_.sizes.style.sleeve();
    dim(Way::Level, {-sl.halfCuff, 0}, {sl.halfCuff, 0}, lanes(0, -1, 1),
        line.ownCuff ? Field::CuffGirth : Field::Wrist, Rank::Main, "cuff");
    if (line.gathered)
      dim(Way::Level, {-sl.halfFull, sl.cuff}, {sl.halfFull, sl.cuff},
          {sl.cuff + 0.8 * h_, sl.cuff + 2.2 * h_, sl.cuff + 3.6 * h_}, Field::FullGirth,
          Rank::Shape, "fullness");
    dim(Way::Level, {-W, L}, {W, L}, {L - 1.2 * h_, L - 2.6 * h_, L}, Field::UpperArm, Rank::Main,
        "upperArm");
    dim(Way::Level, {m.lean - T, top}, {m.lean + T, top}, lanes(top, 1, 0.8), Field::CrownWidth,
        Rank::Rest, "crown");
    if (sl.cuff > 0)
      dim(Way::Upright, {-sl.halfCuff, 0}, cuffLeft, lanes(left, -1, 0.7), Field::CuffDepth,
          Rank::Rest);
    dim(Way::Upright, {-sl.halfCuff, 0}, {-W, L}, lanes(left, -1, 1.6), Field::SleeveLength,
        Rank::Main, "sleeveLength");
    dim(Way::Upright, {-W, L}, {m.lean - T, top}, lanes(left, -1, 1.6), Field::CapHeight,
        Rank::Main, "capHeight");
    dim(Way::Upright, {sl.halfCuff, 0}, {m.lean + T, top}, lanes(right, 1, 0.8),
        Field::SleeveToShoulder, Rank::Rest);
    caption(sl.cuff, L, top);
  }

  static constexpr double kLane = 2.6; // letters' heights

  const GarmentDraft& g_;
  const Phrases& phrases_;
  const SchematicOptions& o_;
  const Piece& piece_;
  Box box_;
  double h_;
  Group group_;
  Dimensions dimensions_;
  std::vector<Wanted> wanted_;
  std::vector<PieceNotch> notches_;
  std::vector<std::vector<Vec2>> captions_; // by height, the best first
  int caption_ = 0;
};

// With captions; those of the fronts at the first height that suits all.
std::vector<Group> finished(std::deque<PieceDrawer>& row) {
  const auto isFront = [](const PieceDrawer& d) {
    return d.id() == PieceId::LeftFront || d.id() == PieceId::RightFront;
  };
  std::vector<Group> groups;
  for (PieceDrawer& drawer : row) {
    int height = 0;
    for (; height + 1 < drawer.captionHeights(); ++height)
      if (std::all_of(row.begin(), row.end(), [&](const PieceDrawer& other) {
            const bool together = &other == &drawer || (isFront(other) && isFront(drawer));
            return !together || other.captionFits(height);
          }))
        break;
    drawer.setCaption(height);
  }
  for (PieceDrawer& drawer : row)
    groups.push_back(drawer.finish());
  return groups;
}

} // namespace

Picture pieceSchematic(const GarmentDraft& asked, const Phrases& phrases,
                       const SchematicOptions& o) {
  const GarmentDraft draft = o.curves ? onStitches(asked, *o.curves) : asked;
  Picture picture;
  picture.title = plainLine(draft.design.title);
  picture.textHeight = o.textHeight;
  std::vector<Group> groups;
  // The right front lies on the left, as the garment is seen from the front.
  std::vector<const Piece*> order;
  for (const PieceId id :
       {PieceId::Back, PieceId::Sleeve, PieceId::Front, PieceId::RightFront, PieceId::LeftFront})
    if (const Piece* p = draft.piece(id)) order.push_back(p);
  if (o.perRow == 0) // in one row the sleeve comes last
    std::rotate(order.begin() + 1, order.begin() + 2, order.end());
  const std::size_t perRow = o.perRow == 0 ? order.size() : std::size_t(o.perRow);
  const double gap = 2.0 * o.textHeight;
  double top = 0;
  for (std::size_t first = 0; first < order.size(); first += perRow) {
    const std::size_t last = std::min(first + perRow, order.size());
    double high = 0, low = 0, x = 0;
    std::deque<PieceDrawer> drawers; // which never moves them: they hold on to themselves
    for (std::size_t i = first; i < last; ++i)
      drawers.emplace_back(draft, phrases, o, *order[i]).draw();
    std::vector<Group> row = finished(drawers);
    for (Group& g : row) { // cast-on edges on one line
      const Box box = g.box();
      moveGroup(g, Vec2(x - box.low.x(), 0));
      x += box.size().x() + gap;
      high = std::max(high, box.high.y()), low = std::min(low, box.low.y());
    }
    for (Group& g : row) {
      moveGroup(g, Vec2(-0.5 * (x - gap), top - high));
      picture.groups.push_back(std::move(g));
    }
    top += low - high - gap;
  }
  return picture;
}

} // namespace scye
