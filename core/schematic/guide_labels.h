// Words beside the pictures of the measuring guide: numbers close to their tapes, and callouts in a
// column either side of the drawing, each with a fine line to its place. Nothing lies on anything
// else as long as there is room: a column may grow longer than the drawing, never narrower than its
// words.
#pragma once

#include "schematic/picture.h"

namespace scye {

class GuideLabels {
public:
  GuideLabels(Group& group, double textHeight) : group_(group), h_(textHeight) {}

  // What words should not lie on: `weight` tells how much.
  void avoid(const Path& path, double weight);
  // A label beside the way, about its middle. False where every place there lies on something: then
  // there is none.
  bool beside(const Path& way, const std::string& text, Role role, std::optional<Field> field);
  // The same, but anywhere along the way, and where all places are bad at the least bad.
  void besideAnyhow(const Path& way, const std::string& text, Role role,
                    std::optional<Field> field);

  // In the column on the side of the point, beside the drawing; all are placed by finish(), after
  // which their lines are avoided too.
  void callout(const Vec2& point, const std::string& text, Role role);
  void finish(const Box& drawing);

private:
  struct Line {
    Vec2 a, b;
    double weight;
  };
  struct Callout {
    Vec2 point;
    std::string text;
    Role role;
    double y = 0;
  };
  // Of words in `box`, which lies within a region whose lines are these.
  [[nodiscard]] double cost(const Box& box, const std::vector<Line>& lines) const;
  [[nodiscard]] std::vector<Line> linesIn(const Box& region) const;
  [[nodiscard]] std::pair<Label, double> best(const Path& way, const std::string& text, Role role,
                                              double farthest) const;
  void put(const Label& label, std::optional<Field> field);
  void column(std::vector<Callout> callouts, double x, Anchor anchor);

  Group& group_;
  double h_;
  std::vector<Line> lines_;
  std::vector<Box> boxes_;
  std::vector<Callout> callouts_;
};

} // namespace scye
