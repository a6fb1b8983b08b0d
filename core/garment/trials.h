// Trial designs, each put through the chain once however many recipes ask for it.
#pragma once

#include "garment/remedies.h"

#include <map>
#include <optional>

namespace scye {

class Trials {
public:
  Trials(const Design& design, const Chain& chain) : design_(design), chain_(chain) {}

  [[nodiscard]] const Findings& drafted(const Remedy& remedy);
  [[nodiscard]] const Outcome& whole(const Remedy& remedy);
  [[nodiscard]] int wholeCount() const { return wholes_; } // trials of the whole chain so far

private:
  // What a remedy changes, in the order of the fields and choices.
  struct Key {
    std::vector<std::pair<Field, double>> values;
    std::vector<std::pair<Choice, int>> options;
    std::vector<Field> onGarment;
    auto operator<=>(const Key&) const = default;
  };
  struct Trial {
    std::optional<Findings> drafted;
    std::optional<Outcome> whole;
  };
  [[nodiscard]] static Key keyOf(const Remedy& remedy);

  const Design& design_;
  const Chain& chain_;
  std::map<Key, Trial> trials_;
  int wholes_ = 0;
};

} // namespace scye
