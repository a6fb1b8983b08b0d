#include "garment/remedies.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace scye {
namespace {

// What may be turned to remove a finding: some fields together, in one direction; or a choice.
// Without either it is the field where the finding is shown.
struct Recipe {
  std::string_view code, key;
  std::vector<Field> fields;
  int direction = 1;
  std::optional<Remedy::Pick> pick = std::nullopt;
};

const std::vector<Recipe>& recipes() {
  static const std::vector<Recipe> all = {
      {"size.vanishes", "more.size", {}, 1},
      {"armhole.narrow", "more.bust", {Field::EaseBust}, 1},
      {"armhole.narrow", "less.cross", {Field::EaseCrossBack, Field::EaseCrossFront}, -1},
      {"underarm.wide", "less.underarm", {Field::UnderarmBack, Field::UnderarmFront}, -1},
      {"armhole.shapingHigh", "less.rise", {Field::RiseShare}, -1},
      {"underarm.low", "less.depth", {Field::EaseArmholeDepth}, -1},
      {"armhole.tight", "more.depth", {Field::EaseArmholeDepth}, 1},
      {"armhole.tight", "more.bust", {Field::EaseBust}, 1},
      {"armhole.roomy", "less.depth", {Field::EaseArmholeDepth}, -1},
      {"armhole.roomy", "less.bust", {Field::EaseBust}, -1},
      {"cross.wider", "more.shoulder", {Field::EaseCrossShoulder}, 1},
      {"cross.wider", "less.shown", {}, -1},
      {"depth.ease", "less.depth", {Field::EaseArmholeDepth}, -1},
      {"cap.crownWide", "less.crown", {Field::CrownWidth}, -1},
      {"cap.crownWide", "more.upperArm", {Field::EaseUpperArm}, 1},
      {"cap.crownWide", "less.underarm", {Field::UnderarmBack, Field::UnderarmFront}, -1},
      {"match.tooWide", "more.depth", {Field::EaseArmholeDepth}, 1},
      {"match.tooWide", "less.upperArm", {Field::EaseUpperArm}, -1},
      {"match.tooWide", "less.cross", {Field::EaseCrossBack, Field::EaseCrossFront}, -1},
      {"match.unreachable", "more.capHeight", {Field::CapHeight}, 1},
      {"match.unreachable", "less.capHeight", {Field::CapHeight}, -1},
      {"match.unreachable",
       "workOut.capHeight",
       {},
       0,
       Remedy::Pick{Choice::WorkedOut, int(WorkedOut::CapHeight)}},
      {"match.nowhere",
       "workOut.capHeight",
       {},
       0,
       Remedy::Pick{Choice::WorkedOut, int(WorkedOut::CapHeight)}},
      {"upperArm.closed", "more.upperArm", {Field::EaseUpperArm}, 1},
      {"upperArm.closed", "less.capHeight", {Field::CapHeight}, -1},
      {"upperArm.closed",
       "workOut.capHeight",
       {},
       0,
       Remedy::Pick{Choice::WorkedOut, int(WorkedOut::CapHeight)}},
      {"crown.wide", "less.crown", {Field::CrownWidth}, -1},
      {"crown.wide", "more.capHeight", {Field::CapHeight}, 1},
      {"crown.wide",
       "workOut.capHeight",
       {},
       0,
       Remedy::Pick{Choice::WorkedOut, int(WorkedOut::CapHeight)}},
      {"pleats.small", "less.pleats", {Field::Pleats}, -1},
      {"pleats.small", "more.capEase", {Field::CapEase}, 1},
      {"gathers.nothing", "more.capEase", {Field::CapEase}, 1},
      {"gathers.nothing",
       "capTop.smooth",
       {},
       0,
       Remedy::Pick{Choice::CapTop, int(CapTop::Smooth)}},
      {"gathers.wide", "less.gatherWidth", {Field::GatherWidth}, -1},
      {"gathers.thick", "more.gatherWidth", {Field::GatherWidth}, 1},
      {"gathers.thick", "less.capEase", {Field::CapEase}, -1},
      {"sleeve.cuffReach", "less.full", {Field::FullGirth}, -1},
      {"sleeve.cuffReach", "more.sleeveLength", {Field::SleeveLength}, 1},
      {"sleeve.cuffReach", "less.cuffDepth", {Field::CuffDepth}, -1},
      {"sleeve.notFull", "more.full", {Field::FullGirth}, 1},
      {"sleeve.notFull", "less.cuff", {Field::CuffGirth}, -1},
      {"waist.outside", "more.waistHeight", {Field::WaistHeight}, 1},
      {"waist.outside", "less.waistHeight", {Field::WaistHeight}, -1},
      {"waist.outside", "side.straight", {}, 0, Remedy::Pick{Choice::Side, int(Side::Straight)}},
      {"buttonholes.crowded", "less.buttons", {Field::Buttons}, -1},
      {"buttonholes.crowded", "less.neckDrop", {Field::FrontNeckDrop}, -1},
      {"buttonholes.narrow", "more.buttonBand", {Field::ButtonBand}, 1},
      {"buttonholes.narrow",
       "band.pickedUp",
       {},
       0,
       Remedy::Pick{Choice::BandMade, int(BandMade::PickedUp)}},
      {"bust.noRoom", "more.hemToUnderarm", {Field::HemToUnderarm}, 1},
      {"bust.noRoom",
       "bust.none",
       {},
       0,
       Remedy::Pick{Choice::BustShaping, int(BustShaping::None)}},
      {"cap.low", "less.upperArm", {Field::EaseUpperArm}, -1},
      {"cap.low", "more.capHeight", {Field::CapHeight}, 1},
      {"cap.low", "more.depth", {Field::EaseArmholeDepth}, 1},
      {"cap.high", "more.upperArm", {Field::EaseUpperArm}, 1},
      {"cap.high", "less.capHeight", {Field::CapHeight}, -1},
      {"cap.high", "more.crown", {Field::CrownWidth}, 1},
      {"capEase.high", "less.capEase", {Field::CapEase}, -1},
      {"capEase.high", "gathers", {}, 0, Remedy::Pick{Choice::CapTop, int(CapTop::Gathered)}},
      {"capEase.high", "less.capHeight", {Field::CapHeight}, -1},
      {"capEase.negative", "more.capEase", {Field::CapEase}, 1},
      {"capEase.negative", "more.capHeight", {Field::CapHeight}, 1},
      {"lean.notNow",
       "workOut.capHeight",
       {},
       0,
       Remedy::Pick{Choice::WorkedOut, int(WorkedOut::CapHeight)}},
      {"halfCap.uneven", "lean", {}, 0, Remedy::Pick{Choice::CapLean, int(CapLean::Leaning)}},
      {"halfCap.uneven", "more.crown", {Field::CrownWidth}, 1},
      {"upperArm.tight", "more.upperArm", {Field::EaseUpperArm}, 1},
      {"upperArm.tight", "less.capHeight", {Field::CapHeight}, -1},
      {"upperArm.tight",
       "workOut.capHeight",
       {},
       0,
       Remedy::Pick{Choice::WorkedOut, int(WorkedOut::CapHeight)}},
      {"wrist.hand", "more.wrist", {Field::EaseWrist}, 1},
      {"wrist.hand", "more.cuff", {Field::CuffGirth}, 1},
      {"sleeve.short", "less.cuffDepth", {Field::CuffDepth}, -1},
      {"neck.wide", "less.neckWidth", {Field::NeckWidth}, -1},
      {"neck.armhole", "less.neckWidth", {Field::NeckWidth}, -1},
      {"neck.armhole", "less.neckDrop", {Field::FrontNeckDrop}, -1},
      {"neck.armhole", "more.crossFront", {Field::EaseCrossFront}, 1},
      {"shoulder.short", "less.neckWidth", {Field::NeckWidth}, -1},
      {"shoulder.long", "more.neckWidth", {Field::NeckWidth}, 1},
      {"shoulder.differs", "less.neckWidth", {Field::NeckWidth}, -1},
      {"shoulder.differs", "more.neckWidth", {Field::NeckWidth}, 1},
      {"neck.deep", "less.neckDrop", {Field::FrontNeckDrop}, -1},
      {"neck.head", "more.neckWidth", {Field::NeckWidth}, 1},
      {"neck.head", "more.neckDrop", {Field::FrontNeckDrop}, 1},
      {"neck.head", "more.opening", {Field::BackOpening}, 1},
      {"neck.base", "more.neckWidth", {Field::NeckWidth}, 1},
      {"neck.base", "more.neckDrop", {Field::FrontNeckDrop}, 1},
      {"hip.tight", "more.hip", {Field::EaseHip}, 1},
      {"hip.tight", "more.bust", {Field::EaseBust}, 1},
      {"knit.noCapStitches", "less.crown", {Field::CrownWidth}, -1},
      {"knit.noCapStitches", "more.upperArm", {Field::EaseUpperArm}, 1},
      {"knit.noCapStitches", "less.underarm", {Field::UnderarmBack, Field::UnderarmFront}, -1},
      {"knit.noCap", "everyRow", {}, 0, Remedy::Pick{Choice::EveryRow, int(YesNo::Yes)}},
      {"knit.noCap", "less.upperArm", {Field::EaseUpperArm}, -1},
      {"knit.noCap", "more.depth", {Field::EaseArmholeDepth}, 1},
      {"knit.mismatch", "everyRow", {}, 0, Remedy::Pick{Choice::EveryRow, int(YesNo::Yes)}},
      {"knit.mismatch", "more.crown", {Field::CrownWidth}, 1},
      {"knit.mismatch", "less.upperArm", {Field::EaseUpperArm}, -1},
      {"knit.mismatch", "more.depth", {Field::EaseArmholeDepth}, 1},
      {"knit.deviation", "more.fidelity", {Field::Fidelity}, 1},
      {"knit.deviation", "everyRow", {}, 0, Remedy::Pick{Choice::EveryRow, int(YesNo::Yes)}},
      {"knit.wideSteps", "everyRow", {}, 0, Remedy::Pick{Choice::EveryRow, int(YesNo::Yes)}},
      {"knit.wideSteps", "less.upperArm", {Field::EaseUpperArm}, -1},
      {"knit.armholeRows", "more.depth", {Field::EaseArmholeDepth}, 1},
      {"knit.armholeRows", "more.underarm", {Field::UnderarmBack, Field::UnderarmFront}, 1},
      {"knit.armholeRows", "less.bust", {Field::EaseBust}, -1},
      {"knit.sleeveFast", "more.wrist", {Field::EaseWrist}, 1},
      {"knit.sleeveFast", "less.upperArm", {Field::EaseUpperArm}, -1},
      {"knit.sleeveFast",
       "sleeve.straight",
       {},
       0,
       Remedy::Pick{Choice::SleeveLine, int(SleeveLine::Straight)}},
      {"knit.blunt", "more.neckDrop", {Field::FrontNeckDrop}, 1},
      {"knit.blunt", "less.neckWidth", {Field::NeckWidth}, -1},
      {"knit.rounded", "more.shown", {}, 1},
      {"knit.rounded", "less.shown", {}, -1},
      {"knit.rounded", "more.bust", {Field::EaseBust}, 1},
      {"knit.rounded", "less.bust", {Field::EaseBust}, -1},
      {"knit.impossible", "less.neckWidth", {Field::NeckWidth}, -1},
      {"knit.impossible", "more.bust", {Field::EaseBust}, 1},
  };
  return all;
}

class Search {
public:
  Search(const Design& design, const Sizes& sizes, const Evaluate& evaluate, const Findings& before)
      : design_(design), sizes_(sizes), evaluate_(evaluate), before_(before) {}

