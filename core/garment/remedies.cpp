#include "garment/remedies.h"

#include "draft/complete.h"
#include "garment/recipes.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

namespace scye {
namespace {

enum class Verdict {
  Refused, // a value cannot stand in its field
  Still,   // the finding is still there, or another has come
  Good,
  GivenUp,
};

// Trial designs, each put through the chain once however many recipes ask for it.
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

constexpr int kFarthest = 512; // steps: 51 cm

class Search {
public:
  Search(const Design& design, const Sizes& sizes, const Chain& chain, Findings& findings,
         const RemedyWatch& watch)
      : design_(design), sizes_(sizes), chain_(chain), findings_(findings), before_(findings),
        watch_(watch), trials_(design, chain), orders_(findings.size()),
        start_(watch.seconds ? watch.seconds() : 0) {}

  bool run() {
    // A doubtful measurement explains much: its correction is tried on everything that is found.
    for (std::size_t i = 0; i < before_.size(); ++i)
      for (const Finding& doubt : before_)
        for (const Remedy& remedy : doubt.remedies)
          if (before_[i].remedies.empty() && before_[i].severity != Severity::Note)
            tasks_.push_back({i, 0, nullptr, &remedy});
    for (std::size_t i = 0; i < before_.size(); ++i)
      for (const Recipe& recipe : recipes())
        if (recipe.code == before_[i].code) tasks_.push_back({i, recipe.rank, &recipe, nullptr});
    if (tasks_.empty()) return true;
    std::stable_sort(tasks_.begin(), tasks_.end(), [this](const Task& a, const Task& b) {
      const auto gravity = [this](const Task& t) { return -int(before_[t.finding].severity); };
      return std::pair(gravity(a), a.rank) < std::pair(gravity(b), b.rank);
    });
    madeNow_ = chain_.whole(design_).made;
    for (const Task& task : tasks_)
      if (!attempt(task)) return false;
    return true;
  }

private:
  struct Task {
    std::size_t finding;
    int rank;
    const Recipe* recipe; // or
    const Remedy* correction;
  };

  [[nodiscard]] bool goOn() const {
    if (watch_.stop.stop_requested() || trials_.wholeCount() >= watch_.mostTrials) return false;
    return !watch_.seconds || watch_.seconds() - start_ < watch_.giveUpAfter;
  }

  // False: given up.
  bool attempt(const Task& task) {
    task_ = &task;
    recipe_ = task.recipe;
    if (!recipe_) return attemptOnce(*task.correction);
    if (recipe_->pick) return attemptOnce({std::string(recipe_->key), {}, {}, {*recipe_->pick}});
    fields_ = recipe_->fields;
    if (fields_.empty()) {
      const Field field = turned(finding().fields.front());
      if (tellsOfTheBody(field) || hasRecipe(field)) return true;
      fields_.push_back(field);
    }
    least_ = leastSteps();
    // First for a step that helps all that the same remedy is known to help and brings no warning;
    // then for one that brings no warning; then for any.
    kept_ = false;
    newFrom_ = std::min(Severity::Warning, finding().severity);
    alike_ = helpedAlike();
    if (!alike_.empty() && !attemptSizes()) return false;
    alike_.clear();
    if (!kept_ && !attemptSizes()) return false;
    if (kept_ || newFrom_ == finding().severity) return true;
    newFrom_ = finding().severity;
    return attemptSizes();
  }

  // Other findings that the table would have turned the same way.
  [[nodiscard]] std::vector<std::string_view> helpedAlike() const {
    std::vector<std::string_view> out;
    for (const Recipe& r : recipes())
      if (r.key == recipe_->key && r.fields == recipe_->fields && !r.fields.empty() &&
          r.code != finding().code && findCode(before_, r.code))
        out.push_back(r.code);
    return out;
  }

  bool attemptOnce(const Remedy& remedy) {
    if (applied(design_, remedy) == design_) return true;
    newFrom_ = finding().severity;
    alike_.clear();
    const Verdict verdict = whole(remedy);
    if (verdict == Verdict::Good) keep(remedy);
    return verdict != Verdict::GivenUp;
  }

