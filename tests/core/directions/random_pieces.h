// Invented pieces for property tests: acts in runs and alone, at either edge, on either side, with
// and without a divided neck; short rows at one edge or both, facings, a row that is spread,
// buttonholes. Nobody would wear them; whoever tells and knits them right will do so with any.
#pragma once

#include "knit/knit_garment.h"
#include "support/random_designs.h"

namespace scye::test {

class RandomPieces {
public:
  explicit RandomPieces(std::uint64_t seed) : random_(seed) {}
  [[nodiscard]] KnitPiece next();

private:
  void hem(KnitPiece& piece);
  void spread(Section& body, int row);
  void shape(Section& section, int from, int last, Shapes right, Shapes left);
  [[nodiscard]] int shortRows(Section& section, int row, int last, Shapes right, Shapes left);
  void buttonholes(Section& section, int above);
  void divide(KnitPiece& piece, Section body);
  void bindOffAll(Section& section);

  RandomDesigns random_;
  int count_ = 0; // on the needle
};

} // namespace scye::test
