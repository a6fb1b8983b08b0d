// The table of outputs: whole, without doubles, every word there, and what it makes is what its
// writers make.
#include "io/outputs.h"

#include "directions/row_table_csv.h"
#include "io/files.h"
#include "io/report.h"
#include "schematic/svg.h"

#include <gtest/gtest.h>

#include <set>

namespace scye::test {
namespace {

class OutputTable : public testing::Test {
protected:
  [[nodiscard]] OutputJob job() const { return {derived_, {builtinPhrases()}}; }
  Derived derived_ = derive(Design{}.choose(Choice::Garment, Garment::Jacket));
};

class NotingDrawer : public Drawer {
public:
  FileBytes draw(const std::vector<Sheet>& made, FileFormat, const ExportOptions&) const override {
    pages = made.size();
    scaleTold = std::any_of(made.begin(), made.end(), [](const Sheet& sheet) {
      for (const Group& g : sheet.marks.groups)
        for (const Label& l : g.labels)
          if (l.text.starts_with("1 : ")) return true;
      return false;
    });
    return {"drawn", {}};
  }
  mutable std::size_t pages = 0;
  mutable bool scaleTold = true;
};

TEST_F(OutputTable, everyLineIsWhole) {
  const Phrases& phrases = builtinPhrases();
  std::set<std::string_view> keys;
  int at = 0;
  for (const OutputInfo& output : allOutputs()) {
    EXPECT_EQ(int(output.id), at++);
    EXPECT_TRUE(keys.insert(output.key).second) << output.key;
    EXPECT_FALSE(output.formats.empty()) << output.key;
    EXPECT_EQ((output.text ? 1 : 0) + (output.pages ? 1 : 0) + (output.image ? 1 : 0), 1)
        << output.key;
    EXPECT_EQ(output.has != nullptr, phrases.has(output.none)) << output.key;
    const std::string phrase = "output." + std::string(output.key);
    EXPECT_TRUE(phrases.has(phrase + ".help")) << output.key;
    if (!output.inMenu) continue;
    EXPECT_TRUE(phrases.has(phrase + ".export")) << output.key;
    if (output.id == OutputId::Schematic) continue; // its file is called as the design
    EXPECT_TRUE(phrases.has(phrase + ".menu")) << output.key;
    EXPECT_TRUE(phrases.has(phrase + ".name")) << output.key;
  }
}

TEST_F(OutputTable, endingsAreReadInCapitalsToo) {
  const OutputInfo& schematic = info(OutputId::Schematic);
  EXPECT_EQ(formatOf(schematic, "a.SVG"), FileFormat::Svg);
  EXPECT_EQ(formatOf(schematic, "b/a.pdf"), FileFormat::Pdf);
  EXPECT_FALSE(formatOf(schematic, "a.jpg"));
  EXPECT_FALSE(formatOf(schematic, ".svg")) << "a name and an ending";
  EXPECT_FALSE(formatOf(schematic, "a.csv")) << "of another output";
  EXPECT_EQ(endingsOf(schematic), (std::vector<std::string>{".svg", ".png", ".pdf", ".dxf"}));
}

TEST_F(OutputTable, textsAreThoseOfTheirWriters) {
  const auto made = [&](OutputId id, FileFormat format) {
    return makeOutput(info(id), job(), format, nullptr).bytes;
  };
  EXPECT_EQ(made(OutputId::RowList, FileFormat::Csv), rowTableCsv(derived_.knit));
  EXPECT_EQ(made(OutputId::Report, FileFormat::Json), reportToJson(derived_, builtinPhrases()));
  EXPECT_EQ(made(OutputId::Directions, FileFormat::Text),
            directionsText(derived_.directions, {builtinPhrases()}));
  EXPECT_EQ(made(OutputId::Directions, FileFormat::Html),
            directionsHtml(derived_.directions, {builtinPhrases()}));
  EXPECT_TRUE(made(OutputId::Chart, FileFormat::Svg).starts_with("<?xml"));
}

TEST_F(OutputTable, whatHasToBeDrawnAsksTheDrawerForAPageAPiece) {
  const NotingDrawer drawer;
  OutputJob onSheets = job();
  onSheets.page.paper = Paper::A4;
  const FileBytes chart = makeOutput(info(OutputId::Chart), onSheets, FileFormat::Pdf, &drawer);
  EXPECT_EQ(chart.bytes, "drawn");
  EXPECT_GE(drawer.pages, derived_.knit.pieces.size());
  EXPECT_FALSE(drawer.scaleTold) << "a chart fills its sheet";
  EXPECT_FALSE(makeOutput(info(OutputId::Schematic), onSheets, FileFormat::Png, &drawer).problem);
  EXPECT_EQ(drawer.pages, 1u);
  EXPECT_TRUE(drawer.scaleTold);
  EXPECT_FALSE(makeOutput(info(OutputId::Template), onSheets, FileFormat::Pdf, &drawer).problem);
  EXPECT_GT(drawer.pages, derived_.knit.pieces.size()) << "at its true size no piece fits a sheet";
  EXPECT_FALSE(makeOutput(info(OutputId::Template), job(), FileFormat::Pdf, &drawer).problem);
  EXPECT_EQ(drawer.pages, derived_.knit.pieces.size());
}

TEST_F(OutputTable, aChartIsMadeOfOnePieceToo) {
  OutputJob one = job();
  for (const KnitPiece& piece : derived_.knit.pieces) {
    one.piece = piece.id;
    const std::string svg = makeOutput(info(OutputId::Chart), one, FileFormat::Svg, nullptr).bytes;
    for (const KnitPiece& other : derived_.knit.pieces)
      EXPECT_EQ(svg.find("<g id=\"" + std::string(pieceKey(other.id)) + "\"") != std::string::npos,
                other.id == piece.id);
    const auto all = everyOutput(derived_, false);
    EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const OutputFile& file) {
      return file.piece == piece.id &&
             file.name == "chart-" + std::string(pieceKey(piece.id)) + ".svg";
    }));
  }
  one.piece = PieceId::Front; // a jacket has two
  const FileBytes none = makeOutput(info(OutputId::Chart), one, FileFormat::Svg, nullptr);
  ASSERT_TRUE(none.problem);
  EXPECT_EQ(*none.problem, "this garment has no piece \"Front\"");
}

