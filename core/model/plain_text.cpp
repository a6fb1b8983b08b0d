#include "model/plain_text.h"

#include <algorithm>
#include <cstdio>
#include <optional>

namespace scye {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD"; // U+FFFD

// The character that `text` begins with and its bytes; nothing where they are no UTF-8 (RFC 3629:
// no overlong forms, no surrogates, nothing above U+10FFFF).
struct Read {
  char32_t character = 0;
  std::size_t bytes = 1;
};
std::optional<Read> firstOf(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  if (lead < 0x80) return Read{lead, 1};
  const std::size_t bytes = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < bytes) return std::nullopt;
  char32_t character = lead & (0x7Fu >> bytes);
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return std::nullopt;
    character = (character << 6) | (byte(i) & 0x3Fu);
  }
  constexpr char32_t kLeast[] = {0, 0, 0x80, 0x800, 0x10000};
  const bool surrogate = character >= 0xD800 && character <= 0xDFFF;
  if (character < kLeast[bytes] || surrogate || character > 0x10FFFF) return std::nullopt;
  return Read{character, bytes};
}

bool isControl(char32_t c) {
  return c < 0x20 || (c >= 0x7F && c <= 0x9F) || c == 0x2028 || c == 0x2029;
}
// LRE, RLE, PDF, LRO, RLO; LRI, RLI, FSI, PDI.
bool turnsDirection(char32_t c) {
  return (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}
// ALM, LRM, RLM, and the byte order mark.
bool isMark(char32_t c) {
  return c == 0x061C || c == 0x200E || c == 0x200F || c == 0xFEFF;
}

std::string plain(std::string_view words, bool lines) {
  const bool asIs =
      std::all_of(words.begin(), words.end(), [](char c) { return c >= 0x20 && c < 0x7F; });
  if (asIs) return std::string(words);
  std::string out;
  out.reserve(words.size());
  while (!words.empty()) {
    const auto read = firstOf(words);
    const std::string_view bytes = words.substr(0, read ? read->bytes : 1);
    words.remove_prefix(bytes.size());
    if (!read || turnsDirection(read->character))
      out += kReplacement;
    else if (isMark(read->character))
      continue;
    else if (isControl(read->character))
      out += lines && read->character == '\n' ? '\n' : ' ';
    else
      out += bytes;
  }
  return out;
}

} // namespace

std::string plainLine(std::string_view words) {
  return plain(words, false);
}

std::string plainLines(std::string_view words) {
  return plain(words, true);
}

std::string plainJson(std::string_view json) {
  std::string out;
  out.reserve(json.size());
  while (!json.empty()) {
    const auto read = firstOf(json);
    const std::string_view bytes = json.substr(0, read ? read->bytes : 1);
    json.remove_prefix(bytes.size());
    const bool foreign =
        read && read->character >= 0x7F &&
        (isControl(read->character) || turnsDirection(read->character) || isMark(read->character));
    if (!foreign) {
      out += bytes;
      continue;
    }
    char escape[16];
    std::snprintf(escape, sizeof escape, "\\u%04x", unsigned(read->character));
    out += escape;
  }
  return out;
}

} // namespace scye
