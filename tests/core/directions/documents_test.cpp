#include "directions/directions.h"
#include "directions/row_table_csv.h"
#include "support/made.h"
#include "support/trial_language.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <regex>
#include <set>
#include <sstream>

namespace scye::documents {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

struct Made : test::Made {
  Directions directions;
};
Made made(const Design& design) {
  const test::Made m = test::made(design);
  return {m, directionsFor(m.draft, m.knit, makingUp(m.draft, m.knit))};
}
Design jacket() {
  Design design;
  design.choose(Choice::Garment, Garment::Jacket).set(Field::Bust, 92).set(Field::UpperArm, 29);
  return design;
}

std::size_t countOf(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
    ++n;
  return n;
}

TEST(DirectionLines, EachPieceIsWrittenOut) {
  const Made m = made(jacket());
  std::vector<PieceId> headings;
  for (const DirectionLine& line : directionLines(m.directions, {builtinPhrases()}))
    if (line.kind == LineKind::Heading && line.piece) headings.push_back(*line.piece);
  EXPECT_THAT(headings,
              ElementsAre(PieceId::Back, PieceId::LeftFront, PieceId::RightFront, PieceId::Sleeve));
  EXPECT_THAT(directionsText(m.directions, {builtinPhrases()}), Not(HasSubstr("everse")));
}

TEST(DirectionLines, OfOnePieceAreThoseOfTheWhole) {
  const Made m = made(jacket());
  std::vector<std::string> whole, alone;
  for (const DirectionLine& line : directionLines(m.directions, {builtinPhrases()}))
    if (line.piece == PieceId::LeftFront) whole.push_back(line.text);
  for (const DirectionLine& line : pieceLines(m.directions, PieceId::LeftFront, {builtinPhrases()}))
    alone.push_back(line.text);
  EXPECT_EQ(alone, whole);
  EXPECT_TRUE(pieceLines(m.directions, PieceId::Front, {builtinPhrases()}).empty());
}

// A line lights its rows: they are the piece's, each once.
TEST(DirectionLines, KnowTheirRowsAndHeights) {
  const Made m = made(jacket());
  for (const KnitPiece& piece : m.knit.pieces) {
    std::size_t row = 0;
    for (const DirectionLine& line : pieceLines(m.directions, piece.id, {builtinPhrases()})) {
      if (line.kind != LineKind::Step) continue;
      EXPECT_DOUBLE_EQ(line.fromCastOn, line.last * m.knit.lattice.size.height);
      for (int r = line.first; r <= line.last; ++r, ++row)
        ASSERT_EQ(piece.rows[row].row, Rows(r)) << line.text;
      EXPECT_EQ(piece.rows[row - 1].section, line.section);
      EXPECT_EQ(piece.rows[row - 1].stitches(), line.stitches);
    }
    EXPECT_EQ(row, piece.rows.size());
  }
}

TEST(DirectionLines, TellOnlyAbbreviationsThatAreUsed) {
  const std::string text = directionsText(made(jacket()).directions, {builtinPhrases()});
  EXPECT_THAT(text, HasSubstr("\nssk: "));
  EXPECT_THAT(text, Not(HasSubstr("\nM1LP: ")));
}

TEST(DirectionLines, ChildrenAreLookedAfter) {
  Design design = jacket();
  const std::string caution = builtinPhrases().say("finding.child.safety");
  const auto says = [&](Figure figure) {
    const auto lines =
        directionLines(made(design.choose(Choice::Figure, figure)).directions, {builtinPhrases()});
    return std::any_of(lines.begin(), lines.end(),
                       [&](const DirectionLine& l) { return l.text == caution; });
  };
  EXPECT_TRUE(says(Figure::Child));
  EXPECT_TRUE(says(Figure::Baby));
  EXPECT_FALSE(says(Figure::Woman));
}

TEST(DirectionsText, IsNoWiderThanAPage) {
  std::istringstream in(directionsText(made(jacket()).directions, {builtinPhrases()}));
  for (std::string line; std::getline(in, line);) {
    EXPECT_LE(line.size(), 100u) << line;
    EXPECT_THAT(line, Not(testing::StartsWith("    sts)"))) << "a count is torn";
  }
}

TEST(DirectionsHtml, EscapesWhatTheKnitterWrote) {
  Design design = jacket();
  design.title = "A <b>\"bold\"</b> jacket & more";
  design.notes = "one\n<script>two</script>";
  const std::string html = directionsHtml(made(design).directions, {builtinPhrases()});
  EXPECT_THAT(html, HasSubstr("<h1>A &lt;b&gt;&quot;bold&quot;&lt;/b&gt; jacket &amp; more</h1>"));
  EXPECT_THAT(html, HasSubstr("one<br>&lt;script&gt;two&lt;/script&gt;"));
  EXPECT_THAT(html, Not(HasSubstr("<script")));
}

TEST(DirectionsHtml, ClosesWhatItOpens) {
  const Made m = made(jacket());
  const std::string html = directionsHtml(m.directions, {builtinPhrases()});
  for (const std::string tag :
       {"section", "ol", "li", "h1", "h2", "h3", "p", "body", "html", "style"})
    EXPECT_EQ(countOf(html, "<" + tag + ">") + countOf(html, "<" + tag + " "),
              countOf(html, "</" + tag + ">"))
        << tag;
  const auto lines = directionLines(m.directions, {builtinPhrases()});
  const auto steps = std::count_if(lines.begin(), lines.end(),
                                   [](const DirectionLine& l) { return l.kind == LineKind::Step; });
  EXPECT_EQ(countOf(html, "<li "), std::size_t(steps));
  EXPECT_THAT(html, HasSubstr("<section class=\"piece\" id=\"leftFront\">"));
}

// Short rows, a facing, a full sleeve, buttonholes, an undivided back.
Design everything() {
  Design design = jacket();
  design.choose(Choice::Hem, HemMade::Faced).choose(Choice::BackNeck, BackNeck::Straight);
  design.choose(Choice::ShoulderWork, ShoulderWork::ShortRows)
      .choose(Choice::BustShaping, BustShaping::ShortRows);
  return design.choose(Choice::SleeveLine, SleeveLine::Full)
      .set(Field::BustDepth, 3)
      .set(Field::BustReach, 8);
}

TEST(RowTableCsv, ActionsAreThoseOfItsDescription) {
  const std::string csv = rowTableCsv(made(everything()).knit);
  const std::regex action("work even|(cast on|rest|rejoin|spread) [0-9]+|"
                          "(increase|decrease|bind off|close|wait|take up) (right|left) [0-9]+|"
                          "buttonhole (right|left) [0-9]+ from [0-9]+");
  std::set<std::string> said;
  std::istringstream in(csv);
  std::string line;
  std::getline(in, line);
  while (std::getline(in, line)) {
    const auto side = line.find("S,") + 2; // after RS or WS
    const bool quoted = line[side] == '"';
    const auto end = line.find(quoted ? '"' : ',', side + 1);
    std::istringstream actions(line.substr(side + quoted, end - side - quoted));
    for (std::string one; std::getline(actions, one, ',');) {
      if (one.starts_with(' ')) one.erase(0, 1);
      EXPECT_TRUE(std::regex_match(one, action)) << line;
      said.insert(one.substr(0, one.find_first_of("0123456789") - 1));
    }
  }
  for (const char* wanted :
       {"wait right", "wait left", "take up right", "spread", "buttonhole right"})
    EXPECT_TRUE(said.contains(wanted)) << wanted;
}

TEST(RowTableCsv, HasALineARow) {
  const Made m = made(everything());
  const std::string csv = rowTableCsv(m.knit);
  std::size_t rows = 0;
  for (const KnitPiece& piece : m.knit.pieces)
    rows += piece.rows.size();
  EXPECT_EQ(countOf(csv, "\n"), rows + 1);
  EXPECT_TRUE(csv.starts_with(
      "piece,section,row,side,action,stitches,left_edge,right_edge\nback,body,0,WS,cast on "));
  // The edges of a line are as far apart as its stitches, to the digit.
  std::istringstream in(csv);
  std::string line;
  std::getline(in, line);
  while (std::getline(in, line)) {
    std::vector<std::string> ends;
    for (int i = 0; i < 3; ++i) {
      const auto comma = line.rfind(',');
      ends.push_back(line.substr(comma + 1));
      line.resize(comma);
    }
    EXPECT_EQ(std::stod(ends[0]) - std::stod(ends[1]), std::stod(ends[2])) << line;
  }
}

TEST(Documents, SpeakTheLanguageOfTheirCatalogue) {
  const std::string html = directionsHtml(made(jacket()).directions, {test::trialPhrases()});
  EXPECT_THAT(html, HasSubstr(std::string("<html lang=\"") + test::kTrialLanguage + "\">"));
  std::string words; // what is no mark-up
  const std::size_t body = html.find("<body>");
  ASSERT_NE(body, html.npos);
  for (std::size_t at = body; (at = html.find('>', at)) != html.npos; ++at)
    words += html.substr(at + 1, html.find('<', at) - at - 1);
  words = std::regex_replace(words, std::regex("&(amp|quot|lt|gt);"), "");
  EXPECT_EQ(test::firstEnglishWord(words), "");
  EXPECT_THAT(words, HasSubstr("\u0159\u00f3\u0175")) << "rows";
}

} // namespace
} // namespace scye::documents
