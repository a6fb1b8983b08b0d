// The sentences after the last piece, in the order in which they are worked; the patterns are the
// phrases "dir.<terms>.finishing.*".
#pragma once

#include "directions/words.h"

namespace scye {

[[nodiscard]] std::vector<std::string> finishingSentences(const Words& words,
                                                          const Directions& directions);
// How many of them come before the seams that are sewn when the sleeves are set in.
[[nodiscard]] std::size_t sentencesUpToSleeves(const Words& words, const Directions& directions);

// "20 rows to 21 rows, 6 times"; for equal edges "row to row".
[[nodiscard]] std::string seamRecipe(const Words& words, const std::vector<SeamLine>& lines);

// How a mark is found on both pieces: "armhole row 22 (133) to cap row 24 (141)". Rows are counted
// from the underarm bind-offs; in brackets those of the whole piece.
[[nodiscard]] std::string markText(const Words& words, const SeamMark& mark, const SeamMarks& side);

} // namespace scye
