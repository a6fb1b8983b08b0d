#include "worn/piece_mesh.h"

#include "worn/triangulation.h"

#include <Eigen/Sparse>
#include <Eigen/SparseCholesky>
#include <set>

namespace scye {
namespace {

void closeRuns(PieceMesh& mesh, const SeamLines& runs) {
  mesh.runs.clear();
  int next = 0;
  for (const Line& run : runs) {
    std::vector<int> points;
    for (std::size_t i = 0; i + 1 < run.size(); ++i)
      points.push_back(next++);
    mesh.runs.push_back(std::move(points));
  }
  mesh.edgePoints = next;
  for (std::size_t k = 0; k < runs.size(); ++k)
    mesh.runs[k].push_back(mesh.runs[(k + 1) % runs.size()].front());
}

std::vector<Vec2> edgeOf(const SeamLines& runs) {
  std::vector<Vec2> edge;
  for (const Line& run : runs)
    edge.insert(edge.end(), run.begin(), run.end() - 1);
  return edge;
}

double distanceTo(const Vec2& a, const Vec2& b, const Vec2& p) {
  const Vec2 d = b - a;
  const double t = std::clamp((p - a).dot(d) / std::max(d.squaredNorm(), 1e-18), 0.0, 1.0);
  return (a + t * d - p).norm();
}

double doubleArea(const std::vector<Vec2>& at, const std::array<int, 3>& t) {
  const Vec2 a = at[std::size_t(t[0])], b = at[std::size_t(t[1])] - a,
             c = at[std::size_t(t[2])] - a;
  return b.x() * c.y() - b.y() * c.x();
}

} // namespace

Line evenly(const Line& line, int parts) {
  Line out;
  const double length = lengthOf(line);
  for (int i = 0; i < parts; ++i)
    out.push_back(pointAt(line, length * i / parts));
  out.push_back(line.back());
  return out;
}

PieceMesh meshed(const SeamLines& runs, double spacing) {
  PieceMesh mesh;
  closeRuns(mesh, runs);
  const std::vector<Vec2> edge = edgeOf(runs);
  mesh.at = edge;
  Box box;
  for (const Vec2& p : edge)
    box.add(p);
  const double rise = spacing * std::sqrt(0.75);
  constexpr double kClear =
      0.7; // of the spacing: inner points keep off the edge, small triangles tear first
  int row = 0;
  for (double y = box.low.y() + 0.8 * spacing; y < box.high.y(); y += rise, ++row) {
    const double from = std::floor(box.low.x() / spacing) * spacing + (row % 2 ? 0.5 : 0) * spacing;
    for (double x = from; x < box.high.x(); x += spacing) {
      const Vec2 p(x, y);
      if (!isInside(edge, p)) continue;
      bool clear = true;
      for (std::size_t i = 0; i < edge.size() && clear; ++i)
        clear = distanceTo(edge[i], edge[(i + 1) % edge.size()], p) > kClear * spacing;
      if (clear) mesh.at.push_back(p);
    }
  }
  mesh.triangles = triangulated(mesh.at, mesh.edgePoints);
  return mesh;
}

std::optional<PieceMesh> morphed(const PieceMesh& mesh, const SeamLines& runs) {
  if (runs.size() != mesh.runs.size()) return std::nullopt;
  for (std::size_t k = 0; k < runs.size(); ++k)
    if (runs[k].size() != mesh.runs[k].size()) return std::nullopt;
  const std::vector<Vec2> edge = edgeOf(runs);
  const int fixed = mesh.edgePoints, inner = int(mesh.at.size()) - fixed;
  PieceMesh out = mesh;
  for (int i = 0; i < fixed; ++i)
    out.at[std::size_t(i)] = edge[std::size_t(i)];
  if (inner > 0) {
    std::set<std::pair<int, int>> edges;
    for (const auto& t : mesh.triangles)
      for (std::size_t k = 0; k < 3; ++k)
        edges.insert(std::minmax(t[k], t[(k + 1) % 3]));
    std::vector<Eigen::Triplet<double>> entries;
    Eigen::MatrixX2d moved = Eigen::MatrixX2d::Zero(inner, 2);
    const auto half = [&](int i, int j) {
      if (i < fixed) return;
      entries.emplace_back(i - fixed, i - fixed, 1.0);
      if (j >= fixed)
        entries.emplace_back(i - fixed, j - fixed, -1.0);
      else
        moved.row(i - fixed) += (out.at[std::size_t(j)] - mesh.at[std::size_t(j)]).transpose();
    };
    for (const auto& [i, j] : edges)
      half(i, j), half(j, i);
    Eigen::SparseMatrix<double> laplacian(inner, inner);
    laplacian.setFromTriplets(entries.begin(), entries.end());
    const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> solver(laplacian);
    const Eigen::MatrixX2d shift = solver.solve(moved);
    for (int i = 0; i < inner; ++i)
      out.at[std::size_t(fixed + i)] += shift.row(i).transpose();
  }
  for (const auto& t : out.triangles)
    if (doubleArea(out.at, t) <= 1e-9) return std::nullopt;
  return out;
}

} // namespace scye
