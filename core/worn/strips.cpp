#include "worn/strips.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

struct Strip {
  PanelId id = PanelId::NeckBand;
  Fabric fabric = Fabric::Band;
  std::vector<int> chain; // vertices it is joined to
  double width = 0;
  int rows = 1;
  std::vector<double> joined, free; // relaxed lengths of each step of the chain, at either edge
  bool below = false; // it hangs from its chain, and is seen from inside as a sleeve is
};

struct StripEdges {
  std::vector<std::vector<int>> rows; // vertices of each row, the joined one first
};

StripEdges add(SewnGarment& g, const Strip& strip) {
  const std::size_t n = strip.chain.size();
  const auto pointOf = [&](int v) { return g.vertices[std::size_t(v)].point; };
  const bool round = pointOf(strip.chain.front()) == pointOf(strip.chain.back());
  StripEdges out;
  const double side = strip.below ? -1 : 1;
  for (int j = 0; j <= strip.rows; ++j) {
    std::vector<int> row;
    double along = 0;
    for (std::size_t i = 0; i < n; ++i) {
      if (i > 0) along += 0.5 * (strip.joined[i - 1] + strip.free[i - 1]);
      ClothVertex v;
      v.at = Vec2(along, side * strip.width * j / strip.rows);
      v.panel = strip.id;
      if (j == 0)
        v.point = pointOf(strip.chain[i]);
      else if (round && i + 1 == n)
        v.point = pointOf(row.front());
      else {
        v.point = g.points++;
        const std::size_t root = std::size_t(pointOf(strip.chain[i]));
        const Layer layer = g.layer[root];
        const char mirror = g.onMirror[root];
        g.layer.push_back(layer);
        g.onMirror.push_back(mirror);
      }
      row.push_back(int(g.vertices.size()));
      g.vertices.push_back(v);
    }
    out.rows.push_back(std::move(row));
  }
  const double high = strip.width / strip.rows;
  for (int j = 0; j < strip.rows; ++j)
    for (std::size_t i = 0; i + 1 < n; ++i) {
      const auto length = [&](int row) {
        return strip.joined[i] + (strip.free[i] - strip.joined[i]) * row / strip.rows;
      };
      const double low = 0.5 * length(j), up = 0.5 * length(j + 1);
      const std::vector<int>&a = out.rows[std::size_t(j)], &b = out.rows[std::size_t(j) + 1];
      const std::array<int, 4> vertex{a[i], a[i + 1], b[i + 1], b[i]};
      const std::array<Vec2, 4> flat{Vec2(-low, 0), Vec2(low, 0), Vec2(up, high), Vec2(-up, high)};
      const bool other = (i + std::size_t(j)) % 2 == 1; // diagonals both ways
      constexpr std::array<std::array<std::size_t, 3>, 4> kCorners{
          {{0, 1, 2}, {0, 2, 3}, {0, 1, 3}, {1, 2, 3}}};
      for (std::size_t k = 0; k < 2; ++k) {
        const auto& corner = kCorners[(other ? 2 : 0) + k];
        ClothTriangle t;
        t.panel = strip.id, t.fabric = strip.fabric;
        for (std::size_t c = 0; c < 3; ++c)
          t.vertex[c] = vertex[corner[c]], t.flat[c] = flat[corner[c]];
        g.triangles.push_back(t);
      }
    }
  Seam seam{SeamKind::PickUp, {}};
  for (std::size_t i = 0; i < n; ++i)
    seam.pairs.emplace_back(strip.chain[i], out.rows.front()[i]);
  g.seams.push_back(std::move(seam));
  std::vector<int> rim;
  for (const int v : out.rows.back())
    rim.push_back(pointOf(v));
  g.rims.push_back(std::move(rim));
  return out;
}

int rowsFor(SewnGarment& g, Divided which, double width, int multiple) {
  int& rows = g.parts[std::size_t(which)];
  if (rows == 0)
    rows = multiple * std::max(1, int(std::lround(width / (multiple * 0.9 * g.spacing))));
  return rows;
}

