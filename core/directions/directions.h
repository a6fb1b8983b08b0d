// The directions of a whole garment: steps for each piece, and what stands before and after them.
// Data until here; words are made by directionLines and what uses it, from the phrases
// "dir.<terms>.*" (resources/phrases/en/directions*.txt), so that other terms or another language
// are only files.
#pragma once

#include "directions/finishing.h"
#include "directions/materials.h"
#include "directions/steps.h"

#include <optional>
#include <string>

namespace scye {

struct FinishedSize {
  std::string key;            // phrase "knitted.<key>"
  double cm = 0;              // as knitted
  std::optional<double> ease; // cm over the body, where that was measured there
};
// In the order in which they are told; empty where nothing can be knitted.
[[nodiscard]] std::vector<FinishedSize> finishedSizes(const GarmentDraft& draft,
                                                      const KnitGarment& garment);

struct Directions {
  std::string title, wearer, notes; // the knitter's own words
  Figure figure = Figure::Woman;
  Garment garment = Garment::Pullover;
  StitchSize size;
  RibStitch rib;  // of bands, and of edges that are ribbed
  Findings unmet; // what has to be solved or measured before any of it can be trusted
  Materials materials;
  std::vector<FinishedSize> finished;
  std::vector<PieceSteps> pieces;
  Stitches bandStitches{0};           // of a button band that is knitted on
  int patternMultiple = 1;            // stitches of a stitch pattern's repeat; 1: none
  std::vector<Stitches> patternAfter; // by piece: so many stitches come before its first whole
                                      // repeat in the first right-side row in pattern
  bool slit = false;                  // the back neck is divided first
  bool capKnitted = false;
  Finishing finishing;
};

// Cost: about 50 us.
[[nodiscard]] Directions directionsFor(const GarmentDraft& draft, const KnitGarment& garment,
                                       const MakingUp& makingUp);

struct Wording {
  const Phrases& phrases;
  std::string terms = "us"; // "us", "uk"; a phrase that these terms lack is taken from "us"
  LengthUnit unit = LengthUnit::Centimetre;
};

enum class LineKind : std::uint8_t {
  Title,   // of the whole
  Warning, // at its head: what is not met yet
  Heading, // of the front matter, of a piece, of the making up
  Part,    // heading of a part of a piece: rows and height
  Note,    // a sentence without rows
  Step,    // ends with its stitch count, "(91 sts)."
};

struct DirectionLine {
  LineKind kind = LineKind::Note;
  std::string text;
  std::optional<PieceId> piece;             // absent before the first and after the last piece
  SectionId section = SectionId::Undivided; // of parts and steps
  int first = 0, last = 0;                  // rows; a step's or a part's
  Stitches stitches{0};                     // after a step
  double fromCastOn = 0, fromUnderarm = 0;  // cm, after a step
};

[[nodiscard]] std::vector<DirectionLine> directionLines(const Directions& directions,
                                                        const Wording& wording);
// Of one piece alone, its heading first.
[[nodiscard]] std::vector<DirectionLine> pieceLines(const Directions& directions, PieceId piece,
                                                    const Wording& wording);
// Whole documents. The HTML stands alone, prints a piece a page, and escapes what the knitter
// wrote.
[[nodiscard]] std::string directionsText(const Directions& directions, const Wording& wording);
[[nodiscard]] std::string directionsHtml(const Directions& directions, const Wording& wording);

} // namespace scye
