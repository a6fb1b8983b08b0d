// The printed directions of a whole garment, read and knitted by someone who has never seen how
// they are worded: text = steps = row table.
#include "core/directions/catalogue_reader.h"
#include "core/directions/random_pieces.h"
#include "core/directions/reader.h"
#include "core/directions/reader_words.h"
#include "directions/directions.h"
#include "directions/virtual_knitter.h"
#include "io/design_file.h"
#include "io/files.h"
#include "seam/garment_draft.h"
#include "support/record.h"
#include "support/trial_language.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

namespace scye::reader {
namespace {

std::string headingOf(PieceId id, bool sleevesDiffer) {
  switch (id) {
  case PieceId::Back:
    return "Back";
  case PieceId::Front:
    return "Front";
  case PieceId::LeftFront:
    return "Left front";
  case PieceId::RightFront:
    return "Right front";
  case PieceId::Sleeve:
    return sleevesDiffer ? "Right sleeve" : "Sleeve (make 2)";
  case PieceId::LeftSleeve:
    return "Left sleeve";
  }
  return {};
}

std::string rowText(std::string_view section, int row, double left, double right, int stitches) {
  return std::string(section) + " row " + std::to_string(row) + ": " + std::to_string(left) +
         " to " + std::to_string(right) + ", " + std::to_string(stitches) + " sts";
}

bool sameHoles(const RowLine& row, const RowRead& is, double from) {
  std::size_t found = 0;
  for (const Act& act : row.acts) {
    if (act.kind != ActKind::Buttonhole) continue;
    const int k = act.stitches.value();
    const double left = act.side == EdgeSide::Left ? row.leftEdge + act.from.value()
                                                   : row.rightEdge - act.from.value() - k;
    if (found == is.holes.size() || from + is.holes[found].left != left ||
        from + is.holes[found].right != left + k)
      return false;
    found += 1;
  }
  return found == is.holes.size();
}

// The first row that differs, as it was read and as it should be; empty where there is none. Where
// the cast-on lies is no matter of words.
std::string differsFrom(const RowTable& rows, const PieceRead& piece) {
  if (rows.size() != piece.rows.size())
    return std::to_string(piece.rows.size()) + " rows instead of " + std::to_string(rows.size());
  const double from = rows.empty() ? 0 : rows.front().leftEdge;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const RowRead& is = piece.rows[i];
    const RowLine& row = rows[i];
    if (is.section != sectionKey(row.section) || is.row != row.row.value() ||
        from + is.left != row.leftEdge || from + is.right != row.rightEdge ||
        is.stitches != row.stitches().value() || is.waiting != row.waiting.value())
      return rowText(is.section, is.row, from + is.left, from + is.right, is.stitches) +
             " instead of " +
             rowText(sectionKey(row.section), row.row.value(), row.leftEdge, row.rightEdge,
                     row.stitches().value());
    if (!sameHoles(row, is, from))
      return "other buttonholes in row " + std::to_string(row.row.value());
  }
  return {};
}

// What is wrong with a text as the directions of these pieces; empty if nothing is.
std::string wrongWith(const Reading& reading, const std::vector<KnitPiece>& pieces,
                      const StitchSize& size) {
  if (!reading.complaints.empty()) {
    const Complaint& first = reading.complaints.front();
    return "line " + std::to_string(first.line) + ": " + first.text + " <- " + first.why;
  }
  if (reading.pieces.size() != pieces.size()) return "another number of pieces";
  const bool sleevesDiffer = std::any_of(pieces.begin(), pieces.end(), [](const KnitPiece& piece) {
    return piece.id == PieceId::LeftSleeve;
  });
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const std::string& name = reading.pieces[i].name;
    if (name != headingOf(pieces[i].id, sleevesDiffer)) return name + " is another piece";
    for (const RowTable& rows : {pieces[i].rows, scye::knit(stepsOf(pieces[i], size)).rows})
      if (const std::string why = differsFrom(rows, reading.pieces[i]); !why.empty())
        return name + ", " + why;
  }
  for (const LengthRead& told : reading.lengths) { // to a millimetre, to an eighth of an inch
    const double length = told.rows * size.height / (told.inches ? 2.54 : 1);
    if (std::abs(told.length - length) > (told.inches ? 0.0625 : 0.05) + 1e-9)
      return "line " + std::to_string(told.line) + ": " + std::to_string(told.rows) + " rows are " +
             std::to_string(length) + " long";
  }
  return {};
}

