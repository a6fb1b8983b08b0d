#include "model/markup.h"

namespace scye {

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool control = static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t';
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (c == '"')
      out += "&quot;";
    else
      out += control ? ' ' : c;
  }
  return out;
}

} // namespace scye
