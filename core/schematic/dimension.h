// Dimensions in the manner of ISO 129-1: extension lines with a small gap, a dimension line with
// filled arrowheads, the figure above the line, read from below or from the right. Each is told its
// features and the places where its line may run, the best first, and takes the first one where no
// figure lies on another, on a line, beside another dimension's line, or on what was to be avoided;
// where there is none, the one with the fewest clashes. What was placed earlier stays. Cost: about
// 2 us where the first place is free.
#pragma once

#include "schematic/picture.h"

namespace scye {

struct Dimension {
  Vec2 from = Vec2::Zero(), to = Vec2::Zero(); // the features
  std::string text;
  std::optional<Field> field;
  Role role = Role::Measure;
  bool orNone = false; // left out where every place clashes
};

class Dimensions {
public:
  // Stays clear of the labels that the group has already.
  Dimensions(Group& group, double textHeight);

  // Lines that a figure should not lie on. Curves by their chords.
  void avoid(const Path& path);

  void level(const Dimension& d, const std::vector<double>& ys);   // the distance across
  void upright(const Dimension& d, const std::vector<double>& xs); // the height
  // Along from -> to, its line so far to the left of that direction.
  void sloping(const Dimension& d, const std::vector<double>& offsets);
  // Words at the first of the places where they lie on nothing, else at the last.
  void label(Label label, const std::vector<Vec2>& places);
  [[nodiscard]] bool isFree(const Label& label) const;
  // Likewise, but left out where every place is taken.
  void labelIfFree(Label label, const std::vector<Vec2>& places);

private:
  struct Line {
    Vec2 a, b;
  };
  struct Drawn {                 // a dimension as it would be
    std::vector<Line> lines;     // the dimension line last
    Vec2 arrowAt[2], arrowTo[2]; // tips, and the ways they point
    Label label;
  };
  enum class Figure : std::uint8_t { Middle, NearTo, NearFrom, BeyondTo, BeyondFrom };

  void place(const Dimension& d, const Vec2& along, const std::vector<double>& offsets);
  [[nodiscard]] Drawn drawn(const Dimension& d, const Vec2& along, double offset,
                            Figure figure) const;
  [[nodiscard]] int clashes(const Drawn& drawn) const;
  [[nodiscard]] int clashes(const Box& figure) const;
  void commit(const Dimension& d, const Drawn& drawn);

  Group& group_;
  double h_;
  std::vector<Line> lines_; // of earlier dimensions, and to be avoided
  std::vector<Line> runs_;  // the earlier dimension lines alone
  std::vector<Box> figures_;
};

} // namespace scye
