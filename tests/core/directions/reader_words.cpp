#include "core/directions/reader_words.h"

#include <algorithm>
#include <charconv>

namespace scye::reader {

namespace {

bool beginsRows(std::string_view text, const std::vector<std::string>& rowWords) {
  return std::any_of(rowWords.begin(), rowWords.end(), [&](const std::string& words) {
    int row = 0;
    return text.starts_with(words) && Finger(text.substr(words.size())).take("#", {&row});
  });
}

bool isRule(std::string_view text) {
  return text.size() > 1 &&
         (text.find_first_not_of('-') == text.npos || text.find_first_not_of('=') == text.npos);
}

} // namespace

std::vector<PageLine> pageLines(std::string_view text, const std::vector<std::string>& rowWords) {
  std::vector<PageLine> lines;
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::size_t depth = std::min(line.find_first_not_of(' '), line.size());
    line.remove_prefix(depth);
    const bool under = !lines.empty() && !lines.back().blank;
    if (under && depth == 0 && isRule(line)) {
      lines.back().underlined = true;
    } else if (under && !line.empty() && depth == (lines.back().deep ? 4 : 2) &&
               !(depth == 2 && beginsRows(line, rowWords))) {
      lines.back().text.append(" ").append(line);
    } else {
      lines.push_back(
          {.number = number, .deep = depth > 0, .blank = line.empty(), .text = std::string(line)});
    }
  }
  return lines;
}

bool Finger::takeNumber(int& value) {
  const auto [end, error] = std::from_chars(rest_.data(), rest_.data() + rest_.size(), value);
  if (error != std::errc() || rest_.front() == '-') return false;
  rest_.remove_prefix(std::size_t(end - rest_.data()));
  return true;
}

bool Finger::take(std::string_view form, std::initializer_list<int*> figures) {
  const std::string_view before = rest_;
  int* const* figure = figures.begin();
  const auto refuse = [&] { return rest_ = before, false; };
  for (const char c : form) {
    const std::string_view unit = c == '@' ? " st" : c == '~' ? " row" : "";
    if (c == '#' || !unit.empty()) {
      int& value = **figure++;
      if (!takeNumber(value)) return refuse();
      if (unit.empty()) continue;
      if (!rest_.starts_with(unit)) return refuse();
      rest_.remove_prefix(unit.size());
      const bool many = rest_.starts_with("s");
      if (many == (value == 1)) return refuse();
      if (many) rest_.remove_prefix(1);
    } else if (rest_.starts_with(c)) {
      rest_.remove_prefix(1);
    } else {
      return refuse();
    }
  }
  return true;
}

bool Finger::takeDecimal(double& value) {
  const auto [end, error] = std::from_chars(rest_.data(), rest_.data() + rest_.size(), value);
  if (error != std::errc()) return false;
  rest_.remove_prefix(std::size_t(end - rest_.data()));
  return true;
}

bool Finger::takeMillimetres(double& value) {
  const std::string_view before = rest_;
  if (takeDecimal(value) && take(" mm")) return true;
  rest_ = before;
  return false;
}

bool Finger::takeLength(double& value, bool& inches) {
  const std::string_view before = rest_;
  int whole = 0, over = 0, under = 0;
  inches = true;
  if (take("# #/# in", {&whole, &over, &under}) || (whole = 0, take("#/# in", {&over, &under}))) {
    value = under > 0 ? whole + double(over) / under : -1;
    return under > 0;
  }
  if (take("# in", {&whole})) return value = whole, true;
  inches = false;
  if (takeDecimal(value) && take(" cm")) return true;
  rest_ = before;
  return false;
}

} // namespace scye::reader
