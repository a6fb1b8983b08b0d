// The design file, `.scye`: versioned JSON, UTF-8. Only what the knitter has said is in it;
// whatever was not touched is filled in afresh when it is opened.
//
//   {"format": "scyewright-design", "version": 4,
//    "title": "...", "wearer": "...", "notes": "...",
//    "ribName": "...",                                               of an own edge stitch
//    "choices": {"garment": "jacket", ...},                          keys and options of Choice;
//    also
//                                                                    "gathers": yes or no, now
//                                                                    "capTop"
//    "measurements": {"bust": {"value": 94, "source": "body"}, ...}, source: body or garment
//    "values": {"ease.bust": 8, ...},                                all other fields, by key
//    "measuredOn": "2026-05-01",                                     if the measurements were kept
//    "swatches": [{"label": "...", "use": "same", "stitches": 23, "width": 10,
//                  "rows": 31, "height": 10, "weight": 4.5}, ...]}   further swatches, if any
//
// Versions 1 to 3 are read too: what had another meaning in them, or started with another value, is
// set so that the garment stays the same (former_designs.h).
//
// Lengths are cm. Reading back what was written gives an equal design, to the last bit of every
// number. A file is taken whole or refused: an unknown or doubled key, a wrong type, a value
// outside its range, a newer version, broken or truncated JSON are each refused with a line and a
// plain reason. So is a file beyond kLargestDesign or with more than kMostSwatches, and brackets
// nested deeper than any design has them: memory stays within a few times the file's size. Nothing
// throws. Cost: about 10 us a file.
#pragma once

#include "model/design.h"
#include "model/phrases.h"
#include "progress/work.h"

#include <string>
#include <string_view>

namespace scye {

inline constexpr std::size_t kLargestDesign = std::size_t(4) << 20; // bytes
inline constexpr std::size_t kMostSwatches = 1000;

struct FileProblem {
  int line = 0; // from 1; 0 when it is not a matter of one line
  std::string reason;
};

struct DesignRead {
  std::optional<Design> design; // absent: see the problem
  Work work;
  FileProblem problem;
};

// Control characters and those that turn the direction of writing stand as \u escapes.
[[nodiscard]] std::string designToJson(const Design& design, const Work& work = {});
[[nodiscard]] DesignRead designFromJson(std::string_view text, const Phrases& phrases);

} // namespace scye
