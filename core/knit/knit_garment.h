// The garment in whole stitches and rows: every piece as a row table, the knitted edges measured
// and the sleeve cap searched so that they fit. A pure function of the draft. What cannot be
// knitted is told in `impossible`; the pieces that can are there all the same.
#pragma once

#include "knit/buttonholes.h"
#include "knit/lattice.h"
#include "knit/row_table.h"
#include "shaping/scye_shaping.h"

namespace scye {

// How a piece begins, above its cast-on.
enum class EdgeMade : std::uint8_t { Ribbed, Plain, Garter, Faced };

// A piece with the rows where its parts begin, for directions and pictures. -1: the piece has no
// such row.
struct KnitPiece {
  PieceId id = PieceId::Back;
  std::vector<Section> sections;
  RowTable rows;
  Rows hemRows{0}; // rib, or facing with the rows of its fold
  EdgeMade edge = EdgeMade::Ribbed;
  RibStitch rib; // of a ribbed edge
  RibSides sides = RibSides::BothSewn;
  Stitches selvedge{1}; // that a sewn edge carries
  Stitches band{0};     // of a band that is knitted on, at the free edge, up to the neck
  Rows foldRow{-1};     // RS, purled, along which a facing is folded
  Rows underarmRow{-1}; // RS
  Rows shoulderRow{-1}; // the first shoulder bind-off (RS) or turn (WS)
  Rows splitRow{-1};    // RS, where a neck or slit divides the piece
  Rows neckRow{-1};     // the first neck bind-off or decrease
  Rows crownRow{-1};
  StitchSize size; // of the fabric it is planned in; zero: the garment's
  [[nodiscard]] const StitchSize& fabric(const StitchSize& garment) const {
    return size.width > 0 && size.height > 0 ? size : garment;
  }

  [[nodiscard]] Stitches castOn() const {
    return rows.empty() ? Stitches(0) : rows.front().stitches();
  }
  [[nodiscard]] Rows lastRow() const; // the highest row of any section
  // Stitches that a rib goes without in this row, until those above it are added.
  [[nodiscard]] Stitches addedAfter(Rows row) const;
  bool operator==(const KnitPiece&) const = default;
};

// Wanted against knitted, cm.
struct Rounded {
  std::string key; // phrase "knitted.<key>"
  Field field;     // where it is set
  double wanted = 0, knitted = 0;
  double grain = 0; // size of one stitch or row; 0: free to give way
};

struct ArmholeFit {
  Schedule capRight, capLeft; // the sleeve's two edges
  EdgeLength armhole;         // cm, back and front edge of one armhole, as knitted
  EdgeLength cap;             // cm, both edges of the cap that is sewn into it
  // Of a stitch along these edges as they really are; zero: the garment's.
  StitchSize backStitch, frontStitch, capStitch;
  // By the mean of the three measures of an edge.
  [[nodiscard]] double mismatch(double ease) const { return (cap - armhole).mean() - ease; }
};

struct KnitGarment {
  Lattice lattice;
  std::vector<KnitPiece> pieces;
  ArmholeShaping backArmhole, frontArmhole;
  Buttonholes buttonholes; // of a jacket whose band is knitted on
  bool capKnitted = false;
  CapShaping cap;         // of both sleeves, which are mirror images
  ArmholeFit left, right; // the wearer's armholes
  double easeWanted = 0;
  double deviation = 0; // stitches, the largest of armholes and cap
  std::vector<Rounded> rounded;
  std::vector<PieceId> impossible; // pieces whose stitches run out before their shaping does
  bool gaugeUsable = true;         // false: nothing is worked out in stitches

  [[nodiscard]] const KnitPiece* piece(PieceId id) const;
  [[nodiscard]] double mismatch() const; // the larger of both sides, cm, signed
};

// What is asked of the cap; its underarms and the armholes are still to be filled in.
[[nodiscard]] CapRequest capRequest(const GarmentDraft& draft, const Lattice& lattice);
// Of an upright cap: the back half's share of its whole edge.
[[nodiscard]] std::optional<double> uprightBackShare(const GarmentDraft& draft);

// Whether there are stitches in every row for what is worked in it, and none at the end of each
// side.
[[nodiscard]] bool worksOut(const KnitPiece& piece);

// Finer than this no one knits by hand, and the search for a cap would take long.
inline constexpr double kFinestGauge = 60; // stitches in 10 cm

// Cost: about 0.7 ms at 22/30, most of it the search for the cap.
[[nodiscard]] KnitGarment knitGarment(const GarmentDraft& draft);

} // namespace scye
