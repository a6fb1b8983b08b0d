#include "reference/shaping_survey.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace scye::survey {
namespace {

struct Event {
  int stitches, gap; // rows since the event before, or the start
};

// Rows of a column from the underarm bind-off's on, however many sections they lie in.
Edge edgeOf(const KnitPiece& piece, EdgeSide side, Rows underarmRow, Rows endRow) {
  const SectionId other = side == EdgeSide::Right ? SectionId::Left : SectionId::Right;
  std::map<int, double> position;
  for (const RowLine& line : piece.rows)
    if (line.section != other)
      position[line.row.value()] = side == EdgeSide::Right ? -line.rightEdge : line.leftEdge;
  Edge edge;
  edge.firstRow = side == EdgeSide::Left ? 1 : 0;
  const double start = position.at(underarmRow.value() + edge.firstRow - 1);
  for (int row = underarmRow.value() + edge.firstRow; row < endRow.value(); ++row)
    edge.inward.push_back(position.at(row) - start);
  edge.underarm = edge.inward.empty() ? 0 : int(std::lround(edge.inward.front()));
  return edge;
}

std::vector<Event> events(const Edge& edge) {
  std::vector<Event> out;
  int gap = 0;
  for (std::size_t i = 1; i < edge.inward.size(); ++i) {
    ++gap;
    const int change = int(std::lround(edge.inward[i] - edge.inward[i - 1]));
    if (change == 0) continue;
    out.push_back({change, gap});
    gap = 0;
  }
  return out;
}

// Lines that a knitter is told: "k stitches every p rows, n times". Increases begin where they
// begin.
int lines(const std::vector<Event>& all, bool increases) {
  int count = 0;
  Event before{0, 0};
  bool first = true;
  for (const Event& e : all) {
    if ((e.stitches < 0) != increases) continue;
    const bool second = increases && count == 1 && first;
    if (count == 0 || ((e.stitches != before.stitches || e.gap != before.gap) && !second)) ++count;
    if (second) first = false;
    before = e;
  }
  return count;
}

// The way of a cubic from p0 to p3: {x, y} at 1,000 places.
using Points = std::vector<std::pair<double, double>>;
void addCubic(Points& to, const std::array<std::pair<double, double>, 4>& p) {
  constexpr int kPlaces = 1000;
  for (int i = to.empty() ? 0 : 1; i <= kPlaces; ++i) {
    const double t = double(i) / kPlaces, u = 1 - t;
    const double a = u * u * u, b = 3 * u * u * t, c = 3 * u * t * t, d = t * t * t;
    to.emplace_back(a * p[0].first + b * p[1].first + c * p[2].first + d * p[3].first,
                    a * p[0].second + b * p[1].second + c * p[2].second + d * p[3].second);
  }
}
void addLine(Points& to, double x, double y) {
  const auto from = to.back();
  constexpr int kPlaces = 400;
  for (int i = 1; i <= kPlaces; ++i)
    to.emplace_back(from.first + i * (x - from.first) / kPlaces,
                    from.second + i * (y - from.second) / kPlaces);
}
double along(const Points& points) {
  double sum = 0;
  for (std::size_t i = 1; i < points.size(); ++i)
    sum +=
        std::hypot(points[i].first - points[i - 1].first, points[i].second - points[i - 1].second);
  return sum;
}

// Largest distance in stitches of the edge, as it stands in the second row of each step of two,
// from the x that the curve covers within the step.
double off(const Edge& edge, int rows, const Points& curve, double w, double h) {
  double worst = 0;
  const double foot = curve.front().first;
  std::size_t at = 0;
  for (int step = 0; 2 * step < rows; ++step) {
    const double top = 2 * (step + 1) * h;
    double least = curve[at].first, most = least;
    while (at + 1 < curve.size() && curve[at + 1].second <= top) {
      ++at;
      least = std::min(least, curve[at].first), most = std::max(most, curve[at].first);
    }
    // The right edge's rows begin with the underarm bind-off's.
    const std::size_t row = std::min(std::size_t(2 * step + 1), edge.inward.size() - 1);
    const double x = foot - (edge.inward[row] - edge.underarm) * w;
    worst = std::max({worst, (least - x) / w, (x - most) / w});
  }
  return worst;
}

Points capPoints(double halfWidth, double underarm, double crownHalf, double lean, double a,
                 double b, double height) {
  const double from = halfWidth - underarm, to = crownHalf - lean, span = from - to;
  Points points;
  addCubic(points, {{{from, 0}, {from - a * span, 0}, {to + b * span, height}, {to, height}}});
  return points;
}

struct Cap {
  double halfWidth, crownHalf, a, b, lean, underarmBack, underarmFront;
  [[nodiscard]] Points back(double height) const {
    return capPoints(halfWidth, underarmBack, crownHalf, lean, a, b, height);
  }
  [[nodiscard]] Points front(double height) const {
    return capPoints(halfWidth, underarmFront, crownHalf, -lean, a, b, height);
  }
  // By halving: the edge grows with the height.
  [[nodiscard]] double heightFor(double length) const {
    double low = 0, high = length;
    for (int i = 0; i < 30; ++i) {
      const double middle = 0.5 * (low + high);
      const double edge =
          along(back(middle)) + along(front(middle)) + underarmBack + underarmFront + 2 * crownHalf;
      (edge < length ? low : high) = middle;
    }
    return 0.5 * (low + high);
  }
};

Points armholePoints(const Derived& d, bool back, double bustHalf, double underarm,
                     double crossBy = 0, double tipBy = 0) {
  ArmholeShape a = back ? d.draft.bodice.back : d.draft.bodice.front;
  a.halfCross += crossBy, a.halfShoulder += tipBy;
  const double from = bustHalf - underarm, span = from - a.halfCross, top = a.rise * a.depth;
  Points points;
  addCubic(points, {{{from, 0},
                     {from - a.scoop * span, 0},
                     {a.halfCross, top * (1 - a.scoop)},
                     {a.halfCross, top}}});
  if (std::abs(a.halfCross - a.halfShoulder) > 1e-9)
    addLine(points, a.halfCross, std::max(a.rise, 0.5) * a.depth);
  addLine(points, a.halfShoulder, a.depth);
  return points;
}

Lengths operator+(const Lengths& a, const Lengths& b) {
  return {a.chord + b.chord, a.corner + b.corner, a.middle + b.middle};
}

class Reader {
public:
  explicit Reader(const Derived& d)
      : d_(d), k_(d.knit), w_(k_.lattice.size.width), h_(k_.lattice.size.height) {}

