// survey_moments WOMEN.csv MEN.csv > survey_moments_data.cpp
// Computes the table behind estimates from the survey's files. Run by hand when the survey or the
// mapping in body/survey.cpp changes; a test compares the table in the tree with what this yields.
#include "body/survey.h"

#include <cstdio>
#include <fstream>
#include <iostream>
#include <sstream>

namespace {

std::optional<scye::Moments> momentsFrom(const char* path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  const auto subjects = scye::readSurvey(text.str());
  if (!subjects || subjects->size() < 2) {
    std::cerr << path << ": not the survey's file\n";
    return std::nullopt;
  }
  return scye::momentsOf(*subjects);
}

// Twelve digits: far beyond what the survey bears, and short enough to read.
void printNumbers(const double* numbers, int count) {
  for (int i = 0; i < count; ++i)
    std::printf("%s%.12g,", i == 0 ? "     " : i % 6 == 0 ? "\n     " : " ", numbers[i]);
  std::printf("\n");
}

void printTable(const char* name, const scye::Moments& moments) {
  std::printf("const SurveyTable %s{\n    %d,\n    {\n", name, moments.subjects);
  printNumbers(moments.mean.data(), scye::kMeasureCount);
  std::printf("    },\n    {\n");
  for (int i = 0; i < scye::kMeasureCount; ++i) {
    const Eigen::VectorXd row = moments.covariance.row(i).head(i + 1);
    printNumbers(row.data(), i + 1);
  }
  std::printf("    },\n};\n\n");
}

} // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "usage: survey_moments WOMEN.csv MEN.csv\n";
    return 2;
  }
  const auto women = momentsFrom(argv[1]), men = momentsFrom(argv[2]);
  if (!women || !men) return 1;
  std::printf("// Written by the program survey_moments; source: see survey.h.\n"
              "#include \"body/survey_table.h\"\n\nnamespace scye {\n\n");
  printTable("kSurveyWomen", *women);
  printTable("kSurveyMen", *men);
  std::printf("} // namespace scye\n");
  return 0;
}
