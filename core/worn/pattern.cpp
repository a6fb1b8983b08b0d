#include "worn/pattern.h"

#include <algorithm>
#include <cmath>

namespace scye {

double lengthOf(const Line& line) {
  double length = 0;
  for (std::size_t i = 1; i < line.size(); ++i)
    length += (line[i] - line[i - 1]).norm();
  return length;
}

Vec2 pointAt(const Line& line, double s) {
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double step = (line[i] - line[i - 1]).norm();
    if (s <= step && step > 0)
      return line[i - 1] + std::clamp(s / step, 0.0, 1.0) * (line[i] - line[i - 1]);
    s -= step;
  }
  return line.back();
}

Line reversed(Line line) {
  std::reverse(line.begin(), line.end());
  return line;
}

namespace {

// One edge of a row table: where it stands after each row from `first` on, in stitches.
struct Column {
  Rows first{0};
  std::vector<double> x;
};

// Stitches that wait over the bust are taken as if they were in work: their wedge is told apart.
Column columnOf(const KnitPiece& piece, SectionId section, EdgeSide side) {
  Column column;
  int turned = 0;
  bool begun = false;
  for (const RowLine& line : piece.rows) {
    if (line.section != section) continue;
    for (const Act& a : line.acts)
      if (a.shapes == Shapes::Bust && a.side == side)
        turned += a.kind == ActKind::Wait ? a.stitches.value() : -a.stitches.value();
    if (!begun) column.first = line.row, begun = true;
    column.x.push_back(side == EdgeSide::Right ? line.rightEdge + turned : line.leftEdge - turned);
  }
  return column;
}

constexpr Rows kNoFlat{-1}; // no row lies flat

// The chords of a column between two rows: straight up to the first change, then a chord from
// change to change. What changes in row `flat` lies flat. Heights are those of the rows' lower
// edges.
Line chords(const Column& column, Rows from, Rows to, Rows flat, const StitchSize& size) {
  const auto at = [&](Rows row) {
    const int i = std::clamp((row - column.first).value(), 0, int(column.x.size()) - 1);
    return column.x[std::size_t(i)] * size.width;
  };
  const auto y = [&](Rows row) { return size.up(row - Rows(1)); };
  double x = at(from - Rows(1));
  Line line{{x, y(from)}};
  const auto reach = [&](const Vec2& p) {
    if ((p - line.back()).norm() > 1e-9) line.push_back(p);
  };
  for (Rows row = from; row < to; ++row) {
    const double now = at(row);
    if (std::abs(now - x) < 1e-9) continue;
    reach({x, y(row)});
    if (row == flat) reach({now, y(row)});
    x = now;
  }
  reach({x, y(to)});
  return line;
}

Line moved(Line line, const Vec2& by) {
  for (Vec2& p : line)
    p += by;
  return line;
}

// Without points nearer than `least` to the one before.
Line thinned(const Line& line, double least) {
  Line out{line.front()};
  for (std::size_t i = 1; i + 1 < line.size(); ++i)
    if ((line[i] - out.back()).norm() >= least) out.push_back(line[i]);
  out.push_back(line.back());
  return out;
}

struct Reader {
  const Derived& d;
  const Lattice& l = d.knit.lattice;
  const Sizes& sizes = d.draft.sizes;
  double w = l.size.width, h = l.size.height;

