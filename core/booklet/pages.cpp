#include "booklet/booklet.h"
#include "booklet/reading_width.h"
#include "schematic/ink.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace scye {
namespace {

constexpr double kPoint = 2.54 / 72; // cm
constexpr double kMargin = 1.6, kHead = 0.9;
constexpr double kLineHeight = 1.38;   // of the letters
constexpr double kDrawnLetters = 0.25; // cm on paper
constexpr double kCoverAbove = 0.4;    // of what a cover leaves free
constexpr double kLeastLetters = 6 * kPoint;
constexpr double kFinely = 1.04, kSmallest = 40, kSmaller = 0.85;
// A chapter's lines are set as much closer as saves it a page, within reason.
constexpr double kSetClose[] = {1, 0.97, 0.94, 0.91};

// What is placed as one: lines that stay together, or a drawing.
struct Item {
  std::vector<std::string> lines;
  double letters = 0, line = 0, above = 0; // cm
  double indent = 0;
  Role role = Role::Outline;
  bool tick = false, boxed = false, withNext = false, middle = false;
  Picture drawing{};      // in cm of paper, from its lower left
  double drawingHigh = 0; // 0: there is none
  [[nodiscard]] double high() const { return drawingHigh + double(lines.size()) * line; }
  [[nodiscard]] int textLines() const { return int(lines.size()); }
};

using PageItems = std::vector<Item>;

double heightOf(const PageItems& page) {
  double high = 0;
  for (const Item& item : page)
    high += item.high() + (high > 0 ? item.above : 0);
  return high;
}

int linesOf(const PageItems& page) {
  int n = 0;
  for (const Item& item : page)
    n += item.textLines() + (item.drawingHigh > 0 ? kLeastLines : 0);
  return n;
}

class Setter {
public:
  Setter(const Booklet& booklet, const Vec2& size, double points, const Phrases& phrases)
      : booklet_(booklet), paper_(size / 10), points_(points), phrases_(phrases) {}

  std::vector<Sheet> sheets() {
    for (const BookletChapter& chapter : booklet_.chapters)
      set(chapter);
    std::vector<Sheet> out;
    for (std::size_t i = 0; i < pages_.size(); ++i)
      out.push_back(sheet(pages_[i], int(i) + 1));
    return out;
  }

private:
  struct SetPage {
    const BookletChapter* chapter;
    PageItems items;
    bool across = false;
    [[nodiscard]] Vec2 paper(const Vec2& upright) const {
      return across ? Vec2(upright.y(), upright.x()) : upright;
    }
  };

  [[nodiscard]] double width() const { return paper_.x() - 2 * kMargin; }
  [[nodiscard]] double height() const { return paper_.y() - 2 * kMargin - kHead; }
  [[nodiscard]] double letters(double share = 1) const { return share * points_ * kPoint; }

  Item textItem(const BookletBlock& block, bool cover) const {
    Item item;
    item.letters = letters();
    item.middle = cover && block.kind != BlockKind::Warning;
    double above = 0.35;
    switch (block.kind) {
    case BlockKind::Title:
      item.letters = letters(2.2), item.role = Role::Caption, above = 0.6;
      break;
    case BlockKind::Heading:
      item.letters = letters(1.4), item.role = Role::Caption, item.withNext = true, above = 1.1;
      break;
    case BlockKind::Part:
      item.role = Role::Caption, item.withNext = true, above = 0.9;
      break;
    case BlockKind::Warning:
      item.boxed = true, item.indent = 0.3;
      break;
    case BlockKind::Check:
      item.tick = true, item.indent = 1.7 * letters();
      break;
    case BlockKind::Text:
    case BlockKind::Drawing:
      break;
    }
    item.above = above * item.letters;
    item.line = kLineHeight * item.letters;
    item.lines = brokenLines(tied(block.text), width() - item.indent - (item.boxed ? 0.3 : 0),
                             item.letters, isBold(item.role));
    return item;
  }

