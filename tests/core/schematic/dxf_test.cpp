// DXF is read back by group codes alone, as "DXF Reference" (Autodesk, release 12) lists them: a
// reader that shares nothing with the writer.
#include "schematic/dxf.h"

#include "garments.h"
#include "knit/on_stitches.h"
#include "schematic/blocking.h"
#include "schematic/schematic.h"

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <sstream>

namespace scye::test {
namespace {

struct Entity {
  std::string type, layer, text;
  bool closed = false;
  std::vector<Vec2> points; // mm
  double height = 0;
};

struct Drawing {
  std::string version;
  std::set<std::string> layers;
  std::vector<Entity> entities;
  bool ended = false;
};

Drawing read(const std::string& dxf) {
  Drawing drawing;
  std::istringstream in(dxf);
  std::string code, value, section, name, table;
  Entity* at = nullptr;
  bool vertex = false, header = false;
  while (std::getline(in, code) && std::getline(in, value)) {
    const int group = std::stoi(code);
    if (group == 0) {
      vertex = value == "VERTEX";
      table = value;
      if (value == "EOF") drawing.ended = true;
      if (value == "POLYLINE" || value == "TEXT") {
        drawing.entities.push_back({value, {}, {}, false, {}, 0});
        at = &drawing.entities.back();
      } else if (vertex) {
        at->points.emplace_back(0, 0);
      } else {
        at = nullptr;
        if (value == "SEQEND") continue;
      }
      if (vertex) at = &drawing.entities.back();
      continue;
    }
    if (group == 9) header = value == "$ACADVER";
    if (group == 1 && header) drawing.version = value, header = false;
    if (group == 2 && table == "LAYER") drawing.layers.insert(value);
    if (!at) continue;
    if (group == 8) at->layer = value;
    if (group == 1) at->text = value;
    if (group == 40) at->height = std::stod(value);
    if (group == 70 && !vertex) at->closed = value == "1";
    if (vertex && group == 10) at->points.back().x() = std::stod(value);
    if (vertex && group == 20) at->points.back().y() = std::stod(value);
  }
  return drawing;
}

double lengthOf(const Entity& e) {
  double sum = 0;
  for (std::size_t i = 1; i < e.points.size(); ++i)
    sum += (e.points[i] - e.points[i - 1]).norm();
  if (e.closed) sum += (e.points.front() - e.points.back()).norm();
  return sum;
}

TEST(Dxf, everyPieceIsReadBackAtItsTrueSize) {
  for (const Made& made : some(61, 20)) {
    const std::string name = made.draft.design.title;
    const GarmentDraft seams = onStitches(made.draft, made.knit);
    for (const KnitPiece& piece : made.knit.pieces) {
      const Picture picture = blockingTemplate(made.draft, made.knit, piece.id, 0.6,
                                               builtinPhrases(), LengthUnit::Centimetre);
      const Drawing drawing = read(pictureAsDxf(picture));
      EXPECT_EQ(drawing.version, "AC1009");
      EXPECT_TRUE(drawing.ended);
      std::map<std::string, std::vector<Entity>> byLayer;
      for (const Entity& e : drawing.entities) {
        EXPECT_TRUE(drawing.layers.contains(e.layer)) << e.layer;
        byLayer[e.layer].push_back(e);
      }
      ASSERT_EQ(byLayer["SEAM"].size(), 1u) << name;
      ASSERT_EQ(byLayer["OUTLINE"].size(), 1u);
      const Entity& seam = byLayer["SEAM"].front();
      EXPECT_TRUE(seam.closed);
      const bool turned = piece.id == PieceId::LeftSleeve;
      const Path right = seams.piece(turned ? PieceId::Sleeve : piece.id)->outline();
      const Path drafted = turned ? right.mirroredX() : right;
      EXPECT_NEAR(lengthOf(seam), 10 * drafted.length(), 1e-4 * 10 * drafted.length()) << name;
      Box read, drawn;
      for (const Vec2& p : seam.points)
        read.add(Vec2(p / 10));
      drawn.add(drafted);
      EXPECT_TRUE(read.low.isApprox(drawn.low, 2e-3)) << read.low.transpose();
      EXPECT_TRUE(read.high.isApprox(drawn.high, 2e-3)) << read.high.transpose();
      // As wide as the stitches of its widest row.
      int widest = 0;
      for (const RowLine& line : piece.rows)
        if (line.section == SectionId::Undivided)
          widest = std::max(widest, line.stitches().value());
      Box fabric;
      for (const Vec2& p : byLayer["OUTLINE"].front().points)
        fabric.add(p);
      EXPECT_NEAR(fabric.size().x(), 10 * widest * made.knit.lattice.size.width,
                  20 * made.knit.lattice.size.width);
      EXPECT_FALSE(byLayer["NOTCHES"].empty());
      EXPECT_FALSE(byLayer["TEXT"].empty());
    }
  }
}

TEST(Dxf, whatIsNotAsciiIsWrittenByItsNumber) {
  Picture picture;
  Group g;
  g.labels.push_back({{0, 0}, "Ärmel ½\n70\n1", Role::Caption, 0.5, Anchor::Start, 0});
  picture.groups.push_back(g);
  const std::string dxf = pictureAsDxf(picture);
  EXPECT_NE(dxf.find("\\U+00C4rmel \\U+00BD"), std::string::npos) << dxf;
  for (const char c : dxf)
    EXPECT_TRUE((c >= 0x20 && c < 0x7F) || c == '\n');
  EXPECT_EQ(read(dxf).entities.size(), 1u) << "a line break in a text ends no line";
}

TEST(Dxf, curvesAreLeftByLessThanTheTolerance) {
  Picture picture;
  Group g;
  const Cubic curve{{Vec2(0, 0), Vec2(0, 20), Vec2(30, 20), Vec2(30, 0)}};
  Path path(curve.start());
  path.cubicTo(curve.p[1], curve.p[2], curve.end());
  g.strokes.push_back({path, Role::Outline, false});
  picture.groups.push_back(g);
  const Drawing drawing = read(pictureAsDxf(picture));
  const auto& points = drawing.entities.at(0).points;
  ASSERT_GT(points.size(), 10u);
  for (int i = 0; i <= 5000; ++i) {
    const Vec2 on = 10 * curve.at(i / 5000.0);
    double least = 1e9;
    for (std::size_t k = 1; k < points.size(); ++k) {
      const Vec2 d = points[k] - points[k - 1];
      const double t = std::clamp((on - points[k - 1]).dot(d) / d.squaredNorm(), 0.0, 1.0);
      least = std::min(least, (points[k - 1] + t * d - on).norm());
    }
    EXPECT_LE(least, kDxfTolerance + 1e-4);
  }
}

} // namespace
} // namespace scye::test
