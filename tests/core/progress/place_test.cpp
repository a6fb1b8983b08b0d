#include "core/progress/knitter.h"
#include "progress/place.h"

#include <gmock/gmock.h>

namespace scye {
namespace {

const KnitGarment& pullover() {
  static const KnitGarment garment = knitGarment(draftGarment(demoDesign("pullover")));
  return garment;
}

TEST(Place, GoesThroughEveryRowOfTheTable) {
  for (const KnitPiece& piece : pullover().pieces)
    for (int line = 0; line < int(piece.rows.size()); ++line) {
      const Place place = placeOf(piece, line);
      ASSERT_TRUE(place.now);
      EXPECT_EQ(place.now->row, piece.rows[std::size_t(line)].row.value());
      EXPECT_EQ(place.now->after, piece.rows[std::size_t(line)].stitches());
      EXPECT_EQ(place.rowsLeft(), int(piece.rows.size()) - line);
      EXPECT_EQ(lineOf(piece, place.now->row, place.now->section), line);
    }
}

TEST(Place, IsOverAfterTheLastRow) {
  const KnitPiece& back = *pullover().piece(PieceId::Back);
  const Place place = placeOf(back, int(back.rows.size()));
  EXPECT_FALSE(place.now);
  EXPECT_FALSE(place.toEvent);
  EXPECT_EQ(place.stitchesLeft, 0);
  EXPECT_DOUBLE_EQ(place.share, 1);
}

// The event is the next row in which something but plain knitting is worked.
TEST(Place, CountsTheRowsToTheNextEvent) {
  const KnitPiece& sleeve = *pullover().piece(PieceId::Sleeve);
  for (int line = 1; line < int(sleeve.rows.size()); ++line) {
    const Place place = placeOf(sleeve, line);
    ASSERT_TRUE(place.toEvent);
    for (int i = line; i < line + *place.toEvent; ++i)
      EXPECT_TRUE(sleeve.rows[std::size_t(i)].acts.empty());
    const bool shaped = !sleeve.rows[std::size_t(line + *place.toEvent)].acts.empty();
    const bool pastCuff = line + *place.toEvent == sleeve.hemRows.value() + 1;
    EXPECT_TRUE(shaped || pastCuff) << line;
  }
}

TEST(Place, FollowsARepeat) {
  const KnitPiece& sleeve = *pullover().piece(PieceId::Sleeve);
  int seen = 0;
  for (int line = 0; line < int(sleeve.rows.size()); ++line) {
    const Place place = placeOf(sleeve, line);
    if (!place.repeat) continue;
    ++seen;
    EXPECT_LE(place.repeat->time, place.repeat->times);
    EXPECT_LE(place.repeat->row, place.repeat->every);
    // The shaped row ends each time.
    if (place.now->step == StepKind::Repeat) {
      EXPECT_EQ(place.repeat->row == place.repeat->every, !place.now->actions.empty()) << line;
    }
  }
  EXPECT_GT(seen, 20);
}

TEST(Place, TellsWhatIsDoneAndAtWhichEdge) {
  const Words words(Wording{builtinPhrases()});
  const KnitPiece& back = *pullover().piece(PieceId::Back);
  const Place underarm = placeOf(back, back.underarmRow.value());
  EXPECT_THAT(doText(words, *underarm.now), ::testing::HasSubstr("bind off"));
  EXPECT_EQ(edgeText(words, *underarm.now), "the edge at the beginning of the row");
  EXPECT_EQ(rowName(words, *underarm.now),
            "Row " + std::to_string(back.underarmRow.value()) + " (RS)");
  // A row of rib is written out, as it is in the directions.
  EXPECT_EQ(doText(words, *placeOf(back, 1).now), "k2, *p2, k2; repeat from * to end");
  EXPECT_EQ(doText(words, *placeOf(back, 2).now), "p2, *k2, p2; repeat from * to end");
  EXPECT_EQ(doText(words, *placeOf(back, 7).now), doText(words, *placeOf(back, 1).now));
}

TEST(Place, TimesRowsWithoutTheRests) {
  Pace pace;
  keepPace(pace, 120);
  keepPace(pace, 3600);
  keepPace(pace, -5);
  EXPECT_EQ(pace.rows, 1);
  EXPECT_DOUBLE_EQ(pace.seconds, 120);
  PieceWork work;
  work.plan = *pullover().piece(PieceId::Back);
  work.worked = 40;
  EXPECT_FALSE(secondsLeft(work));
  work.pace = {20, 20 * 180};
  const Place place = placeOf(work.plan, 40);
  ASSERT_TRUE(secondsLeft(work));
  // As long for each stitch as so far.
  EXPECT_NEAR(*secondsLeft(work), 180.0 * 40 * (1 - place.share) / place.share, 1e-6);
}

} // namespace
} // namespace scye