  // With letters `drawn` high on paper at 1 : n; the smallest of them, notes say, never below the
  // least.
  static Picture readable(const PictureMaker& make, double drawn, double n) {
    Picture picture = make(drawn * n);
    double smallest = drawn * n;
    for (const Group& group : picture.groups)
      for (const Label& label : group.labels)
        smallest = std::min(smallest, label.height);
    constexpr double kRounding = 1e-9;
    if (smallest >= kLeastLetters * n - kRounding || smallest <= 0) return picture;
    return make(drawn * n * kLeastLetters * n / smallest);
  }

  // As large as it fits into what it may take of a page; where large letters leave no room for it,
  // with smaller ones.
  Item drawingItem(const BookletBlock& block) const {
    const double room = block.mostHigh * height() - letters(0.8) - letters(2) * kLineHeight;
    for (double drawn = lettersInDrawings();; drawn *= kSmaller) {
      const bool last = drawn * kSmaller < kLeastLetters;
      if (auto item = fitted(block.picture, std::max(drawn, kLeastLetters), room)) return *item;
      if (last) return {};
    }
  }
  [[nodiscard]] double lettersInDrawings() const {
    return std::max(kDrawnLetters, 0.6 * letters());
  }

  // Nothing where details would come out too small on one page: it goes on pages of its own.
  [[nodiscard]] std::optional<Item> wholeDrawing(const BookletBlock& block) const {
    if (!block.parts) return drawingItem(block);
    const double room = height() - letters(0.8) - letters(2) * kLineHeight;
    return fitted(block.picture, lettersInDrawings(), room);
  }
  void setInParts(const BookletChapter& chapter, const BookletBlock& block) {
    const PartsOnSheets in =
        partsFor(block.parts, 10 * paper_, true,
                 {10 * kMargin, 10 * (kMargin + kHead), 10 * kMargin}, lettersInDrawings());
    for (const Picture& part : in.parts) {
      const Box box = part.box();
      Item item;
      item.drawing = part;
      for (Group& group : item.drawing.groups)
        moveGroup(group, -box.low);
      item.drawingHigh = box.size().y();
      item.indent = 0.5 * (in.size.x() / 10 - 2 * kMargin - box.size().x());
      pages_.push_back({&chapter, {std::move(item)}, in.size.x() > in.size.y()});
    }
  }
  [[nodiscard]] std::optional<Item> fitted(const PictureMaker& make, double drawn,
                                           double room) const {
    for (double n = 1; n < kSmallest; n *= kFinely) {
      Picture picture = readable(make, drawn, n);
      const Box box = picture.box();
      if (box.empty()) return Item{};
      if (10 * picture.detail / n < kLeastDetailMm && picture.detail > 0) return std::nullopt;
      const Vec2 size = box.size() / n;
      if (size.x() > width() || size.y() > room) continue;
      Sheet sheet;
      sheet.picture = std::move(picture);
      sheet.size = 10 * size;
      sheet.oneTo = n;
      sheet.seen = box;
      Item item;
      item.above = letters(0.8);
      item.drawing = onPaper(sheet);
      item.drawingHigh = size.y();
      item.indent = 0.5 * (width() - size.x());
      return item;
    }
    return std::nullopt;
  }

  // Longer texts than a page are set as several items.
  static std::vector<Item> parted(Item item, double most) {
    std::vector<Item> parts;
    const std::size_t fits =
        std::max<std::size_t>(1, std::size_t(most / std::max(item.line, 1e-9)));
    while (item.drawingHigh == 0 && item.lines.size() > fits) {
      Item part = item;
      part.lines.resize(fits);
      item.lines.erase(item.lines.begin(), item.lines.begin() + std::ptrdiff_t(fits));
      item.tick = false, item.above = 0;
      parts.push_back(std::move(part));
    }
    parts.push_back(std::move(item));
    return parts;
  }