  std::optional<Remedy> run(const Recipe& recipe, Field shownAt) {
    if (recipe.pick) {
      Remedy remedy{std::string(recipe.key), {}, {}, {*recipe.pick}};
      if (works(remedy, recipe.code)) return remedy;
      return std::nullopt;
    }
    fields_.clear();
    for (Field f : recipe.fields)
      fields_.push_back(effective(f));
    if (fields_.empty()) fields_.push_back(shownAt);
    const FieldKind kind = info(fields_.front()).kind;
    const double step = kind == FieldKind::Share ? 0.01 : kind == FieldKind::Count ? 1 : 0.1;
    const auto at = [&](int n) { return remedyAt(recipe, n * step); };
    int bad = 0, good = 0;
    for (int n = 1; n <= 512 && !good; n *= 2) {
      const auto trial = at(n);
      if (!trial) break;
      works(*trial, recipe.code) ? good = n : bad = n;
    }
    // The finding may be gone only in a window that doubling steps over: walk.
    for (int n = 3; n <= 60 && !good; ++n) {
      const auto trial = at(n);
      if (!trial) break;
      if (works(*trial, recipe.code)) good = n, bad = n - 1;
    }
    if (!good) return std::nullopt;
    while (good - bad > 1) {
      const int mid = (good + bad) / 2;
      const auto trial = at(mid);
      (trial && works(*trial, recipe.code) ? good : bad) = mid;
    }
    return at(good);
  }

private:
  // On a garment that fits the ease is already in: there the measurement itself is turned.
  [[nodiscard]] Field effective(Field f) const {
    const auto m = measurementOf(f);
    return m && sizes_.fromGarment(*m) ? *m : f;
  }

