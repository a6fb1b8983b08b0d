// What is laid out before the cast-on, and the finished sizes, as sentences.
#pragma once

#include "directions/words.h"

namespace scye {

// Yarn, needles, buttons, notions and gauge.
[[nodiscard]] std::vector<std::string> materialSentences(const Words& words,
                                                         const Directions& directions);
// Buttons that close on a buttonhole: all but that of a slit at the back neck, which has a loop.
[[nodiscard]] int buttonsWithHoles(const Directions& directions);
// "Bust, all around: 101.5 cm, 7.5 cm of ease"
[[nodiscard]] std::string finishedSizeText(const Words& words, const FinishedSize& size,
                                           Figure figure);
[[nodiscard]] std::string castOnText(const Words& words, const Step& step, EdgeMade edge,
                                     const Directions& directions);
[[nodiscard]] std::string needleChangeText(const Words& words, const Materials& materials);

} // namespace scye
