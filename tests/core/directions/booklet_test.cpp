// The booklet by its own rules, on both papers, in both units and both sizes of letters; and read
// back as directions by the reader of the tests.
#include "booklet/booklet.h"
#include "booklet/reading_width.h"
#include "core/directions/reader.h"
#include "image/png.h"
#include "io/design_file.h"
#include "io/files.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <regex>
#include <set>

namespace scye::booklet {
namespace {

constexpr double kPoint = 2.54 / 72;

std::vector<std::pair<std::string, Design>> demos() {
  std::vector<std::pair<std::string, Design>> all;
  for (const auto& entry : std::filesystem::directory_iterator(SCYE_RESOURCES "/demos")) {
    const auto read = designFromJson(readWhole(entry.path()).text.value_or(""), builtinPhrases());
    EXPECT_TRUE(read.design) << entry.path();
    if (read.design) all.emplace_back(entry.path().stem().string(), *read.design);
  }
  return all;
}

// The pages' own words, not those of drawings.
const Group& wordsOf(const Sheet& sheet) {
  return sheet.marks.groups.back();
}

void expectGoodPages(const std::vector<Sheet>& sheets, const Vec2& size, double points) {
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    SCOPED_TRACE("page " + std::to_string(i + 1));
    const Sheet& sheet = sheets[i];
    const bool across = sheet.size.x() > sheet.size.y(); // a chart
    EXPECT_EQ(sheet.size, across ? Vec2(size.y(), size.x()) : size);
    std::set<double> baselines;
    for (const Group& group : sheet.marks.groups)
      for (const Label& label : group.labels) {
        EXPECT_GE(label.height, 6 * kPoint - 1e-9) << label.text;
        EXPECT_GT(label.at.y(), 0.8) << label.text;
        EXPECT_LT(label.at.y(), sheet.size.y() / 10 - 0.8) << label.text;
      }
    for (const Label& label : wordsOf(sheet).labels) {
      const double wide = readingWidth(label.text, label.height, label.role == Role::Caption);
      const double left = label.anchor == Anchor::Middle ? label.at.x() - wide / 2 : label.at.x();
      EXPECT_GT(left, 1.5) << label.text;
      EXPECT_LT(left + wide, sheet.size.x() / 10 - 1.5) << label.text;
      const bool alone =
          label.text.starts_with("(") && (label.text.ends_with(").") || label.text.ends_with(")"));
      EXPECT_FALSE(alone) << "a count is parted: " << label.text;
      if (label.height >= points * kPoint - 1e-9) baselines.insert(label.at.y());
    }
    if (i == 0) continue;
    const Label& head = wordsOf(sheet).labels.front();
    EXPECT_TRUE(head.text.ends_with(std::to_string(i + 1) + "/" + std::to_string(sheets.size())))
        << head.text;
    const bool drawing = sheet.marks.groups.size() > 1;
    EXPECT_TRUE(drawing || int(baselines.size()) >= kLeastLines)
        << baselines.size() << " lines: " << wordsOf(sheet).labels.back().text;
  }
}

TEST(Booklet, PagesAreWholeOnBothPapers) {
  for (const auto& [name, design] : demos()) {
    const Derived derived = derive(design);
    for (const LengthUnit unit : {LengthUnit::Centimetre, LengthUnit::Inch})
      for (const Vec2& size : {sheetSize(Paper::A4), sheetSize(Paper::Letter)})
        for (const double points : {kBookletPoints, kLargePrintPoints}) {
          SCOPED_TRACE(name + (unit == LengthUnit::Inch ? ", in, " : ", cm, ") +
                       std::to_string(int(size.y())) + " mm, " + std::to_string(int(points)));
          const Wording wording{.phrases = builtinPhrases(), .unit = unit};
          const Booklet booklet = bookletOf(derived, wording, "2026-05-01");
          const auto sheets = bookletSheets(booklet, size, points, builtinPhrases());
          EXPECT_GE(sheets.size(), 8u);
          expectGoodPages(sheets, size, points);
        }
  }
}

// The lines of a chart's cells as they are drawn on the page, both ways; mm from one to the next.
double leastCell(const Sheet& sheet) {
  std::set<double> xs, ys;
  for (const Group& group : sheet.marks.groups) {
    if (!group.piece) continue;
    for (const Stroke& s : group.strokes) {
      const bool cells = s.role == Role::Cell || s.role == Role::TenCells;
      if (!cells || s.path.segments().size() != 1) continue;
      const Vec2 a = s.path.start(), b = s.path.segments().front().end();
      if (std::abs(a.x() - b.x()) < 1e-9) xs.insert(std::round(1e4 * a.x()) / 1e3);
      if (std::abs(a.y() - b.y()) < 1e-9) ys.insert(std::round(1e4 * a.y()) / 1e3);
    }
  }
  double least = 1e9;
  for (const auto& lines : {xs, ys})
    for (auto at = lines.begin(); at != lines.end() && std::next(at) != lines.end(); ++at)
      least = std::min(least, *std::next(at) - *at);
  return least;
}

TEST(Booklet, ChartsHaveCellsThatAFingerKeepsTo) {
  int charts = 0;
  for (const auto& [name, design] : demos()) {
    const Derived derived = derive(design);
    const Wording wording{builtinPhrases()};
    const Booklet booklet = bookletOf(derived, wording, "");
    for (const auto& [paper, points] :
         {std::pair(Paper::A4, kBookletPoints), std::pair(Paper::Letter, kLargePrintPoints)}) {
      std::set<PieceId> pieces;
      for (const Sheet& sheet :
           bookletSheets(booklet, sheetSize(paper), points, builtinPhrases())) {
        const double least = leastCell(sheet);
        if (least > 1e8) continue;
        ++charts;
        EXPECT_GE(least, kLeastDetailMm - 1e-2) << name << " " << wordsOf(sheet).id;
        for (const Group& group : sheet.marks.groups)
          if (group.piece) pieces.insert(*group.piece);
      }
      EXPECT_EQ(pieces.size(), derived.knit.pieces.size()) << name;
    }
  }
  EXPECT_GT(charts, 200);
}

// Every step has its box, and stands on paper with all its words.
TEST(Booklet, NothingOfTheDirectionsIsLost) {
  for (const auto& [name, design] : demos()) {
    SCOPED_TRACE(name);
    const Derived derived = derive(design);
    const Wording wording{builtinPhrases()};
    const Booklet booklet = bookletOf(derived, wording, "");
    std::string words;
    for (const Sheet& sheet :
         bookletSheets(booklet, sheetSize(Paper::A4), kBookletPoints, builtinPhrases()))
      for (const Label& label : wordsOf(sheet).labels)
        words += std::regex_replace(label.text, std::regex("\u00a0"), " ") + " ";
    for (const DirectionLine& line : directionLines(derived.directions, wording))
      EXPECT_NE(words.find(std::regex_replace(line.text, std::regex("\n"), " ")), words.npos)
          << line.text;
  }
}

std::string unescaped(std::string text) {
  for (const auto& [sign, letter] :
       {std::pair{"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&#39;", "'"}, {"&amp;", "&"}})
    text = std::regex_replace(text, std::regex(sign), letter);
  return std::regex_replace(text, std::regex("<[^>]*>"), "");
}

// The file as a text of headings and lines, as one would copy it out by hand.
std::string asText(const std::string& html) {
  std::string out;
  const std::regex part("<(h[123]|p)( class=\"line\")?>([^\n]*)</(h[123]|p)>");
  for (std::sregex_iterator at(html.begin(), html.end(), part), end; at != end; ++at) {
    const std::string tag = (*at)[1],
                      words = std::regex_replace(unescaped((*at)[3]), std::regex("\u00a0"), " ");
    if (tag == "h1" || tag == "h2")
      out += "\n\n" + words + "\n" + std::string(words.size(), '-') + "\n";
    else if (tag == "h3")
      out += "\n" + words + "\n";
    else
      out += ((*at)[2].matched ? "  " : "") + words + "\n";
  }
  // What it says of care comes after the directions' end.
  return out.substr(0, out.find("\n\nCare and cautions\n"));
}

TEST(Booklet, IsKnittedFromItsHtml) {
  for (const auto& [name, design] : demos()) {
    SCOPED_TRACE(name);
    const Derived derived = derive(design);
    const Wording wording{builtinPhrases()};
    const Booklet booklet = bookletOf(derived, wording, "2026-05-01");
    const reader::Reading read =
        reader::read(asText(bookletHtml(booklet, kBookletPoints, builtinPhrases())));
    for (const reader::Complaint& complaint : read.complaints)
      ADD_FAILURE() << complaint.text << " <- " << complaint.why;
    ASSERT_EQ(read.pieces.size(), derived.knit.pieces.size());
    for (std::size_t p = 0; p < read.pieces.size(); ++p) {
      const RowTable& rows = derived.knit.pieces[p].rows;
      ASSERT_EQ(read.pieces[p].rows.size(), rows.size());
      for (std::size_t r = 0; r < rows.size(); ++r)
        ASSERT_EQ(read.pieces[p].rows[r].stitches, rows[r].stitches().value());
    }
  }
}

// One file: nothing is fetched, nothing runs.
TEST(Booklet, StandsAlone) {
  Design design = demos().front().second;
  design.title = "A <b>bold</b> & \"new\" jacket";
  const Derived derived = derive(design);
  const std::string html =
      bookletHtml(bookletOf(derived, {builtinPhrases()}, ""), kBookletPoints, builtinPhrases());
  for (const char* outside : {"<script", "<link", "<img", "url(", "@import", "<b>bold"})
    EXPECT_EQ(html.find(outside), html.npos) << outside;
  EXPECT_NE(html.find("<svg"), html.npos);
  std::set<std::string> ids;
  const std::regex id(" id=\"([^\"]*)\"");
  for (std::sregex_iterator at(html.begin(), html.end(), id), end; at != end; ++at)
    EXPECT_TRUE(ids.insert((*at)[1]).second) << (*at)[1];
}

// The cover shows the garment worn where there is a picture of it, within the page and the file.
TEST(Booklet, CoverShowsTheGarmentWorn) {
  const Derived derived = derive(demos().front().second);
  const Wording wording{builtinPhrases()};
  const auto image = std::make_shared<const Image>(
      Image{4, 3, std::vector<std::uint8_t>(36, 90), std::vector<std::uint8_t>(12, 255)});
  const Booklet without = bookletOf(derived, wording, ""),
                with = bookletOf(derived, wording, "", image);
  const Vec2 a4(210, 297);
  const auto imagesOf = [&](const Sheet& sheet) {
    std::vector<PlacedImage> found;
    for (const Group& group : sheet.marks.groups)
      found.insert(found.end(), group.images.begin(), group.images.end());
    return found;
  };
  const std::vector<Sheet> drawn = bookletSheets(without, a4, kBookletPoints, builtinPhrases()),
                           sheets = bookletSheets(with, a4, kBookletPoints, builtinPhrases());
  EXPECT_EQ(sheets.size(), drawn.size());
  EXPECT_TRUE(imagesOf(drawn.front()).empty());
  const std::vector<PlacedImage> shown = imagesOf(sheets.front());
  ASSERT_EQ(shown.size(), 1u);
  EXPECT_EQ(shown[0].image, image);
  const Vec2 size = shown[0].box.size();
  EXPECT_NEAR(size.x() / size.y(), 4.0 / 3, 1e-9);
  EXPECT_GT(size.x(), 8);
  EXPECT_GT(shown[0].box.low.x(), 1);
  EXPECT_LT(shown[0].box.high.x(), 20);
  EXPECT_GT(shown[0].box.low.y(), 2);
  for (std::size_t i = 1; i < sheets.size(); ++i)
    EXPECT_TRUE(imagesOf(sheets[i]).empty()) << i;
  const std::string html = bookletHtml(with, kBookletPoints, builtinPhrases());
  const std::size_t at = html.find("<image ");
  ASSERT_NE(at, html.npos);
  EXPECT_LT(at, html.find("</section>"));
  EXPECT_NE(html.find(pngAddress(*image)), html.npos);
  EXPECT_EQ(html.find("<image ", at + 1), html.npos);
}

TEST(ReadingWidth, BreaksAtSpacesOnly) {
  EXPECT_EQ(brokenLines("one two", 100, 1), (std::vector<std::string>{"one two"}));
  EXPECT_EQ(brokenLines("one two", 2.5, 1), (std::vector<std::string>{"one", "two"}));
  EXPECT_EQ(brokenLines("a\nb", 100, 1), (std::vector<std::string>{"a", "b"}));
  for (const std::string& line : brokenLines("abcdefghijkl", 3, 1))
    EXPECT_LE(readingWidth(line, 1), 3);
}

TEST(ReadingWidth, TiesWhatIsReadAsOne) {
  const auto shown = [](const std::string& text) {
    return std::regex_replace(tied(text), std::regex("\u00a0"), "~");
  };
  EXPECT_EQ(shown("work even (12 sts)."), "work even~(12~sts).");
  EXPECT_EQ(shown("Hem: rows 1 to 16 (16 rows, 5.3 cm)"), "Hem: rows 1~to 16~(16~rows,~5.3~cm)");
  EXPECT_EQ(shown("measures 7 3/8 in, then more"), "measures 7~3/8~in, then more");
  EXPECT_EQ(shown("that gives this gauge: ____"), "that gives this gauge:~____");
  EXPECT_EQ(shown("work even."), "work even.");
}

} // namespace
} // namespace scye::booklet
