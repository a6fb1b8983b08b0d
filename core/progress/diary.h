// The diary of a garment, as text: what was decided, begun, measured, ripped, planned anew, noted
// on rows, in the order of time.
#pragma once

#include "progress/progress_words.h"

namespace scye {

[[nodiscard]] std::string entryText(const DiaryEntry& entry, const Phrases& phrases,
                                    LengthUnit unit);
// A line each: "2026-03-01  Back begun."
[[nodiscard]] std::vector<std::string> diaryEntries(const Work& work, const Phrases& phrases,
                                                    LengthUnit unit);
// "Back, row 45: ..."
[[nodiscard]] std::vector<std::string> rowNotes(const Work& work, const Phrases& phrases);
[[nodiscard]] std::string diaryText(const std::string& title, const Work& work,
                                    const Phrases& phrases, LengthUnit unit);

} // namespace scye