  // The smallest step for which the draft alone is content, then on from there on the whole chain.
  bool attemptSizes() {
    const int first = firstDrafted();
    if (first == 0) return goOn();
    static constexpr int kOn[] = {0, 1, 2, 4, 8, 16, 32, 64, 3, 5, 6, 10, 12};
    int bad = first - 1;
    for (const int on : kOn) {
      const int n = first + on * least_;
      const Verdict verdict = tried(n, true);
      if (verdict == Verdict::GivenUp) return false;
      if (verdict == Verdict::Refused) continue;
      if (verdict == Verdict::Still) {
        bad = std::max(bad, n);
        continue;
      }
      return narrowed(std::min(bad, n - 1), n);
    }
    return true;
  }

  // Between a step that does not help and one that does, to within the least change.
  bool narrowed(int bad, int good) {
    while (good - bad > least_) {
      const int mid = (good + bad) / 2;
      const Verdict verdict = tried(mid, true);
      if (verdict == Verdict::GivenUp) break; // what helps is known all the same
      (verdict == Verdict::Good ? good : bad) = mid;
    }
    keep(*remedyAt(good));
    return true;
  }

  // 0: none.
  int firstDrafted() {
    int bad = least_ - 1, good = 0;
    for (int n = least_; n <= kFarthest && !good; n *= 2) {
      const Verdict verdict = tried(n, false);
      if (verdict == Verdict::GivenUp) return 0;
      if (verdict == Verdict::Refused) break;
      verdict == Verdict::Good ? good = n : bad = n;
    }
    // The finding may be gone only in a window that doubling steps over: walk.
    for (int n = least_ + 1; n <= least_ + 60 && !good; ++n) {
      const Verdict verdict = tried(n, false);
      if (verdict == Verdict::GivenUp) return 0;
      if (verdict == Verdict::Refused) break;
      if (verdict == Verdict::Good) good = n, bad = n - 1;
    }
    while (good - bad > 1) {
      const int mid = (good + bad) / 2;
      const Verdict verdict = tried(mid, false);
      if (verdict == Verdict::GivenUp) return 0;
      (verdict == Verdict::Good ? good : bad) = mid;
    }
    return good;
  }

  Verdict tried(int n, bool wholly) {
    const auto remedy = remedyAt(n);
    if (!remedy) return Verdict::Refused;
    if (!goOn()) return Verdict::GivenUp;
    if (!removes(trials_.drafted(*remedy))) return Verdict::Still;
    return wholly ? whole(*remedy) : Verdict::Good;
  }

  Verdict whole(const Remedy& remedy) {
    if (!goOn()) return Verdict::GivenUp;
    if (!removes(trials_.drafted(remedy))) return Verdict::Still;
    const Outcome& after = trials_.whole(remedy);
    return removes(after.findings) && after.made != madeNow_ ? Verdict::Good : Verdict::Still;
  }

  // Gone, and nothing new in its place, or nothing as grave.
  [[nodiscard]] bool removes(const Findings& after) const {
    return std::none_of(after.begin(), after.end(), [&](const Finding& f) {
      return f.code == finding().code || std::count(alike_.begin(), alike_.end(), f.code) ||
             (f.severity >= newFrom_ && isNew(f, after));
    });
  }
  // A kind of finding is new where there are more of it than there were, or a graver one.
  [[nodiscard]] bool isNew(const Finding& f, const Findings& after) const {
    const auto likeIt = [&](const Finding& other) {
      return other.code == f.code && other.severity >= f.severity &&
             other.fields.front() == f.fields.front();
    };
    return std::count_if(after.begin(), after.end(), likeIt) >
           std::count_if(before_.begin(), before_.end(), likeIt);
  }

  [[nodiscard]] const Finding& finding() const { return before_[task_->finding]; }

  // What was measured, on the body or on a garment, is never turned: its ease is, which for a
  // garment is a change to it.
  static Field turned(Field shown) { return easeOf(shown).value_or(shown); }
  static bool tellsOfTheBody(Field f) {
    return isMeasurement(f) && f != Field::HemToUnderarm && f != Field::NeckWidth &&
           f != Field::ShoulderDrop;
  }
  // Whether a line of the table turns just this field the same way, in words of its own.
  [[nodiscard]] bool hasRecipe(Field f) const {
    return std::any_of(recipes().begin(), recipes().end(), [&](const Recipe& r) {
      return r.code == recipe_->code && r.direction == recipe_->direction &&
             r.fields == std::vector{f};
    });
  }

  [[nodiscard]] double step() const {
    const FieldKind kind = info(fields_.front()).kind;
    return kind == FieldKind::Share ? 0.01 : kind == FieldKind::Count ? 1 : 0.1;
  }

