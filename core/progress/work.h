// What has been knitted of a design: kept beside it in its file, and no part of its history of
// changes. A plain value. A piece on the needles has a plan of its own, made when it was begun and
// changed only where its owner has it planned anew: what is worked is fixed, whatever becomes of
// the design. Lengths in cm.
#pragma once

#include "knit/knit_garment.h"
#include "model/enum_keys.h"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace scye {

// What can be read off a knitted piece.
enum class Reading : std::uint8_t {
  StitchCount, // counted over `Across`
  Across,
  RowCount, // counted over `Along`
  Along,
  Armhole, // the edge of one armhole on this piece, from the side seam to the shoulder
  Width,   // across the piece at the underarm
  Cross,   // between the armholes, at the narrowest
  Depth,   // straight down from the shoulder tip, or from a sleeve's crown, to the underarm
  Length,  // cast-on edge to underarm
};
inline constexpr int kReadings = int(Reading::Length) + 1;
inline constexpr EnumKeys<Reading, Reading::Length> kReadingKeys{
    {{Reading::StitchCount, "stitches"},
     {Reading::Across, "across"},
     {Reading::RowCount, "rows"},
     {Reading::Along, "along"},
     {Reading::Armhole, "armhole"},
     {Reading::Width, "width"},
     {Reading::Cross, "cross"},
     {Reading::Depth, "depth"},
     {Reading::Length, "length"}}};
// What may stand there; outside of it a value is refused.
struct ReadingRange {
  double low, high;
};
[[nodiscard]] ReadingRange rangeOf(Reading reading);
inline constexpr double kCountedOver = 10; // cm, where nothing else is said

// In which state a piece was measured.
enum class MeasuredAs : std::uint8_t { Blocked, Unwashed };
inline constexpr EnumKeys<MeasuredAs, MeasuredAs::Unwashed> kMeasuredAsKeys{
    {{MeasuredAs::Blocked, "blocked"}, {MeasuredAs::Unwashed, "unwashed"}}};

struct Measured {
  std::array<std::optional<double>, kReadings> values{};
  MeasuredAs as = MeasuredAs::Blocked;
  [[nodiscard]] std::optional<double> operator[](Reading r) const { return values[std::size_t(r)]; }
  void set(Reading r, std::optional<double> value) { values[std::size_t(r)] = value; }
  [[nodiscard]] bool any() const;
  bool operator==(const Measured&) const = default;
};

struct RowNote {
  SectionId section = SectionId::Undivided;
  int row = 0;
  std::string text;
  bool operator==(const RowNote&) const = default;
};

// How quickly a piece goes: rows that were worked without a pause, and what they took.
struct Pace {
  int rows = 0;
  double seconds = 0;
  bool operator==(const Pace&) const = default;
};

// One piece that is, or was, on the needles, or whose plan is not the design's own. Sleeve: the
// right one; the left one is a piece of its own here even where both are alike.
struct PieceWork {
  PieceId piece = PieceId::Back;
  KnitPiece plan;
  int worked = 0; // lines of plan.rows, from the cast-on; plan.rows.size(): finished
  // Mark of the piece as the design has it (markOf) that this plan answers to.
  std::uint64_t answers = 0;
  bool ownPlan = false; // planned anew: no longer the design's own piece
  Measured measured;
  std::vector<RowNote> notes;
  Pace pace;

  [[nodiscard]] bool begun() const { return worked > 0; }
  [[nodiscard]] bool finished() const { return worked > 0 && worked >= int(plan.rows.size()); }
  bool operator==(const PieceWork&) const = default;
};

struct DiaryEntry {
  enum class Kind : std::uint8_t {
    Decision,
    Swatch,
    Begun,
    Finished,
    Measured,
    Refit,
    Kept,    // worked rows kept when the design changed
    Ripped,  // back from row `row` to row `to`
    Strayed, // `to` rows more (or less) than planned after row `row`
    Seam,
  };
  std::string on; // ISO date
  Kind kind = Kind::Decision;
  std::optional<PieceId> piece{};
  int row = 0, to = 0;
  std::string text{};
  bool operator==(const DiaryEntry&) const = default;
};
inline constexpr EnumKeys<DiaryEntry::Kind, DiaryEntry::Kind::Seam> kDiaryKeys{
    {{DiaryEntry::Kind::Decision, "decision"},
     {DiaryEntry::Kind::Swatch, "swatch"},
     {DiaryEntry::Kind::Begun, "begun"},
     {DiaryEntry::Kind::Finished, "finished"},
     {DiaryEntry::Kind::Measured, "measured"},
     {DiaryEntry::Kind::Refit, "refit"},
     {DiaryEntry::Kind::Kept, "kept"},
     {DiaryEntry::Kind::Ripped, "ripped"},
     {DiaryEntry::Kind::Strayed, "strayed"},
     {DiaryEntry::Kind::Seam, "seam"}}};

struct Work {
  std::vector<PieceWork> pieces;  // in the order in which they were begun
  std::vector<DiaryEntry> diary;  // in the order of time
  std::vector<std::string> done;  // keys of the making-up list that are ticked off
  std::optional<double> lastSeam; // cm: by how much the last armhole seam came out too long (+)

  [[nodiscard]] const PieceWork* find(PieceId piece) const;
  [[nodiscard]] PieceWork* find(PieceId piece);
  [[nodiscard]] bool empty() const { return *this == Work{}; }
  bool operator==(const Work&) const = default;
};

// The piece as it is planned: a left sleeve that is like the right one is that one.
[[nodiscard]] const KnitPiece* plannedPiece(const KnitGarment& garment, PieceId piece);
// What there is to knit: both fronts, both sleeves.
[[nodiscard]] std::vector<PieceId> piecesToKnit(const KnitGarment& garment);
[[nodiscard]] std::optional<PieceId> pieceByKey(std::string_view key);

// One number for what is worked in a piece's rows (FNV-1a).
[[nodiscard]] std::uint64_t markOf(const KnitPiece& piece);

// Whether the same is planned and measured, however far it has been worked.
[[nodiscard]] bool samePlans(const Work& a, const Work& b);
// The work with the plans of another state of it, where both have them.
[[nodiscard]] Work withPlans(Work work, const Work& plans);

// The piece's work, begun on the present plan where there is none yet; `design`: as the design
// alone has it. Null where the garment has no such piece.
PieceWork* workOn(Work& work, const KnitGarment& present, const KnitGarment& design, PieceId piece);

} // namespace scye
