#include "garment/trials.h"

#include <algorithm>

namespace scye {

Trials::Key Trials::keyOf(const Remedy& remedy) {
  Key key;
  for (const auto& [field, value] : remedy.changes)
    key.values.emplace_back(field, value);
  for (const auto& [choice, option] : remedy.picks)
    key.options.emplace_back(choice, option);
  key.onGarment = remedy.onGarment;
  std::sort(key.values.begin(), key.values.end());
  std::sort(key.options.begin(), key.options.end());
  std::sort(key.onGarment.begin(), key.onGarment.end());
  return key;
}

const Findings& Trials::drafted(const Remedy& remedy) {
  Trial& trial = trials_[keyOf(remedy)];
  if (!trial.drafted) trial.drafted = chain_.drafted(applied(design_, remedy));
  return *trial.drafted;
}

const Outcome& Trials::whole(const Remedy& remedy) {
  Trial& trial = trials_[keyOf(remedy)];
  if (!trial.whole) {
    trial.whole = chain_.whole(applied(design_, remedy));
    ++wholes_;
  }
  return *trial.whole;
}

} // namespace scye
