#include "directions/words.h"

#include <algorithm>

namespace scye {
namespace {
constexpr std::string_view kFallback = "us";

std::string keyOf(std::string_view terms, std::string_view key) {
  return std::string("dir.").append(terms).append(".").append(key);
}
} // namespace

Words::Words(const Wording& wording)
    : phrases_(wording.phrases), terms_(wording.terms), unit_(wording.unit) {
  for (const std::string& name : namesAfter("term."))
    base_.push_back(textParam(name, phrases_.say(fullKey("term." + name))));
}

std::string Words::fullKey(std::string_view key) const {
  std::string own = keyOf(terms_, key);
  return phrases_.has(own) ? own : keyOf(kFallback, key);
}

bool Words::has(std::string_view key) const {
  return phrases_.has(fullKey(key));
}

std::string Words::say(std::string_view key, Params params) const {
  params.insert(params.end(), base_.begin(), base_.end());
  return phrases_.say(fullKey(key), params, unit_);
}

std::string Words::sayPlain(std::string_view key, const Params& params) const {
  return phrases_.say(key, params, unit_);
}

std::vector<std::string> Words::namesAfter(std::string_view prefix) const {
  std::vector<std::string> names;
  const std::string own = keyOf(terms_, prefix), usual = keyOf(kFallback, prefix);
  for (const std::string& start : {own, usual})
    for (std::string& name : phrases_.keysAfter(start))
      names.push_back(std::move(name));
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

} // namespace scye
