// The whole pattern as a booklet: what stands in it as chapters of blocks, laid out on sheets of
// paper or as one HTML file. Both have the same chapters, and the same words as the directions.
//
// On paper a line is never parted from its stitch count, a heading never from what follows it, and
// no chapter ends with a page of fewer than kLeastLines lines where the page before can spare some.
// A chart whose cells would be too small on a page is set on several, across where that saves
// pages. Black on white first: what is told by colour is told by shape as well.
#pragma once

#include "garment/derived.h"
#include "schematic/sheet.h"

namespace scye {

enum class BlockKind : std::uint8_t {
  Title,   // of the booklet
  Warning, // what is not met yet, in a box
  Heading, // within a chapter
  Part,    // a smaller heading
  Text,
  Check, // a line to be worked, with a box to tick
  Drawing,
};

struct BookletBlock {
  BlockKind kind = BlockKind::Text;
  std::string text{};     // of a drawing: what it shows
  PictureMaker picture{}; // of a drawing
  double mostHigh = 1;    // of a drawing: share of a page's height
  PartsMaker parts{};     // of one that is too fine for a page: on pages of their own
};

struct BookletChapter {
  std::string id, title;
  bool cover = false;
  std::vector<BookletBlock> blocks;
};

struct Booklet {
  std::string title; // of every page's head
  std::vector<BookletChapter> chapters;
};

// `derived` and the phrases must outlive what is returned. `date`: as it is told; may be empty.
// `worn`: what the cover shows; without it the garment is drawn there.
[[nodiscard]] Booklet bookletOf(const Derived& derived, const Wording& wording,
                                const std::string& date,
                                std::shared_ptr<const Image> worn = nullptr);

inline constexpr double kBookletPoints = 10, kLargePrintPoints = 16;
inline constexpr int kLeastLines = 6;

// On sheets of `size` mm, numbered, with running heads. `points`: the size of the letters.
[[nodiscard]] std::vector<Sheet> bookletSheets(const Booklet& booklet, const Vec2& size,
                                               double points, const Phrases& phrases);
// One file with nothing beside it; it prints a chapter a page.
[[nodiscard]] std::string bookletHtml(const Booklet& booklet, double points,
                                      const Phrases& phrases);

} // namespace scye
