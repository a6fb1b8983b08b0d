// Words within XML and HTML.
#pragma once

#include <string>
#include <string_view>

namespace scye {

// Signs of the markup as entities, fit for text and for attributes in double quotes; control
// characters, which XML does not know, as spaces.
[[nodiscard]] std::string escaped(std::string_view text);

} // namespace scye
