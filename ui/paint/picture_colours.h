// Colours and pens of a picture, by the role of a mark. Widths are in pens: one pen is a pixel on
// the screen and a quarter of a millimetre on paper. The palette is that of Okabe and Ito, which
// people with any colour vision can tell apart; no role is told by its colour alone.
#pragma once

#include "schematic/picture.h"

#include <QColor>
#include <QList>
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

struct Pen {
  double width = 1;    // pens
  QList<qreal> dashes; // lengths in pens; empty: a full line
};
[[nodiscard]] Pen penOf(Role role);
[[nodiscard]] bool isBold(Role role); // letters

// The one accent, and what stands out against it; also used by the panels.
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
