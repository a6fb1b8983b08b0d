// The diary of a garment: what was decided, begun, measured, ripped, planned anew, noted on rows,
// in the order of time; and what is written into it by itself. Dates are ISO 8601, "2026-11-26".
#pragma once

#include "progress/progress_words.h"

namespace scye {

struct DiaryLine {
  std::string on; // empty: what belongs to no day, the swatches and notes on rows
  std::string text;
  int entry = -1; // its place in Work::diary; -1: it is no entry
};
// "2026-11-26  Back begun."
[[nodiscard]] std::string lineText(const DiaryLine& line);
// All of it, for a booklet: swatches first, then by day, then the notes on rows.
[[nodiscard]] std::vector<DiaryLine> diaryLines(const Design& design, const Work& work,
                                                const Phrases& phrases, LengthUnit unit);
[[nodiscard]] std::string diaryText(const Design& design, const Work& work, const Phrases& phrases,
                                    LengthUnit unit);
[[nodiscard]] std::string entryText(const DiaryEntry& entry, const Phrases& phrases,
                                    LengthUnit unit);

// Whether there is such a day.
[[nodiscard]] bool isDate(std::string_view text);
// At its place in the order of time, after what was written on the same day.
void writeDown(Work& work, DiaryEntry entry);

// That a piece was begun or finished, when it goes on from its first `before` lines.
void writeDownStep(Work& work, PieceId piece, int before, const std::string& on);
// What has been measured on a piece; one entry a day, whatever was entered one after the other.
// `before`: as it was measured until now.
void writeDownMeasured(Work& work, PieceId piece, const Measured& before, const std::string& on,
                       const Phrases& phrases, LengthUnit unit);
// How far the last armhole seam came out, `off` cm too long (+); one entry a day.
void writeDownLastSeam(Work& work, double off, const std::string& on, const Phrases& phrases,
                       LengthUnit unit);
// What was planned anew.
[[nodiscard]] DiaryEntry refitEntry(const Refit& refit, const std::string& on,
                                    const Phrases& phrases, LengthUnit unit);
// "22 stitches over 10 cm, edge of one armhole 24.5 cm (blocked)"; empty where nothing was.
[[nodiscard]] std::string measuredText(const Measured& measured, const Phrases& phrases,
                                       LengthUnit unit);

} // namespace scye
