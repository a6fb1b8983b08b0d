// A design's choices as types and traits: every option has its entry, and what does not matter for
// a garment is told by the field table.
#include "model/garment_style.h"

#include <gtest/gtest.h>

namespace scye::test {
namespace {

int optionsOf(Choice c) {
  return int(info(c).options.size());
}

TEST(GarmentStyle, everyTypedChoiceHasAsManyValuesAsOptions) {
  EXPECT_EQ(optionsOf(Choice::Figure), int(Figure::Baby) + 1);
  EXPECT_EQ(optionsOf(Choice::Garment), int(Garment::Jacket) + 1);
  EXPECT_EQ(optionsOf(Choice::Neckline), int(Neckline::High) + 1);
  EXPECT_EQ(optionsOf(Choice::SideSeam), int(SideSeam::Shaped) + 1);
  EXPECT_EQ(optionsOf(Choice::SleeveLine), int(SleeveLine::Full) + 1);
  EXPECT_EQ(optionsOf(Choice::SleeveFrom), int(SleeveFrom::Shoulder) + 1);
  EXPECT_EQ(optionsOf(Choice::CapLean), int(CapLean::Leaning) + 1);
  EXPECT_EQ(optionsOf(Choice::WorkedOut), int(WorkedOut::CapEase) + 1);
  EXPECT_EQ(optionsOf(Choice::BandMade), int(BandMade::PickedUp) + 1);
  EXPECT_EQ(optionsOf(Choice::CapTop), int(CapTop::Pleated) + 1);
  EXPECT_EQ(optionsOf(Choice::BackNeck), int(BackNeck::Straight) + 1);
  EXPECT_EQ(optionsOf(Choice::ShoulderWork), int(ShoulderWork::ShortRows) + 1);
  EXPECT_EQ(optionsOf(Choice::Hem), int(HemMade::Faced) + 1);
  EXPECT_EQ(optionsOf(Choice::BodyLength), int(BodyLength::Hip) + 1);
  EXPECT_EQ(optionsOf(Choice::BustShaping), int(BustShaping::ShortRows) + 1);
  EXPECT_EQ(optionsOf(Choice::ButtonSide), int(ButtonSide::Left) + 1);
  EXPECT_EQ(optionsOf(Choice::CapRise), int(CapRise::High) + 1);
}

TEST(GarmentStyle, choicesArriveAsTheyWereMade) {
  const GarmentStyle style = styleOf(Design{}
                                         .choose(Choice::Garment, Garment::Jacket)
                                         .choose(Choice::Neckline, Neckline::Vee)
                                         .choose(Choice::Hem, HemMade::Faced)
                                         .choose(Choice::SleeveLine, SleeveLine::Full)
                                         .choose(Choice::BandMade, BandMade::PickedUp));
  EXPECT_TRUE(style.jacket());
  EXPECT_TRUE(style.bandPickedUp());
  EXPECT_TRUE(style.neck().straight);
  EXPECT_TRUE(style.neck().withFronts);
  EXPECT_TRUE(style.hem().folded);
  EXPECT_TRUE(style.sleeve().gathered);
}

TEST(GarmentStyle, aPulloverHasNoButtonBandWhateverWasChosenBefore) {
  const GarmentStyle style = styleOf(Design{}.choose(Choice::BandMade, BandMade::PickedUp));
  EXPECT_FALSE(style.bandPickedUp());
  EXPECT_FALSE(style.bandKnittedOn());
}

TEST(GarmentStyle, aValueMattersWhereTheGarmentHasWhatItMeasures) {
  const Design pullover;
  const GarmentStyle plain = styleOf(pullover);
  for (const Field f : {Field::ButtonBand, Field::Buttons, Field::FlareFrom, Field::FullGirth,
                        Field::CuffGirth, Field::GatherWidth, Field::Pleats, Field::BustDepth})
    EXPECT_FALSE(matters(f, plain)) << info(f).key;
  EXPECT_TRUE(matters(Field::BackOpening, plain));
  EXPECT_TRUE(matters(Field::Bust, plain));
  EXPECT_FALSE(matters(Choice::ButtonSide, plain));

  Design d;
  d.choose(Choice::Garment, Garment::Jacket).choose(Choice::SleeveLine, SleeveLine::Flared);
  d.choose(Choice::CapTop, CapTop::Gathered).choose(Choice::BustShaping, BustShaping::ShortRows);
  const GarmentStyle rich = styleOf(d);
  for (const Field f : {Field::ButtonBand, Field::Buttons, Field::FlareFrom, Field::CuffGirth,
                        Field::GatherWidth, Field::BustDepth})
    EXPECT_TRUE(matters(f, rich)) << info(f).key;
  EXPECT_FALSE(matters(Field::BackOpening, rich));
  EXPECT_FALSE(matters(Field::Pleats, rich)) << "gathers have none";
  EXPECT_TRUE(matters(Choice::ButtonSide, rich));
}

} // namespace
} // namespace scye::test
