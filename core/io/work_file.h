// The member "work" of a design file: what has been knitted (progress/work.h).
//
//   {"pieces": [{"piece": "back", "worked": 37,     lines of its plan's row table, cast-on included
//                "plan": {...},                     what it is knitted by, see below
//                "answers": "9f3c...",              the design's own piece that the plan answers
//                                                   to: its mark (markOf), 16 hexadecimal digits
//                "ownPlan": "yes",                  planned anew, no longer the design's; or "no"
//                "measured": {"stitches": 22, "across": 10, "rows": 31, "along": 10,
//                             "armhole": 24.5, "width": 50, "cross": 38, "depth": 20.5,
//                             "length": 36, "as": "blocked"},       or "unwashed"; any of them
//                "notes": [{"section": "body", "row": 12, "text": "..."}],
//                "pace": {"rows": 30, "seconds": 4100}}],
//    "diary": [{"on": "2026-11-26", "kind": "ripped", "piece": "back", "row": 40, "to": 31,
//               "text": "..."}],                    kind: kDiaryKeys; all but the kind may be
//               absent
//    "done": ["shoulders", ...],                    of the making up
//    "lastSeam": -0.4}                              cm
//
// A plan: {"marks": [hemRows, foldRow, underarmRow, shoulderRow, splitRow, neckRow, crownRow],
//          "edge": {"made": "ribbed", "rib": "twoTwo", "multiple": 4, "name": "",
//                   "sides": "sewn", "selvedge": 1,          how it begins above its cast-on
//                   "band": 0},                              stitches of a band knitted on
//          "fabric": [width, height],               of a stitch, cm; 0: the garment's
//          "sections": [{"section": "body", "first": 0, "last": 151, "left": -48, "right": 48,
//                        "waiting": 0, "acts": ["0 castOn right 96 hem 0", ...]}]}
// An act: row, kind, side, stitches, what it shapes, `from` (knit/row_table.h).
#pragma once

#include "io/json_number.h"
#include "io/json_tree.h"
#include "model/phrases.h"
#include "progress/work.h"

#include <functional>

namespace scye {

inline constexpr std::size_t kMostWorkValues = 60000;

[[nodiscard]] nlohmann::ordered_json workToJson(const Work& work);

// Refuses what is no work: told once, with the place in the text.
using RefuseAt = std::function<void(const char* at, std::string_view phrase, const Params& params)>;
[[nodiscard]] std::optional<Work> workFromTree(const JsonNode& tree, const RefuseAt& refuse);

} // namespace scye
