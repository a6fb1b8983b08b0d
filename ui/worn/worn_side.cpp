#include "worn/worn_side.h"

namespace scye {
namespace {

constexpr Settling kSettling;
constexpr double kArmStep = 3;    // degrees
constexpr double kSleeveStep = 1; // cm

} // namespace

bool WornSide::take(const std::shared_ptr<const Derived>& garment, const Stopped& stopped) {
  const auto pattern = wornPattern(*garment);
  if (!pattern) {
    from_ = garment;
    worn_.reset(), drape_.reset();
    changed();
    return true;
  }
  const BodyMeasures measures =
      bodyMeasures(garment->draft.sizes, garment->draft.sizes.style.figure);
  const bool sameBody = form_ && form_->measures() == measures;
  if (!sameBody) {
    form_.emplace(measures);
    trunk_ = trunkSurface(*form_);
  }
  calm_ = steps_ = 0;
  if (worn_ && sameBody)
    if (auto shaped = reshaped(*worn_->garment, *pattern)) {
      worn_->garment = std::make_shared<const SewnGarment>(std::move(*shaped));
      drape_ = std::make_unique<Drape>(worn_->garment);
      worn_->state.before = worn_->state.x;
      worn_->state.momentum = 1;
      from_ = garment;
      changed();
      return true;
    }
  const auto sewnNow = std::make_shared<const SewnGarment>(sewn(*pattern));
  drape_ = std::make_unique<Drape>(sewnNow);
  bool given = false;
  worn_.reset();
  DrapeState state = putOn(*drape_, *form_, [&](const DrapeState& now, const BodyForm& body) {
    worn_.emplace(Worn{sewnNow, body, now});
    changed();
    return given = stopped();
  });
  worn_.emplace(Worn{sewnNow, form_->posed(kDressingArm), std::move(state)});
  changed();
  if (given) {
    from_.reset();
    worn_.reset();
    return false;
  }
  from_ = garment;
  return true;
}

bool WornSide::goOn(double arm) {
  if (!worn_ || !drape_) return false;
  const double to = form_->posed(arm).arm(), now = worn_->body.arm();
  if (std::abs(to - now) > 1e-9) {
    const BodyForm next = form_->posed(now + std::clamp(to - now, -kArmStep, kArmStep));
    carry(*worn_->garment, worn_->state, worn_->body, next);
    worn_->body = next;
    calm_ = steps_ = 0;
  } else if (calm_ >= kSettling.calm || steps_ >= kSettling.steps) {
    return false;
  }
  worn_->state = drape_->step(worn_->state, worn_->body, {});
  ++steps_;
  const bool calm = worn_->state.rms < kSettling.rms && worn_->state.most < kSettling.most;
  calm_ = calm ? calm_ + 1 : 0;
  changed();
  return true;
}

bool WornSide::moveSleeves(double off) {
  if (off == off_) return false;
  off_ += std::clamp(off - off_, -kSleeveStep, kSleeveStep);
  changed();
  return true;
}

void WornSide::colourPulls(bool pulls) {
  if (pulls == pulls_) return;
  pulls_ = pulls;
  changed();
}

const WornScene& WornSide::scene() {
  if (due_ && worn_) {
    // What light reached the points stays meanwhile, near enough.
    std::vector<float> cloth = std::move(scene_.cloth.open), trunk = std::move(scene_.trunkOpen),
                       arms = std::move(scene_.armsOpen);
    scene_ = sceneOf(*worn_, trunk_, {pulls_, off_});
    if (cloth.size() == scene_.cloth.open.size()) scene_.cloth.open = std::move(cloth);
    if (trunk.size() == scene_.trunkOpen.size()) scene_.trunkOpen = std::move(trunk);
    if (arms.size() == scene_.armsOpen.size()) scene_.armsOpen = std::move(arms);
    due_ = false;
  }
  return scene_;
}

void WornSide::light() {
  (void)scene();
  lightUp(scene_);
  lit_ = true;
}

} // namespace scye