  Figures run() {
    const KnitPiece* back = k_.piece(PieceId::Back);
    const KnitPiece* leftFront = k_.piece(PieceId::Front);
    const KnitPiece* rightFront = leftFront;
    if (!leftFront) leftFront = k_.piece(PieceId::LeftFront);
    if (!rightFront) rightFront = k_.piece(PieceId::RightFront);
    const KnitPiece* right = k_.piece(PieceId::Sleeve);
    const KnitPiece* left = k_.piece(PieceId::LeftSleeve);
    if (!left) left = right;
    if (!back || !leftFront || !rightFront || !right || !k_.capKnitted) return f_;
    f_.knitted = true;
    const Edge backRight = bodyEdge(*back, EdgeSide::Right),
               backLeft = bodyEdge(*back, EdgeSide::Left);
    const Edge frontRight = bodyEdge(*leftFront, EdgeSide::Right);
    const Edge frontLeft = bodyEdge(*rightFront, EdgeSide::Left);
    armhole(*back, backRight, true), armhole(*leftFront, frontRight, false);
    f_.oneSchedule = backRight.inward == frontRight.inward;
    const std::array<Lengths, 2> armholes{
        lengths(backLeft, w_, h_, 0) + lengths(frontRight, w_, h_, 0),
        lengths(backRight, w_, h_, 0) + lengths(frontLeft, w_, h_, 0)};
    f_.sidesRows = std::abs(armholes[0].mean() - armholes[1].mean()) / h_;
    cap(*right, *left, armholes, backRight.underarm, frontRight.underarm);
    return f_;
  }

private:
  Edge bodyEdge(const KnitPiece& piece, EdgeSide side) const {
    const int later = side == EdgeSide::Left ? 1 : 0;
    return edgeOf(piece, side, piece.underarmRow, piece.shoulderRow + Rows(later));
  }

