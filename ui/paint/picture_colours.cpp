#include "paint/picture_colours.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// Okabe and Ito, "Color Universal Design" (2008).
const QColor kSkyBlue(0x56, 0xB4, 0xE9), kBlue(0x00, 0x72, 0xB2), kOrange(0xE6, 0x9F, 0x00),
    kVermilion(0xD5, 0x5E, 0x00), kGreen(0x00, 0x9E, 0x73);

PictureColours coloursFor(const QColor& ground, const QColor& ink, bool dark) {
  PictureColours c;
  c.ground = ground;
  const QColor lead = accent(dark);
  const auto set = [&](Role role, const QColor& colour) { c.colour[std::size_t(role)] = colour; };
  set(Role::Outline, ink);
  set(Role::Fabric, mixed(ground, lead, dark ? 0.10 : 0.055));
  set(Role::Guide, mixed(ground, ink, 0.38));
  set(Role::Measure, mixed(ground, ink, 0.72));
  set(Role::Caption, ink);
  set(Role::Note, mixed(ground, ink, 0.68));
  set(Role::Lit, lead);
  set(Role::Ghost, mixed(ground, ink, 0.30));
  set(Role::Knitted, legible(kGreen, c[Role::Fabric]));
  set(Role::Armhole, ink);
  set(Role::Cap, lead);
  set(Role::Pair, mixed(ground, ink, 0.30));
  set(Role::Ease, mixed(ground, lead, 0.45));
  set(Role::Short, legible(kVermilion, c[Role::Fabric]));
  set(Role::Notch, mixed(ground, ink, 0.78));
  set(Role::Cell, mixed(ground, ink, 0.32));
  set(Role::TenCells, mixed(ground, ink, 0.75));
  set(Role::Symbol, ink);
  set(Role::NoStitch, mixed(ground, ink, 0.14));
  return c;
}

} // namespace

QColor mixed(const QColor& a, const QColor& b, double shareOfB) {
  const auto mix = [&](float x, float y) { return float(x + (y - x) * shareOfB); };
  return QColor::fromRgbF(mix(a.redF(), b.redF()), mix(a.greenF(), b.greenF()),
                          mix(a.blueF(), b.blueF()));
}

double contrast(const QColor& a, const QColor& b) {
  const auto light = [](const QColor& c) {
    const auto part = [](float v) {
      return v <= 0.04045f ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * part(c.redF()) + 0.7152 * part(c.greenF()) + 0.0722 * part(c.blueF());
  };
  const double x = light(a), y = light(b);
  return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

QColor legible(const QColor& colour, const QColor& ground) {
  constexpr double kLeast = 4.5;
  const QColor far =
      contrast(ground, Qt::black) > contrast(ground, Qt::white) ? Qt::black : Qt::white;
  for (double share = 0; share < 1; share += 0.05)
    if (const QColor c = mixed(colour, far, share); contrast(c, ground) >= kLeast) return c;
  return far;
}

bool isDark(const QPalette& palette) {
  return palette.color(QPalette::Window).lightnessF() <
         palette.color(QPalette::WindowText).lightnessF();
}

QColor accent(bool dark) {
  return dark ? kSkyBlue : kBlue;
}
QColor warningColour(bool dark) {
  return dark ? kOrange : kOrange.darker(135);
}
QColor blockingColour(bool dark) {
  return dark ? kVermilion.lighter(130) : kVermilion;
}

PictureColours paperColours() {
  return coloursFor(Qt::white, QColor(0x1c, 0x1c, 0x1c), false);
}

PictureColours screenColours(const QPalette& palette) {
  return coloursFor(palette.color(QPalette::Base), palette.color(QPalette::Text), isDark(palette));
}

Pen penOf(Role role) {
  switch (role) {
  case Role::Outline:
    return {1.6, {}};
  case Role::Guide:
    return {1, {5, 4}};
  case Role::Measure:
    return {1, {}};
  case Role::Lit:
    return {2.6, {}};
  case Role::Ghost:
    return {1.4, {2, 3}};
  case Role::Knitted:
    return {1.2, {}};
  case Role::Armhole:
    return {2, {}};
  case Role::Cap:
    return {2.4, {}};
  case Role::Cell:
    return {0.7, {}};
  case Role::TenCells:
    return {1.3, {}};
  case Role::Symbol:
    return {1.4, {}};
  case Role::Short:
    return {4, {}};
  case Role::Notch:
    return {1.2, {}};
  default:
    return {1, {}};
  }
}

bool isBold(Role role) {
  return role == Role::Caption || role == Role::Lit;
}

} // namespace scye
