#include "schematic/guide_sheet.h"

#include "schematic/guide_overview.h"
#include "schematic/guide_shape.h"

#include <algorithm>

namespace scye {
namespace {

constexpr double kText = 0.3, kLine = 0.44, kHeading = 0.55, kSmallHeading = 0.42, kGap = 0.6;
constexpr const SheetBox& kBox = kSheetBox;

std::string keyOf(Field f) {
  return std::string(info(f).key);
}

void write(Group& group, double x, double y, const std::string& text, Role role,
           double height = kText, Anchor anchor = Anchor::Start) {
  group.labels.push_back({{x, y}, text, role, height, anchor});
}

void rule(Group& group, double from, double to, double y) {
  group.strokes.push_back({Path::polyline({{from, y}, {to, y}}), Role::Measure, false});
}

// Words broken into lines no wider than `width`.
std::vector<std::string> broken(const std::string& text, double width, double height) {
  std::vector<std::string> lines;
  std::string line;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = std::min(text.find(' ', from), text.size());
    const std::string word = text.substr(from, end - from);
    if (!line.empty() && textWidth(line, height) + textWidth(" " + word, height) > width)
      lines.push_back(std::move(line)), line.clear();
    line += (line.empty() ? "" : " ") + word;
    from = end + 1;
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

// Returns the baseline below the last line.
double lines(Group& group, double x, double y, const std::vector<std::string>& texts, Role role,
             double spacing = kLine) {
  for (const std::string& line : texts)
    write(group, x, y, line, role), y -= spacing;
  return y;
}
double paragraph(Group& group, double x, double y, double width, const std::string& text,
                 Role role) {
  return lines(group, x, y, broken(text, width, kText), role);
}

// "Wearer ______": words and a line to write on.
void blank(Group& group, double from, double to, double y, const std::string& words) {
  write(group, from, y, words, Role::Note);
  rule(group, from + textWidth(words, kText) + 0.2, to, y - 0.08);
}

class Sheet {
public:
  Sheet(const Phrases& phrases, Source where, Figure figure, LengthUnit unit)
      : phrases_(phrases), where_(where), figure_(figure), unit_(unit), fields_(measuredOn(where)) {
  }

  std::vector<Picture> pages() {
    std::vector<Picture> all{first()};
    texts(all);
    return all;
  }

private:
  [[nodiscard]] std::string say(std::string_view key, const Params& params = {}) const {
    return phrases_.say(key, params, unit_);
  }
  [[nodiscard]] bool young() const { return figure_ == Figure::Child || figure_ == Figure::Baby; }
  [[nodiscard]] std::string placeKey() const {
    return where_ == Source::Body ? ".body" : ".garment";
  }

  Picture first() {
    Picture page{say("guide.title" + placeKey()), {}, kText};
    Group head, table, check;
    head.id = "head", table.id = "table", check.id = "check";
    double y = kBox.top - kHeading;
    write(head, kBox.left, y, page.title, Role::Caption, kHeading);
    y -= 1.15;
    const double third = (kBox.right - kBox.left) / 3;
    blank(head, kBox.left, kBox.left + 1.3 * third - 0.4, y, say("guide.sheet.wearer"));
    blank(head, kBox.left + 1.3 * third, kBox.left + 2 * third - 0.4, y, say("guide.sheet.date"));
    blank(head, kBox.left + 2 * third, kBox.right, y, say("guide.sheet.by"));
    y = paragraph(head, kBox.left, y - 0.85, kBox.right - kBox.left,
                  say("guide.start" + placeKey()), Role::Note);
    if (young())
      y = paragraph(head, kBox.left, y, kBox.right - kBox.left, say("guide.child"), Role::Caption);

    const std::vector<std::string> advice =
        broken(say(unit_ == LengthUnit::Inch ? "guide.sheet.check.inch" : "guide.sheet.check.cm"),
               kBox.right - kBox.left, kText);
    const double control = kBox.bottom + 1.05 + kLine * std::max(double(advice.size()) - 2, 0.0);
    addCheck(check, control, advice);
    const std::size_t rows = (fields_.size() + 1) / 2;
    const double tableTop = control + 1.2 + double(rows) * kRow;
    page.groups = {head};
    placeViews(page, y, tableTop + 0.5);
    addTable(table, tableTop, rows);
    page.groups.push_back(std::move(table));
    page.groups.push_back(std::move(check));
    return page;
  }

  // The numbered views, as large as there is room for between the heights.
  void placeViews(Picture& page, double top, double bottom) const {
    const double width = kBox.right - kBox.left, height = top - bottom;
    double scale = 0.1;
    std::vector<Group> views;
    Box box;
    for (int round = 0; round < 3;
         ++round) { // the numbers' size depends on the scale, and the box on them
      views = numberedViews(where_, figure_, kText / scale);
      box = Box();
      for (const Group& g : views)
        box.add(g.box());
      const double fitting = std::min(width / box.size().x(), height / box.size().y());
      if (round < 2)
        scale = fitting;
      else
        scale = std::min(scale, fitting);
    }
    const Vec2 middle = 0.5 * (box.low + box.high),
               at((kBox.left + kBox.right) / 2, 0.5 * (top + bottom));
    for (Group& g : views) {
      for (Stroke& s : g.strokes)
        s.path = scaled(s.path.moved(-middle), scale).moved(at);
      for (Label& l : g.labels)
        l.at = scale * (l.at - middle) + at, l.height *= scale;
      for (HotSpot& h : g.hotSpots)
        h.box.low = scale * (h.box.low - middle) + at,
        h.box.high = scale * (h.box.high - middle) + at;
      page.groups.push_back(std::move(g));
    }
  }

  void addTable(Group& table, double top, std::size_t rows) const {
    const double column = (kBox.right - kBox.left - kGap) / 2;
    const std::string unit = say(unit_ == LengthUnit::Inch ? "unit.inch" : "unit.cm");
    for (std::size_t i = 0; i < fields_.size(); ++i) {
      const double x = kBox.left + (i < rows ? 0 : column + kGap),
                   y = top - double(i % rows + 1) * kRow;
      const bool half = where_ == Source::Garment && info(fields_[i]).kind == FieldKind::Girth;
      write(table, x + 0.6, y, std::to_string(i + 1), Role::Lit, kText, Anchor::End);
      // A long name takes two close lines about the middle of its row.
      const auto name = broken(say("field." + keyOf(fields_[i])) + (half ? " *" : ""),
                               kNames - kIndent - 0.1, kText);
      lines(table, x + kIndent, y + 0.5 * kClose * double(name.size() - 1), name, Role::Caption,
            kClose);
      rule(table, x + kNames, x + column - 0.7, y - 0.08);
      write(table, x + column, y, unit, Role::Note, kText, Anchor::End);
    }
  }

  void addCheck(Group& check, double y, const std::vector<std::string>& advice) const {
    const double x = kBox.left;
    check.strokes.push_back(
        {Path::polyline({{x, y}, {x + kCheckLength, y}}), Role::Outline, false});
    for (int i = 0; i <= 10; ++i) {
      const Vec2 foot(x + 0.1 * i * kCheckLength, y);
      check.strokes.push_back(
          {Path::polyline({foot, foot + Vec2(0, i % 5 == 0 ? 0.3 : 0.18)}), Role::Outline, false});
    }
    write(check, kBox.right, y,
          say(unit_ == LengthUnit::Inch ? "guide.sheet.unit.inch" : "guide.sheet.unit.cm"),
          Role::Note, kText, Anchor::End);
    if (where_ == Source::Garment)
      write(check, kBox.right, y + 0.45, say("guide.sheet.flat"), Role::Note, kText, Anchor::End);
    lines(check, x, y - 0.5, advice, Role::Note);
  }

  // Where each tape goes, in two columns, on as many pages as it takes. What spoils it is told of
  // the body only: with a garment it is the same for all, and stands at the head of the first page.
  void texts(std::vector<Picture>& pages) const {
    const double column = (kBox.right - kBox.left - kGap) / 2, width = column - kIndent;
    double x = 0, y = 0;
    for (std::size_t i = 0; i < fields_.size(); ++i) {
      const std::string key = "guide." + keyOf(fields_[i]), text = say(key + placeKey());
      const std::string spoils =
          where_ == Source::Body ? say("guide.sheet.spoils", {phraseParam("what", key + ".spoils")})
                                 : "";
      const double need =
          kLine * double(broken(text, width, kText).size() + broken(spoils, width, kText).size());
      if (i == 0 || y - need - 0.3 * kText < kBox.bottom) {
        if (i > 0 && x == kBox.left)
          x = kBox.left + column + kGap;
        else
          pages.push_back(textPage(pages.size() + 1)), x = kBox.left;
        y = kBox.top - kHeading - 0.9;
      }
      Group& group = pages.back().groups.back();
      write(group, x + 0.6, y, std::to_string(i + 1), Role::Lit, kText, Anchor::End);
      write(group, x + kIndent, y, say("field." + keyOf(fields_[i])), Role::Caption);
      y = paragraph(group, x + kIndent, y - kLine, width, text, Role::Measure);
      y = paragraph(group, x + kIndent, y, width, spoils, Role::Note) - 0.3;
    }
  }

  [[nodiscard]] Picture textPage(std::size_t number) const {
    Picture page{say("guide.title" + placeKey()), {}, kText};
    Group head, texts;
    head.id = "head", texts.id = "texts";
    const double y = kBox.top - kHeading;
    write(head, kBox.left, y, say("guide.sheet.how" + placeKey()), Role::Caption, kSmallHeading);
    write(head, kBox.right, y, say("guide.sheet.page", {numberParam("page", double(number))}),
          Role::Note, kText, Anchor::End);
    page.groups = {std::move(head), std::move(texts)};
    return page;
  }

  static constexpr double kRow = 0.72, kNames = 5.9, kIndent = 0.85, kClose = 0.35;

  const Phrases& phrases_;
  Source where_;
  Figure figure_;
  LengthUnit unit_;
  std::vector<Field> fields_;
};

} // namespace

std::vector<Picture> measuringSheet(const Phrases& phrases, Source where, Figure figure,
                                    LengthUnit unit) {
  return Sheet(phrases, where, figure, unit).pages();
}

} // namespace scye
