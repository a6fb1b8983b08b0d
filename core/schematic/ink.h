// Colours and pens of a picture, by the role of a mark, for whatever it is drawn with. Widths are
// in pens: one pen is a pixel on the screen and a quarter of a millimetre on paper. The palette is
// that of Okabe and Ito, "Color Universal Design" (2008), which people with any colour vision can
// tell apart; no role is told by its colour alone.
#pragma once

#include "schematic/picture.h"

#include <array>
#include <string>
#include <vector>

namespace scye {

struct Colour {
  std::uint16_t red = 0, green = 0, blue = 0; // to 65535
  [[nodiscard]] std::string hex() const;      // "#0072b2"
  bool operator==(const Colour&) const = default;
};
// Of channels to 255.
[[nodiscard]] constexpr Colour colour8(int red, int green, int blue) {
  return {std::uint16_t(red * 257), std::uint16_t(green * 257), std::uint16_t(blue * 257)};
}
inline constexpr Colour kWhite = colour8(255, 255, 255), kBlack{};
inline constexpr Colour kSkyBlue = colour8(0x56, 0xB4, 0xE9), kBlue = colour8(0x00, 0x72, 0xB2),
                        kOrange = colour8(0xE6, 0x9F, 0x00), kVermilion = colour8(0xD5, 0x5E, 0x00),
                        kGreen = colour8(0x00, 0x9E, 0x73);

[[nodiscard]] Colour mixed(const Colour& a, const Colour& b, double shareOfB);
[[nodiscard]] double contrast(const Colour& a, const Colour& b); // 1 to 21, by WCAG 2.1
// That colour for letters and fine lines: as much of black or white in it as makes them stand out
// 4.5 to 1 from the ground (WCAG 2.1, 1.4.3).
[[nodiscard]] Colour legible(const Colour& colour, const Colour& ground);

struct Inks {
  Colour ground; // what it is drawn on
  std::array<Colour, kRoleCount> colour;
  [[nodiscard]] const Colour& operator[](Role role) const { return colour[std::size_t(role)]; }
};
[[nodiscard]] Inks inksFor(const Colour& ground, const Colour& ink, bool dark);
[[nodiscard]] Inks paperInks();
[[nodiscard]] Colour accentInk(bool dark); // the one lead colour

struct Pen {
  double width = 1;             // pens
  std::vector<double> dashes{}; // lengths in pens; empty: a full line
};
[[nodiscard]] Pen penOf(Role role);
[[nodiscard]] bool isBold(Role role); // letters

} // namespace scye
