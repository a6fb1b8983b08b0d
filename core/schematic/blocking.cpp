#include "schematic/blocking.h"

#include "knit/on_stitches.h"
#include "model/plain_text.h"
#include "schematic/knitted.h"
#include "schematic/notches.h"

namespace scye {
namespace {

Label words(const Vec2& at, const std::string& text, Role role, double height) {
  return {at, text, role, height, Anchor::Middle, 0};
}

} // namespace

Picture blockingTemplate(const GarmentDraft& draft, const KnitGarment& knitted, PieceId id,
                         double textHeight, const Phrases& phrases, LengthUnit unit) {
  Picture picture;
  picture.title = plainLine(draft.design.title);
  picture.textHeight = textHeight;
  const GarmentDraft seams = onStitches(draft, knitted);
  // The left sleeve is the right one's mirror image.
  const bool turned = id == PieceId::LeftSleeve;
  const PieceId drafted = turned ? PieceId::Sleeve : id;
  const Piece* piece = seams.piece(drafted);
  const KnitPiece* rows = knitted.piece(id);
  if (!piece || !rows || rows->rows.empty()) return picture;

  Group g;
  g.id = std::string(pieceKey(id));
  const bool ofTwo = id == PieceId::Sleeve && knitted.piece(PieceId::LeftSleeve);
  g.title = phrases.say(ofTwo ? "piece.rightSleeve" : "piece." + g.id);
  g.piece = id;
  const StitchSize& size = rows->fabric(knitted.lattice.size);
  const Path fabric = knittedOutline(*rows, size, {Stitches(0), Stitches(0), Stitches(0)});
  const Path seam = turned ? piece->outline().mirroredX() : piece->outline();
  g.strokes.push_back({seam, Role::Outline, false});
  g.strokes.push_back({fabric, Role::Knitted, false});

  Box box;
  box.add(fabric);
  const auto across = [&](Rows row) {
    const double y = size.up(row);
    if (row > Rows(0))
      g.strokes.push_back(
          {Path::polyline({{box.low.x(), y}, {box.high.x(), y}}), Role::Guide, false});
  };
  across(rows->hemRows);
  across(rows->underarmRow - Rows(1));
  if (drafted != PieceId::LeftFront && drafted != PieceId::RightFront)
    g.strokes.push_back(
        {Path::polyline({{0, box.low.y()}, {0, box.high.y()}}), Role::Guide, false});

  const double h = textHeight;
  for (PieceNotch n : pieceNotches(seams, drafted)) {
    if (turned) n.at.x() *= -1, n.inward.x() *= -1;
    g.strokes.push_back({Path::polyline({n.at, n.at + 0.8 * n.inward}), Role::Notch, false});
    g.labels.push_back(words(n.at + (0.8 + h) * n.inward - Vec2(0, 0.36 * h),
                             std::to_string(n.number), Role::Notch, h));
  }
  const Vec2 middle(0.5 * (box.low.x() + box.high.x()),
                    0.5 * (box.low.y() + size.up(rows->underarmRow)));
  const Vec2 all = box.size();
  g.labels.push_back(words(middle, g.title, Role::Caption, 2 * h));
  g.labels.push_back(
      words(middle - Vec2(0, 2 * h),
            phrases.say("blocking.size",
                        {lengthParam("width", all.x()), lengthParam("height", all.y())}, unit),
            Role::Measure, 1.2 * h));
  g.labels.push_back(
      words(middle - Vec2(0, 3.6 * h), phrases.say("blocking.lines"), Role::Note, h));
  picture.groups.push_back(std::move(g));
  return picture;
}

} // namespace scye
