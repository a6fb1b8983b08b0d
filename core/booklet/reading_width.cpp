#include "booklet/reading_width.h"

#include <algorithm>
#include <array>
#include <utility>

namespace scye {
namespace {

constexpr double kOther = 0.66; // a letter beyond ASCII
constexpr double kBold = 1.12;
constexpr double kSpare = 1.03;
constexpr std::string_view kTie = "\u00a0";

// From ' ' to '~'.
constexpr std::array<float, 95> kWidths{
    .318f, .401f, .460f, .838f, .636f, .950f, .780f, .275f, .390f, .390f, .500f, .838f,
    .318f, .361f, .318f, .337f, .636f, .636f, .636f, .636f, .636f, .636f, .636f, .636f,
    .636f, .636f, .337f, .337f, .838f, .838f, .838f, .531f, 1.00f, .684f, .686f, .698f,
    .770f, .632f, .575f, .775f, .752f, .295f, .295f, .656f, .557f, .863f, .748f, .787f,
    .603f, .787f, .695f, .635f, .611f, .732f, .684f, .989f, .685f, .611f, .685f, .390f,
    .337f, .390f, .838f, .500f, .500f, .613f, .635f, .550f, .635f, .615f, .352f, .635f,
    .634f, .278f, .278f, .579f, .278f, .974f, .634f, .612f, .635f, .635f, .411f, .521f,
    .392f, .634f, .592f, .818f, .592f, .592f, .525f, .636f, .337f, .636f, .838f};

bool continues(char c) {
  return (static_cast<unsigned char>(c) & 0xC0) == 0x80;
}

} // namespace

double readingWidth(std::string_view text, double height, bool bold) {
  double ems = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (continues(c)) continue;
    if (text.substr(i).starts_with(kTie))
      ems += double(kWidths[0]);
    else
      ems += c >= ' ' && c <= '~' ? double(kWidths[std::size_t(c - ' ')]) : kOther;
  }
  return kSpare * ems * height * (bold ? kBold : 1);
}

std::vector<std::string> brokenLines(const std::string& text, double width, double height,
                                     bool bold) {
  std::vector<std::string> lines;
  std::string line;
  const auto fits = [&](const std::string& s) { return readingWidth(s, height, bold) <= width; };
  const auto take = [&](std::string word) {
    std::string longer = line.empty() ? word : line + " " + word;
    if (fits(longer)) {
      line = std::move(longer);
      return;
    }
    if (!line.empty()) lines.push_back(std::move(line));
    line.clear();
    while (!fits(word)) {
      std::size_t n = word.size();
      while (n > 1 && (!fits(word.substr(0, n)) || (n < word.size() && continues(word[n]))))
        --n;
      lines.push_back(word.substr(0, n));
      word.erase(0, n);
    }
    line = std::move(word);
  };
  std::size_t from = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const bool hard = i < text.size() && text[i] == '\n';
    if (i < text.size() && text[i] != ' ' && !hard) continue;
    if (i > from) take(text.substr(from, i - from));
    if (hard) lines.push_back(std::exchange(line, {}));
    from = i + 1;
  }
  if (!line.empty() || lines.empty()) lines.push_back(std::move(line));
  return lines;
}

std::string tied(const std::string& text) {
  constexpr std::size_t kBracket = 32, kUnit = 3; // letters
  std::vector<bool> ties(text.size(), false);
  const auto isDigit = [&](std::size_t i) { return text[i] >= '0' && text[i] <= '9'; };
  for (std::size_t i = 1; i + 1 < text.size(); ++i) {
    if (text[i] != ' ') continue;
    if (text[i + 1] == '_') ties[i] = true;
    if (!isDigit(i - 1)) continue;
    const std::size_t end = std::min(text.find_first_of(" ,.;:)", i + 1), text.size());
    ties[i] = isDigit(i + 1) || end - i - 1 <= kUnit;
  }
  const std::size_t at = text.rfind(" (");
  if (at != text.npos && (text.ends_with(").") || text.ends_with(")")) &&
      text.size() - at <= kBracket) {
    // The word before goes with it, so that no line is a count alone.
    for (std::size_t i = at; i < text.size(); ++i)
      ties[i] = ties[i] || text[i] == ' ';
  }
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (ties[i])
      out += kTie;
    else
      out += text[i];
  return out;
}

} // namespace scye
