// Case folders: tests/data/directions/<case>/ holds what is expected, <terms>_<cm|inch>.txt, of its
// design.scye, or of the demo of that name. Words have to be the same; lengths may differ by what
// another rounding makes. With SCYE_REGENERATE set the files are written afresh; read the
// difference before keeping it.
#include "directions/directions.h"
#include "io/design_file.h"
#include "io/files.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <sstream>

namespace scye::directions_cases {
namespace {

namespace fs = std::filesystem;

constexpr double kLength = 0.11; // cm

// The number, if that is all the word is, but for a comma or bracket around it.
std::optional<double> lengthIn(const std::string& word) {
  const auto dot = word.find('.');
  if (dot == std::string::npos || dot + 1 == word.size()) return std::nullopt;
  char* end = nullptr;
  const double value = std::strtod(word.c_str(), &end);
  return end == word.c_str() ? std::nullopt : std::optional(value);
}

bool sameWords(const std::string& a, const std::string& b) {
  std::istringstream left(a), right(b);
  std::string x, y;
  while (left >> x) {
    if (!(right >> y)) return false;
    if (x == y) continue;
    const auto p = lengthIn(x), q = lengthIn(y);
    if (!p || !q || std::abs(*p - *q) > kLength) return false;
  }
  return !(right >> y);
}

std::vector<std::string> linesOf(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);)
    lines.push_back(line);
  return lines;
}

void expectSame(const std::string& told, const std::string& expected) {
  const auto a = linesOf(told), b = linesOf(expected);
  for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i)
    ASSERT_TRUE(sameWords(a[i], b[i]))
        << "line " << i + 1 << "\n  told:     " << a[i] << "\n  expected: " << b[i];
  EXPECT_EQ(a.size(), b.size());
}

std::optional<Design> designOf(const fs::path& folder) {
  fs::path file = folder / "design.scye";
  if (!fs::exists(file))
    file = fs::path(SCYE_RESOURCES) / "demos" / (folder.filename().string() + ".scye");
  const FileText read = readWhole(file);
  EXPECT_TRUE(read.text) << file << ": " << read.problem.phrase;
  return read.text ? designFromJson(*read.text, builtinPhrases()).design : std::nullopt;
}

TEST(DirectionCases, SayWhatIsExpected) {
  int compared = 0;
  for (const fs::directory_entry& folder :
       fs::directory_iterator(fs::path(SCYE_TEST_DATA) / "directions")) {
    const std::optional<Design> design = designOf(folder.path());
    ASSERT_TRUE(design) << folder.path();
    const GarmentDraft draft = draftGarment(*design);
    const KnitGarment garment = knitGarment(draft);
    const Directions directions = directionsFor(draft, garment, makingUp(draft, garment));
    for (const fs::directory_entry& file : fs::directory_iterator(folder.path())) {
      if (file.path().extension() != ".txt") continue;
      SCOPED_TRACE(file.path().string());
      const std::string name = file.path().stem().string();
      const Wording wording{.phrases = builtinPhrases(),
                            .terms = name.substr(0, name.find('_')),
                            .unit = name.ends_with("_inch") ? LengthUnit::Inch
                                                            : LengthUnit::Centimetre};
      const std::string told = directionsText(directions, wording);
      if (std::getenv("SCYE_REGENERATE")) {
        ASSERT_FALSE(writeWhole(file.path(), told));
      }
      expectSame(told, readWhole(file.path()).text.value_or(""));
      ++compared;
    }
  }
  EXPECT_GE(compared, 2);
}

} // namespace
} // namespace scye::directions_cases
