// What is knitted stays as it is, whatever becomes of the design.

#include "core/progress/knitter.h"
#include "directions/virtual_knitter.h"
#include "making_up/seam_marks.h"
#include "progress/gauge_watch.h"
#include "progress/plan_ahead.h"
#include "progress/progress_words.h"
#include "support/random_designs.h"

namespace scye {
namespace {

struct Begun {
  explicit Begun(const Design& d)
      : design(d), draft(draftGarment(design)), knit(knitGarment(draft)) {}
  PieceWork& works(PieceId piece, int lines) {
    PieceWork* p = workOn(work, presentGarment(draft, knit, work), knit, piece);
    p->worked = std::min(lines, int(p->plan.rows.size()));
    return *p;
  }
  Design design;
  GarmentDraft draft;
  KnitGarment knit;
  Work work;
};

void expectSound(const KnitPiece& piece) {
  EXPECT_TRUE(worksOut(piece));
  const Knitted knitted = knit(stepsOf(piece, {0.5, 0.35}));
  EXPECT_TRUE(knitted.snags.empty())
      << pieceKey(piece.id) << " row " << knitted.snags.front().row << " of "
      << piece.lastRow().value() << ", snag " << int(knitted.snags.front().snag);
  ASSERT_EQ(knitted.rows.size(), piece.rows.size());
  for (std::size_t i = 0; i < piece.rows.size(); ++i)
    EXPECT_EQ(knitted.rows[i].stitches(), piece.rows[i].stitches());
}

TEST(Plan, WorkThatIsBegunAloneChangesNothing) {
  for (const std::string& name : demoNames()) {
    Begun b(demoDesign(name));
    for (const PieceId id : piecesToKnit(b.knit))
      b.works(id, 40);
    const KnitGarment present = presentGarment(b.draft, b.knit, b.work);
    ASSERT_EQ(present.pieces.size(), b.knit.pieces.size()) << name;
    for (std::size_t i = 0; i < present.pieces.size(); ++i)
      EXPECT_EQ(present.pieces[i].rows, b.knit.pieces[i].rows) << name;
    EXPECT_NEAR(present.mismatch(), b.knit.mismatch(), 1e-9) << name;
    EXPECT_EQ(present.cap.front, b.knit.cap.front) << name;
    EXPECT_EQ(present.backArmhole.schedule, b.knit.backArmhole.schedule) << name;
    EXPECT_EQ(present.left.capRight, b.knit.left.capRight) << name;
    EXPECT_TRUE(refit(b.draft, b.knit, b.work).changes.empty()) << name;
  }
}

TEST(Plan, AChangeThatAltersWorkedRowsIsNamedAndSettled) {
  int kept = 0, met = 0;
  for (const std::string& name : demoNames())
    for (const double share : {0.1, 0.3, 0.5, 0.65}) {
      SCOPED_TRACE(name + " " + std::to_string(share));
      Begun b(demoDesign(name));
      const int lines = int(share * double(b.knit.piece(PieceId::Back)->rows.size()));
      const KnitPiece was = b.works(PieceId::Back, lines).plan;
      Design wider = b.design;
      wider.set(Field::EaseBust, b.draft.sizes[Field::EaseBust] + 5);
      const GarmentDraft draft = draftGarment(wider);
      const KnitGarment knit = knitGarment(draft);
      const auto found = conflicts(draft, knit, b.work);
      if (found.empty()) continue;
      ++met;
      ASSERT_EQ(found.size(), 1U);
      EXPECT_EQ(found[0].piece, PieceId::Back);
      EXPECT_LT(found[0].lines, lines);
      EXPECT_FALSE(conflictText(found[0], builtinPhrases()).empty());
      // As it was until somebody decides.
      EXPECT_EQ(presentGarment(draft, knit, b.work).piece(PieceId::Back)->rows, was.rows);

      const Work ripped = settled(draft, knit, b.work, PieceId::Back, Settle::Rip);
      EXPECT_EQ(ripped.find(PieceId::Back)->worked, found[0].lines);
      EXPECT_EQ(ripped.find(PieceId::Back)->plan.rows, knit.piece(PieceId::Back)->rows);
      EXPECT_TRUE(conflicts(draft, knit, ripped).empty());

      const Work stays = settled(draft, knit, b.work, PieceId::Back, Settle::AsWas);
      EXPECT_EQ(stays.find(PieceId::Back)->plan.rows, was.rows);
      EXPECT_TRUE(conflicts(draft, knit, stays).empty());

      if (!found[0].canKeep) continue;
      ++kept;
      const Work keeps = settled(draft, knit, b.work, PieceId::Back, Settle::Keep);
      const PieceWork& p = *keeps.find(PieceId::Back);
      EXPECT_EQ(p.worked, lines);
      for (int i = 0; i < lines; ++i)
        EXPECT_EQ(p.plan.rows[std::size_t(i)].stitches(), was.rows[std::size_t(i)].stitches());
      expectSound(p.plan);
      EXPECT_TRUE(conflicts(draft, knit, keeps).empty());
      // Below the underarm it still comes to the new width.
      if (lines < was.underarmRow.value() - 12) {
        const auto width = [](const KnitPiece& piece) {
          return piece.rows[std::size_t(piece.underarmRow.value() - 1)].stitches().value();
        };
        EXPECT_EQ(width(p.plan), width(*knit.piece(PieceId::Back)));
      }
    }
  EXPECT_GT(met, 30);
  EXPECT_GT(kept, met * 3 / 4);
}

// A lower edge that is knitted already is worked rows, even where the counts stay as they are.
TEST(Plan, AnotherEdgeAltersWorkedRows) {
  Begun b(demoDesign("pullover"));
  b.works(PieceId::Back, 30);
  b.works(PieceId::Sleeve, 1);
  Design other = b.design;
  other.set(Field::HemDepth, b.draft.sizes[Field::HemDepth] - 2);
  const auto changed = [&](const Design& design) {
    const GarmentDraft draft = draftGarment(design);
    return conflicts(draft, knitGarment(draft), b.work);
  };
  const auto shallower = changed(other);
  ASSERT_EQ(shallower.size(), 1U);
  EXPECT_GT(shallower[0].row, 1);
  EXPECT_TRUE(shallower[0].canKeep);
  KnitGarment garter = b.knit;
  for (KnitPiece& piece : garter.pieces)
    piece.edge = EdgeMade::Garter;
  const auto found = conflicts(b.draft, garter, b.work);
  ASSERT_EQ(found.size(), 1U); // the cast-on of a sleeve alone is as it would be
  EXPECT_EQ(found[0].row, 1);
  const Work kept = settled(b.draft, garter, b.work, PieceId::Back, Settle::Keep);
  EXPECT_EQ(kept.find(PieceId::Back)->plan.edge, EdgeMade::Ribbed);
  EXPECT_EQ(followed(b.draft, garter, b.work).find(PieceId::Sleeve)->plan.edge, EdgeMade::Garter);
}

TEST(Plan, AChangeAheadOfTheNeedlesIsFollowed) {
  Begun b(demoDesign("pullover"));
  b.works(PieceId::Back, 30);
  Design deeper = b.design;
  deeper.set(Field::BackNeckDrop, b.draft.sizes[Field::BackNeckDrop] + 1.5);
  const GarmentDraft draft = draftGarment(deeper);
  const KnitGarment knit = knitGarment(draft);
  EXPECT_TRUE(conflicts(draft, knit, b.work).empty());
  const Work work = followed(draft, knit, b.work);
  EXPECT_EQ(work.find(PieceId::Back)->plan.rows, knit.piece(PieceId::Back)->rows);
  EXPECT_EQ(work.find(PieceId::Back)->worked, 30);
}

TEST(Plan, RandomDesignsAreLedOnSoundly) {
  const std::uint64_t seed = test::propertySeed(20261126);
  test::RandomDesigns random(seed);
  int led = 0, asked = 0;
  for (int i = 0; i < 150; ++i) {
    const Design one = random.plausible();
    Begun b(one);
    Design other = one;
    other.set(Field::EaseBust, b.draft.sizes[Field::EaseBust] + random.uniform(-4, 4));
    other.set(Field::HemToUnderarm, b.draft.sizes[Field::HemToUnderarm] + random.uniform(-4, 4));
    const KnitGarment knit = knitGarment(draftGarment(other));
    for (const PieceId id : piecesToKnit(b.knit)) {
      if (id == PieceId::Sleeve || id == PieceId::LeftSleeve || !plannedPiece(knit, id)) continue;
      const KnitPiece& was = *plannedPiece(b.knit, id);
      const int lines = fixedLines(was, random.index(std::max(1, was.shoulderRow.value() - 4)));
      ++asked;
      const auto plan = continued(was, lines, *plannedPiece(knit, id));
      if (!plan) continue;
      ++led;
      for (int line = 0; line < lines; ++line)
        ASSERT_EQ(plan->rows[std::size_t(line)].stitches(), was.rows[std::size_t(line)].stitches());
      expectSound(*plan);
    }
  }
  EXPECT_GT(led, asked / 2) << led << " of " << asked;
}

TEST(Plan, RowsTooManyAreTakenIntoWhatIsSewnToIt) {
  Begun b(demoDesign("pullover"));
  b.works(PieceId::Back, 60);
  const auto work = withStrayedRows(presentGarment(b.draft, b.knit, b.work), b.knit, b.work,
                                    PieceId::Back, Rows(58), Rows(4));
  ASSERT_TRUE(work);
  const KnitPiece& back = work->find(PieceId::Back)->plan;
  EXPECT_EQ(back.underarmRow, b.knit.piece(PieceId::Back)->underarmRow + Rows(4));
  EXPECT_EQ(work->find(PieceId::Back)->worked, 64);
  EXPECT_EQ(work->find(PieceId::Front)->plan.underarmRow, back.underarmRow);
  expectSound(back);
  expectSound(work->find(PieceId::Front)->plan);
  EXPECT_FALSE(withStrayedRows(b.knit, b.knit, b.work, PieceId::Back, Rows(58),
                               Rows(3))); // sides would turn
}

TEST(Plan, AForeignGaugeIsToldAfterTenCentimetres) {
  Begun b(demoDesign("pullover"));
  const double height = b.draft.sizes.stitch.height, width = b.draft.sizes.stitch.width;
  PieceWork& p = b.works(PieceId::Back, int(8 / height));
  p.measured.set(Reading::StitchCount, 20 / (width * 1.08));
  p.measured.set(Reading::Across, 20);
  EXPECT_TRUE(gaugeWarnings(b.draft, b.knit, b.work).empty()); // too short yet
  b.work.find(PieceId::Back)->worked = int(11 / height);
  const auto told = gaugeWarnings(b.draft, b.knit, b.work);
  ASSERT_EQ(told.size(), 1U);
  EXPECT_NEAR(told[0].share, 0.08, 1e-6);
  EXPECT_NEAR(told[0].comesTo, told[0].wanted * 1.08, 1e-6);
  EXPECT_FALSE(told[0].largerNeedles);
  EXPECT_GE(gaugeWarningText(told[0], builtinPhrases(), LengthUnit::Centimetre).size(), 3U);
  // Within what counting can tell it is no other gauge.
  b.work.find(PieceId::Back)->measured.set(Reading::StitchCount, 20 / (width * 1.005));
  EXPECT_TRUE(gaugeWarnings(b.draft, b.knit, b.work).empty());
}

TEST(Plan, OtherCountsFromHereComeToTheWantedWidth) {
  Begun b(demoDesign("pullover"));
  const double width = b.draft.sizes.stitch.width * 1.06;
  PieceWork& p = b.works(PieceId::Back, 40);
  p.measured.set(Reading::StitchCount, 20 / width);
  p.measured.set(Reading::Across, 20);
  const auto work = recounted(b.draft, b.knit, b.work, PieceId::Back);
  ASSERT_TRUE(work);
  for (const PieceId id : {PieceId::Back, PieceId::Front}) {
    const KnitPiece& plan = work->find(id)->plan;
    expectSound(plan);
    const double across =
        plan.rows[std::size_t(plan.underarmRow.value() - 1)].stitches().value() * width;
    EXPECT_NEAR(across, 0.5 * b.draft.sizes.finished(Field::Bust) + 2 * width, 2 * width);
  }
  EXPECT_EQ(work->find(PieceId::Back)->plan.underarmRow,
            work->find(PieceId::Front)->plan.underarmRow);
}

// cm from the underarm along an edge up to a row, by chords from one change to the next.
double alongTo(const KnitPiece& piece, EdgeSide side, double row, Rows end,
               const StitchSize& size) {
  const int begin = piece.underarmRow.value() + (side == EdgeSide::Left ? 1 : 0);
  double length = 0, pending = 0;
  int at = begin;
  const auto chord = [&](int next) {
    const double whole = std::hypot(pending, (next - at) * size.height);
    const double share = next > at ? std::clamp((row - at) / (next - at), 0.0, 1.0) : 0;
    length += row >= next ? whole : share * whole;
  };
  for (const RowLine& line : piece.rows)
    for (const Act& a : line.acts) {
      if (line.section != SectionId::Undivided || a.side != side) continue;
      if (a.shapes == Shapes::Underarm) length += a.stitches.value() * size.width;
      if ((a.shapes != Shapes::Armhole && a.shapes != Shapes::Cap) || line.row > end) continue;
      if (at <= row) chord(line.row.value());
      pending = a.stitches.value() * size.width, at = line.row.value();
    }
  if (at <= row) chord(end.value());
  return length;
}

// Pins of a sleeve whose fabric is not the bodice's lie where its own rows are.
TEST(Refit, PinsGoByTheFabricOfEachPiece) {
  Begun b(demoDesign("pullover"));
  const StitchSize swatch = b.draft.sizes.stitch;
  const StitchSize body{0.97 * swatch.width, 1.02 * swatch.height},
      sleeve{1.05 * swatch.width, 0.95 * swatch.height};
  const auto counts = [&](PieceId id, int lines, const StitchSize& size) {
    PieceWork& p = b.works(id, lines);
    p.measured.set(Reading::StitchCount, 10 / size.width);
    p.measured.set(Reading::RowCount, 10 / size.height);
  };
  counts(PieceId::Back, 1 << 20, body);
  counts(PieceId::Front, 1 << 20, body);
  counts(PieceId::Sleeve, 30, sleeve);
  counts(PieceId::LeftSleeve, 30, sleeve);
  b.work = refit(b.draft, b.knit, b.work).work;
  const KnitGarment present = presentGarment(b.draft, b.knit, b.work);
  int looked = 0;
  for (const SeamMarks& side : seamMarks(b.draft, present)) {
    const bool back = side.half == ArmholeHalf::Back;
    const KnitPiece& piece = *present.piece(back ? PieceId::Back : PieceId::Front);
    const KnitPiece& cap =
        *plannedPiece(present, side.wearersLeft ? PieceId::LeftSleeve : PieceId::Sleeve);
    const EdgeSide edge = back == side.wearersLeft ? EdgeSide::Left : EdgeSide::Right;
    const EdgeSide other = edge == EdgeSide::Left ? EdgeSide::Right : EdgeSide::Left;
    // A row is told to the nearest; the middle of an edge's measures parts from its chords by some
    // millimetres.
    const auto expectAt = [&](const PinPlace& pin, const KnitPiece& on, EdgeSide at, Rows end,
                              const StitchSize& size) {
      constexpr double kMeasures = 0.4; // cm
      EXPECT_GE(pin.along, alongTo(on, at, pin.row - 0.5, end, size) - kMeasures) << pin.row;
      EXPECT_LE(pin.along, alongTo(on, at, pin.row + 0.5, end, size) + kMeasures) << pin.row;
      ++looked;
    };
    for (const SeamMark& mark : side.marks) {
      if (mark.armhole.flat == Flat::None)
        expectAt(mark.armhole, piece, edge,
                 piece.shoulderRow + Rows(edge == EdgeSide::Left ? 1 : 0), body);
      if (mark.cap.flat == Flat::None) expectAt(mark.cap, cap, other, cap.crownRow, sleeve);
    }
  }
  EXPECT_GT(looked, 12);
}

// A pair stays a pair: what is planned anew for a sleeve under way is planned for the other too.
TEST(Refit, TheOtherSleeveIsTheMirrorImageWhereBothArmholesAreAlike) {
  for (const std::string& name : demoNames())
    for (const PieceId first : {PieceId::Sleeve, PieceId::LeftSleeve}) {
      SCOPED_TRACE(name + " " + std::string(pieceKey(first)));
      Begun b(demoDesign(name));
      for (const PieceId id : piecesToKnit(b.knit))
        if (id != PieceId::Sleeve && id != PieceId::LeftSleeve) b.works(id, 1 << 20);
      const KnitPiece& planned = *plannedPiece(b.knit, first);
      PieceWork& p = b.works(first, planned.underarmRow.value() / 2);
      p.measured.set(Reading::StitchCount, 20 / (1.04 * b.draft.sizes.stitch.width));
      p.measured.set(Reading::Across, 20);
      const Refit again = refit(b.draft, b.knit, b.work);
      const PieceId second = first == PieceId::Sleeve ? PieceId::LeftSleeve : PieceId::Sleeve;
      const PieceWork *one = again.work.find(first), *other = again.work.find(second);
      ASSERT_TRUE(one && other);
      expectSound(other->plan);
      EXPECT_EQ(one->plan.castOn(), other->plan.castOn());
      EXPECT_EQ(one->plan.crownRow, other->plan.crownRow);
      EXPECT_EQ(scheduleIn(one->plan, EdgeSide::Right), scheduleIn(other->plan, EdgeSide::Left));
      EXPECT_EQ(scheduleIn(one->plan, EdgeSide::Left), scheduleIn(other->plan, EdgeSide::Right));
      EXPECT_NEAR(again.after[0].ease(), again.easeWanted, 0.3);
      EXPECT_NEAR(again.after[1].ease(), again.easeWanted, 0.3);
    }
}

TEST(Refit, TellsWhatChangesInWords) {
  Begun b(demoDesign("pullover"));
  PieceWork& back = b.works(PieceId::Back, 1 << 20);
  // Both armholes of a piece are measured as one.
  const double planned = (b.knit.backArmhole.right + b.knit.backArmhole.left).mean() / 2;
  back.measured.set(Reading::Armhole, planned + 1);
  const Refit again = refit(b.draft, b.knit, b.work);
  EXPECT_FALSE(again.changes.empty());
  const auto lines = refitText(again, builtinPhrases(), LengthUnit::Centimetre);
  ASSERT_FALSE(lines.empty());
  EXPECT_NE(lines[0].find("instead of"), std::string::npos) << lines[0];
  EXPECT_NEAR(again.after[0].armhole, b.knit.right.armhole.mean() + 1, 0.03);
  EXPECT_NEAR(again.after[0].ease(), again.easeWanted, 0.3);
  EXPECT_LT(again.before[0].ease(), again.easeWanted - 0.7);
}

} // namespace
} // namespace scye