std::vector<double> steps(const SewnGarment& g, const std::vector<int>& chain) {
  std::vector<double> out;
  for (std::size_t i = 1; i < chain.size(); ++i) {
    const ClothVertex &a = g.vertices[std::size_t(chain[i - 1])],
                      &b = g.vertices[std::size_t(chain[i])];
    // From piece to piece (front to back at the shoulder) the chain steps along the back.
    const bool same = a.panel == b.panel;
    out.push_back(same ? (a.at - b.at).norm() : 0);
  }
  for (std::size_t i = 0; i < out.size(); ++i)
    if (out[i] <= 0) out[i] = i > 0 ? out[i - 1] : g.spacing;
  return out;
}

std::vector<double> times(std::vector<double> lengths, double by) {
  for (double& l : lengths)
    l *= by;
  return lengths;
}

// Closes a front band on the middle line, all the way up its `count` first columns.
void close(SewnGarment& g, const StripEdges& band, std::size_t count, int rows) {
  const std::vector<int>& middle = band.rows[std::size_t(rows / 2)];
  const std::vector<int>& joined = band.rows.front();
  double y = 0;
  for (std::size_t i = 0; i < count; ++i) {
    if (i > 0)
      y += std::abs(g.vertices[std::size_t(joined[i])].at.x() -
                    g.vertices[std::size_t(joined[i - 1])].at.x());
    double nearest = 1e9;
    for (const double b : g.pattern.fronts.buttons)
      nearest = std::min(nearest, std::abs(b - y));
    const int p = g.vertices[std::size_t(middle[i])].point;
    g.closures.push_back(
        {{p, p, p}, {1, 0, 0}, nearest < 0.6 * g.spacing ? kAtButton : kBetweenButtons});
  }
}

} // namespace

void addStrips(SewnGarment& g, const Chains& chains) {
  const FrontPattern& fronts = g.pattern.fronts;
  const NeckPattern& neck = g.pattern.neck;
  std::vector<int> neckChain = chains.neck;
  const bool bands = fronts.open && fronts.pickedUp && fronts.bandWidth > 0;
  if (bands) {
    Strip strip;
    strip.id = PanelId::FrontBand;
    strip.chain = chains.frontClosing;
    strip.width = fronts.bandWidth;
    strip.rows = rowsFor(g, Divided::FrontBand, strip.width, 2);
    if (fronts.neckInOne)
      strip.chain.insert(strip.chain.end(), chains.neck.begin() + 1, chains.neck.end());
    strip.joined = steps(g, strip.chain);
    strip.free = strip.joined;
    const std::size_t opening = chains.frontClosing.size();
    if (fronts.neckInOne)
      for (std::size_t i = opening - 1; i < strip.free.size(); ++i)
        strip.free[i] *= neck.innerShare;
    const StripEdges edges = add(g, strip);
    close(g, edges, opening, strip.rows);
    std::vector<int> lower, upper;
    for (auto row = edges.rows.rbegin(); row != edges.rows.rend(); ++row) {
      lower.push_back(g.vertices[std::size_t(row->front())].point);
      upper.push_back(row->back());
    }
    g.rims.push_back(lower);
    // The neck goes on over the top of the band, from its free edge on.
    if (!fronts.neckInOne) neckChain.insert(neckChain.begin(), upper.begin(), upper.end() - 1);
  }
  if (neck.width > 0 && !(bands && fronts.neckInOne)) {
    Strip strip;
    strip.id = PanelId::NeckBand;
    strip.chain = neckChain;
    strip.width = neck.width;
    strip.rows = rowsFor(g, Divided::NeckBand, strip.width, 1);
    strip.joined = steps(g, strip.chain);
    strip.free = times(strip.joined, neck.innerShare);
    add(g, strip);
  }
  const SleevePattern& sleeve = g.pattern.sleeve;
  if (sleeve.cuffBand > 0) {
    Strip strip;
    strip.id = PanelId::Cuff;
    strip.fabric = Fabric::Rib;
    strip.chain = chains.cuff;
    strip.width = sleeve.cuffBand;
    strip.below = true;
    strip.rows = rowsFor(g, Divided::Cuff, strip.width, 1);
    const std::vector<double> edge = steps(g, strip.chain);
    const double share = sleeve.cuffGirth / std::max(lengthOf(sleeve.castOn), 1e-6);
    strip.joined = strip.free = times(edge, share);
    const StripEdges edges = add(g, strip);
    g.cuffEdge.clear();
    for (const int v : edges.rows.back())
      g.cuffEdge.push_back(g.vertices[std::size_t(v)].point);
  }
}

} // namespace scye
