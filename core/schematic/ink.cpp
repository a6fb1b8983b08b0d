#include "schematic/ink.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace scye {
namespace {

constexpr float kFull = 65535;

std::uint16_t channel(std::uint16_t x, std::uint16_t y, double shareOfY) {
  const float a = x / kFull, b = y / kFull;
  return std::uint16_t(std::lround(float(a + (b - a) * shareOfY) * kFull));
}

} // namespace

std::string Colour::hex() const {
  const auto byte = [](std::uint16_t channel) { return (channel + 128) / 257; };
  char text[8];
  std::snprintf(text, sizeof text, "#%02x%02x%02x", byte(red), byte(green), byte(blue));
  return text;
}

Colour mixed(const Colour& a, const Colour& b, double shareOfB) {
  return {channel(a.red, b.red, shareOfB), channel(a.green, b.green, shareOfB),
          channel(a.blue, b.blue, shareOfB)};
}

double contrast(const Colour& a, const Colour& b) {
  const auto light = [](const Colour& c) {
    const auto part = [](std::uint16_t of) {
      const float v = of / kFull;
      return v <= 0.04045f ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * part(c.red) + 0.7152 * part(c.green) + 0.0722 * part(c.blue);
  };
  const double x = light(a), y = light(b);
  return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

Colour legible(const Colour& colour, const Colour& ground) {
  constexpr double kLeast = 4.5;
  const Colour far = contrast(ground, kBlack) > contrast(ground, kWhite) ? kBlack : kWhite;
  for (double share = 0; share < 1; share += 0.05)
    if (const Colour c = mixed(colour, far, share); contrast(c, ground) >= kLeast) return c;
  return far;
}

Colour accentInk(bool dark) {
  return dark ? kSkyBlue : kBlue;
}

Inks inksFor(const Colour& ground, const Colour& ink, bool dark) {
  Inks c;
  c.ground = ground;
  const Colour lead = accentInk(dark);
  const auto set = [&](Role role, const Colour& colour) { c.colour[std::size_t(role)] = colour; };
  set(Role::Outline, ink);
  set(Role::Fabric, mixed(ground, lead, dark ? 0.10 : 0.055));
  set(Role::Worked, mixed(ground, kOrange, 0.15));
  set(Role::Guide, mixed(ground, ink, 0.38));
  set(Role::Measure, mixed(ground, ink, 0.72));
  set(Role::Caption, ink);
  set(Role::Note, mixed(ground, ink, 0.68));
  set(Role::Lit, lead);
  set(Role::Ghost, mixed(ground, ink, 0.30));
  set(Role::Knitted, legible(kGreen, c[Role::Worked]));
  set(Role::Armhole, ink);
  set(Role::Cap, lead);
  set(Role::Pair, mixed(ground, ink, 0.30));
  set(Role::Ease, mixed(ground, lead, 0.45));
  set(Role::Short, legible(kVermilion, c[Role::Fabric]));
  set(Role::Notch, mixed(ground, ink, 0.78));
  set(Role::Cell, mixed(ground, ink, 0.45));
  set(Role::TenCells, mixed(ground, ink, 0.75));
  set(Role::Symbol, ink);
  set(Role::NoStitch, mixed(ground, ink, 0.5));
  return c;
}

Inks paperInks() {
  Inks inks = inksFor(kWhite, colour8(0x1c, 0x1c, 0x1c), false);
  // A laser printer makes dots of every tint: fine lines would break up, and faces look dirty.
  for (const Role role : {Role::Cell, Role::TenCells, Role::Symbol, Role::NoStitch})
    inks.colour[std::size_t(role)] = kBlack;
  inks.colour[std::size_t(Role::Fabric)] = kWhite;
  return inks;
}

Pen penOf(Role role) {
  switch (role) {
  case Role::Outline:
    return {1.6};
  case Role::Guide:
    return {1, {5, 4}};
  case Role::Lit:
    return {2.6};
  case Role::Ghost:
    return {1.4, {2, 3}};
  case Role::Armhole:
    return {2};
  case Role::Cap:
    return {2.4};
  case Role::Cell:
    return {0.5};
  case Role::NoStitch:
    return {0.4};
  case Role::TenCells:
    return {1.3};
  case Role::Symbol:
    return {1.4};
  case Role::Short:
    return {4};
  case Role::Knitted:
  case Role::Notch:
    return {1.2};
  case Role::Fabric:
  case Role::Worked:
  case Role::Measure:
  case Role::Caption:
  case Role::Note:
  case Role::Pair:
  case Role::Ease:
    break;
  }
  return {};
}

bool isBold(Role role) {
  return role == Role::Caption || role == Role::Lit;
}

} // namespace scye
