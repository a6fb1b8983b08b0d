#include "seam/room.h"

namespace scye {

ArmholeRoom armholeRoom(const GarmentDraft& draft) {
  ArmholeRoom room{draft.cap.armhole(), draft.sizes[Field::ScyeGirth]};
  room.measured = draft.design.has(Field::ScyeGirth);
  const auto& likely = draft.sizes.likely[std::size_t(Field::ScyeGirth)];
  room.low = room.edge - (likely ? likely->high : room.girth);
  room.high = room.edge - (likely ? likely->low : room.girth);
  return room;
}

std::string roomText(const ArmholeRoom& room, const Phrases& phrases, LengthUnit unit) {
  const bool ranged = room.low < room.high;
  return phrases.say(room.measured ? "room.line.measured"
                     : ranged      ? "room.line"
                                   : "room.line.rule",
                     {lengthParam("room", room.value()), lengthParam("girth", room.girth),
                      lengthParam("low", room.low), lengthParam("high", room.high)},
                     unit);
}

} // namespace scye
