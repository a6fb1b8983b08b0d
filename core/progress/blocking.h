// Blocking and making up: what each piece is to measure, what it measures as knitted and as it was
// measured, and whether blocking can bring the two together; and the making up as a list in the
// order of work.
#pragma once

#include "directions/directions.h"
#include "progress/present.h"

namespace scye {

// Wool can be drawn out or eased in by about so much of its size (common practice); more comes back
// when it is worn or washed.
inline constexpr double kBlockingReach = 0.03;

struct PieceSize {
  enum class What : std::uint8_t { Width, Cross, Depth, Length };
  PieceId piece = PieceId::Back;
  What what = What::Width;
  double wanted = 0, knitted = 0;   // cm; of seam lines, selvedges left out
  std::optional<double> measured{}; // as it would be blocked, where it was measured
  double pinOut = 0;                // to be pinned out to
  bool canBlock = true;             // from what it measures to what is wanted
};
inline constexpr EnumKeys<PieceSize::What, PieceSize::What::Length> kPieceSizeKeys{
    {{PieceSize::What::Width, "width"},
     {PieceSize::What::Cross, "cross"},
     {PieceSize::What::Depth, "depth"},
     {PieceSize::What::Length, "length"}}};
[[nodiscard]] std::vector<PieceSize> pieceSizes(const GarmentDraft& draft,
                                                const KnitGarment& design,
                                                const KnitGarment& present, const Work& work);

// One thing to do; `key` stays the same however often the list is made, so that it can be ticked.
struct MakingUpItem {
  std::string key;
  std::string text;
};
// Blocking, the finishing as the directions tell it, and each pin with its rows on both pieces.
[[nodiscard]] std::vector<MakingUpItem> makingUpList(const Directions& directions,
                                                     const Wording& wording);

} // namespace scye
