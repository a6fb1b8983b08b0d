// The diary: what stands in it, in which order, and what is written into it by itself.
#include "core/progress/knitter.h"
#include "progress/diary.h"

#include <gmock/gmock.h>

namespace scye {
namespace {

using testing::HasSubstr;
using Kind = DiaryEntry::Kind;

const Phrases& phrases() {
  return builtinPhrases();
}

Work begun() {
  const KnitGarment knit = knitGarment(draftGarment(Design()));
  Work work;
  workOn(work, knit, knit, PieceId::Back);
  return work;
}

TEST(Diary, KnowsDaysFromWhatIsNone) {
  for (const char* day : {"2026-11-26", "2024-02-29", "1999-12-31"})
    EXPECT_TRUE(isDate(day)) << day;
  for (const char* none : {"", "2026-02-29", "2026-13-01", "2026-11-31", "26-11-2026", "2026-1-26",
                           "2026-11-26 ", "2026/11/26", "2026-11-2x"})
    EXPECT_FALSE(isDate(none)) << none;
}

TEST(Diary, StandsInTheOrderOfTime) {
  Work work;
  for (const char* on : {"2026-11-20", "2026-11-02", "2026-11-20", "2026-11-11"})
    writeDown(work, {.on = on, .text = std::to_string(work.diary.size())});
  std::string order;
  for (const DiaryEntry& entry : work.diary)
    order += entry.text;
  EXPECT_EQ(order, "1302"); // of one day in the order in which it was written
}

TEST(Diary, IsBegunWithTheSwatchesAndEndsWithTheNotes) {
  Design design;
  design.set(Field::SwatchStitches, 22).set(Field::SwatchWidth, 10);
  design.set(Field::SwatchRows, 30).set(Field::SwatchHeight, 10);
  SwatchReading further;
  further.stitches = 33, further.width = 15;
  design.swatches.push_back(further);
  Work work = begun();
  work.pieces[0].notes.push_back({SectionId::Undivided, 12, "loose\nstitch"});
  writeDown(work, {.on = "2026-11-26", .kind = Kind::Decision, .text = "longer"});
  const auto lines = diaryLines(design, work, phrases(), LengthUnit::Centimetre);
  ASSERT_EQ(lines.size(), 4U);
  EXPECT_EQ(lines[0].text, "Swatch: 22 sts over 10 cm, 30 rows over 10 cm");
  EXPECT_EQ(lines[1].text, "Swatch: 33 sts over 15 cm");
  EXPECT_EQ(lines[2].on, "2026-11-26");
  EXPECT_EQ(lines[2].text, "Decided: longer");
  EXPECT_EQ(lines[2].entry, 0);
  EXPECT_THAT(lines[3].text, HasSubstr("Back, row 12: loose"));
  EXPECT_EQ(lines[3].text.find('\n'), std::string::npos);
}

TEST(Diary, EveryKindOfEntryHasItsWords) {
  for (int kind = 0; kind <= int(Kind::Seam); ++kind)
    for (const bool ofPiece : {true, false}) {
      DiaryEntry entry{.on = "2026-11-26", .kind = Kind(kind), .row = 40, .to = 31, .text = "soft"};
      if (ofPiece) entry.piece = PieceId::LeftSleeve;
      const std::string text = entryText(entry, phrases(), LengthUnit::Centimetre);
      EXPECT_EQ(text.find('['), std::string::npos) << text;
      EXPECT_EQ(text.find('{'), std::string::npos) << text;
      if (ofPiece) {
        EXPECT_THAT(text, HasSubstr("Left sleeve"));
      }
      EXPECT_NE(text.back(), ' ');
    }
  EXPECT_EQ(
      entryText(
          {.on = "2026-11-26", .kind = Kind::Ripped, .piece = PieceId::Back, .row = 40, .to = 31},
          phrases(), LengthUnit::Centimetre),
      "Back: ripped back from row 40 to row 31.");
  EXPECT_THAT(
      entryText(
          {.on = "2026-11-26", .kind = Kind::Strayed, .piece = PieceId::Back, .row = 40, .to = -2},
          phrases(), LengthUnit::Centimetre),
      HasSubstr("2 rows fewer"));
}

TEST(Diary, TellsWhenAPieceIsBegunAndFinishedOnce) {
  Work work = begun();
  PieceWork& back = work.pieces[0];
  for (int step = 0; step < int(back.plan.rows.size()); ++step) {
    back.worked = step + 1;
    writeDownStep(work, PieceId::Back, step, "2026-11-26");
  }
  ASSERT_EQ(work.diary.size(), 2U);
  EXPECT_EQ(work.diary[0].kind, Kind::Begun);
  EXPECT_EQ(work.diary[1].kind, Kind::Finished);
  back.worked -= 4; // going back is nothing to be told
  writeDownStep(work, PieceId::Back, back.worked + 4, "2026-11-27");
  EXPECT_EQ(work.diary.size(), 2U);
}

TEST(Diary, OneEntryADayForWhatIsMeasured) {
  Work work = begun();
  PieceWork& back = work.pieces[0];
  const auto measure = [&](Reading reading, std::optional<double> value, const char* on) {
    const Measured before = back.measured;
    back.measured.set(reading, value);
    writeDownMeasured(work, PieceId::Back, before, on, phrases(), LengthUnit::Centimetre);
  };
  writeDown(
      work,
      {.on = "2026-11-26", .kind = Kind::Measured, .piece = PieceId::Back, .text = "by hand"});
  measure(Reading::StitchCount, 21.5, "2026-11-26");
  measure(Reading::Armhole, 24.5, "2026-11-26");
  ASSERT_EQ(work.diary.size(), 2U);
  EXPECT_EQ(work.diary[0].text, "by hand");
  EXPECT_THAT(work.diary[1].text, HasSubstr("21.5 sts over 10 cm"));
  EXPECT_THAT(work.diary[1].text, HasSubstr("24.5 cm (blocked)"));
  measure(Reading::Armhole, 25, "2026-11-28");
  EXPECT_EQ(work.diary.size(), 3U); // of another day
}

} // namespace
} // namespace scye
