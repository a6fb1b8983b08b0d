// What the knitter is doing, in the order of the work. The window shows for each what it needs.
#pragma once

namespace scye {

enum class Stage { Drafting, Knitting, MakingUp };
inline constexpr int kStageCount = 3;

} // namespace scye