TEST_F(OutputTable, aNameWithoutItsEndingIsSaid) {
  const FileBytes made = makeOutput(info(OutputId::Schematic), job(), "a.jpg", nullptr);
  ASSERT_TRUE(made.problem);
  EXPECT_NE(made.problem->find(".svg, .png, .pdf, .dxf"), std::string::npos) << *made.problem;
}

TEST_F(OutputTable, theGarmentIsOnlyWornWhereItCanBeKnitted) {
  const OutputInfo& worn = info(OutputId::Worn);
  EXPECT_TRUE(worn.has(derived_));
  const Derived wide = derive(Design{}.set(Field::EaseUpperArm, 40));
  EXPECT_FALSE(worn.has(wide));
  const OutputJob none{wide, {builtinPhrases()}};
  EXPECT_TRUE(makeOutput(worn, none, FileFormat::Png, nullptr).problem);
  OutputJob small = job();
  small.worn.width = 60, small.worn.height = 50;
  const FileBytes made = makeOutput(worn, small, FileFormat::Png, nullptr);
  EXPECT_FALSE(made.problem);
  EXPECT_TRUE(made.bytes.starts_with("\x89PNG"));
}

TEST_F(OutputTable, withoutADrawerItIsSaid) {
  const FileBytes made = makeOutput(info(OutputId::Schematic), job(), FileFormat::Png, nullptr);
  ASSERT_TRUE(made.problem);
  EXPECT_EQ(made.problem->find('['), std::string::npos) << *made.problem;
}

TEST(Svg, wordsWithSignsInThemAreEscaped) {
  Picture picture;
  picture.title = "Bar & <measure>";
  Group group;
  group.id = "bar";
  group.title = "\"10 cm\"\x01";
  group.labels.push_back({Vec2(0, 0), "<cap>", Role::Note, 0.5, Anchor::Middle, 0});
  picture.groups.push_back(group);
  const std::string svg = pictureAsSvg(picture);
  EXPECT_NE(svg.find("<title>Bar &amp; &lt;measure&gt;</title>"), std::string::npos);
  EXPECT_NE(svg.find("&quot;10 cm&quot; <"), std::string::npos);
  EXPECT_NE(svg.find(">&lt;cap&gt;</text>"), std::string::npos);
}

} // namespace
} // namespace scye::test
