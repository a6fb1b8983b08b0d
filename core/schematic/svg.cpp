#include "schematic/svg.h"

#include "image/png.h"
#include "model/markup.h"
#include "schematic/ink.h"
#include "schematic/paper.h"

#include <charconv>

namespace scye {
namespace {

std::string number(double value) {
  char buffer[64];
  const auto end =
      std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, 3);
  std::string text(buffer, end.ptr);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string attribute(std::string_view name, std::string_view value) {
  return " " + std::string(name) + "=\"" + escaped(value) + "\"";
}

class SvgWriter {
public:
  // `corner`: mm from the sheet's upper left to the upper left of `box`.
  SvgWriter(const Picture& picture, const Box& box, const Vec2& corner, const Vec2& size)
      : picture_(picture), box_(box), corner_(corner), size_(size) {
    if (box_.empty()) box_.add(Vec2(0, 0));
  }

  std::string run() {
    const std::string width = number(size_.x()), height = number(size_.y());
    out_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg" +
           attribute("xmlns", "http://www.w3.org/2000/svg") + attribute("version", "1.1") +
           attribute("width", width + "mm") + attribute("height", height + "mm") +
           attribute("viewBox", "0 0 " + width + " " + height) +
           attribute("font-family", "DejaVu Sans, Verdana, sans-serif") + ">\n";
    title(1, picture_.title);
    for (const Group& group : picture_.groups)
      write(group);
    return out_ + "</svg>\n";
  }

private:
  [[nodiscard]] double x(double cm) const { return 10 * (cm - box_.low.x()) + corner_.x(); }
  [[nodiscard]] double y(double cm) const { return 10 * (box_.high.y() - cm) + corner_.y(); }
  [[nodiscard]] std::string point(const Vec2& p) const {
    return number(x(p.x())) + " " + number(y(p.y()));
  }

  void title(int depth, std::string_view words) {
    out_ += std::string(std::size_t(depth), ' ') + "<title>" + escaped(words) + "</title>\n";
  }

  [[nodiscard]] std::string outline(const Path& path) const {
    std::string d = "M" + point(path.start());
    for (const Cubic& c : path.segments()) {
      if (c.isStraight())
        d += " L" + point(c.end());
      else
        d += " C" + point(c.p[1]) + " " + point(c.p[2]) + " " + point(c.end());
    }
    if ((path.end() - path.start()).norm() < 1e-9 && !path.empty()) d += " Z";
    return d;
  }

  void write(const Group& group) {
    out_ += " <g" + attribute("id", group.id) + ">\n";
    title(2, group.title);
    for (const PlacedImage& image : group.images)
      write(image);
    for (const Stroke& stroke : group.strokes)
      write(stroke);
    for (const Label& label : group.labels)
      write(label);
    out_ += " </g>\n";
  }

  void write(const PlacedImage& placed) {
    const Vec2 size = 10 * placed.box.size();
    out_ += "  <image" + attribute("x", number(x(placed.box.low.x()))) +
            attribute("y", number(y(placed.box.high.y()))) + attribute("width", number(size.x())) +
            attribute("height", number(size.y())) + attribute("href", pngAddress(*placed.image)) +
            "/>\n";
  }

  void write(const Stroke& stroke) {
    const std::string colour = inks_[stroke.role].hex();
    out_ += "  <path" + attribute("d", outline(stroke.path));
    if (stroke.filled) {
      out_ += attribute("fill", colour) + "/>\n";
      return;
    }
    const Pen pen = penOf(stroke.role);
    out_ += attribute("fill", "none") + attribute("stroke", colour) +
            attribute("stroke-width", number(pen.width * kPenMm)) +
            attribute("stroke-linejoin", "round");
    std::string dashes;
    for (const double d : pen.dashes)
      dashes += (dashes.empty() ? "" : " ") + number(d * kPenMm);
    if (!dashes.empty()) out_ += attribute("stroke-dasharray", dashes);
    out_ += "/>\n";
  }

  void write(const Label& label) {
    out_ += "  <text" + attribute("x", number(x(label.at.x()))) +
            attribute("y", number(y(label.at.y()))) +
            attribute("font-size", number(10 * label.height)) +
            attribute("fill", inks_[label.role].hex());
    if (isBold(label.role)) out_ += attribute("font-weight", "bold");
    if (label.anchor != Anchor::Start)
      out_ += attribute("text-anchor", label.anchor == Anchor::Middle ? "middle" : "end");
    if (label.angle != 0)
      out_ +=
          attribute("transform", "rotate(" + number(-label.angle) + " " + point(label.at) + ")");
    out_ += ">" + escaped(label.text) + "</text>\n";
  }

  const Picture& picture_;
  Box box_;
  Vec2 corner_, size_;
  const Inks inks_ = paperInks();
  std::string out_;
};

} // namespace

std::string sheetAsSvg(const Sheet& sheet) {
  if (sheet.oneTo == 1 && sheet.marks.groups.empty())
    return SvgWriter(sheet.picture, sheet.seen, sheet.corner, sheet.size).run();
  Box paper;
  paper.add(Vec2(0, 0));
  paper.add(Vec2(sheet.size / 10));
  return SvgWriter(onPaper(sheet), paper, Vec2(0, 0), sheet.size).run();
}

std::string pictureAsSvg(const Picture& picture) {
  return sheetAsSvg(trueSheet([&](double) { return picture; }));
}

} // namespace scye
