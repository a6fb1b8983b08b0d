// Words that came from outside (a file, a command line), as they may be shown: on a terminal, in
// HTML, in a picture. Control characters could give the terminal orders, and characters that turn
// the direction of writing could make a line read as another. Valid UTF-8 comes out, whatever went
// in.
#pragma once

#include <string>
#include <string_view>

namespace scye {

// Control characters (C0, DEL, C1) and line ends of every kind become a space; characters that
// embed, override or isolate a direction (Unicode's UAX #9) and bytes that are no UTF-8 become
// U+FFFD; marks of direction, which have no shape and turn nothing, are left out.
[[nodiscard]] std::string plainLine(std::string_view words);
// The same, but lines stay lines.
[[nodiscard]] std::string plainLines(std::string_view words);

// JSON whose texts hold such characters only as \u escapes: the same values for whoever reads it.
// `json` is valid JSON in UTF-8.
[[nodiscard]] std::string plainJson(std::string_view json);

} // namespace scye