  void set(const BookletChapter& chapter) {
    std::vector<Item> items;
    for (const BookletBlock& block : chapter.blocks) {
      if (block.kind != BlockKind::Drawing) {
        for (Item& part : parted(textItem(block, chapter.cover), height()))
          items.push_back(std::move(part));
        continue;
      }
      auto whole = wholeDrawing(block);
      if (!whole) {
        setPages(chapter, std::exchange(items, {}));
        setInParts(chapter, block);
        continue;
      }
      Item drawing = *std::move(whole);
      if (drawing.drawingHigh == 0) continue;
      if (!chapter.cover && (items.empty() || items.back().lines.empty() ||
                             items.back().lines.front() != block.text)) {
        Item caption = textItem({BlockKind::Part, block.text, {}, 1}, false);
        items.push_back(std::move(caption));
      }
      items.push_back(std::move(drawing));
    }
    setPages(chapter, std::move(items));
  }

  void setPages(const BookletChapter& chapter, std::vector<Item> items) {
    if (items.empty()) return;
    setClose(items);
    std::vector<PageItems> pages = filled(std::move(items));
    spare(pages);
    for (PageItems& page : pages)
      pages_.push_back({&chapter, std::move(page), false});
  }

  // Where each page ends: items[end] begins the next one.
  [[nodiscard]] std::vector<std::size_t> ends(const std::vector<Item>& items, double close) const {
    std::vector<std::size_t> out;
    double used = 0;
    for (std::size_t i = 0; i < items.size();) {
      // With what it must not be parted from.
      std::size_t end = i;
      double need = 0;
      do {
        const bool drawn = items[end].drawingHigh > 0;
        need += (drawn ? 1 : close) * items[end].high() +
                (need > 0 || used > 0 ? close * items[end].above : 0);
      } while (items[end++].withNext && end < items.size());
      if (used > 0 && used + need > height()) {
        out.push_back(i);
        used = 0;
        continue;
      }
      used += need;
      i = end;
    }
    out.push_back(items.size());
    return out;
  }

  void setClose(std::vector<Item>& items) const {
    const std::size_t most = ends(items, 1).size();
    for (const double close : kSetClose)
      if (ends(items, close).size() < most) {
        for (Item& item : items)
          item.line *= close, item.above *= close;
        return;
      }
  }

  [[nodiscard]] std::vector<PageItems> filled(std::vector<Item> items) const {
    std::vector<PageItems> pages;
    std::size_t from = 0;
    for (const std::size_t end : ends(items, 1)) {
      pages.emplace_back(std::make_move_iterator(items.begin() + std::ptrdiff_t(from)),
                         std::make_move_iterator(items.begin() + std::ptrdiff_t(end)));
      from = end;
    }
    return pages;
  }

  // No page of a few lines: the page before gives some.
  void spare(std::vector<PageItems>& pages) const {
    for (std::size_t i = pages.size(); i-- > 1;)
      while (linesOf(pages[i]) < kLeastLines && takeFrom(pages[i - 1], pages[i])) {
      }
  }

  // What goes over takes with it what it must not be parted from. Whether it could.
  [[nodiscard]] bool takeFrom(PageItems& before, PageItems& page) const {
    if (before.size() < 2) return false;
    std::size_t from = before.size() - 1;
    while (from > 0 && before[from - 1].withNext)
      --from;
    if (from == 0) return false;
    double used = heightOf(page) + page.front().above;
    for (std::size_t i = from; i < before.size(); ++i)
      used += before[i].high() + before[i].above;
    if (used > height()) return false;
    page.insert(page.begin(), std::make_move_iterator(before.begin() + std::ptrdiff_t(from)),
                std::make_move_iterator(before.end()));
    before.erase(before.begin() + std::ptrdiff_t(from), before.end());
    return true;
  }

  static Path rectangle(const Vec2& low, const Vec2& high) {
    return Path::polyline({low, {high.x(), low.y()}, high, {low.x(), high.y()}, low});
  }

