// A step as a sentence, a part as a heading. The patterns of the sentences stand in
// resources/phrases/en/directions.txt.
#pragma once

#include "directions/words.h"

namespace scye {

// "Row 17 (RS): k1, ssk, work to last 3 sts, k2tog, k1 (116 sts)."
[[nodiscard]] std::string stepText(const Words& words, const Step& step, const Part& part,
                                   const PieceSteps& piece);
// "Armhole: rows 111 to 151 (41 rows, 13.7 cm)"
[[nodiscard]] std::string partText(const Words& words, const Part& part, PieceId piece);
// Of a part in which the edges are shaped for different ends: which edge is where.
[[nodiscard]] std::string togetherText(const Words& words, const Part& part);
// What is worked in one row that leaves `after` stitches.
[[nodiscard]] std::string rowText(const Words& words, const std::vector<Action>& actions, int row,
                                  Stitches after);

} // namespace scye
