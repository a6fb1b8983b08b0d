// A garment twice as large in every length is the same garment: cap and armhole know no unit.
#include "seam/garment_draft.h"
#include "support/outline.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

// Every value said aloud, lengths and girths k times as large; shares and counts as they are.
Design enlarged(const GarmentDraft& g, double k) {
  Design d = g.design;
  for (int f = 0; f < kFieldCount; ++f) {
    const FieldInfo& i = info(Field(f));
    const bool length = i.kind == FieldKind::Length || i.kind == FieldKind::Girth;
    d.set(i.id, (length ? k : 1) * g.sizes[i.id],
          g.sizes.fromGarment(i.id) ? Source::Garment : Source::Body);
  }
  return d;
}

TEST(Scale, enlargesCapAndArmholeAlike) {
  const auto seed = test::propertySeed(2201);
  test::RandomDesigns random(seed);
  int compared = 0;
  for (int i = 0; i < 2000; ++i) {
    Design said = random.plausible();
    said.choose(Choice::WorkedOut, WorkedOut::CapHeight);
    const GarmentDraft one = draftGarment(enlarged(draftGarment(said), 1));
    if (anyBlocking(one.findings) || one.bodice.at.underarm <= kLeastBody) continue;
    // A bind-off that is cut off keeps an absolute sliver of curve.
    if (findCode(one.findings, "underarm.wide")) continue;
    for (double k : {1.5, 2.54}) {
      const GarmentDraft other = draftGarment(enlarged(one, k));
      SCOPED_TRACE("design " + std::to_string(i) + " times " + std::to_string(k));
      const auto scales = [&](double a, double b) {
        ASSERT_NEAR(k * a, b, 1e-9 * k * (1 + std::abs(a)));
      };
      ASSERT_TRUE(other.cap.found);
      scales(one.cap.height, other.cap.height);
      scales(one.cap.lean, other.cap.lean);
      scales(one.cap.crownMark, other.cap.crownMark);
      scales(one.cap.armholeBack, other.cap.armholeBack);
      scales(one.cap.armholeFront, other.cap.armholeFront);
      scales(one.cap.capBack, other.cap.capBack);
      scales(one.bodice.neckEdge, other.bodice.neckEdge);
      for (const Piece& p : one.pieces)
        for (EdgeKind kind :
             {EdgeKind::Armhole, EdgeKind::Cap, EdgeKind::Neck, EdgeKind::Shoulder}) {
          const PieceEdge* edge = test::rightEdge(p, kind);
          if (!edge) continue;
          scales(edge->path.length(), test::rightEdge(*other.piece(p.id), kind)->path.length());
        }
      ++compared;
    }
  }
  RecordProperty("compared", compared);
  EXPECT_GT(compared, 2000);
}

} // namespace
} // namespace scye
