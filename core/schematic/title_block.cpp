#include "schematic/title_block.h"

#include <algorithm>
#include <string_view>
#include <vector>

namespace scye {
namespace {

constexpr double kLettersMm = 2.5, kLeastLettersMm = 2.2; // 7 and 6.2 points

// By a letter and with an ellipsis, as long as there are letters.
std::string shortened(std::string text) {
  constexpr std::string_view kMore = "\u2026";
  if (text.ends_with(kMore)) text.resize(text.size() - kMore.size());
  const auto within = [&] { return (static_cast<unsigned char>(text.back()) & 0xC0) == 0x80; };
  while (!text.empty() && within())
    text.pop_back();
  if (!text.empty()) text.pop_back();
  return text + std::string(kMore);
}

// Of a title block, cm.
struct Cell {
  std::string head, words;
  double width = 0;
  [[nodiscard]] double need(double letters) const {
    constexpr double kAround = 0.3;
    return kAround + std::max(textWidth(words, letters), textWidth(head, kLeastLettersMm / 10));
  }
};

// Widths for cells that together are `wide`, and the height of their letters. What does not fit
// with the smallest of these is cut short, the longest words first: the whole stands elsewhere.
double fitCells(std::vector<Cell>& cells, double wide) {
  if (cells.empty()) return kLettersMm / 10;
  const auto need = [&](double letters) {
    double all = 0;
    for (const Cell& cell : cells)
      all += cell.need(letters);
    return all;
  };
  double letters = kLettersMm / 10;
  if (need(letters) > wide) letters = kLeastLettersMm / 10;
  while (need(letters) > wide) {
    Cell& longest = *std::max_element(cells.begin(), cells.end(), [](const Cell& a, const Cell& b) {
      return a.words.size() < b.words.size();
    });
    const std::string cut = shortened(longest.words);
    if (cut == longest.words) break;
    longest.words = cut;
  }
  const double more = (wide - need(letters)) / double(cells.size());
  for (Cell& cell : cells)
    cell.width = cell.need(letters) + more;
  return letters;
}

} // namespace

Group titleBlock(const Vec2& size, const TitleBlock& of, const std::string& picture,
                 const std::string& scale, const Phrases& phrases) {
  Group g;
  g.id = "title-block"; // what an SVG is edited by
  g.title = phrases.say("sheet.block");
  std::vector<Cell> cells;
  const auto add = [&](const char* head, const std::string& words) {
    if (!words.empty()) cells.push_back({phrases.say(head), words});
  };
  add("sheet.title", picture);
  add("sheet.wearer", of.wearer);
  add("sheet.gauge", of.gauge);
  add("sheet.scale", scale);
  add("sheet.date", of.date);
  const double low = kMarginMm / 10, high = low + kTitleBlockMm / 10, left = kMarginMm / 10;
  const double wide = size.x() / 10 - 2 * left;
  const double letters = fitCells(cells, wide);
  const auto line = [&](const Vec2& a, const Vec2& b) {
    g.strokes.push_back({Path::polyline({a, b}), Role::Measure, false});
  };
  line({left, low}, {left + wide, low});
  line({left, high}, {left + wide, high});
  double x = left;
  for (const Cell& cell : cells) {
    line({x, low}, {x, high});
    g.labels.push_back(
        {{x + 0.1, high - 0.3}, cell.head, Role::Note, kLeastLettersMm / 10, Anchor::Start, 0});
    g.labels.push_back(
        {{x + 0.1, low + 0.16}, cell.words, Role::Caption, letters, Anchor::Start, 0});
    x += cell.width;
  }
  line({left + wide, low}, {left + wide, high});
  return g;
}

} // namespace scye
