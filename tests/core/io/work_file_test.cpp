#include "io/design_file.h"
#include "io/files.h"
#include "progress/place.h"
#include "support/disk.h"
#include "support/kills.h"
#include "support/record.h"

#include <atomic>
#include <random>
#include <sys/mman.h>

namespace scye {
namespace {

Work someWork() {
  const GarmentDraft draft = draftGarment(Design());
  const KnitGarment knit = knitGarment(draft);
  Work work;
  PieceWork* back = workOn(work, knit, knit, PieceId::Back);
  back->worked = 37;
  back->measured.set(Reading::StitchCount, 21.5);
  back->measured.set(Reading::Armhole, 24.75);
  back->measured.as = MeasuredAs::Unwashed;
  back->notes.push_back({SectionId::Undivided, 12, "a \"loose\" stitch\nmended"});
  back->pace = {30, 4210.5};
  PieceWork* sleeve = workOn(work, knit, knit, PieceId::LeftSleeve);
  sleeve->ownPlan = true;
  sleeve->plan.size = {0.45, 0.33};
  work.diary.push_back({"2026-11-26", DiaryEntry::Kind::Ripped, PieceId::Back, 40, 31, "too wide"});
  work.diary.push_back({"2026-11-27", DiaryEntry::Kind::Decision, std::nullopt, 0, 0, "shorter"});
  work.done = {"shoulders"};
  work.lastSeam = -0.4;
  return work;
}

DesignRead read(const std::string& text) {
  return designFromJson(text, builtinPhrases());
}

TEST(WorkFile, ReadsBackWhatWasWritten) {
  const Work work = someWork();
  const DesignRead again = read(designToJson(Design(), work));
  ASSERT_TRUE(again.design) << again.problem.reason;
  EXPECT_EQ(*again.design, Design());
  EXPECT_EQ(again.work, work);
}

TEST(WorkFile, KeepsTheBandThatAFrontIsKnittedWith) {
  const Design jacket = Design().choose(Choice::Garment, Garment::Jacket);
  const KnitGarment knit = knitGarment(draftGarment(jacket));
  Work work;
  workOn(work, knit, knit, PieceId::LeftFront)->worked = 12;
  ASSERT_GT(work.find(PieceId::LeftFront)->plan.band, Stitches(0));
  const DesignRead again = read(designToJson(jacket, work));
  ASSERT_TRUE(again.design) << again.problem.reason;
  EXPECT_EQ(again.work, work);
}

TEST(WorkFile, IsAbsentWhereNothingIsKnitted) {
  const std::string text = designToJson(Design());
  EXPECT_EQ(text.find("\"work\""), std::string::npos);
  EXPECT_TRUE(read(text).work.empty());
}

TEST(WorkFile, OlderFilesAreRead) {
  std::string text = designToJson(Design().set(Field::Bust, 96));
  text.replace(text.find("\"version\": 6"), 12, "\"version\": 2");
  const DesignRead older = read(text);
  ASSERT_TRUE(older.design) << older.problem.reason;
  EXPECT_EQ(older.design->given(Field::Bust), 96);
}

TEST(WorkFile, EveryUnknownOrDamagedPartIsRefusedWithItsLine) {
  const std::string whole = designToJson(Design(), someWork());
  const struct {
    const char *what, *with;
  } damages[] = {
      {"\"worked\": 37", "\"worked\": 3700"},
      {"\"worked\": 37", "\"worked\": \"many\""},
      {"\"worked\": 37", "\"worked\": 36.5"},
      {"\"worked\": 37", "\"needle\": 37"},
      {"\"piece\": \"back\"", "\"piece\": \"hood\""},
      {"\"ownPlan\": \"no\"", "\"ownPlan\": \"perhaps\""},
      {"\"kind\": \"ripped\"", "\"kind\": \"burnt\""},
      {"\"as\": \"unwashed\"", "\"as\": \"felted\""},
      {"\"stitches\": 21.5", "\"stitches\": -2"},
      {" castOn right ", " castOff right "},
      {" castOn right ", " castOn right 9"},
      {"\"lastSeam\": -0.4", "\"nextSeam\": -0.4"},
      {"\"done\": [", "\"done\": [4,"},
  };
  for (const auto& damage : damages) {
    SCOPED_TRACE(damage.with);
    std::string text = whole;
    const auto at = text.find(damage.what);
    ASSERT_NE(at, std::string::npos);
    text.replace(at, std::string(damage.what).size(), damage.with);
    const DesignRead refused = read(text);
    EXPECT_FALSE(refused.design);
    EXPECT_FALSE(refused.problem.reason.empty());
    EXPECT_GT(refused.problem.line, 1);
    EXPECT_EQ(refused.problem.reason.find('['), std::string::npos) << refused.problem.reason;
  }
}

TEST(WorkFile, ANewerProgramsWorkIsCalledNewer) {
  std::string text = designToJson(Design(), someWork());
  text.replace(text.find("\"version\": 6"), 12, "\"version\": 7");
  text.replace(text.find("\"worked\""), 8, "\"fringe\"");
  EXPECT_NE(read(text).problem.reason.find("newer"), std::string::npos);
}

TEST(WorkFile, MoreThanAnyGarmentTakesIsRefused) {
  std::string text =
      "{\"format\": \"scyewright-design\", \"version\": 6, \"work\": {\"done\": [\"\"";
  for (int i = 0; i < 70000; ++i)
    text += ",\"\"";
  EXPECT_FALSE(read(text + "]}}").design);
}

TEST(WorkFile, TheFilesSizeStaysSmall) {
  const GarmentDraft draft = draftGarment(Design());
  const KnitGarment knit = knitGarment(draft);
  Work work;
  for (const PieceId id : piecesToKnit(knit))
    workOn(work, knit, knit, id);
  EXPECT_LT(designToJson(Design(), work).size(), 100000U);
}

// Rows worked one after the other, each kept in the file, by a process that is killed at any
// moment: what is read then is a whole file with the last row that was kept, or the one after it.
TEST(WorkFile, KilledAtAnyMomentNothingButTheLastStepIsLost) {
  constexpr int kRounds = 150;
  const test::OwnFolder folder;
  const auto path = folder / "knitted.scye";
  const GarmentDraft draft = draftGarment(Design());
  const KnitGarment knit = knitGarment(draft);
  Work work;
  PieceWork* back = workOn(work, knit, knit, PieceId::Back);
  ASSERT_FALSE(writeWhole(path, designToJson(Design(), work)));
  void* shared = mmap(nullptr, sizeof(std::atomic<int>), PROT_READ | PROT_WRITE,
                      MAP_SHARED | MAP_ANONYMOUS, -1, 0);
  ASSERT_NE(shared, MAP_FAILED);
  auto& kept = *new (shared) std::atomic<int>(0);
  std::mt19937_64 engine(20261127);
  std::uniform_int_distribution<int> pause(0, 12000); // us
  int between = 0, most = 0;
  for (int round = 0; round < kRounds; ++round) {
    test::killedAfter(std::chrono::microseconds(pause(engine)), [&] {
      for (;;) {
        back->worked = (back->worked + 1) % int(back->plan.rows.size());
        if (writeWhole(path, designToJson(Design(), work))) _exit(2);
        kept = back->worked;
      }
    });
    const FileText text = readWhole(path);
    ASSERT_TRUE(text.text) << text.problem.phrase;
    const DesignRead again = read(*text.text);
    ASSERT_TRUE(again.design) << again.problem.reason;
    const int there = again.work.find(PieceId::Back)->worked;
    const int next = (kept + 1) % int(back->plan.rows.size());
    EXPECT_TRUE(there == kept || there == next) << there << " instead of " << kept;
    between += there == next;
    most = std::max(most, there);
    work = again.work, back = work.find(PieceId::Back), kept = there;
  }
  munmap(shared, sizeof(std::atomic<int>));
  EXPECT_GT(most, 10); // it does knit on
  test::record("killed between a step kept and told", between);
}

} // namespace
} // namespace scye
