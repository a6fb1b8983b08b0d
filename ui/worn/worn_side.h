// One garment on its form as the engine keeps it: draped so far, and what is drawn of it. Lives on
// the engine's thread.
#pragma once

#include "worn/body_surface.h"
#include "worn/scene.h"

#include <functional>

namespace scye {

class WornSide {
public:
  // Asked while a garment is put on, with the side as it then is; true: give up.
  using Stopped = std::function<bool()>;

  // Takes up another garment: the drape goes on where the pieces are alike enough, else it is put
  // on afresh. False where it was given up.
  bool take(const std::shared_ptr<const Derived>& garment, const Stopped& stopped);
  // A step toward the arm wanted and to rest; whether anything moved.
  bool goOn(double arm);
  bool moveSleeves(double off); // likewise, a step of the sleeves drawn off
  void colourPulls(bool pulls);

  [[nodiscard]] bool wears() const { return worn_.has_value(); }
  [[nodiscard]] const std::shared_ptr<const Derived>& garment() const { return from_; }
  [[nodiscard]] const WornScene& scene(); // made anew where it has changed
  void light();                           // fills in the light of the room
  [[nodiscard]] bool isLit() const { return lit_ && !due_; }
  [[nodiscard]] const BodyForm& body() const { return worn_->body; }
  [[nodiscard]] const Worn& worn() const { return *worn_; }

private:
  void changed() { due_ = true, lit_ = false; }

  std::shared_ptr<const Derived> from_;
  std::optional<BodyForm> form_;
  Surface trunk_;
  std::unique_ptr<Drape> drape_;
  std::optional<Worn> worn_;
  WornScene scene_;
  bool due_ = true, lit_ = false, pulls_ = false;
  int calm_ = 0, steps_ = 0;
  double off_ = 0;
};

} // namespace scye
