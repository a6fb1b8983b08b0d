#include "worn_demos.h"

#include "io/design_file.h"
#include "io/files.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

namespace scye::test {

Design demoDesign(const std::string& name) {
  const FileText file = readWhole(std::string(SCYE_RESOURCES "/demos/") + name + ".scye");
  EXPECT_TRUE(file.text.has_value()) << file.problem.phrase;
  DesignRead read = designFromJson(file.text.value_or(""), builtinPhrases());
  EXPECT_TRUE(read.design.has_value()) << name;
  return read.design.value_or(Design());
}

std::vector<std::string> demoDesigns() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(SCYE_RESOURCES "/demos"))
    names.push_back(entry.path().stem().string());
  std::sort(names.begin(), names.end());
  return names;
}

} // namespace scye::test