struct Told {
  KnitGarment garment;
  Directions directions;
  explicit Told(const Design& design) {
    const GarmentDraft draft = draftGarment(design);
    garment = knitGarment(draft);
    directions = directionsFor(draft, garment, makingUp(draft, garment));
  }
  [[nodiscard]] std::string text(Terms terms, LengthUnit unit) const {
    return directionsText(
        directions,
        {.phrases = builtinPhrases(), .terms = terms == Terms::Us ? "us" : "uk", .unit = unit});
  }
};

// Reads a garment in both terms and both units of length; returns the reading in US terms.
Reading expectReads(const Told& told) {
  const auto steps = std::ranges::count(directionLines(told.directions, {builtinPhrases()}),
                                        LineKind::Step, &DirectionLine::kind);
  Reading us;
  for (const auto& [terms, unit] :
       {std::pair{Terms::Uk, LengthUnit::Inch}, std::pair{Terms::Us, LengthUnit::Centimetre}}) {
    us = read(told.text(terms, unit), terms);
    EXPECT_EQ(wrongWith(us, told.garment.pieces, told.garment.lattice.size), "")
        << (terms == Terms::Us ? "US" : "UK");
    EXPECT_EQ(us.steps, steps);
  }
  return us;
}

// Written and knitted by hand.
constexpr std::string_view kByHand = R"(Abbreviations
-------------
RS: right side
WS: wrong side
k: knit
k2tog: knit 2 together
p: purl
p2tog: purl 2 together
ssk: slip, slip, knit
st: stitch
sts: stitches


Back
----

Hem: rows 1 to 2 (2 rows, 1 cm)
  Cast on 20 sts with the smaller needles.
  Row 1 (RS): k1, *p2, k2; repeat from * to last 3 sts, p2, k1 (20 sts).
  Row 2 (WS): p1, *k2, p2; repeat from * to last 3 sts, k2, p1 (20 sts).

Body: rows 3 to 8 (6 rows, 3 cm)
  Row 3 (RS): k1, ssk, work to last 3 sts, k2tog, k1 (18 sts).
  Rows 4 to 7: decrease as on row 3 on every 2nd row, 2 times more (14 sts).
  Row 8 (WS): work even (14 sts).

Armhole: rows 9 to 10 (2 rows, 1 cm)
  Rows 9 and 10: bind off 2 sts at the beginning of these 2 rows (10 sts).

Neck and shoulder, right-hand side: rows 11 to 13 (3 rows, 1.5 cm)
At the same time: at the beginning of RS rows the shoulder, at their end the neck edge. Both are
  in the lines below, row by row.
  Row 11 (RS, shoulder): bind off 1 st, work until there are 4 sts on the right needle, turn;
    leave the other 5 sts on a holder (4 sts).
  Row 12 (WS, neck edge): p1, p2tog, work to end (3 sts).
  Row 13 (RS, shoulder): bind off the last 3 sts and fasten off (0 sts).

Neck and shoulder, left-hand side: rows 11 to 14 (4 rows, 2 cm)
At the same time: at the beginning of RS rows the neck edge, at their end the shoulder. Both are
  in the lines below, row by row.
  Row 11 (RS, neck edge): with RS facing, return the 5 held sts to the needle and join the yarn,
    bind off 2 sts, work to end (3 sts).
  Row 12 (WS, shoulder): bind off 1 st, work to end; row 13: work even (2 sts).
  Row 14 (WS, shoulder): bind off the last 2 sts and fasten off (0 sts).


Finishing
---------
)";

TEST(Reader, KnitsByHandWhatIsWrittenByHand) {
  const Reading reading = read(kByHand);
  for (const Complaint& complaint : reading.complaints)
    ADD_FAILURE() << complaint.line << ": " << complaint.text << " <- " << complaint.why;
  ASSERT_EQ(reading.pieces.size(), 1u);
  std::string rows;
  for (const RowRead& row : reading.pieces[0].rows)
    rows += std::string(row.section) + " " + std::to_string(row.row) + ": " +
            std::to_string(row.left) + ".." + std::to_string(row.right) + "\n";
  EXPECT_EQ(rows, R"(body 0: 0..20
body 1: 0..20
body 2: 0..20
body 3: 1..19
body 4: 1..19
body 5: 2..18
body 6: 2..18
body 7: 3..17
body 8: 3..17
body 9: 3..15
body 10: 5..15
right 11: 10..14
right 12: 11..14
right 13: 11..11
left 11: 5..8
left 12: 6..8
left 13: 6..8
left 14: 8..8
)");
  EXPECT_EQ(reading.steps, 13);
  EXPECT_EQ(reading.lengths.size(), 5u);
}

