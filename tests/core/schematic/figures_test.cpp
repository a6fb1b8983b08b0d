// Every figure on the drawing says how long what it measures is: by the value behind it, and by the
// outline that is drawn. Labels are read as a knitter reads them.
#include "schematic/schematic.h"

#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace scye::figures {
namespace {

// Points of an outline by what meets there, from the edges' names alone.
class Outline {
public:
  explicit Outline(const Piece& piece) : piece_(piece) {}

  // Ends of all edges of a kind.
  [[nodiscard]] std::vector<Vec2> ends(EdgeKind kind) const {
    std::vector<Vec2> out;
    for (const PieceEdge& e : piece_.edges)
      if (e.kind == kind) out.push_back(e.path.start()), out.push_back(e.path.end());
    return out;
  }
  [[nodiscard]] double low(EdgeKind kind, int axis) const {
    double least = 1e9;
    for (const Vec2& p : ends(kind))
      least = std::min(least, p[axis]);
    return least;
  }
  [[nodiscard]] double high(EdgeKind kind, int axis) const {
    double most = -1e9;
    for (const Vec2& p : ends(kind))
      most = std::max(most, p[axis]);
    return most;
  }
  [[nodiscard]] double width(EdgeKind kind) const { return high(kind, 0) - low(kind, 0); }
  [[nodiscard]] double height(EdgeKind kind) const { return high(kind, 1) - low(kind, 1); }
  [[nodiscard]] double length(EdgeKind kind) const {
    double sum = 0;
    for (const PieceEdge& e : piece_.edges)
      if (e.kind == kind) sum += e.path.length();
    return sum;
  }

private:
  const Piece& piece_;
};

using Lengths = std::map<Field, double>;

// As the outline has them; what it does not tell by itself is left out.
Lengths byOutline(const Piece& piece) {
  const Outline o(piece);
  using enum EdgeKind;
  Lengths out;
  switch (piece.id) {
  case PieceId::Sleeve:
  case PieceId::LeftSleeve:
    out[Field::UpperArm] = o.width(Underarm);
    out[Field::SleeveLength] = o.low(Underarm, 1);
    out[Field::CapHeight] = o.high(Crown, 1) - o.low(Underarm, 1);
    out[Field::SleeveToShoulder] = o.high(Crown, 1);
    out[Field::CrownWidth] = o.length(Crown);
    out[Field::Wrist] = out[Field::CuffGirth] = o.width(CastOn);
    break;
  case PieceId::Back:
  case PieceId::Front:
    out[Field::Bust] = o.width(Underarm);
    out[Field::CrossShoulder] = o.high(Armhole, 0) - o.low(Armhole, 0);
    // The shoulder tips are the armholes' upper ends.
    for (const PieceEdge& e : piece.edges)
      if (e.kind == Armhole) {
        const Vec2 a = e.path.start(), b = e.path.end();
        out[Field::CrossShoulder] = 2 * std::abs((a.y() > b.y() ? a : b).x());
      }
    out[Field::NeckWidth] = o.width(Neck);
    out[Field::ShoulderDrop] = o.height(Shoulder);
    out[Field::ArmholeDepth] = o.low(Shoulder, 1) - o.low(Underarm, 1);
    out[Field::Hip] = out[Field::EaseHip] = o.width(CastOn);
    break;
  case PieceId::LeftFront:
  case PieceId::RightFront:
    out[Field::ShoulderLength] = o.length(Shoulder);
    out[Field::ArmholeDepth] = o.low(Shoulder, 1) - o.low(Underarm, 1);
    out[Field::Hip] = out[Field::EaseHip] = o.width(CastOn);
    break;
  }
  return out;
}

// As the values have them; half a girth a piece.
Lengths byValue(const GarmentDraft& g, PieceId piece) {
  const Sizes& s = g.sizes;
  Lengths out;
  if (piece == PieceId::Sleeve || piece == PieceId::LeftSleeve) {
    out[Field::UpperArm] = s.finished(Field::UpperArm);
    for (const Field f : {Field::CapHeight, Field::CrownWidth, Field::FullGirth})
      out[f] = s[f];
    if (s.style.sleeveFrom == SleeveFrom::Underarm)
      out[Field::SleeveLength] = s[Field::SleeveLength];
    return out;
  }
  out[Field::ArmholeDepth] = s.finished(Field::ArmholeDepth);
  out[Field::HemToUnderarm] = s.finished(Field::HemToUnderarm);
  if (piece != PieceId::Back && piece != PieceId::Front) return out;
  out[Field::CrossShoulder] = s.finished(Field::CrossShoulder);
  out[Field::CrossBack] = s.finished(Field::CrossBack);
  out[Field::CrossFront] = s.finished(Field::CrossFront);
  out[Field::ShoulderDrop] = s[Field::ShoulderDrop];
  if (piece == PieceId::Back) out[Field::Bust] = s[Field::BackShare] * s.finished(Field::Bust);
  return out;
}

struct Told {
  Field field;
  double length;
};

// The figures of a group: each hot spot is the box of its label.
std::vector<Told> told(const Group& group) {
  std::vector<Told> out;
  for (const HotSpot& h : group.hotSpots)
    for (const Label& l : group.labels) {
      const Box box = labelBox(l);
      if ((box.low - h.box.low).norm() > 1e-9 || (box.high - h.box.high).norm() > 1e-9) continue;
      const std::size_t unit = l.text.find(" cm");
      if (unit == std::string::npos) continue;
      out.push_back({h.field, std::stod(l.text.substr(0, unit))});
    }
  return out;
}

constexpr double kShown = 0.05 + 1e-6; // figures are told to a millimetre

TEST(Figures, areThoseOfTheOutlineAndOfTheValues) {
  test::RandomDesigns random(test::propertySeed(6401));
  std::map<Field, int> outlines, values;
  for (int i = 0; i < 400; ++i) {
    const GarmentDraft g = draftGarment(random.plausible());
    if (!g.cap.found) continue;
    const bool sound = std::none_of(g.findings.begin(), g.findings.end(),
                                    [](const Finding& f) { return f.severity != Severity::Note; });
    const Picture picture = pieceSchematic(g, builtinPhrases(), {});
    for (const Group& group : picture.groups) {
      ASSERT_TRUE(group.piece);
      const Lengths drawn = byOutline(*g.piece(*group.piece)), set = byValue(g, *group.piece);
      for (const auto& [field, length] : told(group)) {
        SCOPED_TRACE(std::to_string(i) + ' ' + group.id + ' ' + std::string(info(field).key));
        if (const auto at = drawn.find(field); at != drawn.end()) {
          EXPECT_NEAR(length, at->second, kShown) << "by the outline";
          ++outlines[field];
        }
        // What cannot be drawn as it was set is told as it is drawn; findings say so.
        if (const auto at = set.find(field); at != set.end() && sound) {
          EXPECT_NEAR(length, at->second, kShown) << "by the value";
          ++values[field];
        }
      }
    }
  }
  for (const Field f :
       {Field::Bust, Field::CrossShoulder, Field::NeckWidth, Field::ShoulderDrop,
        Field::ArmholeDepth, Field::UpperArm, Field::SleeveLength, Field::CapHeight,
        Field::SleeveToShoulder, Field::CrownWidth, Field::Wrist, Field::ShoulderLength})
    EXPECT_GT(outlines[f], 20) << info(f).key;
  for (const Field f : {Field::Bust, Field::CrossShoulder, Field::ArmholeDepth,
                        Field::HemToUnderarm, Field::UpperArm, Field::SleeveLength,
                        Field::CapHeight, Field::ShoulderDrop, Field::CrossBack})
    EXPECT_GT(values[f], 10) << info(f).key;
}

} // namespace
} // namespace scye::figures
