// How wide words are on paper, so that lines can be broken before a font is known: by the advance
// widths of DejaVu Sans (from memory), which is wider than the other common sans-serif faces. What
// fits by this fits in those too.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace scye {

// In the unit of `height`, the size of the letters.
[[nodiscard]] double readingWidth(std::string_view text, double height, bool bold = false);

// Broken at spaces; what is tied by no-break spaces stays together. A word that is too long by
// itself is broken where the line ends.
[[nodiscard]] std::vector<std::string> brokenLines(const std::string& text, double width,
                                                   double height, bool bold = false);

// With no-break spaces in what is read as one: a number and a short word after it, "7 3/8 in"; a
// short bracket at the end and the word before it, "end (12 sts, 4 waiting)."; a blank to be filled
// in.
[[nodiscard]] std::string tied(const std::string& text);

} // namespace scye
