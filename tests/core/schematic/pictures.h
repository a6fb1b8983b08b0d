// Questions about pictures that several tests ask.
#pragma once

#include "schematic/picture.h"

#include <string>
#include <utility>
#include <vector>

namespace scye::test {

// Pairs of labels whose boxes share more than a hair, as their texts.
[[nodiscard]] inline std::vector<std::pair<std::string, std::string>>
overlappingLabels(const Picture& picture) {
  std::vector<std::pair<Box, std::string>> all;
  for (const Group& g : picture.groups)
    for (const Label& l : g.labels)
      all.emplace_back(labelBox(l), l.text);
  std::vector<std::pair<std::string, std::string>> found;
  constexpr double kHair = 1e-6;
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const Box &a = all[i].first, &b = all[j].first;
      const Vec2 shared = a.high.cwiseMin(b.high) - a.low.cwiseMax(b.low);
      if (shared.minCoeff() > kHair) found.emplace_back(all[i].second, all[j].second);
    }
  return found;
}

// Labels made of a phrase that does not exist, or with a place that was not filled in.
[[nodiscard]] inline std::vector<std::string> badWords(const Picture& picture) {
  std::vector<std::string> found;
  const auto look = [&](const std::string& text) {
    if (text.empty() || text.find_first_of("[]{}") != std::string::npos) found.push_back(text);
  };
  for (const Group& g : picture.groups) {
    look(g.title);
    for (const Label& l : g.labels)
      look(l.text);
  }
  return found;
}

[[nodiscard]] inline std::vector<const Stroke*> strokesOf(const Picture& picture, Role role) {
  std::vector<const Stroke*> found;
  for (const Group& g : picture.groups)
    for (const Stroke& s : g.strokes)
      if (s.role == role) found.push_back(&s);
  return found;
}

[[nodiscard]] inline bool finite(const Picture& picture) {
  const Box box = picture.box();
  return box.low.allFinite() && box.high.allFinite();
}

} // namespace scye::test
