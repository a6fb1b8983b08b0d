#include "schematic/replanned.h"

#include "schematic/knitted.h"

namespace scye {
namespace {

Group groupOf(const Replanned& piece, double h) {
  const EdgeFinish finish{piece.selvedge, piece.selvedge, Stitches(0)};
  Group group;
  group.id = std::string(pieceKey(piece.after->id));
  group.title = piece.title;
  group.piece = piece.after->id;
  const Path was = knittedOutline(*piece.before, piece.size, finish);
  const Path is = knittedOutline(*piece.after, piece.size, finish);
  group.strokes.push_back({is, Role::Fabric, true});
  if (piece.worked > 0)
    group.strokes.push_back(
        {workedOutline(*piece.after, piece.worked, piece.size, finish), Role::Worked, true});
  group.strokes.push_back({was, Role::Ghost, false});
  group.strokes.push_back({is, Role::Outline, false});
  Box box;
  box.add(is), box.add(was);
  group.labels.push_back({{0.5 * (box.low.x() + box.high.x()), box.low.y() - 1.6 * h},
                          piece.title,
                          Role::Caption,
                          1.1 * h,
                          Anchor::Middle,
                          0});
  return group;
}

// A short line and what it stands for.
void explain(Group& group, const Vec2& at, Role role, const std::string& text, double h) {
  group.strokes.push_back({Path::polyline({at, at + Vec2(2.5 * h, 0)}), role, false});
  group.labels.push_back({at + Vec2(3.2 * h, -0.3 * h), text, Role::Note, h, Anchor::Start, 0});
}

} // namespace

Picture replannedPicture(std::span<const Replanned> pieces, double textHeight, int perRow,
                         const Phrases& phrases) {
  const double h = textHeight, gap = 2 * h;
  Picture picture;
  picture.textHeight = h;
  double x = 0, top = 0, lowest = 0;
  int inRow = 0;
  for (const Replanned& piece : pieces) {
    Group group = groupOf(piece, h);
    if (perRow > 0 && inRow == perRow) inRow = 0, x = 0, top = lowest - gap;
    const Box box = group.box();
    moveGroup(group, {x - box.low.x(), top - box.high.y()});
    x += box.size().x() + gap;
    lowest = std::min(lowest, top - box.size().y());
    ++inRow;
    picture.groups.push_back(std::move(group));
  }
  if (picture.groups.empty()) return picture;
  Group key;
  key.id = "key";
  explain(key, {0, lowest - 2 * h}, Role::Outline, phrases.say("progress.drawn.after"), h);
  explain(key, {0, lowest - 3.6 * h}, Role::Ghost, phrases.say("progress.drawn.before"), h);
  picture.groups.push_back(std::move(key));
  return picture;
}

} // namespace scye