  [[nodiscard]] int leastSteps() const {
    const Field f = fields_.front();
    if (info(f).kind == FieldKind::Count) return 1;
    const double w = sizes_.stitch.width, h = sizes_.stitch.height;
    double least = leastChange(f, w, h);
    if (info(f).kind == FieldKind::Share)
      least = f == Field::RiseShare ? 0.5 * h / sizes_.finished(Field::ArmholeDepth) : 0.05;
    return std::clamp(int(std::ceil(least / step() - 1e-6)), 1, kFarthest);
  }

  [[nodiscard]] std::optional<Remedy> remedyAt(int steps) const {
    Remedy remedy{std::string(recipe_->key), {}, {}, {}};
    const FieldKind kind = info(fields_.front()).kind;
    const double by = steps * step();
    for (const Field f : fields_) {
      const double grain = kind == FieldKind::Share ? 100 : kind == FieldKind::Count ? 1 : 10;
      // On whole tenths, as a person would set it.
      const double raw = sizes_[f] + recipe_->direction * by;
      const double value = (recipe_->direction > 0 ? std::ceil(raw * grain - 1e-6)
                                                   : std::floor(raw * grain + 1e-6)) /
                           grain;
      if (check(f, value, design_.source(f))) return std::nullopt;
      remedy.changes.push_back({f, value});
    }
    const Field first = fields_.front();
    const double value = remedy.changes.front().value, change = value - sizes_[first];
    const auto param = kind == FieldKind::Share   ? &percentParam
                       : kind == FieldKind::Count ? &numberParam
                                                  : &lengthParam;
    // Where a measurement is shown it comes to that, ease included.
    const auto shown = recipe_->fields.empty() ? measurementOf(first) : std::nullopt;
    const double to = shown ? sizes_.finished(*shown) + change : value;
    remedy.params = Params{param("by", std::abs(change)), param("to", to)};
    return remedy;
  }

  // Whether a remedy takes back what was set: nearer to where the value would start by itself.
  [[nodiscard]] bool takesBack(const Remedy& remedy) const {
    for (const auto& [field, value] : remedy.changes) {
      if (!design_.has(field)) return false;
      Design untouched = design_;
      untouched.clear(field);
      const double start = complete(untouched)[field];
      if (std::abs(value - start) >= std::abs(sizes_[field] - start)) return false;
    }
    for (const auto& [choice, option] : remedy.picks)
      if (option != 0) return false;
    return true;
  }

  void keep(const Remedy& remedy) {
    kept_ = true;
    std::vector<Remedy>& list = findings_[task_->finding].remedies;
    const bool there = std::any_of(list.begin(), list.end(), [&](const Remedy& r) {
      return r.changes == remedy.changes && r.picks == remedy.picks &&
             r.onGarment == remedy.onGarment;
    });
    if (there) return;
    RemedyOrder order{0, 0, 0, !recipe_ || takesBack(remedy) ? 0 : 1, task_->rank};
    for (const Finding& f : trials_.whole(remedy).findings)
      ++(f.severity == Severity::Blocking  ? order.blocking
         : f.severity == Severity::Warning ? order.warnings
                                           : order.notes);
    std::vector<RemedyOrder>& orders = orders_[task_->finding];
    const auto at = std::upper_bound(orders.begin(), orders.end(), order) - orders.begin();
    orders.insert(orders.begin() + at, order);
    list.insert(list.begin() + at, remedy);
    if (watch_.found) watch_.found(task_->finding, list);
  }

  const Design& design_;
  const Sizes& sizes_;
  const Chain& chain_;
  Findings& findings_;
  const Findings before_;
  const RemedyWatch& watch_;
  Trials trials_;
  std::vector<std::vector<RemedyOrder>> orders_; // beside the remedies of each finding
  double start_;
  std::uint64_t madeNow_ = 0;
  std::vector<Task> tasks_;
  // What is being attempted.
  const Task* task_ = nullptr;
  const Recipe* recipe_ = nullptr;
  std::vector<Field> fields_;
  int least_ = 1;                        // steps
  Severity newFrom_ = Severity::Warning; // so grave and new, and it is refused
  std::vector<std::string_view> alike_;  // further findings that have to be gone
  bool kept_ = false;
};

} // namespace

bool addRemedies(const Design& design, const Sizes& sizes, const Chain& chain, Findings& findings,
                 const RemedyWatch& watch) {
  return Search(design, sizes, chain, findings, watch).run();
}

} // namespace scye