  void steps(const std::vector<Event>& all) {
    for (const Event& e : all)
      if (e.stitches > 1)
        f_.widestStitches = std::max(f_.widestStitches, e.stitches),
        f_.widestStep = std::max(f_.widestStep, e.stitches * w_);
  }

  void armhole(const KnitPiece& piece, const Edge& edge, bool back) {
    const std::vector<Event> all = events(edge);
    steps(all);
    f_.armholeLines = std::max(f_.armholeLines, lines(all, false));
    f_.increaseLines = std::max(f_.increaseLines, lines(all, true));
    int bindOffs = 0, taken = edge.underarm;
    double rate = 1e9;
    bool printed = true;
    for (const Event& e : all) {
      if (e.stitches < 0) continue;
      printed &= e.stitches == 1 && e.gap == 2;
      bindOffs += e.stitches > 1, taken += e.stitches;
      const double now = double(e.stitches) / e.gap;
      if (now > rate + 1e-9) f_.armholeStepsGrow = true;
      rate = now;
    }
    f_.printedWay |= printed;
    f_.armholeBindOffs = std::max(f_.armholeBindOffs, bindOffs);
    f_.takenAway = std::max(f_.takenAway, taken * w_);
    double bustHalf = 0;
    for (const RowLine& line : piece.rows)
      if (line.row == piece.underarmRow - Rows(1)) bustHalf = line.rightEdge;
    const int rows = (piece.shoulderRow - piece.underarmRow).value();
    const double seam = bustHalf - k_.lattice.selvedge.value();
    const Points curve = armholePoints(d_, back, seam * w_, edge.underarm * w_);
    f_.armholeOff = std::max(f_.armholeOff, off(edge, rows, curve, w_, h_));
    const ArmholeShape& shape = back ? d_.draft.bodice.back : d_.draft.bodice.front;
    const double narrowest = seam - taken;
    const Points whole =
        armholePoints(d_, back, seam * w_, edge.underarm * w_, narrowest * w_ - shape.halfCross,
                      (seam - edge.inward.back()) * w_ - shape.halfShoulder);
    f_.armholeOffWhole = std::max(f_.armholeOffWhole, off(edge, rows, whole, w_, h_));
    const double drafted = d_.draft.sizes[back ? Field::UnderarmBack : Field::UnderarmFront] / w_;
    f_.underarm = edge.underarm;
    f_.underarmMoved = edge.underarm - int(std::lround(drafted));
  }

