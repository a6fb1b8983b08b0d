// Findings in words and signs: each severity has a shape and a word, and its colour only besides.
#pragma once

#include "model/finding.h"

#include <QColor>
#include <QIcon>

namespace scye {

[[nodiscard]] QIcon severityIcon(Severity severity);
[[nodiscard]] QString severityName(Severity severity);
[[nodiscard]] QString findingText(const Phrases& phrases, const Finding& finding, LengthUnit unit);
[[nodiscard]] QString remedyText(const Phrases& phrases, const Remedy& remedy, LengthUnit unit);

} // namespace scye
