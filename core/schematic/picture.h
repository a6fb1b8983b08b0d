// A display list: what a picture consists of, in cm, y up, without a device. Canvas, PNG, PDF,
// print and SVG are all drawn from it. Text has a height in cm of the drawing: whoever shows it at
// another scale asks for the picture again with the text height that reads well there.
#pragma once

#include "curve/path.h"
#include "draft/piece.h"
#include "image/image.h"
#include "model/field.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace scye {

// What a mark means; colours and widths belong to whoever paints it.
enum class Role : std::uint8_t {
  Outline, // seam line of a piece
  Fabric,  // the filled face of a piece
  Worked,  // the part of it that is knitted already
  Guide,   // hem line, centre line, underarm line
  Measure, // dimension and extension lines, arrowheads (filled), figures
  Caption, // names of pieces, headings
  Note,    // smaller explanations
  Lit,     // what the value in hand changes
  Ghost,   // the state before, or what a remedy would give
  Knitted, // the outline in whole stitches and rows
  Armhole, // the armhole's edge in the comparison
  Cap,     // the cap's edge in the comparison
  Pair,    // ticks that join points sewn to each other
  Ease,    // where the cap is longer
  Short,   // where it is shorter
  Notch,
  Cell,     // lines between the cells of a chart
  TenCells, // every tenth of them, and breaks
  Symbol,
  NoStitch, // fine lines over what is no cell of a chart
};
inline constexpr int kRoleCount = int(Role::NoStitch) + 1;

struct Stroke {
  Path path;
  Role role = Role::Outline;
  bool filled = false; // closed and filled instead of stroked
};

enum class Anchor : std::uint8_t { Start, Middle, End };

struct Label {
  Vec2 at = Vec2::Zero(); // on the baseline
  std::string text;
  Role role = Role::Measure;
  double height = 0.5; // cm, font size
  Anchor anchor = Anchor::Middle;
  double angle = 0; // degrees, counter-clockwise
};

struct PlacedImage {
  Box box; // that it fills
  std::shared_ptr<const Image> image;
};

// A place that answers to the pointer: a figure that can be typed over.
struct HotSpot {
  Box box;
  Field field = Field::Bust;
};

struct Group {
  std::string id;    // "back", "sleeve", "comparison"
  std::string title; // for people
  std::optional<PieceId> piece;
  Vec2 origin = Vec2::Zero();      // where the piece's own (0, 0) lies in the picture
  std::vector<PlacedImage> images; // under the strokes; DXF leaves them out
  std::vector<Stroke> strokes;     // in picture coordinates, painted in order
  std::vector<Label> labels;
  std::vector<HotSpot> hotSpots;
  [[nodiscard]] Box box() const; // of everything, text by estimate
};

struct Picture {
  std::string title;
  std::vector<Group> groups;
  double textHeight = 0.5;
  double detail = 0; // cm: what must not come out smaller than kLeastDetailMm on paper; 0: nothing
  [[nodiscard]] Box box() const;
};

void moveGroup(Group& group, const Vec2& by);

// An estimate, wide enough for the common sans-serif faces: 0.62 of the height a character.
[[nodiscard]] double textWidth(std::string_view text, double height);
[[nodiscard]] Box labelBox(const Label& label);

} // namespace scye
