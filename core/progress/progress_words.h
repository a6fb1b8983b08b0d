// What happens on the needles, in words (resources/phrases/en/progress.txt).
#pragma once

#include "progress/gauge_watch.h"
#include "progress/place.h"
#include "progress/refit.h"

namespace scye {

// "Right sleeve" where both are told of.
[[nodiscard]] std::string workPieceName(const Phrases& phrases, PieceId piece);

// "2 rows more in the cap (46 instead of 44)"
[[nodiscard]] std::string changeText(const Phrases& phrases, const PlanChange& change);
// Everything that a refit comes to, a sentence a line: what changes in each piece, what would have
// to be ripped, and how the seams come out with the old plan and the new one.
[[nodiscard]] std::vector<std::string> refitText(const Refit& refit, const Phrases& phrases,
                                                 LengthUnit unit);
[[nodiscard]] std::string conflictText(const WorkedConflict& conflict, const Phrases& phrases);
// The warning, then the ways out.
[[nodiscard]] std::vector<std::string> gaugeWarningText(const GaugeWarning& warning,
                                                        const Phrases& phrases, LengthUnit unit);
// "time 2 of 5, row 3 of 4"
[[nodiscard]] std::string repeatText(const Phrases& phrases, const RepeatPlace& repeat);
// "in 6 rows: Row 43 (RS)", or that nothing comes any more.
[[nodiscard]] std::string toEventText(const Words& words, const Place& place);
// "3 h 20 min", "25 min"
[[nodiscard]] std::string timeText(const Phrases& phrases, double seconds);

} // namespace scye
