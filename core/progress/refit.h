// Planning anew what is still to be knitted, for the armholes and the fabric there really are; and
// what becomes of pieces on the needles when the design is changed. Pure functions: they return the
// work as it would be, with what differs, and the caller decides.
#pragma once

#include "progress/present.h"

namespace scye {

// One figure of a piece before and after. Rows and stitches.
struct PlanChange {
  enum class What : std::uint8_t {
    Length,   // rows below the underarm
    CastOn,   // stitches
    Width,    // stitches at the underarm
    Underarm, // stitches bound off there
    Armhole,  // rows of it
    Cap,      // rows of it
    Crown,    // stitches
    Shaping,  // only when what is worked: `before` and `after` are the first row that differs
  };
  PieceId piece = PieceId::Back;
  What what = What::Cap;
  int before = 0, after = 0;
  bool operator==(const PlanChange&) const = default;
};
inline constexpr EnumKeys<PlanChange::What, PlanChange::What::Shaping> kChangeKeys{{
    {PlanChange::What::Length, "length"},
    {PlanChange::What::CastOn, "castOn"},
    {PlanChange::What::Width, "width"},
    {PlanChange::What::Underarm, "underarm"},
    {PlanChange::What::Armhole, "armhole"},
    {PlanChange::What::Cap, "cap"},
    {PlanChange::What::Crown, "crown"},
    {PlanChange::What::Shaping, "shaping"},
}};
[[nodiscard]] std::vector<PlanChange> planChanges(PieceId piece, const KnitPiece& before,
                                                  const KnitPiece& after);

// A sleeve that cannot be led to its armhole from the row it is at; or one that is finished, and
// comes out so far off that it is worth while to think about it (kFinishedNear).
struct RipBack {
  PieceId piece = PieceId::Sleeve;
  SectionId section = SectionId::Undivided;
  int row = 0;   // of its plan, to which it would have to be ripped back
  int lines = 0; // and its lines that then stay
  bool finished = false;
};

// One armhole of the wearer and the cap that is sewn into it, cm, by the mean of the measures.
struct SeamNow {
  double armhole = 0, cap = 0;
  [[nodiscard]] double ease() const { return cap - armhole; }
};

struct Refit {
  Work work; // with the plans anew
  std::vector<PlanChange> changes;
  std::vector<RipBack> ripBack;
  // The wearer's right and left, as they would come out with the old plans and with the new ones.
  std::array<SeamNow, 2> before{}, after{};
  double easeWanted = 0;
};

// So near a refitted cap comes to its armhole, or its sleeve is to be ripped back.
inline constexpr double kRefitNear = 0.3;    // cm
inline constexpr double kFinishedNear = 0.3; // cm; nearer than that it is eased in

// Sleeves that are not finished, for the real armholes in the real fabric, from the rows they are
// at; a finished one only after it has been ripped back. Bodice pieces keep their counts: their
// seams have to meet.
[[nodiscard]] Refit refit(const GarmentDraft& draft, const KnitGarment& design, const Work& work);

// Pieces of which the design would now have rows that are worked knitted otherwise.
struct WorkedConflict {
  PieceId piece = PieceId::Back;
  SectionId section = SectionId::Undivided;
  int row = 0;                                  // the first that differs
  int stitchesWorked = 0, stitchesDesigned = 0; // after it
  int lines = 0;                                // that would stay if it were ripped back
  bool canKeep = false;                         // what lies ahead can be led on from what is worked
};
[[nodiscard]] std::vector<WorkedConflict> conflicts(const GarmentDraft& draft,
                                                    const KnitGarment& design, const Work& work);
enum class Settle : std::uint8_t {
  Keep,  // what is worked stays, what lies ahead goes to the design as it is now
  Rip,   // back to the last row that is the same
  AsWas, // the whole piece stays as it was planned
};
// The work with that conflict settled. `draft` and `design`: as they are now.
[[nodiscard]] Work settled(const GarmentDraft& draft, const KnitGarment& design, const Work& work,
                           PieceId piece, Settle how);
// Plans that a change of the design reaches without touching a worked row follow it.
[[nodiscard]] Work followed(const GarmentDraft& draft, const KnitGarment& design, const Work& work);

// Rows really worked where the knitting strayed from the plan: of the piece, and of those that are
// sewn to it and have not come as far. Nothing where it cannot be.
[[nodiscard]] std::optional<Work> withStrayedRows(const KnitGarment& present,
                                                  const KnitGarment& design, const Work& work,
                                                  PieceId piece, Rows after, Rows more);

// The work with the piece ripped back so that `lines` stay.
[[nodiscard]] Work ripped(const Work& work, PieceId piece, int lines);

} // namespace scye