Design demo(const std::string& file) {
  const auto read = designFromJson(readWhole(SCYE_RESOURCES "/demos/" + file).text.value_or(""),
                                   builtinPhrases());
  EXPECT_TRUE(read.design) << file;
  return read.design.value_or(Design{});
}

// A figure one too high, a word in the place of another, a line left out: each is seen.
void expectEverySlipSeen(const Design& design, int least) {
  const Told told(design);
  const std::string text = told.text(Terms::Us, LengthUnit::Centimetre);
  const auto seen = [&](std::size_t at, std::size_t length, const std::string& instead) {
    std::string slipped = text;
    slipped.replace(at, length, instead);
    const bool wrong =
        !wrongWith(read(slipped), told.garment.pieces, told.garment.lattice.size).empty();
    EXPECT_TRUE(wrong) << text.substr(at - 30, 30) << "|" << instead << "|"
                       << text.substr(at + length, 30);
  };
  const std::size_t begin = text.find("\nBack\n"), end = text.find("\nFinishing\n");
  ASSERT_LT(begin, end);
  int slips = 0;
  for (std::size_t at = begin; (at = text.find_first_of("0123456789", at)) < end; ++slips) {
    const std::size_t past = text.find_first_not_of("0123456789", at);
    seen(at, past - at, std::to_string(std::stoi(text.substr(at, past - at)) + 1));
    at = past;
  }
  for (const auto& [word, other] : {std::pair{"RS", "WS"},
                                    {"WS", "RS"},
                                    {"decrease", "increase"},
                                    {"ssk", "k2tog"},
                                    {"k2tog", "ssk"},
                                    {"M1R", "M1L"},
                                    {"beginning", "end"},
                                    {"right-hand", "left-hand"},
                                    {"bind off", "cast off"},
                                    {"neck edge", "armhole edge"},
                                    {"shoulder", "neck edge"},
                                    {"even", "on"},
                                    {"w&t", "turn"},
                                    {"the wrapped st", "the end"},
                                    {", picking up the wraps", ""},
                                    {"the facing", "in 2x2 rib"},
                                    {"purl across, for the fold line", "work even"},
                                    {" from the fold", ""},
                                    {"more", "in all"}})
    for (std::size_t at = begin; (at = text.find(word, at)) < end; ++at, ++slips)
      seen(at, std::string_view(word).size(), other);
  for (std::size_t at = begin; (at = text.find("\n  ", at)) < end; ++at, ++slips)
    seen(at, text.find('\n', at + 1) - at, "");
  EXPECT_GT(slips, least);
}

TEST(Reader, SeesEverySlip) {
  expectEverySlipSeen(demo("pullover.scye"), 500);
}

TEST(Reader, SeesEverySlipInShortRowsFacingsAndButtonholes) {
  Design design;
  design.choose(Choice::Garment, Garment::Jacket).choose(Choice::Hem, HemMade::Faced);
  design.choose(Choice::ShoulderWork, ShoulderWork::ShortRows)
      .choose(Choice::BackNeck, BackNeck::Straight);
  design.choose(Choice::BustShaping, BustShaping::ShortRows)
      .choose(Choice::SleeveLine, SleeveLine::Full);
  design.set(Field::Bust, 104).set(Field::BustDepth, 4).set(Field::BustReach, 9);
  const std::string text = Told(design).text(Terms::Us, LengthUnit::Centimetre);
  for (const char* told : {"w&t", "before the wrapped st", "wraps", "waiting", "facing", "fold",
                           "M1 after", "make a buttonhole"})
    EXPECT_NE(text.find(told), text.npos) << told;
  expectEverySlipSeen(design, 500);
}

TEST(Reader, KnitsGarmentsFromTheirText) {
  const std::uint64_t seed = test::propertySeed(51);
  test::RandomDesigns designs(seed);
  std::size_t lines = 0, awkward = 0;
  for (int i = 0; i < 2000; ++i) {
    SCOPED_TRACE("design " + std::to_string(i) + " of seed " + std::to_string(seed));
    const Reading reading = expectReads(Told(designs.plausible()));
    lines += reading.steps;
    awkward += reading.awkward.size();
  }
  test::record("reader_lines", double(lines));
  test::record("reader_lines_awkward", double(awkward));
}

