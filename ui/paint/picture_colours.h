// The inks of core/schematic/ink.h as Qt's colours: on paper, and on a screen by its palette. The
// accents are also used by the panels.
#pragma once

#include "schematic/ink.h"

#include <QColor>
#include <QPalette>

#include <array>

namespace scye {

struct PictureColours {
  QColor ground; // what it is painted on
  std::array<QColor, kRoleCount> colour;
  [[nodiscard]] const QColor& operator[](Role role) const { return colour[std::size_t(role)]; }
};

[[nodiscard]] PictureColours paperColours();
[[nodiscard]] PictureColours screenColours(const QPalette& palette);

// The one accent, and what stands out against it.
[[nodiscard]] bool isDark(const QPalette& palette);
[[nodiscard]] QColor accent(bool dark);
[[nodiscard]] QColor warningColour(bool dark);  // orange
[[nodiscard]] QColor blockingColour(bool dark); // vermilion
// That colour for letters: as much of black or white in it as makes them stand out 4.5 to 1 from
// the ground (WCAG 2.1, 1.4.3).
[[nodiscard]] QColor legible(const QColor& colour, const QColor& ground);
[[nodiscard]] double contrast(const QColor& a, const QColor& b); // 1 to 21, by WCAG 2.1
[[nodiscard]] QColor mixed(const QColor& a, const QColor& b, double shareOfB);

} // namespace scye
