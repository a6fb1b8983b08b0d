#include "io/files.h"

#include <csignal>
#include <filesystem>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

namespace scye {
namespace {

namespace fs = std::filesystem;

class Files : public testing::Test {
protected:
  Files() : folder_(fs::temp_directory_path() / ("scye-files-" + std::to_string(getpid()))) {
    fs::create_directory(folder_);
  }
  ~Files() override { fs::remove_all(folder_); }

  [[nodiscard]] int entries() const {
    return int(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
  }

  fs::path folder_;
};

TEST_F(Files, WhatIsWrittenIsReadBack) {
  const std::string text("a\0b\r\n\xff", 6);
  EXPECT_EQ(writeWhole(folder_ / "a.json", text), std::nullopt);
  EXPECT_EQ(readWhole(folder_ / "a.json").text, text);
  EXPECT_EQ(writeWhole(folder_ / "a.json", "b"), std::nullopt);
  EXPECT_EQ(readWhole(folder_ / "a.json").text, "b");
  EXPECT_EQ(entries(), 1) << "nothing else is left in the folder";
}

TEST_F(Files, MissingFilesAndFoldersAreToldPlainly) {
  EXPECT_EQ(readWhole(folder_ / "none").problem, "No such file or directory");
  EXPECT_EQ(readWhole(folder_).problem, "Is a directory");
  EXPECT_EQ(writeWhole(folder_, "a"), "Is a directory");
  EXPECT_EQ(writeWhole(folder_ / "none" / "a", "a"), "No such file or directory");
}

TEST_F(Files, AFailedWriteLeavesTheFileAsItWas) {
  ASSERT_EQ(writeWhole(folder_ / "a.svg", "before"), std::nullopt);
  rlimit before{};
  getrlimit(RLIMIT_FSIZE, &before);
  const auto action = std::signal(SIGXFSZ, SIG_IGN);
  rlimit small = before;
  small.rlim_cur = 100'000;
  setrlimit(RLIMIT_FSIZE, &small); // as good as a full disk
  const auto problem = writeWhole(folder_ / "a.svg", std::string(200'000, 'a'));
  setrlimit(RLIMIT_FSIZE, &before);
  std::signal(SIGXFSZ, action);
  EXPECT_EQ(problem, "File too large");
  EXPECT_EQ(readWhole(folder_ / "a.svg").text, "before");
  EXPECT_EQ(entries(), 1);
}

TEST_F(Files, LinksStayLinksAndPermissionsStay) {
  ASSERT_EQ(writeWhole(folder_ / "a", "before"), std::nullopt);
  fs::permissions(folder_ / "a", fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink("a", folder_ / "link");
  EXPECT_EQ(writeWhole(folder_ / "link", "after"), std::nullopt);
  EXPECT_TRUE(fs::is_symlink(folder_ / "link"));
  EXPECT_EQ(readWhole(folder_ / "a").text, "after");
  EXPECT_EQ(fs::status(folder_ / "a").permissions(),
            fs::perms::owner_read | fs::perms::owner_write);
}

TEST_F(Files, DevicesAreWrittenToAndNotReplaced) {
  EXPECT_EQ(writeWhole("/dev/null", "a"), std::nullopt);
  EXPECT_TRUE(fs::is_character_file("/dev/null"));
}

} // namespace
} // namespace scye
