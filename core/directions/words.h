// The phrases of one set of terms: "dir.<terms>.<key>", or "dir.us.<key>" where these terms have
// none of their own. The words "dir.<terms>.term.<name>" fill the places {<name>} of every phrase.
#pragma once

#include "directions/directions.h"

namespace scye {

class Words {
public:
  explicit Words(const Wording& wording);

  [[nodiscard]] std::string say(std::string_view key, Params params = {}) const;
  [[nodiscard]] bool has(std::string_view key) const;
  // A phrase that is not of the directions: "piece.back".
  [[nodiscard]] std::string sayPlain(std::string_view key, const Params& params = {}) const;
  [[nodiscard]] const Phrases& phrases() const { return phrases_; }
  [[nodiscard]] LengthUnit unit() const { return unit_; }
  // What stands after `prefix` in the keys of these terms: says("abbr.") gives "RS", "k2tog" and so
  // on.
  [[nodiscard]] std::vector<std::string> namesAfter(std::string_view prefix) const;

private:
  [[nodiscard]] std::string fullKey(std::string_view key) const;

  const Phrases& phrases_;
  std::string terms_;
  LengthUnit unit_;
  Params base_;
};

// A number, as a parameter.
[[nodiscard]] inline Param countParam(std::string name, int n) {
  return numberParam(std::move(name), n);
}
[[nodiscard]] inline Param countParam(std::string name, Stitches n) {
  return numberParam(std::move(name), n.value());
}

} // namespace scye
