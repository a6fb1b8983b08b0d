// Putting the garment on: laid round the form, sewn while nothing weighs, let fall, the arms moved.
#pragma once

#include "worn/body_form.h"
#include "worn/drape.h"

#include <functional>

namespace scye {

// What draping takes at most, and when it counts as settled.
struct Settling {
  double rms = 0.004, most = 0.05; // cm a step, for `calm` steps in a row
  int calm = 5;
  int steps = 400;
};

// Asked after every step, with the state; true: give up.
using Watch = std::function<bool(const DrapeState&, const BodyForm&)>;

// Degrees at which the garment is put on, or hanging where arms hang further out.
inline constexpr double kDressingArm = 45;

// Round the form, arms at kDressingArm: near enough to be sewn.
[[nodiscard]] Points laidOut(const SewnGarment& garment, const BodyForm& body);
// As the arm moves it takes the sleeve along, the more the further from the armhole.
void carry(const SewnGarment& garment, DrapeState& state, const BodyForm& from, const BodyForm& to);

[[nodiscard]] DrapeState putOn(Drape& drape, const BodyForm& body, const Watch& watch = {});
[[nodiscard]] DrapeState settled(Drape& drape, DrapeState state, const BodyForm& body,
                                 const Settling& settling = {}, const Watch& watch = {});
// From the arm as `from` has it to `degrees`, and settled there; `body` is left as it then is.
[[nodiscard]] DrapeState withArm(Drape& drape, DrapeState state, BodyForm& body, double degrees,
                                 const Settling& settling = {}, const Watch& watch = {});

// The one drape that pictures are exported and measures taken from: put on, and the arms moved to
// where they are wanted, whatever was seen before.
struct Worn {
  std::shared_ptr<const SewnGarment> garment;
  BodyForm body;
  DrapeState state;
};
[[nodiscard]] Worn canonicalDrape(std::shared_ptr<const SewnGarment> garment, const BodyForm& body,
                                  double degrees, const Watch& watch = {});

// The same from a design, on the form of its wearer; nothing where a piece cannot be knitted.
[[nodiscard]] std::optional<Worn> wornBy(const Derived& derived, double degrees);
[[nodiscard]] BodyForm formOf(const Derived& derived);

} // namespace scye
