// The measuring guide's pictures: nothing is missing, no words on words, and the tape lies where
// the measurement is.
#include "schematic/guide.h"

#include "core/schematic/guide_checks.h"
#include "schematic/guide_garment.h"
#include "support/csv_table.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <set>

namespace scye {
namespace {

using test::CsvTable;
using test::expectWordsApart;

const std::vector<Figure> kFigures{Figure::Woman, Figure::Man, Figure::Child, Figure::Baby};
const std::vector<Source> kPlaces{Source::Body, Source::Garment};

std::vector<Field> measurements() {
  std::vector<Field> fields;
  for (int i = 0; i < kFieldCount; ++i)
    if (isMeasurement(Field(i))) fields.push_back(Field(i));
  return fields;
}

double heightOf(Figure figure) {
  return proportions(figure).crown - proportions(figure).cut.y;
}

double distanceTo(const std::vector<Stroke>& strokes, const Vec2& p) {
  double least = 1e300;
  for (const Stroke& s : strokes) {
    if (s.role != Role::Outline || s.filled) continue;
    const std::vector<Vec2> points = s.path.flattened(48);
    for (std::size_t i = 1; i < points.size(); ++i) {
      const Vec2 chord = points[i] - points[i - 1];
      const double t =
          chord.squaredNorm() > 0
              ? std::clamp((p - points[i - 1]).dot(chord) / chord.squaredNorm(), 0.0, 1.0)
              : 0;
      least = std::min(least, (p - points[i - 1] - t * chord).norm());
    }
  }
  return least;
}

TEST(MeasuringPicture, isThereForEveryMeasurement) {
  for (const Field f : measurements()) {
    EXPECT_TRUE(canTakeOn(f, Source::Body)) << info(f).key;
    const std::set<Field> bodyOnly{Field::NeckBase, Field::HeadGirth, Field::HandGirth,
                                   Field::ScyeGirth, Field::TipToUnderarm};
    const bool onGarment = !bodyOnly.contains(f);
    EXPECT_EQ(canTakeOn(f, Source::Garment), onGarment) << info(f).key;
    for (const Source where : kPlaces) {
      if (!canTakeOn(f, where)) continue;
      for (const Figure figure : kFigures) {
        const Picture picture = measuringPicture(f, where, figure, builtinPhrases(), 2);
        ASSERT_EQ(picture.groups.size(), 2u);
        EXPECT_EQ(picture.title, builtinPhrases().say("field." + std::string(info(f).key)));
        const auto& strokes = picture.groups[1].strokes;
        EXPECT_TRUE(std::any_of(strokes.begin(), strokes.end(),
                                [](const Stroke& s) { return s.role == Role::Lit; }));
        const auto& labels = picture.groups[1].labels;
        EXPECT_TRUE(std::any_of(labels.begin(), labels.end(),
                                [&](const Label& l) { return l.text == picture.title; }))
            << info(f).key << " is not named in its picture";
        EXPECT_FALSE(tapeOn(where, figure, f).marks.empty()) << info(f).key << " has no landmark";
      }
    }
  }
  EXPECT_FALSE(canTakeOn(Field::EaseBust, Source::Body));
  EXPECT_FALSE(canTakeOn(Field::CapHeight, Source::Garment));
}

// Text from small to large for the figure: 1/60 to 1/22 of its height.
TEST(MeasuringPicture, keepsItsWordsApart) {
  for (const Source where : kPlaces)
    for (const Figure figure : kFigures)
      for (const double share : {60.0, 35.0, 22.0}) {
        const double height = heightOf(figure) / share;
        for (const Field f : measuredOn(where))
          expectWordsApart(measuringPicture(f, where, figure, builtinPhrases(), height),
                           std::string(info(f).key) + " figure " + std::to_string(int(figure)));
        expectWordsApart(measuringOverview(where, figure, builtinPhrases(), height), "overview");
      }
}

TEST(MeasuringOverview, numbersEveryMeasurementOnItsTapeAndInTheList) {
  for (const Source where : kPlaces) {
    const Picture picture = measuringOverview(where, Figure::Woman, builtinPhrases(), 3);
    const std::vector<Field> fields = measuredOn(where);
    std::multiset<Field> spots;
    for (const Group& g : picture.groups)
      for (const HotSpot& h : g.hotSpots)
        spots.insert(h.field);
    for (const Field f : fields)
      EXPECT_EQ(spots.count(f), 2u) << info(f).key;
    for (std::size_t i = 0; i < fields.size(); ++i)
      for (const Group& g : picture.groups)
        for (const HotSpot& h : g.hotSpots) {
          if (h.field != fields[i] || g.id == "list") continue;
          const Vec2 middle = 0.5 * (h.box.low + h.box.high);
          const auto label = std::find_if(g.labels.begin(), g.labels.end(), [&](const Label& l) {
            const Box box = labelBox(l);
            return (0.5 * (box.low + box.high) - middle).norm() < 1e-9;
          });
          ASSERT_NE(label, g.labels.end());
          EXPECT_EQ(label->text, std::to_string(i + 1));
        }
  }
}

TEST(BodyTape, girthsOfTheTrunkAreLevelAndReachFromSideToSide) {
  for (const Figure figure : kFigures) {
    const FigurePlaces f = figurePlaces(proportions(figure));
    double above = f.armpit.y();
    for (const Field field : {Field::Bust, Field::Waist, Field::Hip}) {
      const Tape tape = tapeOn(Source::Body, figure, field);
      const Vec2 left = tape.way.start(), right = tape.way.end();
      EXPECT_TRUE(tape.girth);
      ASSERT_EQ(tape.behind.size(), 1u);
      EXPECT_LT((tape.behind[0].start() - left).norm() + (tape.behind[0].end() - right).norm(),
                1e-9)
          << "it goes round";
      EXPECT_NEAR(left.y(), right.y(), 1e-9) << info(field).key;
      EXPECT_NEAR(left.x(), -right.x(), 1e-9);
      EXPECT_LT(distanceTo(figureStrokes(figure, tape.view), right), 0.05) << info(field).key;
      EXPECT_LT(right.y(), above) << info(field).key
                                  << " lies below the one before, the bust below the armpit";
      above = right.y();
    }
  }
}

TEST(BodyTape, girthsOfTheArmLieOnTheArmSquareToIt) {
  for (const Figure figure : kFigures) {
    const FigurePlaces f = figurePlaces(proportions(figure));
    const std::pair<Field, Frame> limbs[] = {{Field::UpperArm, f.upperArm},
                                             {Field::Elbow, f.foreArm},
                                             {Field::Wrist, f.foreArm},
                                             {Field::HandGirth, f.hand}};
    double above = f.tip.y();
    for (const auto& [field, axis] : limbs) {
      const Tape tape = tapeOn(Source::Body, figure, field);
      const Vec2 across = tape.way.end() - tape.way.start();
      Vec2 along = axis.along();
      if (tape.way.start().x() < 0) along.x() = -along.x();
      EXPECT_NEAR(across.normalized().dot(along), 0, 1e-9) << info(field).key;
      for (const Vec2& end : {tape.way.start(), tape.way.end()}) {
        EXPECT_LT(distanceTo(figureStrokes(figure, tape.view), end), 0.05) << info(field).key;
        EXPECT_GT(std::abs(end.x()), f.armpit.x()) << info(field).key << " is outside the trunk";
      }
      const double y = 0.5 * (tape.way.start().y() + tape.way.end().y());
      EXPECT_LT(y, above) << info(field).key;
      above = y;
      if (field == Field::UpperArm) {
        EXPECT_NEAR(y, f.armpit.y(), 0.4 * across.norm()) << "at the armpit";
      }
    }
  }
}

TEST(Tape, depthsGoStraightDownToTheUnderarm) {
  for (const Source where : kPlaces)
    for (const Figure figure : kFigures) {
      const bool body = where == Source::Body;
      const Tape tape = tapeOn(where, figure, body ? Field::TipToUnderarm : Field::ArmholeDepth);
      const FigurePlaces f = figurePlaces(proportions(figure));
      const GarmentPlaces g = garmentPlaces(figure);
      EXPECT_EQ(tape.way.segments().size(), 1u);
      EXPECT_NEAR(tape.way.start().x(), tape.way.end().x(), 1e-9);
      EXPECT_LT((tape.way.start() - (body ? f.tip : g.tip)).norm(), 1e-9);
      EXPECT_NEAR(tape.way.end().y(), body ? f.armpit.y() : g.underarm.y(), 1e-9);
    }
  for (const Figure figure : kFigures) {
    const FigurePlaces f = figurePlaces(proportions(figure));
    const Tape depth = tapeOn(Source::Body, figure, Field::ArmholeDepth);
    EXPECT_EQ(depth.view, GuideView::Back);
    EXPECT_LT((depth.way.start() - f.nape).norm(), 1e-9);
    EXPECT_NEAR(depth.way.end().x(), f.nape.x(), 1e-9) << "down the middle of the back";
    EXPECT_NEAR(depth.way.end().y(), f.armpit.y(), 1e-9);
    const Tape round = tapeOn(Source::Body, figure, Field::ScyeGirth);
    EXPECT_TRUE(round.girth);
    EXPECT_LT((round.way.start() - f.tip).norm(), 1e-9);
    EXPECT_LT((round.way.end() - f.armpit).norm(), 1e-9);
  }
}

TEST(BodyTape, widthsLieBetweenTheirLandmarks) {
  for (const Figure figure : kFigures) {
    const Proportions& p = proportions(figure);
    const FigurePlaces f = figurePlaces(p);
    for (const Field field : {Field::CrossFront, Field::CrossBack}) {
      const Tape tape = tapeOn(Source::Body, figure, field);
      EXPECT_NEAR(tape.way.start().y(), tape.way.end().y(), 1e-9);
      EXPECT_NEAR(tape.way.end().y(), 0.5 * (p.tip.y() + p.armpit.y), 1e-9)
          << "halfway, " << info(field).key;
      EXPECT_LT(distanceTo(figureStrokes(figure, tape.view), tape.way.end()), 1e-6)
          << "at the fold of the arm";
    }
    EXPECT_EQ(tapeOn(Source::Body, figure, Field::CrossFront).view, GuideView::Front);
    const Tape shoulders = tapeOn(Source::Body, figure, Field::CrossShoulder);
    EXPECT_LT((shoulders.way.end() - p.tip).norm(), 1e-9);
    for (const Field field :
         {Field::CrossBack, Field::CrossShoulder, Field::BackWaistLength, Field::NeckWidth})
      EXPECT_EQ(tapeOn(Source::Body, figure, field).view, GuideView::Back) << info(field).key;
    const Tape back = tapeOn(Source::Body, figure, Field::BackWaistLength);
    EXPECT_LT((back.way.start() - f.nape).norm(), 1e-9);
    EXPECT_NEAR(back.way.end().y(), p.waist.y, 1e-9);
    const Tape front = tapeOn(Source::Body, figure, Field::FrontWaistLength);
    EXPECT_EQ(front.view, GuideView::Front);
    EXPECT_LT((front.way.start() - p.neckPoint).norm(), 1e-9);
    EXPECT_NEAR(front.way.end().y(), p.waist.y, 1e-9);
    EXPECT_GT(front.way.end().x(), p.neckPoint.x())
        << "it runs over the bust, not beside the middle";
    const Tape inside = tapeOn(Source::Body, figure, Field::SleeveToUnderarm),
               outside = tapeOn(Source::Body, figure, Field::SleeveToShoulder);
    EXPECT_LT(inside.way.length(), outside.way.length()) << "the inside of the arm is the shorter";
  }
}

// Ends of every tape on the garment lie on its edges and seams, but for those that end on a level
// line.
TEST(GarmentTape, reachesFromEdgeToEdge) {
  const std::set<Field> onLevels{Field::ArmholeDepth, Field::BackWaistLength,
                                 Field::FrontWaistLength, Field::HemToUnderarm,
                                 Field::ShoulderDrop};
  for (const Figure figure : kFigures)
    for (const Field f : measuredOn(Source::Garment)) {
      const Tape tape = tapeOn(Source::Garment, figure, f);
      EXPECT_FALSE(tape.girth) << "it is laid flat";
      if (onLevels.contains(f)) {
        EXPECT_FALSE(tape.levels.empty()) << info(f).key;
        EXPECT_NEAR(tape.way.start().x(), tape.way.end().x(), 1e-9) << info(f).key << " is plumb";
        continue;
      }
      for (const Vec2& end : {tape.way.start(), tape.way.end()})
        EXPECT_LT(distanceTo(garmentStrokes(figure, tape.view), end), 0.06) << info(f).key;
    }
}

double mean(const CsvTable& table, std::string_view column) {
  const std::vector<double> values = table.numbers(column);
  return values.empty()
             ? 0
             : std::accumulate(values.begin(), values.end(), 0.0) / double(values.size()) / 10;
}

// 1988 survey (TR-89/044), the subjects of tests/data; within rounding to a millimetre.
TEST(Figure, ofWomanAndManHasTheMeanProportionsOfTheSurvey) {
  for (const auto& [figure, file] : {std::pair(Figure::Woman, "ansur1988-women.csv"),
                                     std::pair(Figure::Man, "ansur1988-men.csv")}) {
    const CsvTable survey = CsvTable::data(file);
    const Proportions& p = proportions(figure);
    const double near = 0.06;
    EXPECT_NEAR(p.crown, mean(survey, "stature"), near);
    EXPECT_NEAR(p.tip.y(), mean(survey, "acromion_height"), near);
    EXPECT_NEAR(2 * p.tip.x(), mean(survey, "biacromial_breadth"), 0.2);
    EXPECT_NEAR(p.armpit.y, mean(survey, "axilla_height"), near);
    EXPECT_NEAR(p.bust.y, mean(survey, "bust_height"), near);
    EXPECT_NEAR(p.waist.y, mean(survey, "waist_height"), near);
    EXPECT_NEAR(p.nape, mean(survey, "cervicale_height"), near);
    EXPECT_NEAR(p.neckPoint.y(), mean(survey, "lateral_neck_height"), near);
    EXPECT_NEAR(p.upperArm, mean(survey, "acromion_to_elbow"), near);
    EXPECT_NEAR(p.foreArm, mean(survey, "elbow_to_wrist"), near);
  }
}

// Six and four heads high: common practice of figure drawing.
TEST(Figure, ofChildAndBabyHasALargerHead) {
  const auto heads = [](Figure figure) {
    const Proportions& p = proportions(figure);
    return p.crown / (p.crown - p.chin);
  };
  EXPECT_NEAR(heads(Figure::Child), 6, 0.3);
  EXPECT_NEAR(heads(Figure::Baby), 4, 0.3);
  EXPECT_GT(heads(Figure::Woman), 7);
  EXPECT_GT(heads(Figure::Man), 7);
}

} // namespace
} // namespace scye
