#include "io/wearer_table.h"

#include "io/setting.h"

#include <gtest/gtest.h>

#include <sstream>

namespace scye {
namespace {

// Lines and cells of what is written; no cell of ours holds a line break.
std::vector<std::vector<std::string>> cellsOf(const std::string& csv) {
  std::vector<std::vector<std::string>> out;
  std::istringstream in(csv);
  for (std::string line; std::getline(in, line);) {
    out.emplace_back();
    std::string cell;
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
      if (line[i] == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"')
        cell += line[i++];
      else if (line[i] == '"')
        quoted = !quoted;
      else if (line[i] == ',' && !quoted)
        out.back().push_back(std::exchange(cell, {}));
      else
        cell += line[i];
    }
    out.back().push_back(cell);
  }
  return out;
}

Design jacket() {
  Design design;
  design.choose(Choice::Garment, Garment::Jacket);
  design.set(Field::Bust, 100).set(Field::SwatchStitches, 22).set(Field::SwatchRows, 30);
  return design;
}

TEST(WearerTable, everyWearerHasAFileNameOfItsOwn) {
  const auto table = readWearerTable("name,bust\nIda,94\n../a\\b:c,94\n,94\nida,94\n.hidden,94\n" +
                                         std::string(300, 'x') + ",94\n",
                                     jacket(), builtinPhrases());
  ASSERT_FALSE(table.problem) << *table.problem;
  std::vector<std::string> names;
  for (const TableWearer& wearer : table.wearers)
    names.push_back(wearer.fileName);
  EXPECT_EQ(names, (std::vector<std::string>{"Ida", "-.-a-b-c", "4", "ida 5", "-hidden",
                                             std::string(100, 'x')}));
}

TEST(WearerTable, eachGarmentThatCanBeMadeIsHandedOver) {
  const auto table =
      readWearerTable("name,bust\nIda,94\nBad,7\nNell,110\n", jacket(), builtinPhrases());
  std::vector<std::string> handed;
  const auto sizes = sizesTable(table, {}, [&](const TableWearer& wearer, const Derived& derived) {
    handed.push_back(wearer.name);
    EXPECT_FALSE(derived.knit.pieces.empty());
  });
  ASSERT_TRUE(sizes);
  EXPECT_EQ(handed, (std::vector<std::string>{"Ida", "Nell"}));
}

TEST(WearerTable, aLineAWearerWithItsOwnMeasurementsAndNoOthers) {
  const auto table = readWearerTable("name,bust,upperArm,ease.bust\nIda,94,,\n"
                                     "\"Per, the \"\"tall\"\"\",42in,36.5,7\r\n\n",
                                     jacket(), builtinPhrases());
  ASSERT_FALSE(table.problem) << *table.problem;
  ASSERT_EQ(table.wearers.size(), 2u);
  const TableWearer& ida = table.wearers[0];
  EXPECT_EQ(ida.line, 2);
  ASSERT_TRUE(ida.design) << ida.problem;
  EXPECT_EQ(ida.design->wearer, "Ida");
  EXPECT_EQ(ida.design->given(Field::Bust), 94);
  EXPECT_FALSE(ida.design->has(Field::UpperArm)) << "it is filled in";
  EXPECT_EQ(ida.design->as<Garment>(), Garment::Jacket);
  EXPECT_EQ(ida.design->given(Field::SwatchStitches), 22);
  const TableWearer& per = table.wearers[1];
  EXPECT_EQ(per.name, "Per, the \"tall\"");
  ASSERT_TRUE(per.design) << per.problem;
  EXPECT_NEAR(*per.design->given(Field::Bust), 42 * 2.54, 1e-9);
  EXPECT_EQ(per.design->given(Field::EaseBust), 7);
}

TEST(WearerTable, theSizesAreThoseOfTheDesignForThatWearerAlone) {
  const auto table = readWearerTable("name,bust\nA,88\nB,104\nC,121\n", jacket(), builtinPhrases());
  const auto sizes = sizesTable(table);
  ASSERT_TRUE(sizes);
  const auto cells = cellsOf(sizes->csv);
  ASSERT_EQ(cells.size(), 4u);
  for (std::size_t i = 1; i < cells.size(); ++i) {
    ASSERT_EQ(cells[i].size(), cells[0].size());
    Design design = jacket();
    design.set(Field::Bust, std::vector{88., 104., 121.}[i - 1]);
    const Derived derived = derive(design);
    for (std::size_t k = 0; k < cells[0].size(); ++k)
      for (const Rounded& r : derived.knit.rounded)
        if (r.key == cells[0][k]) {
          EXPECT_NEAR(std::stod(cells[i][k]), r.knitted, 0.00501) << r.key;
        }
    const auto column = [&](const char* head) {
      return cells[i][std::size_t(std::find(cells[0].begin(), cells[0].end(), head) -
                                  cells[0].begin())];
    };
    EXPECT_NEAR(std::stod(column("cap")) - std::stod(column("armhole")),
                std::stod(column("capEase")), 0.0101);
    EXPECT_EQ(std::stoi(column("castOnBack")), derived.knit.piece(PieceId::Back)->castOn().value());
  }
}

TEST(WearerTable, aBadLineIsNamedAndTheRestIsMade) {
  const auto table =
      readWearerTable("name,bust\nA,88\nB,9\nC\nD,much\n=E,90\n", jacket(), builtinPhrases());
  ASSERT_EQ(table.wearers.size(), 5u);
  for (const int bad : {1, 2, 3}) {
    EXPECT_FALSE(table.wearers[std::size_t(bad)].design);
    EXPECT_FALSE(table.wearers[std::size_t(bad)].problem.empty());
  }
  const auto sizes = sizesTable(table);
  const auto cells = cellsOf(sizes->csv);
  ASSERT_EQ(cells.size(), 6u);
  for (const auto& line : cells)
    EXPECT_EQ(line.size(), cells[0].size());
  EXPECT_EQ(sizes->made, 2);
  EXPECT_EQ(cells[2][2], "notRead");
  EXPECT_EQ(cells[5][1], "'=E") << "no formula of a spreadsheet";
}

TEST(WearerTable, whatIsNoTableIsRefusedWithItsReason) {
  const auto problem = [](const char* csv) {
    const auto table = readWearerTable(csv, jacket(), builtinPhrases());
    EXPECT_TRUE(table.wearers.empty());
    return table.problem.value_or("");
  };
  EXPECT_NE(problem("").size(), 0u);
  EXPECT_NE(problem("bust\n90\n").find("name"), std::string::npos);
  EXPECT_NE(problem("name,bust,bust\n").find("bust"), std::string::npos);
  EXPECT_NE(problem("name,brust\n").find("brust"), std::string::npos);
  EXPECT_NE(problem("name,bust\nA,88\n\"B,90\n").find('3'), std::string::npos);
}

TEST(WearerTable, givenUpNothingIsMade) {
  const auto table = readWearerTable("name,bust\nA,88\nB,90\n", jacket(), builtinPhrases());
  EXPECT_FALSE(sizesTable(table, [](double share) { return share < 0.4; }));
}

} // namespace
} // namespace scye