  [[nodiscard]] std::optional<Remedy> remedyAt(const Recipe& recipe, double by) const {
    Remedy remedy{std::string(recipe.key), {}, {}, {}};
    const bool share = info(fields_.front()).kind == FieldKind::Share;
    const auto flat = [](Field f) {
      return isMeasurement(f) && info(f).kind == FieldKind::Girth ? 0.5 : 1;
    };
    for (Field f : fields_) {
      const double grain = share ? 100 : info(f).kind == FieldKind::Count ? 1 : 10;
      // On whole tenths, as a person would set it.
      const double raw = sizes_[f] + recipe.direction * by * flat(f);
      const double value =
          (recipe.direction > 0 ? std::ceil(raw * grain - 1e-6) : std::floor(raw * grain + 1e-6)) /
          grain;
      if (check(f, value)) return std::nullopt;
      remedy.changes.push_back({f, value});
    }
    const double to = remedy.changes.front().value;
    const double change = std::abs(to - sizes_[fields_.front()]) / flat(fields_.front());
    const bool count = info(fields_.front()).kind == FieldKind::Count;
    remedy.params = share   ? Params{percentParam("by", change), percentParam("to", to)}
                    : count ? Params{numberParam("by", change), numberParam("to", to)}
                            : Params{lengthParam("by", change), lengthParam("to", to)};
    return remedy;
  }

  [[nodiscard]] bool works(const Remedy& remedy, std::string_view code) const {
    const Findings after = evaluate_(applied(design_, remedy));
    if (findCode(after, code)) return false;
    return std::none_of(after.begin(), after.end(), [&](const Finding& f) {
      return f.severity == Severity::Blocking && !findCode(before_, f.code);
    });
  }

  const Design& design_;
  const Sizes& sizes_;
  const Evaluate& evaluate_;
  const Findings& before_;
  std::vector<Field> fields_;
};

} // namespace

void addRemedies(const Design& design, const Sizes& sizes, const Evaluate& evaluate,
                 Findings& findings) {
  const Findings before = findings;
  Search search(design, sizes, evaluate, before);
  for (Finding& finding : findings)
    for (const Recipe& recipe : recipes())
      if (recipe.code == finding.code)
        if (auto remedy = search.run(recipe, finding.fields.front()))
          finding.remedies.push_back(std::move(*remedy));
}

} // namespace scye