  [[nodiscard]] double rowY(Rows row) const { return l.size.up(row - Rows(1)); }
  [[nodiscard]] bool pickedUp() const { return sizes.style.bandPickedUp(); }
  [[nodiscard]] BodicePattern bodice(const KnitPiece& piece, const BodiceLattice& counts) const;
  void hem(BodicePattern& p) const;
  void neckAndClosing(BodicePattern& p, const KnitPiece& piece, double top) const;
  [[nodiscard]] SleevePattern sleeve(const KnitPiece& piece) const;
};

void Reader::hem(BodicePattern& p) const {
  const EdgeTraits& hem = sizes.style.hem();
  const double fold = l.foldRow > Rows(0) ? rowY(l.foldRow) : 0;
  p.hemFabric = hem.ribbed ? Fabric::Rib : hem.folded ? Fabric::Facing : Fabric::Plain;
  p.hem = hem.folded ? fold : l.size.up(l.hemRows);
}

void Reader::neckAndClosing(BodicePattern& p, const KnitPiece& piece, double top) const {
  const bool front = piece.id == PieceId::LeftFront;
  const bool split = piece.splitRow >= Rows(0);
  const double foldY = l.foldRow > Rows(0) ? rowY(l.foldRow) : 0;
  const double tipX = p.armhole.back().x();
  const double point = tipX - l.size.across(l.back.shoulder - l.selvedge - l.pickUp);
  Line neck; // upward
  if (front || split) {
    const Column inner =
        columnOf(piece, front ? SectionId::Undivided : SectionId::Right, EdgeSide::Left);
    const Rows last = inner.first + Rows(int(inner.x.size()) - 1), one(1);
    // The right section's neck is bound off a row before the left one's.
    const Rows begin = std::max(inner.first, piece.neckRow - one);
    neck = moved(chords(inner, begin, last, begin, l.size), Vec2(l.size.across(l.pickUp), 0));
    if (!front && inner.first >= begin) { // the middle rests or is bound off as the neck begins
      neck = moved(chords(inner, begin + one, last, begin + one, l.size),
                   Vec2(l.size.across(l.pickUp), 0));
      neck.insert(neck.begin(), Vec2(0, neck.front().y()));
    } else if (!front) {
      neck.front().x() = 0; // from the slit
    }
  } else {
    neck = {Vec2(0, top)};
  }
  while (neck.size() > 1 && (neck.back().y() >= top - 1e-9 || neck.back().x() > point))
    neck.pop_back();
  neck.push_back(Vec2(point, top));
  if (front) {
    const double edge = (l.front.left + (pickedUp() ? l.pickUp.value() : 0)) * w;
    neck.front().x() = edge;
    p.closing = {neck.front(), Vec2(edge, 0)};
  } else {
    p.closing = {neck.front(), Vec2(0, 0)};
  }
  neck = thinned(neck, 0.4 * w);
  for (Vec2& q : neck)
    q.y() -= foldY;
  p.closing.front().y() -= foldY;
  p.neck = reversed(neck);
  if (split && piece.splitRow < piece.neckRow) p.slitFrom = rowY(piece.splitRow) - foldY;
}

BodicePattern Reader::bodice(const KnitPiece& piece, const BodiceLattice& counts) const {
  BodicePattern p;
  hem(p);
  const double fold = l.foldRow > Rows(0) ? rowY(l.foldRow) : 0;
  const Vec2 seam(-l.size.across(l.selvedge), 0);
  // Below a split the body section has the edge, above it the right one.
  Column edge = columnOf(piece, SectionId::Undivided, EdgeSide::Right);
  const Column above = columnOf(piece, SectionId::Right, EdgeSide::Right);
  edge.x.insert(edge.x.end(), above.x.begin(), above.x.end());
  const Rows first = std::max(Rows(1), l.foldRow);
  const Rows bust = counts.longer;
  p.side = moved(chords(edge, first, piece.underarmRow, kNoFlat, l.size), seam);
  p.armhole =
      moved(chords(edge, piece.underarmRow, piece.shoulderRow, piece.underarmRow, l.size), seam);
  const double top = rowY(l.neckTop + bust);
  neckAndClosing(p, piece, top);
  for (Line* line : {&p.side, &p.armhole})
    for (Vec2& q : *line)
      q.y() -= fold;
  p.side.front().y() = 0;
  if (bust > Rows(0) && counts.bustRow > Rows(0)) {
    p.wedge.low = rowY(counts.bustRow) - fold, p.wedge.depth = l.size.up(bust);
    for (const Stitches k : counts.bustTurns)
      p.wedge.reach += l.size.across(k);
    // The side seam has the back's rows: what the wedge adds is taken out of the line.
    Line side;
    for (const Vec2& q : p.side) {
      if (q.y() <= p.wedge.low)
        side.push_back(q);
      else if (q.y() >= p.wedge.low + p.wedge.depth)
        side.push_back(q - Vec2(0, p.wedge.depth));
    }
    p.side = side;
  }
  p.shoulder = {p.armhole.back(), p.neck.front()};
  p.castOn = {Vec2(p.closing.back().x(), 0), p.side.front()};
  return p;
}

SleevePattern Reader::sleeve(const KnitPiece& piece) const {
  SleevePattern s;
  const Column right = columnOf(piece, SectionId::Undivided, EdgeSide::Right);
  const Column left = columnOf(piece, SectionId::Undivided, EdgeSide::Left);
  const Vec2 seam(-l.size.across(l.selvedge), 0);
  s.cuff = l.size.up(l.cuffRows);
  Rows first(1);
  for (const RowLine& line : piece.rows)
    for (const Act& a : line.acts)
      if (a.kind == ActKind::IncreaseEvenly && a.shapes == Shapes::Cuff) first = line.row + Rows(1);
  if (first > Rows(1)) { // a full sleeve: gathered to its cuff
    s.cuffBand = l.size.up(std::max(l.cuffRows, Rows(1)));
    s.cuffGirth = l.size.across(piece.castOn() - 2 * l.selvedge);
    s.cuff = 0;
  }
  s.frontSeam = moved(chords(right, first, piece.underarmRow, kNoFlat, l.size), seam);
  const auto half = [&](const Column& column, double side) {
    Column c = column;
    for (double& x : c.x)
      x *= side;
    // A left edge is bound off a row later; both caps are laid on the same rows.
    c.first -= Rows(side < 0 ? 1 : 0);
    // The crown is closed from either side and belongs to neither.
    const std::size_t below = std::size_t((piece.crownRow - column.first).value());
    if (c.x.size() > below) c.x.resize(below);
    return moved(chords(c, piece.underarmRow, piece.crownRow, piece.underarmRow, l.size), seam);
  };
  s.cap = half(right, 1);
  Line back = half(left, -1);
  for (Vec2& q : back)
    q.x() = -q.x();
  // The last rows' ends are the ends of the crown.
  std::reverse(back.begin(), back.end());
  s.cap.insert(s.cap.end(), back.begin(), back.end());
  const double bottom = s.frontSeam.front().y();
  for (Line* line : {&s.frontSeam, &s.cap})
    for (Vec2& q : *line)
      q.y() -= bottom;
  const Vec2 corner = s.frontSeam.front();
  s.castOn = {Vec2(-corner.x(), 0), corner};
  return s;
}

// The drafted notches on the knitted edge: the flat keeps its length, the rest is stretched to it.
Sewn sewnSide(const GarmentDraft& draft, ArmholeHalf side, const Line& armhole, double flat,
              double ease, double capEase) {
  const SeamWalk walk(draft, side);
  Sewn out;
  out.letIn = letIn(draft, flat, lengthOf(armhole), ease, capEase);
  const double rest = walk.armhole().length() - walk.underarm();
  const double scale = rest > 0 ? (out.letIn.to - flat) / rest : 1;
  for (const Notch& notch : walk.notches())
    out.notches.push_back(notch.kind == NotchKind::GathersBegin
                              ? out.letIn.gathersFrom
                              : flat + (notch.s - walk.underarm()) * scale);
  return out;
}

NeckPattern neckOf(const Derived& d) {
  NeckPattern neck;
  neck.width = d.draft.sizes[Field::NeckBand];
  neck.standing = d.draft.sizes.style.neck().stands;
  const PickUps& up = d.makingUp.pickUps;
  const double knitted = up.neck.backLength + up.neck.frontLength * (up.neck.twoFronts ? 2 : 1);
  if (knitted <= 0) return neck;
  // A band that stands up is a rib, and draws in to the neck as far as a rib does (common practice:
  // by up to a quarter); any other has the length of the finished neck edge.
  const double free =
      neck.standing ? 1.05 * d.draft.sizes[Field::NeckBase] : d.draft.bodice.neckEdge;
  neck.innerShare = std::clamp(free / knitted, neck.standing ? 0.75 : 0.5, 1.0);
  return neck;
}

FrontPattern frontsOf(const Derived& d, const BodicePattern& front) {
  FrontPattern out;
  const GarmentStyle& style = d.draft.sizes.style;
  out.open = style.jacket();
  if (!out.open) return out;
  out.bandWidth = d.draft.sizes[Field::ButtonBand];
  out.pickedUp = style.bandPickedUp();
  out.neckInOne = d.makingUp.pickUps.band.withNeck;
  out.rightOver = buttonholePiece(style) == PieceId::RightFront;
  if (out.pickedUp) {
    const BandButtonholes& holes = d.makingUp.pickUps.buttonholes;
    const int stitches = d.makingUp.pickUps.band.stitches;
    const double each = stitches > 0 ? front.closing.front().y() / stitches : 0;
    double at = holes.before + 0.5 * holes.stitches;
    for (int i = 0; i < holes.count; ++i) {
      out.buttons.push_back(at * each);
      if (std::size_t(i) < holes.between.size())
        at += holes.stitches + holes.between[std::size_t(i)];
    }
  } else {
    const Lattice& l = d.knit.lattice;
    const Rows fold = std::max(Rows(0), l.foldRow - Rows(1));
    for (const Rows row : d.knit.buttonholes.rows)
      out.buttons.push_back((row.value() - 0.5 - fold.value()) * l.size.height);
  }
  return out;
}

double weightOf(const Sizes& s) {
  const double area = s[Field::SwatchWidth] * s[Field::SwatchHeight];
  const double weighed = area > 0 ? s[Field::SwatchWeight] / area : 0;
  constexpr double kLightest = 0.008, kHeaviest = 0.12; // beyond these the scales were misread
  return weighed > 0 ? std::clamp(weighed, kLightest, kHeaviest) : kUsualAreaWeight;
}

} // namespace

