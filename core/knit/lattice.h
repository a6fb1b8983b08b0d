// The drafted garment on the lattice of whole stitches and rows: every count that the pieces share
// is decided here once. Seam lines are drafted; a sewn edge carries `selvedge` stitches more.
// Heights are even numbers of rows where a right-side row has to follow.
#pragma once

#include "knit/rib.h"
#include "seam/garment_draft.h"
#include "shaping/armhole_shaping.h"

namespace scye {

// A place on a side or sleeve seam: so many stitches further out than where the seam ends.
struct SeamPlace {
  Rows row{0};
  Stitches outward{0};
};

struct BodiceLattice {
  ArmholeShape drafted;
  double right = 0, left = 0;  // edges in stitches at the bust; a back has left = -right
  std::vector<SeamPlace> side; // from the cast-on up to the underarm
  Stitches away{0};            // at each armhole edge, down to the narrowest place;
  Stitches underarm{0};        //   of them bound off at once, and
  Stitches taken{0};           //   by the shaping
  Stitches grown{0};           // added again up to the shoulder
  Stitches shoulder{0};
  // Short rows over the bust: so many rows more than the back from row `bustRow` on (RS, the first
  // that is turned at a left edge; a right edge follows a row later), and the stitches left at each
  // turn.
  Rows longer{0}, bustRow{-1};
  std::vector<Stitches> bustTurns;
  [[nodiscard]] Stitches bust() const;
  // Stitches between the shoulders' neck ends (a whole piece), or from there to the front edge.
  [[nodiscard]] Stitches neck(bool whole) const;
};

struct Lattice {
  StitchSize size;
  Stitches selvedge{1};
  Stitches pickUp{1};                                // of a picked-up edge that its finish takes
  Rows hemRows{0};                                   // rib, or facing with its fold
  Rows foldRow{-1};                                  // RS, purled: a facing is folded there
  RibStitch rib;                                     // of the lower edges and cuffs
  bool plainGarter = false, plainGarterCuff = false; // plain edges begin with garter rows
  bool ribChange = true; // stitches are added above a rib, so that it fits its repeat
  // Of the back; in a piece that is `longer` everything from the underarm on comes so many rows
  // later.
  Rows underarmRow{0}; // RS: the bind-off at the right edge
  Rows shoulderRow{0}; // the first shoulder stitches are taken off the right edge: bound off on RS,
                       // or left waiting at the end of a WS row
  bool shoulderShortRows = false;
  bool threeNeedles = false; // shoulders by short rows wait on holders
  int shoulderSteps = 1;     // pairs of bind-offs or turns
  Rows neckTop{0};           // first row above the piece
  Stitches band{0};          // of a button band that is knitted on
  BodiceLattice back, front;
  bool oneArmhole = false; // back and front take away the same and are shaped by one schedule
  // Sleeve
  Rows cuffRows{0};
  Stitches cuffIncreases{0}; // added evenly above the cuff of a full sleeve; even
  Rows sleeveUnderarmRow{0};
  Stitches sleeveWidth{0}; // at the upper arm, selvedges included
  std::vector<SeamPlace> sleeveSeam;

  [[nodiscard]] Rows armholeRows() const { return shoulderRow - underarmRow; }
};

// Of a full sleeve's cuff, so that there are some to increase between.
inline constexpr Stitches kLeastCuff{4};

// As drafted; the underarm bind-off and the sleeve's width may then move by a stitch.
[[nodiscard]] Lattice latticeOf(const GarmentDraft& draft);

// The counts that follow from another underarm bind-off (a stitch more or less at back and front).
void moveUnderarm(Lattice& lattice, Stitches by);
// The widths that the sleeve may have at the upper arm, selvedges included: the whole numbers on
// both sides of the drafted one, nearest first; of a pattern with repeats one.
[[nodiscard]] std::vector<Stitches> sleeveWidths(const Lattice& lattice, const GarmentDraft& draft);
void setSleeveWidth(Lattice& lattice, const GarmentDraft& draft, Stitches width);

// The drafted armhole on the piece's whole-stitch width at the bust, with its whole-stitch underarm
// bind-off: the curve that its edge is shaped after and that is drawn beside it. It ends where it
// is drafted; or, `whole`, at the piece's own whole-stitch cross and shoulder widths. A schedule is
// held to both, so that rounding of the cross width is no part of its shape.
enum class CrossWidths { Drafted, Whole };
[[nodiscard]] ArmholeShape armholeOnStitches(const Lattice& lattice, const BodiceLattice& counts,
                                             CrossWidths cross = CrossWidths::Drafted);

[[nodiscard]] Rows nearestEven(double rows); // never negative
// Of the same parity as `like`.
[[nodiscard]] Stitches nearestOfParity(double stitches, Stitches like);

} // namespace scye
