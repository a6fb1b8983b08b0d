// What may be turned to remove a finding: the table that remedies are looked for by. One line is
// one way out. Which of them help is tried out on the whole chain, see garment/remedies.h.
#pragma once

#include "model/finding.h"

#include <optional>
#include <span>

namespace scye {

struct Recipe {
  int rank = 1; // 1: the likeliest way out of this finding, tried first
  std::string_view code, key;
  std::vector<Field> fields{}; // turned together; none: the field where the finding is shown
  int direction = 0;
  std::optional<Remedy::Pick> pick{}; // instead of fields
};

[[nodiscard]] std::span<const Recipe> recipes();

// The least change of a field, in cm, that is worth offering: half a stitch or half a row of the
// piece that it shapes, and what still shows in quarters of an inch.
[[nodiscard]] double leastChange(Field field, double stitchWidth, double rowHeight);

} // namespace scye
