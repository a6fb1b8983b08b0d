// What a picture of the garment worn is drawn from: cloth of both halves, the form, lines, buttons
// and the numbers of notches. Made once for a drape and looked at from many sides.
#pragma once

#include "worn/dressing.h"
#include "worn/surface.h"
#include "worn/view.h"

namespace scye {

enum class ClothLook : std::uint8_t { Plain, Rib, Band, Facing };

struct DrawnCloth {
  Surface surface;
  std::vector<Eigen::Vector2f> stitch; // on the piece, in stitches and rows
  std::vector<float> open;             // how much light of the room reaches a point, 0 to 1
  std::vector<float> pull;             // stretch of the cloth there, 0 none to 1 most shown
  std::vector<ClothLook> look;         // of each triangle, below its
  std::vector<float> upTo;             // row; above it is plain
};

enum class StrokeKind : std::uint8_t { Seam, Edge, Thread, Notch };
struct DrawnLine {
  StrokeKind kind = StrokeKind::Seam;
  Vec3f from = Vec3f::Zero(), to = Vec3f::Zero();
};
struct DrawnButton {
  Vec3f at = Vec3f::Zero(), normal = Vec3f::UnitZ();
  float radius = 0.9f;
};
struct DrawnNumber { // of a notch
  int number = 1;
  Vec3f at = Vec3f::Zero();
};

struct WornScene {
  DrawnCloth cloth;
  Surface trunk, arms;
  std::vector<float> trunkOpen, armsOpen;
  std::vector<DrawnLine> lines;
  std::vector<DrawnButton> buttons;
  std::vector<DrawnNumber> numbers;
  Extent extent;
  bool pulls = false; // the cloth is coloured by `pull`
};

struct SceneOptions {
  bool pulls = false;
  double sleevesOff = 0; // cm the sleeves are drawn off along their threads; the arms then go
};

// The stretch at which the scale of "where it pulls" ends; only ever told as less or more.
inline constexpr double kMostPull = 0.25;

// `trunk`: trunkSurface of the form, which does not change with the drape.
[[nodiscard]] WornScene sceneOf(const Worn& worn, const Surface& trunk,
                                const SceneOptions& options = {});
// Fills in how much light reaches the points, which is not needed while things move; cost: 20 ms.
void lightUp(WornScene& scene);

} // namespace scye