std::optional<WornPattern> wornPattern(const Derived& d) {
  const bool jacket = d.draft.sizes.style.jacket();
  const KnitPiece* back = d.knit.piece(PieceId::Back);
  const KnitPiece* front = d.knit.piece(jacket ? PieceId::LeftFront : PieceId::Front);
  const KnitPiece* sleeve = d.knit.piece(PieceId::Sleeve);
  if (!d.knit.gaugeUsable || !d.knit.capKnitted || !d.knit.impossible.empty() || !back || !front ||
      !sleeve)
    return std::nullopt;
  const Reader reader{d};
  WornPattern p;
  p.stitch = d.knit.lattice.size;
  p.areaWeight = weightOf(d.draft.sizes);
  p.size = std::clamp(d.draft.sizes.body(Field::Bust) / 94, 0.4, 1.6);
  p.back = reader.bodice(*back, d.knit.lattice.back);
  p.front = reader.bodice(*front, d.knit.lattice.front);
  p.sleeve = reader.sleeve(*sleeve);
  p.neckPointY = p.back.neck.front().y();
  const double armholes = lengthOf(p.back.armhole) + lengthOf(p.front.armhole);
  const double capEase = lengthOf(p.sleeve.cap) - armholes;
  const auto side = [&](ArmholeHalf which, const BodicePattern& piece,
                        const BodiceLattice& counts) {
    const double length = lengthOf(piece.armhole);
    return sewnSide(d.draft, which, piece.armhole, p.stitch.across(counts.underarm),
                    capEase * length / armholes, capEase);
  };
  p.backSeam = side(ArmholeHalf::Back, p.back, d.knit.lattice.back);
  p.frontSeam = side(ArmholeHalf::Front, p.front, d.knit.lattice.front);
  p.neck = neckOf(d);
  p.fronts = frontsOf(d, p.front);
  return p;
}

} // namespace scye