  void cap(const KnitPiece& right, const KnitPiece& left, const std::array<Lengths, 2>& armholes,
           int underarmBack, int underarmFront) {
    const auto edge = [&](const KnitPiece& p, EdgeSide side) {
      return edgeOf(p, side, p.underarmRow, p.crownRow);
    };
    // The right sleeve has the front at its right edge, the left one at its left.
    const Edge front = edge(right, EdgeSide::Right), back = edge(left, EdgeSide::Right);
    double width = 0;
    for (const RowLine& line : right.rows) {
      if (line.row == right.underarmRow - Rows(1)) width = line.rightEdge - line.leftEdge;
      if (line.row == right.crownRow - Rows(1))
        f_.crown = int(std::lround(line.rightEdge - line.leftEdge));
    }
    f_.capRows = (right.crownRow - right.underarmRow).value();
    const int selvedges = 2 * k_.lattice.selvedge.value();
    const double wanted = d_.draft.sizes[Field::CrownWidth];
    f_.crownOffCm = (f_.crown - selvedges) * w_ - wanted;
    f_.crownOff = f_.crownOffCm / w_;
    const double top = 0.5 * (f_.crown - selvedges);
    const std::array<Lengths, 2> caps{
        lengths(back, w_, h_, top) + lengths(edge(left, EdgeSide::Left), w_, h_, top),
        lengths(front, w_, h_, top) + lengths(edge(right, EdgeSide::Left), w_, h_, top)};
    const double ease = d_.draft.sizes[Field::CapEase];
    for (std::size_t side = 0; side < 2; ++side) {
      const Lengths over{caps[side].chord - armholes[side].chord,
                         caps[side].corner - armholes[side].corner,
                         caps[side].middle - armholes[side].middle};
      if (std::abs(over.mean() - ease) > std::abs(f_.seam)) f_.seam = over.mean() - ease;
      f_.spread = std::max(f_.spread, std::max({over.chord, over.corner, over.middle}) -
                                          std::min({over.chord, over.corner, over.middle}));
    }
    const Sizes& s = d_.draft.sizes;
    const Cap drafted{0.5 * (width - selvedges) * w_,
                      0.5 * wanted,
                      s[Field::LowerFullness],
                      s[Field::UpperFullness],
                      d_.draft.cap.lean,
                      underarmBack * w_,
                      underarmFront * w_};
    const double height = drafted.heightFor(0.5 * (armholes[0].mean() + armholes[1].mean()) + ease);
    f_.heightOff = f_.capRows - height / h_;
    f_.capOff = std::max(off(front, f_.capRows, drafted.front(height), w_, h_),
                         off(back, f_.capRows, drafted.back(height), w_, h_));
    f_.capRatio = d_.draft.cap.height / d_.draft.bodice.back.depth;
    for (const Edge& e : {front, back}) {
      steps(events(e));
      f_.capLines = std::max(f_.capLines, lines(events(e), false));
    }
    const auto mirrored = [&](EdgeSide side) {
      const EdgeSide other = side == EdgeSide::Right ? EdgeSide::Left : EdgeSide::Right;
      const std::vector<Event> one = events(edge(right, side)), two = events(edge(left, other));
      return std::equal(one.begin(), one.end(), two.begin(), two.end(),
                        [](const Event& a, const Event& b) { return a.stitches == b.stitches; });
    };
    f_.sleevesMirrored =
        left.crownRow == right.crownRow && mirrored(EdgeSide::Right) && mirrored(EdgeSide::Left);
  }

  const Derived& d_;
  const KnitGarment& k_;
  double w_, h_;
  Figures f_;
};

} // namespace

// From the end of the underarm bind-off: through the outer corners of the steps, through the inner
// ones, through the middles of the treads.
Lengths lengths(const Edge& edge, double w, double h, double flatTop) {
  const double flats = (edge.underarm + flatTop) * w;
  Lengths sum{flats, flats, flats};
  using Point = std::pair<double, double>;
  std::vector<Point> outer{{0, 0}}, inner{{0, 0}}, middle{{0, 0}};
  for (std::size_t i = 1; i < edge.inward.size(); ++i) {
    const double from = (edge.inward[i - 1] - edge.underarm) * w,
                 to = (edge.inward[i] - edge.underarm) * w, y = double(i) * h;
    if (from == to) continue;
    outer.emplace_back(from, y), inner.emplace_back(to, y),
        middle.emplace_back(0.5 * (from + to), y);
  }
  const Point end{(edge.inward.back() - edge.underarm) * w, double(edge.inward.size()) * h};
  const auto along = [&](std::vector<Point>& chain) {
    chain.push_back(end);
    double length = 0;
    for (std::size_t i = 1; i < chain.size(); ++i)
      length +=
          std::hypot(chain[i].first - chain[i - 1].first, chain[i].second - chain[i - 1].second);
    return length;
  };
  sum.chord += along(outer), sum.corner += along(inner), sum.middle += along(middle);
  return sum;
}

Figures figures(const Derived& derived) {
  return Reader(derived).run();
}

} // namespace scye::survey