  void place(Group& group, const Item& item, double& y, double x0) const {
    for (std::size_t i = 0; i < item.lines.size(); ++i) {
      y -= item.line;
      const double base = y + 0.3 * item.letters;
      const bool bold = isBold(item.role);
      double x = x0 + item.indent;
      if (item.middle) x = x0 + 0.5 * width();
      if (i == 0 && item.tick) {
        const double side = 0.78 * item.letters;
        group.strokes.push_back({rectangle({x0, base - 0.06 * item.letters},
                                           {x0 + side, base - 0.06 * item.letters + side}),
                                 Role::Symbol, false});
      }
      group.labels.push_back({{x, base},
                              item.lines[i],
                              bold ? Role::Caption : Role::Outline,
                              item.letters,
                              item.middle ? Anchor::Middle : Anchor::Start,
                              0});
    }
  }

  void placeDrawing(std::vector<Group>& groups, const Item& item, double& y) const {
    y -= item.drawingHigh;
    for (Group group : item.drawing.groups) {
      moveGroup(group, {kMargin + item.indent, y});
      groups.push_back(std::move(group));
    }
  }

  [[nodiscard]] Sheet sheet(const SetPage& page, int number) const {
    Sheet s;
    const Vec2 paper = page.paper(paper_);
    s.size = 10 * paper;
    s.picture.title = booklet_.title;
    Group words;
    words.id = "page-" + std::to_string(number);
    if (!page.chapter->cover) head(words, *page.chapter, number, paper);
    double y = paper.y() - kMargin - kHead, boxTop = 0;
    if (page.chapter->cover) y -= kCoverAbove * (height() - heightOf(page.items));
    bool boxOpen = false;
    const auto closeBox = [&](double bottom) {
      if (boxOpen)
        words.strokes.push_back(
            {rectangle({kMargin, bottom}, {kMargin + width(), boxTop}), Role::Symbol, false});
      boxOpen = false;
    };
    for (std::size_t i = 0; i < page.items.size(); ++i) {
      const Item& item = page.items[i];
      if (!item.boxed) closeBox(y - 0.15);
      if (i > 0) y -= item.above;
      if (item.boxed && !boxOpen) boxOpen = true, boxTop = y + 0.1;
      if (item.drawingHigh > 0)
        placeDrawing(s.marks.groups, item, y);
      else
        place(words, item, y, kMargin);
    }
    closeBox(y - 0.15);
    s.marks.groups.push_back(std::move(words));
    return s;
  }

  // "Harbour jacket · Back · 3/8"
  void head(Group& group, const BookletChapter& chapter, int number, const Vec2& paper) const {
    const double width = paper.x() - 2 * kMargin;
    const double small = std::max(letters(0.8), kLeastLetters);
    const std::string page = phrases_.say(
        "booklet.page", {numberParam("page", number), numberParam("pages", double(pages_.size()))});
    std::string title = booklet_.title;
    const auto text = [&] {
      return phrases_.say("booklet.head",
                          {textParam("title", title), textParam("chapter", chapter.title),
                           textParam("page", page)});
    };
    bool cut = false;
    while (title.size() > 8 && readingWidth(text() + (cut ? "..." : ""), small) > width) {
      do
        title.pop_back();
      while (!title.empty() && (static_cast<unsigned char>(title.back()) & 0xC0) == 0x80);
      cut = true;
    }
    if (cut) title += "...";
    const double y = paper.y() - kMargin;
    group.labels.push_back({{kMargin, y - small}, text(), Role::Outline, small, Anchor::Start, 0});
    group.strokes.push_back(
        {Path::polyline({{kMargin, y - 1.5 * small}, {kMargin + width, y - 1.5 * small}}),
         Role::Symbol, false});
  }

  const Booklet& booklet_;
  Vec2 paper_; // cm
  double points_;
  const Phrases& phrases_;
  std::vector<SetPage> pages_;
};

} // namespace

std::vector<Sheet> bookletSheets(const Booklet& booklet, const Vec2& size, double points,
                                 const Phrases& phrases) {
  return Setter(booklet, size, points, phrases).sheets();
}

} // namespace scye
