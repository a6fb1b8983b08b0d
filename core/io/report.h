// The report of a drafted garment as JSON, for people who check and for other programs. Every
// length is in cm with all its digits (reading a number back gives the same double). The members
// are listed in DEVELOPERS.md, "The report".
#pragma once

#include "garment/derived.h"
#include "model/phrases.h"

#include <string>

namespace scye {

// Curves of the outlines are given as this many chords a segment; the exact length of an edge
// stands beside its points.
inline constexpr int kReportChords = 64;

[[nodiscard]] std::string reportToJson(const Derived& derived, const Phrases& phrases);

} // namespace scye