TEST(Reader, KnitsTheDemosFromTheirText) {
  int demos = 0;
  for (const auto& entry : std::filesystem::directory_iterator(SCYE_RESOURCES "/demos")) {
    SCOPED_TRACE(entry.path().filename());
    EXPECT_TRUE(expectReads(Told(demo(entry.path().filename()))).awkward.empty());
    demos += 1;
  }
  EXPECT_GE(demos, 3);
}

TEST(Reader, KnitsInventedPiecesFromTheirText) {
  const std::uint64_t seed = test::propertySeed(52);
  const StitchSize size{0.45, 0.33};
  test::RandomPieces pieces(seed);
  for (int i = 0; i < 10000; ++i) {
    SCOPED_TRACE("piece " + std::to_string(i) + " of seed " + std::to_string(seed));
    const KnitPiece piece = pieces.next();
    Directions directions;
    directions.size = size;
    directions.pieces = {stepsOf(piece, size)};
    // Their edges are shaped for ends that follow each other as in no garment: neither what the
    // edges are called nor where an armhole begins means anything there.
    Reading reading = read(directionsText(directions, {builtinPhrases()}));
    std::erase_if(reading.complaints, &Complaint::edgeNames);
    reading.lengths.clear();
    EXPECT_EQ(wrongWith(reading, {piece}, size), "");
  }
}

// Directions in another language as English ones, word by word through the two catalogues.
std::string inEnglish(const std::string& text, CatalogueReader& catalogue, const Phrases& phrases) {
  std::vector<std::string> rowWords;
  for (const char* key : {"at.row", "at.rows", "castOn"})
    rowWords.push_back(phrases.message("dir.us." + std::string(key))->front().text);
  std::string out;
  bool front = true; // the wearer's own words stand there
  for (const PageLine& line : pageLines(text, rowWords)) {
    const std::optional<std::string> read = catalogue.read(line.text);
    front = front && !(read && *read == "Abbreviations");
    EXPECT_TRUE(read || front || line.blank) << line.number << ": " << line.text;
    const std::string words = read.value_or(line.text);
    out += (line.deep ? "  " : "") + words + "\n";
    if (line.underlined) out += std::string(words.size(), '-') + "\n";
  }
  return out;
}

void expectReadsThroughCatalogue(const Told& told) {
  const Phrases& trial = test::trialPhrases();
  for (const auto& [terms, unit] :
       {std::pair{Terms::Uk, LengthUnit::Inch}, std::pair{Terms::Us, LengthUnit::Centimetre}}) {
    const std::string name = terms == Terms::Us ? "us" : "uk";
    CatalogueReader catalogue(trial, builtinPhrases(), name);
    const std::string text =
        directionsText(told.directions, {.phrases = trial, .terms = name, .unit = unit});
    EXPECT_EQ(test::firstEnglishWord(text), "");
    const std::string english = inEnglish(text, catalogue, trial);
    const Reading reading = read(english, terms);
    EXPECT_EQ(wrongWith(reading, told.garment.pieces, told.garment.lattice.size), "") << english;
    EXPECT_EQ(reading.steps,
              std::ranges::count(
                  directionLines(told.directions, {.phrases = builtinPhrases(), .terms = name}),
                  LineKind::Step, &DirectionLine::kind));
  }
}

// A translator's catalogue alone makes them readable: nothing is put together beside it.
TEST(Reader, KnitsFromAnotherLanguageByItsCatalogue) {
  const std::uint64_t seed = test::propertySeed(53);
  test::RandomDesigns designs(seed);
  for (int i = 0; i < 8; ++i) {
    SCOPED_TRACE("design " + std::to_string(i) + " of seed " + std::to_string(seed));
    expectReadsThroughCatalogue(Told(designs.plausible()));
  }
  for (const auto& entry : std::filesystem::directory_iterator(SCYE_RESOURCES "/demos")) {
    SCOPED_TRACE(entry.path().filename());
    Design design = demo(entry.path().filename());
    design.title.clear(), design.wearer.clear(), design.notes.clear();
    expectReadsThroughCatalogue(Told(design));
  }
}

} // namespace
} // namespace scye::reader
