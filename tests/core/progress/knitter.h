// Somebody who knits a garment from its plans: her gauge and her armholes are not the swatch's and
// the draft's, and nothing but what she measures tells of it.
#pragma once

#include "progress/refit.h"

#include <gtest/gtest.h>
#include <random>

namespace scye {

[[nodiscard]] std::vector<std::string> demoNames();
[[nodiscard]] Design demoDesign(const std::string& name);

class Knitter {
public:
  Knitter(const Design& design, unsigned seed);

  void knitsTheBodice();
  void knitsToARandomRowOfTheSleeves();
  void refits(); // and rips back where she is told to
  void finishes();

  // Every piece is what the virtual knitter makes of its steps, to the last row.
  [[nodiscard]] bool countsAgree() const;
  // cm: of both armholes the one where cap - armhole - ease is worse, from the row tables by the
  // columns of their edges.
  [[nodiscard]] double worstSeam() const;
  [[nodiscard]] int ripped() const { return ripped_; }
  [[nodiscard]] const Work& work() const { return work_; }

private:
  [[nodiscard]] double armholeOf(PieceId piece, EdgeSide edge) const;
  void works(PieceId piece, int lines);

  std::mt19937 random_;
  GarmentDraft draft_;
  KnitGarment design_;
  Work work_;
  StitchSize real_;
  double armholeOff_ = 0; // share of each edge
  int ripped_ = 0;
};

} // namespace scye
