// What is knitted already, and plans before and after, as they are drawn.
#include "schematic/knitted.h"
#include "schematic/replanned.h"
#include "schematic/schematic.h"
#include "support/made.h"

#include <gtest/gtest.h>

namespace scye::worked {
namespace {

double areaOf(const Path& path) {
  double twice = 0;
  for (const Cubic& c : path.segments())
    twice += c.start().x() * c.end().y() - c.end().x() * c.start().y();
  return 0.5 * std::abs(twice);
}

// A row is a rectangle of its stitches: the area grows by one with every line of the table.
constexpr EdgeFinish kNoFinish{Stitches(0), Stitches(0), Stitches(0)};

TEST(Worked, GrowsByItsRows) {
  const test::Made m = test::made(Design());
  const StitchSize& size = m.knit.lattice.size;
  for (const KnitPiece& piece : m.knit.pieces) {
    double before = 0;
    for (int lines = 2; lines <= int(piece.rows.size()); ++lines) {
      const RowLine& row = piece.rows[std::size_t(lines) - 1];
      const double now = areaOf(workedOutline(piece, lines, size, kNoFinish));
      if (row.waiting == Stitches(0) && row.section == SectionId::Undivided &&
          row.row < piece.underarmRow) {
        EXPECT_NEAR(now - before, row.stitches().value() * size.width * size.height,
                    lines == 2 ? 1 : 1e-6)
            << pieceKey(piece.id) << " row " << row.row.value();
      }
      EXPECT_GE(now, before - 1e-6) << pieceKey(piece.id) << " row " << row.row.value();
      before = now;
    }
    EXPECT_NEAR(before, areaOf(knittedOutline(piece, size, kNoFinish)), 1e-9);
    EXPECT_TRUE(workedOutline(piece, 0, size, kNoFinish).empty());
  }
}

TEST(Worked, FillsThePieceThatIsBegunAndLeavesTheOthersInOutline) {
  const test::Made m = test::made(Design());
  SchematicOptions options;
  options.curves = &m.knit;
  options.worked = {{PieceId::Back, m.knit.piece(PieceId::Back), 50}};
  for (const Group& group : pieceSchematic(m.draft, builtinPhrases(), options).groups) {
    int filled = 0;
    for (const Stroke& stroke : group.strokes) {
      EXPECT_NE(stroke.role, Role::Fabric);
      filled += stroke.role == Role::Worked && stroke.filled;
    }
    EXPECT_EQ(filled, group.id == "back" ? 1 : 0);
  }
}

// Both plans at the size they come out, on one cast-on, each named, apart from the next piece.
TEST(Replanned, LaysTheNewPlanOverTheOldOne) {
  const test::Made was = test::made(Design());
  const test::Made is = test::made(Design().set(Field::EaseUpperArm, 9));
  const KnitPiece &before = *was.knit.piece(PieceId::Sleeve),
                  &after = *is.knit.piece(PieceId::Sleeve);
  const StitchSize size{0.5, 0.35};
  const std::vector<Replanned> two{{"Right sleeve", &before, &after, size, 30, Stitches(1)},
                                   {"Left sleeve", &before, &after, size, 0, Stitches(1)}};
  for (const int perRow : {0, 1}) {
    const Picture picture = replannedPicture(two, 1.2, perRow, builtinPhrases());
    ASSERT_EQ(picture.groups.size(), 3U);
    for (int i = 0; i < 2; ++i) {
      const Group& group = picture.groups[std::size_t(i)];
      Box old, planned;
      int worked = 0;
      for (const Stroke& stroke : group.strokes) {
        if (stroke.role == Role::Ghost) old.add(stroke.path);
        if (stroke.role == Role::Outline) planned.add(stroke.path);
        worked += stroke.role == Role::Worked;
      }
      EXPECT_NEAR(old.low.y(), planned.low.y(), 1e-9);
      EXPECT_NEAR(old.size().y(), size.up(before.crownRow - Rows(1)), 2 * size.height);
      EXPECT_NEAR(planned.size().y(), size.up(after.crownRow - Rows(1)), 2 * size.height);
      EXPECT_GT(planned.size().x(), old.size().x());
      EXPECT_EQ(worked, i == 0 ? 1 : 0);
      EXPECT_EQ(group.labels[0].text, two[std::size_t(i)].title);
    }
    const Box a = picture.groups[0].box(), b = picture.groups[1].box();
    EXPECT_TRUE(perRow == 1 ? b.high.y() < a.low.y() : a.high.x() < b.low.x());
    EXPECT_EQ(picture.groups[2].labels.size(), 2U); // what the lines mean
  }
  EXPECT_TRUE(replannedPicture({}, 1.2, 0, builtinPhrases()).groups.empty());
}

} // namespace
} // namespace scye::worked
