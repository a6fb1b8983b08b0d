#include "paint/picture_colours.h"

#include <QRgba64>

namespace scye {
namespace {

QColor asQt(const Colour& c) {
  return QColor::fromRgba64(c.red, c.green, c.blue);
}

Colour asInk(const QColor& c) {
  const QRgba64 rgba = c.rgba64();
  return {rgba.red(), rgba.green(), rgba.blue()};
}

PictureColours coloursOf(const Inks& inks) {
  PictureColours c;
  c.ground = asQt(inks.ground);
  for (int i = 0; i < kRoleCount; ++i)
    c.colour[std::size_t(i)] = asQt(inks[Role(i)]);
  return c;
}

} // namespace

QColor mixed(const QColor& a, const QColor& b, double shareOfB) {
  return asQt(mixed(asInk(a), asInk(b), shareOfB));
}

double contrast(const QColor& a, const QColor& b) {
  return contrast(asInk(a), asInk(b));
}

QColor legible(const QColor& colour, const QColor& ground) {
  return asQt(legible(asInk(colour), asInk(ground)));
}

bool isDark(const QPalette& palette) {
  return palette.color(QPalette::Window).lightnessF() <
         palette.color(QPalette::WindowText).lightnessF();
}

QColor accent(bool dark) {
  return asQt(accentInk(dark));
}
QColor warningColour(bool dark) {
  return dark ? asQt(kOrange) : asQt(kOrange).darker(135);
}
QColor blockingColour(bool dark) {
  return dark ? asQt(kVermilion).lighter(130) : asQt(kVermilion);
}

PictureColours paperColours() {
  return coloursOf(paperInks());
}

PictureColours screenColours(const QPalette& palette) {
  return coloursOf(inksFor(asInk(palette.color(QPalette::Base)),
                           asInk(palette.color(QPalette::Text)), isDark(palette)));
}

} // namespace scye
