// The diary of a garment, as text: what was decided, begun, measured, ripped, planned anew, noted
// on rows, in the order of time.
#pragma once

#include "progress/progress_words.h"

namespace scye {

[[nodiscard]] std::string entryText(const DiaryEntry& entry, const Phrases& phrases,
                                    LengthUnit unit);
[[nodiscard]] std::string diaryText(const std::string& title, const Work& work,
                                    const Phrases& phrases, LengthUnit unit);

} // namespace scye
