#include "schematic/dxf.h"

#include "model/enum_keys.h"

#include <charconv>
#include <cmath>

namespace scye {
namespace {

enum class Layer : std::uint8_t { Outline, Seam, Notches, Text, Lines };
constexpr EnumKeys<Layer, Layer::Lines> kLayers{{{Layer::Outline, "OUTLINE"},
                                                 {Layer::Seam, "SEAM"},
                                                 {Layer::Notches, "NOTCHES"},
                                                 {Layer::Text, "TEXT"},
                                                 {Layer::Lines, "LINES"}}};

Layer layerOf(Role role) {
  switch (role) {
  case Role::Knitted:
    return Layer::Outline;
  case Role::Outline:
  case Role::Armhole:
  case Role::Cap:
    return Layer::Seam;
  case Role::Notch:
  case Role::Pair:
    return Layer::Notches;
  default:
    return Layer::Lines;
  }
}

// Release 12 knows no UTF-8: what is not ASCII is written as \U+XXXX, which readers since release
// 14 understand, and all others show.
std::string ascii(std::string_view utf8) {
  std::string out;
  for (std::size_t i = 0; i < utf8.size();) {
    const auto byte = static_cast<unsigned char>(utf8[i]);
    const int more = byte < 0x80 ? 0 : byte < 0xE0 ? 1 : byte < 0xF0 ? 2 : 3;
    unsigned code = more == 0 ? byte : byte & (0x3Fu >> more);
    for (int k = 1; k <= more && i + std::size_t(k) < utf8.size(); ++k)
      code = code << 6 | (static_cast<unsigned char>(utf8[i + std::size_t(k)]) & 0x3Fu);
    i += std::size_t(more) + 1;
    if (more == 0) {
      if (byte >= 0x20) out += char(byte);
      continue;
    }
    char hex[8];
    const auto end = std::to_chars(hex, hex + sizeof hex, code, 16);
    std::string digits(hex, end.ptr);
    for (char& c : digits)
      if (c >= 'a') c = char(c - 'a' + 'A');
    out += "\\U+" + std::string(4 - std::min<std::size_t>(4, digits.size()), '0') + digits;
  }
  return out;
}

class Writer {
public:
  explicit Writer(const Picture& picture) : picture_(picture) {}

  std::string run() {
    header();
    layers();
    text(0, "SECTION");
    text(2, "ENTITIES");
    for (const Group& g : picture_.groups) {
      for (const Stroke& s : g.strokes)
        if (!s.filled) write(s);
      for (const Label& l : g.labels)
        write(l);
    }
    text(0, "ENDSEC");
    text(0, "EOF");
    return std::move(out_);
  }

private:
  void text(int code, std::string_view value) {
    out_ += std::to_string(code) + "\n" + std::string(value) + "\n";
  }
  void number(int code, double value) {
    char buffer[48];
    const auto end =
        std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, 4);
    text(code, std::string_view(buffer, std::size_t(end.ptr - buffer)));
  }
  void point(int code, const Vec2& mm) {
    number(code, mm.x());
    number(code + 10, mm.y());
    number(code + 20, 0);
  }

  void header() {
    Box box = picture_.box();
    if (box.empty()) box.add(Vec2(0, 0));
    text(0, "SECTION");
    text(2, "HEADER");
    text(9, "$ACADVER");
    text(1, "AC1009");
    text(9, "$EXTMIN");
    point(10, 10 * box.low);
    text(9, "$EXTMAX");
    point(10, 10 * box.high);
    text(0, "ENDSEC");
  }

  void layers() {
    text(0, "SECTION");
    text(2, "TABLES");
    text(0, "TABLE");
    text(2, "LTYPE");
    text(70, "1");
    text(0, "LTYPE");
    text(2, "CONTINUOUS");
    text(70, "0");
    text(3, "Solid line");
    text(72, "65");
    text(73, "0");
    number(40, 0);
    text(0, "ENDTAB");
    text(0, "TABLE");
    text(2, "LAYER");
    text(70, std::to_string(int(Layer::Lines) + 1));
    for (int i = 0; i <= int(Layer::Lines); ++i) {
      text(0, "LAYER");
      text(2, kLayers[Layer(i)]);
      text(70, "0");
      text(62, std::to_string(i == int(Layer::Lines) ? 8 : 7)); // grey, and black or white
      text(6, "CONTINUOUS");
    }
    text(0, "ENDTAB");
    text(0, "ENDSEC");
  }

  void vertex(const Vec2& cm, Layer layer) {
    text(0, "VERTEX");
    text(8, kLayers[layer]);
    point(10, 10 * cm);
  }

  // Between chords of n equal parts and the curve lie at most |second derivative| / (8 n^2).
  static int partsOf(const Cubic& c) {
    if (c.isStraight()) return 1;
    const double bend =
        6 * std::max((c.p[0] - 2 * c.p[1] + c.p[2]).norm(), (c.p[1] - 2 * c.p[2] + c.p[3]).norm());
    return std::max(1, int(std::ceil(std::sqrt(10 * bend / (8 * kDxfTolerance)))));
  }

  void write(const Stroke& stroke) {
    const Layer layer = layerOf(stroke.role);
    const bool closed = (stroke.path.end() - stroke.path.start()).norm() < 1e-9;
    text(0, "POLYLINE");
    text(8, kLayers[layer]);
    text(66, "1");
    point(10, Vec2::Zero());
    text(70, closed ? "1" : "0");
    const auto& segments = stroke.path.segments();
    vertex(stroke.path.start(), layer);
    for (std::size_t i = 0; i < segments.size(); ++i) {
      const int parts = partsOf(segments[i]);
      for (int k = 1; k <= parts; ++k)
        if (!closed || i + 1 < segments.size() || k < parts)
          vertex(segments[i].at(double(k) / parts), layer);
    }
    text(0, "SEQEND");
    text(8, kLayers[layer]);
  }

  void write(const Label& label) {
    text(0, "TEXT");
    text(8, kLayers[label.role == Role::Notch ? Layer::Notches : Layer::Text]);
    point(10, 10 * label.at);
    number(40, 10 * 0.73 * label.height); // of capital letters
    text(1, ascii(label.text));
    number(50, label.angle);
    if (label.anchor == Anchor::Start) return;
    text(72, label.anchor == Anchor::Middle ? "1" : "2");
    point(11, 10 * label.at);
  }

  const Picture& picture_;
  std::string out_;
};

} // namespace

std::string pictureAsDxf(const Picture& picture) {
  return Writer(picture).run();
}

} // namespace scye
