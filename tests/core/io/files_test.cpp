#include "io/files.h"

#include "support/disk.h"
#include "support/kills.h"
#include "support/record.h"
#include "support/trial_language.h"

#include <cerrno>
#include <cstdlib>
#include <fstream>
#include <gmock/gmock.h>
#include <random>
#include <sys/stat.h>
#include <unistd.h>

namespace scye {
namespace {

namespace fs = std::filesystem;
using testing::AnyOf;
using testing::Optional;

testing::Matcher<std::optional<DiskProblem>> tells(std::string_view phrase) {
  return Optional(testing::Field(&DiskProblem::phrase, phrase));
}

class Files : public testing::Test {
protected:
  [[nodiscard]] static mode_t mode(const fs::path& path) {
    struct stat now {};
    return stat(path.c_str(), &now) == 0 ? now.st_mode & 07777 : 0;
  }
  test::OwnFolder folder_;
};

TEST_F(Files, WhatIsWrittenIsReadBack) {
  const std::string text("a\0b\r\n\xff", 6);
  EXPECT_EQ(writeWhole(folder_ / "a.json", text), std::nullopt);
  EXPECT_EQ(readWhole(folder_ / "a.json").text, text);
  EXPECT_EQ(writeWhole(folder_ / "a.json", "b"), std::nullopt);
  EXPECT_EQ(readWhole(folder_ / "a.json").text, "b");
  EXPECT_EQ(writeWhole(folder_ / "a.json", ""), std::nullopt);
  EXPECT_EQ(readWhole(folder_ / "a.json").text, "");
  EXPECT_EQ(folder_.entries(), 1) << "nothing else is left in the folder";
}

TEST_F(Files, NoMoreIsReadThanWasAskedFor) {
  ASSERT_EQ(writeWhole(folder_ / "a", "abcdef"), std::nullopt);
  EXPECT_EQ(readWhole(folder_ / "a", 6).text, "abcdef");
  EXPECT_EQ(readWhole(folder_ / "a", 5).problem.phrase, "file.large");
  EXPECT_EQ(readFirst(folder_ / "a", 5).text, "abcde");
}

TEST_F(Files, MissingFilesAndFoldersAreToldPlainly) {
  EXPECT_EQ(readWhole(folder_ / "none").problem.phrase, "file.none");
  EXPECT_EQ(readWhole(folder_.path()).problem.phrase, "file.isFolder");
  EXPECT_THAT(writeWhole(folder_.path(), "a"), tells("file.isFolder"));
  EXPECT_THAT(writeWhole(folder_ / "none" / "a", "a"), tells("file.none"));
  EXPECT_THAT(writeWhole("", "a"), tells("file.none"));
  ASSERT_EQ(writeWhole(folder_ / "a", "a"), std::nullopt);
  EXPECT_THAT(writeWhole(folder_ / "a" / "b", "a"), tells("file.noFolder"));
}

TEST(FileReasons, areToldInTheReadersLanguage) {
  const std::initializer_list<DiskProblem> ours{kNoReader, kDeadLink, kNoName, kNotPlain};
  std::vector<DiskProblem> all(ours);
  for (const int error :
       {0, ENOENT, EACCES, EPERM, EISDIR, ENOTDIR, EEXIST, ENOSPC, EDQUOT, EFBIG, ENAMETOOLONG,
        EROFS, ELOOP, EIO, ENODEV, EPIPE, ETIMEDOUT, ETXTBSY, EBADF})
    all.push_back(systemProblem(error));
  for (const DiskProblem& problem : all) {
    EXPECT_THAT(problemText(problem, builtinPhrases()),
                Not(testing::AnyOf("", testing::HasSubstr("["))));
    EXPECT_EQ(test::firstEnglishWord(problemText(problem, test::trialPhrases())), "")
        << problemText(problem, builtinPhrases());
  }
  // What hardly ever happens, the system tells.
  EXPECT_EQ(problemText(systemProblem(ENOLCK), builtinPhrases()), "No locks available");
}

// As small as a design: the text fits in any buffer, so that nothing fails before it is flushed.
TEST_F(Files, OnAFullDiskTheProblemIsToldAndTheFileIsAsItWas) {
  test::SmallDisk disk(256 << 10);
  for (const std::size_t size : {1, 9'000, 200'000}) {
    disk.empty();
    ASSERT_EQ(writeWhole(disk / "a.scye", "before"), std::nullopt);
    disk.fill();
    EXPECT_THAT(writeWhole(disk / "a.scye", std::string(size, 'a')),
                AnyOf(tells("file.diskFull"), tells("file.large")))
        << size;
    EXPECT_NE(writeWhole(disk / "new.scye", std::string(size, 'a')), std::nullopt) << size;
    EXPECT_EQ(readWhole(disk / "a.scye").text, "before") << size;
    EXPECT_FALSE(fs::exists(disk / "new.scye")) << size;
    int left = 0;
    for (const auto& entry : fs::directory_iterator(disk.path()))
      left += entry.path().filename() != "filler";
    EXPECT_EQ(left, 1) << "only a.scye";
  }
}

TEST_F(Files, LinksAreFollowedAndStay) {
  fs::create_directory(folder_ / "far");
  ASSERT_EQ(writeWhole(folder_ / "far" / "a", "before"), std::nullopt);
  fs::create_symlink("far/a", folder_ / "link");
  fs::create_symlink("link", folder_ / "link to link");
  EXPECT_EQ(writeWhole(folder_ / "link to link", "after"), std::nullopt);
  EXPECT_TRUE(fs::is_symlink(folder_ / "link"));
  EXPECT_TRUE(fs::is_symlink(folder_ / "link to link"));
  EXPECT_EQ(readWhole(folder_ / "far" / "a").text, "after");
}

TEST_F(Files, LinksThatLeadNowhereAreRefused) {
  fs::create_symlink("none", folder_ / "dangling");
  fs::create_symlink("itself", folder_ / "itself");
  EXPECT_THAT(writeWhole(folder_ / "dangling", "a"), Optional(kDeadLink));
  EXPECT_THAT(writeWhole(folder_ / "itself", "a"), tells("file.loop"));
  EXPECT_TRUE(fs::is_symlink(folder_ / "dangling"));
  EXPECT_TRUE(fs::is_symlink(folder_ / "itself"));
  EXPECT_FALSE(fs::exists(folder_ / "none"));
  EXPECT_EQ(folder_.entries(), 2);
}

TEST_F(Files, PermissionsAndOwnerStay) {
  const fs::path a = folder_ / "a";
  ASSERT_EQ(writeWhole(a, "before"), std::nullopt);
  const mode_t mask = umask(0);
  umask(mask);
  EXPECT_EQ(mode(a), 0666 & ~mask) << "a new file is as any other";
  for (const mode_t wanted : {0600, 0664, 0757}) {
    ASSERT_EQ(chmod(a.c_str(), wanted), 0);
    EXPECT_EQ(writeWhole(a, "after"), std::nullopt);
    EXPECT_EQ(mode(a), wanted);
  }
  if (geteuid() != 0) return;
  ASSERT_EQ(chown(a.c_str(), 1234, 4321), 0);
  EXPECT_EQ(writeWhole(a, "again"), std::nullopt);
  struct stat now {};
  ASSERT_EQ(stat(a.c_str(), &now), 0);
  EXPECT_EQ(now.st_uid, 1234u);
  EXPECT_EQ(now.st_gid, 4321u);
}

TEST_F(Files, AFileThatNobodyMayWriteIsRefused) {
  ASSERT_EQ(writeWhole(folder_ / "a", "before"), std::nullopt);
  ASSERT_EQ(chmod((folder_ / "a").c_str(), 0444), 0);
  EXPECT_THAT(writeWhole(folder_ / "a", "after"), tells("file.noAccess"));
  EXPECT_EQ(readWhole(folder_ / "a").text, "before");
  EXPECT_EQ(mode(folder_ / "a"), 0444u);
  EXPECT_EQ(folder_.entries(), 1);
}

TEST_F(Files, DevicesAreWrittenIntoAndNeverReplaced) {
  if (!test::makeVoidDevice(folder_ / "void") || !test::makeFullDevice(folder_ / "full")) {
    ASSERT_EQ(std::getenv("CI"), nullptr) << "where all is checked devices may be made";
    GTEST_SKIP() << "no device may be made here";
  }
  EXPECT_EQ(writeWhole(folder_ / "void", "a"), std::nullopt);
  EXPECT_TRUE(fs::is_character_file(folder_ / "void"));
  EXPECT_THAT(writeWhole(folder_ / "full", "a"), tells("file.diskFull"));
  EXPECT_TRUE(fs::is_character_file(folder_ / "full"));
  fs::create_symlink("full", folder_ / "link");
  EXPECT_THAT(writeWhole(folder_ / "link", "a"), tells("file.diskFull"));
  EXPECT_EQ(folder_.entries(), 3);
}

TEST_F(Files, APipeIsWrittenInto) {
  const fs::path pipe = folder_ / "pipe";
  ASSERT_EQ(mkfifo(pipe.c_str(), 0600), 0);
  EXPECT_THAT(writeWhole(pipe, "a", Pipe::Refuse), Optional(kNoReader));
  const std::string text(300'000, 'a'); // more than a pipe holds
  std::string got;
  std::thread reader([&] { got = readWhole(pipe).text.value_or(""); });
  EXPECT_EQ(writeWhole(pipe, text), std::nullopt);
  reader.join();
  EXPECT_EQ(got, text);
  EXPECT_TRUE(fs::is_fifo(pipe));
  EXPECT_EQ(folder_.entries(), 1);
}

TEST_F(Files, ANameThatIsNoUtf8OrVeryLongIsWrittenAsItIs) {
  const std::string odd = "n\xff\xfe.json", longest(255, 'n');
  for (const std::string& name : {odd, longest}) {
    EXPECT_EQ(writeWhole(folder_ / name, "a"), std::nullopt);
    EXPECT_EQ(readWhole(folder_ / name).text, "a");
  }
  EXPECT_EQ(folder_.entries(), 2);
  EXPECT_THAT(writeWhole(folder_ / std::string(256, 'n'), "a"), tells("file.longName"));
}

// Writers that are killed at any moment, `rounds` of them; `save(path, text)` replaces what the
// file holds. Returns how often the file then held neither the old text nor the new one.
template <class Save>
int tornByKills(const fs::path& path, int rounds, std::uint64_t seed, Save save) {
  // As long as a large design's export: writing it takes as long as it takes to be killed.
  const std::string texts[] = {std::string(400'000, 'a'), std::string(700'000, 'b')};
  EXPECT_EQ(writeWhole(path, texts[0]), std::nullopt);
  std::mt19937_64 engine(seed);
  std::uniform_int_distribution<int> pause(0, 3000); // us
  int torn = 0;
  for (int i = 0; i < rounds; ++i) {
    test::killedAfter(std::chrono::microseconds(pause(engine)), [&] {
      for (int n = i;; ++n)
        save(path, texts[n % 2]);
    });
    const auto text = readWhole(path).text;
    torn += !text || (*text != texts[0] && *text != texts[1]);
  }
  return torn;
}

TEST_F(Files, AWriterKilledAtAnyMomentLeavesTheOldTextOrTheNew) {
  constexpr int kRounds = 300;
  constexpr std::uint64_t kSeed = 20260917;
  EXPECT_EQ(tornByKills(folder_ / "a", kRounds, kSeed,
                        [](const fs::path& path, const std::string& text) {
                          if (writeWhole(path, text)) _exit(1);
                        }),
            0);
  // The same kills do tear a file that is written in its place, so that they would be seen.
  const int torn =
      tornByKills(folder_ / "b", kRounds, kSeed, [](const fs::path& path, const std::string& text) {
        std::ofstream(path, std::ios::binary) << text;
      });
  EXPECT_GT(torn, kRounds / 20);
  test::record("torn by plain writing", torn);
}

} // namespace
} // namespace scye
