// Somebody who knits a garment from its plans: the gauge and the armholes are not the swatch's and
// the draft's, and nothing but what is measured tells of it.
#pragma once

#include "progress/refit.h"

#include <gtest/gtest.h>
#include <random>
#include <span>

namespace scye {

[[nodiscard]] std::vector<std::string> demoNames();
[[nodiscard]] Design demoDesign(const std::string& name);

class Knitter {
public:
  Knitter(const Design& design, unsigned seed);

  // A row of any piece. Mostly the pieces before it are finished; sometimes sleeves are begun
  // first, or several pieces at once.
  void knitsToARandomRow();
  // What can be measured by now: stitches and rows from 10 cm on, armholes of finished pieces.
  // Sometimes a gauge that is told to be another one is answered by other stitch counts.
  void measures();
  void refits(); // and rips back where told to
  void finishesTheBodice();
  void finishes();

  // Every piece is what the virtual knitter makes of its steps, to the last row.
  [[nodiscard]] bool countsAgree() const;
  // cm: of both armholes the one where cap - armhole - ease is worse, from the row tables by the
  // columns of their edges.
  [[nodiscard]] double worstSeam() const;
  // Back and front have the same rows along their side seams and armholes.
  [[nodiscard]] bool seamsMeet() const;
  [[nodiscard]] int ripped() const { return ripped_; }
  [[nodiscard]] int recounts() const { return recounts_; }
  [[nodiscard]] bool stoppedInTheBodice() const { return stoppedInTheBodice_; }
  [[nodiscard]] const Work& work() const { return work_; }

private:
  [[nodiscard]] double armholeOf(PieceId piece, EdgeSide edge) const;
  void works(PieceId piece, int lines);
  [[nodiscard]] int index(int below); // 0 .. below - 1
  void goTo(std::span<const PieceId> order, int lines);

  std::mt19937 random_;
  GarmentDraft draft_;
  KnitGarment design_;
  Work work_;
  StitchSize real_;
  double armholeOff_ = 0; // share of each edge
  int ripped_ = 0, recounts_ = 0;
  bool stoppedInTheBodice_ = false;
};

} // namespace scye
