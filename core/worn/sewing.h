// The pieces sewn together: one set of points in which seams are shared, with everything that the
// cloth resists. Half a garment, the wearer's left; the other half is its mirror image in x = 0,
// where the middle of back and front lies.
//
// Cap and armhole are paired by the seam walk; what is gathered or pleated is drawn up to the
// armhole. Neck bands, picked-up front bands and the cuffs of full sleeves are strips with their
// own lengths. Plain values; cost of sewing: about 15 ms, of reshaping 5 ms.
//
// Stiffness of the cloth (forces per width, dyn/cm) is common practice of cloth simulation scaled
// to plain weft-knits, not measured: a weft-knit gives about twice as easily along its courses as
// along its wales (from memory of fabric tests). Hand-knit cloth, several millimetres thick, bends
// some five times as hard as what machines knit (their 50 to 200 dyn cm from memory of fabric
// tests). So stretch is told as less or more, never as a figure.
#pragma once

#include "worn/obstacle.h"
#include "worn/piece_mesh.h"

#include <string>

namespace scye {

enum class PanelId : std::uint8_t { Back, Front, Sleeve, NeckBand, FrontBand, Cuff };
inline constexpr int kPanels = int(PanelId::Cuff) + 1;

struct ClothStiffness {
  double course = 3e4, wale = 6e4, bias = 1.5e4; // dyn/cm
  double compression = 0.3; // what resists being pushed together, compared with being pulled
  double bending = 600;     // dyn cm; cloth this thick does not fold sharply
};

// A place on a piece as it is drawn; several share a point of the cloth along seams.
struct ClothVertex {
  Vec2 at = Vec2::Zero(); // on the piece, cm
  PanelId panel = PanelId::Back;
  int point = 0;
};

struct ClothTriangle {
  std::array<int, 3> vertex{}, point{}; // counter-clockwise seen from outside
  PanelId panel = PanelId::Back;
  Fabric fabric = Fabric::Plain;
  // As it would lie relaxed, x along the courses, and the gradients of its corners' weights there.
  std::array<Vec2, 3> flat{Vec2(0, 0), Vec2(0, 0), Vec2(0, 0)};     // cm
  std::array<Vec2, 3> gradient{Vec2(0, 0), Vec2(0, 0), Vec2(0, 0)}; // 1/cm
  double area = 0;                                                  // cm^2, relaxed
};

struct Hinge {                    // two triangles that share an edge
  std::array<int, 4> point{};     // the edge's ends, then the corners that face it
  std::array<double, 4> weight{}; // of the points, so that a flat hinge has a sum of zero
  double stiffness = 0;           // dyn/cm
  bool acrossMirror = false;      // its last corner is the third one's mirror image
};

struct Thread { // a sewn seam: it gives way, but hardly stretches
  int from = 0, to = 0;
  double length = 0; // cm
};

struct Closure { // a point of a front that lies on the middle line
  std::array<int, 3> point{};
  std::array<double, 3> weight{};
  double strength = 0; // dyn/cm
};

enum class SeamKind : std::uint8_t { Side, Shoulder, Armhole, SleeveSeam, Dart, PickUp, Slit };
struct Seam {
  SeamKind kind = SeamKind::Side;
  std::vector<std::pair<int, int>> pairs; // vertices sewn to one another, in order
};

struct NotchPlace {
  int number = 1;
  bool back = false;
  int armhole = 0, cap = 0; // vertices
};

// How many parts an edge is divided into; the same on both sides of a seam.
enum class Divided : std::uint8_t {
  BackCastOn,
  FrontCastOn,
  SideLow, // all of it where there is no wedge
  SideHigh,
  Dart,
  BackUnderarm,
  BackArmhole,
  FrontUnderarm,
  FrontArmhole,
  Shoulder,
  BackNeck,
  FrontNeck,
  BackClosing,
  FrontClosing,
  SleeveCastOn,
  SleeveSeam,
  NeckBand,
  FrontBand,
  Cuff,
};
inline constexpr int kDivided = int(Divided::Cuff) + 1;

struct SewnGarment {
  WornPattern pattern;
  ClothStiffness stiffness;
  double spacing = 1.4; // of the mesh
  double gap = 0.35;    // how far the cloth's middle lies off the body: half its thickness
  std::vector<ClothVertex> vertices;
  int points = 0;
  std::vector<Layer> layer;   // of each point
  std::vector<char> onMirror; // of each point
  std::vector<double> mass;   // of each point, g
  std::vector<double> area;   // of each point, cm^2, relaxed
  std::vector<ClothTriangle> triangles;
  std::vector<Hinge> hinges;
  std::vector<Thread> threads;
  std::vector<Closure> closures;
  std::vector<std::pair<int, Vec3>> pins; // points that are held where they are
  std::vector<Seam> seams;
  std::vector<NotchPlace> notches;
  std::vector<std::vector<int>> rims; // points along free edges, for drawing
  std::vector<int> hem, cuffEdge;     // points of the lower edges of body and sleeve
  std::vector<Vec2> buttons;          // on the front, x from the centre line
  std::array<PieceMesh, 3> meshes;    // back, front, sleeve
  std::array<int, kDivided> parts{};
};

// `spacing` 0: 1.4 cm for an adult, in proportion to the girth.
[[nodiscard]] SewnGarment sewn(const WornPattern& pattern, double spacing = 0);
// The same mesh in the shape of another pattern, so that a draped state goes on; nothing where the
// pieces are too different for it.
[[nodiscard]] std::optional<SewnGarment> reshaped(const SewnGarment& garment,
                                                  const WornPattern& pattern);

// A single flat piece that nothing is sewn to, for measuring the cloth by itself; x along its
// courses.
[[nodiscard]] SewnGarment flatCloth(const PieceMesh& mesh, double areaWeight,
                                    const ClothStiffness& stiffness = {});

} // namespace scye
