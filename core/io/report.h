// The report of a drafted garment as JSON, for people who check and for other programs. Every
// length is in cm with all its digits (reading a number back gives the same double). The members
// are listed in DEVELOPERS.md, "The report".
#pragma once

#include "knit/knit_garment.h"
#include "model/phrases.h"

#include <string>

namespace scye {

// Curves of the outlines are given as this many chords a segment; the exact length of an edge
// stands beside its points.
inline constexpr int kReportChords = 64;

// `findings`: of every stage, with their remedies.
[[nodiscard]] std::string reportToJson(const GarmentDraft& draft, const KnitGarment& knit,
                                       const Findings& findings, const Phrases& phrases);

} // namespace scye
