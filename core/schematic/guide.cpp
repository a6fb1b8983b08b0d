#include "schematic/guide.h"

#include "schematic/guide_garment.h"
#include "schematic/guide_labels.h"
#include "schematic/guide_overview.h"

#include <algorithm>
#include <set>

namespace scye {
namespace {

constexpr double kOnDrawing = 0.4, kOnTape = 3;

std::string word(const Phrases& phrases, std::string_view mark) {
  return phrases.say("guide.mark." + std::string(mark));
}

std::string nameOf(const Phrases& phrases, Field f) {
  return phrases.say("field." + std::string(info(f).key));
}

void avoidDrawing(GuideLabels& labels, const Group& drawing) {
  for (const Stroke& s : drawing.strokes)
    if (!s.filled) labels.avoid(s.path, s.role == Role::Outline ? 1 : kOnDrawing);
}

// A landmark on both sides is named once, on the left.
void nameMarks(GuideLabels& labels, const Tape& tape, const Phrases& phrases) {
  std::set<std::string_view> named;
  for (const TapeMark& mark : tape.marks)
    if (named.insert(mark.word).second)
      labels.callout(mark.at, word(phrases, mark.word), Role::Note);
}

// The tape over the drawing of the picture, its landmarks and name: the name in the column beside
// the drawing, or close to the tape. Without labels where there is no room close to it.
Group singleTape(const Picture& picture, const Tape& tape, const Phrases& phrases, bool inColumn) {
  const double h = picture.textHeight;
  Group lit;
  lit.id = "tape", lit.title = picture.title;
  addTape(lit, tape, h);
  Box drawing = picture.groups[0].box();
  drawing.add(lit.box());
  GuideLabels labels(lit, h);
  avoidDrawing(labels, picture.groups[0]);
  for (const Stroke& s : lit.strokes)
    labels.avoid(s.path, kOnTape);
  for (const TapeMark& mark : tape.marks)
    lit.strokes.push_back({disc(mark.at, 0.17 * h), Role::Outline, true});
  if (inColumn)
    labels.callout(tape.way.segments()[tape.way.segments().size() / 2].at(0.5), picture.title,
                   Role::Lit);
  nameMarks(labels, tape, phrases);
  labels.finish(drawing);
  if (!inColumn && !labels.beside(tape.way, picture.title, Role::Lit, tape.field))
    lit.labels.clear();
  return lit;
}

} // namespace

std::vector<Field> measuredOn(Source where) {
  std::vector<Field> fields;
  for (int i = 0; i < kFieldCount; ++i)
    if (canTakeOn(Field(i), where)) fields.push_back(Field(i));
  return fields;
}

Group guideDrawing(Source where, Figure figure, GuideView view) {
  Group group;
  group.strokes =
      where == Source::Body ? figureStrokes(figure, view) : garmentStrokes(figure, view);
  return group;
}

void addTape(Group& group, const Tape& tape, double textHeight) {
  std::vector<Stroke>& out = group.strokes;
  for (const Path& level : tape.levels)
    out.push_back({level, Role::Guide, false});
  for (const Path& behind : tape.behind)
    out.push_back({behind, Role::Ghost, false});
  out.push_back({tape.way, Role::Lit, false});
  if (tape.girth) return;
  const Cubic &first = tape.way.segments().front(), &last = tape.way.segments().back();
  for (const auto& [at, way] :
       {std::pair(first.start(), first.derivative(0)), std::pair(last.end(), last.derivative(1))}) {
    const Vec2 bar = 0.3 * textHeight * Vec2(-way.y(), way.x()).normalized();
    out.push_back({Path::polyline({at - bar, at + bar}), Role::Lit, false});
  }
}

Picture measuringPicture(Field measurement, Source where, Figure figure, const Phrases& phrases,
                         double textHeight) {
  const Tape tape = tapeOn(where, figure, measurement);
  Picture picture{
      nameOf(phrases, measurement), {guideDrawing(where, figure, tape.view)}, textHeight};
  picture.groups[0].id = "figure";
  for (const bool aside : {false, true}) { // the name close to the tape, else among the callouts
    Group lit = singleTape(picture, tape, phrases, aside);
    if (lit.labels.empty()) continue;
    picture.groups.push_back(std::move(lit));
    break;
  }
  return picture;
}

std::vector<Group> numberedViews(Source where, Figure figure, double textHeight) {
  const std::vector<Field> fields = measuredOn(where);
  std::vector<Group> groups;
  Vec2 corner(0, 0);
  for (const GuideView view : {GuideView::Front, GuideView::Back}) {
    Group group = guideDrawing(where, figure, view);
    group.id = view == GuideView::Front ? "front" : "back";
    GuideLabels labels(group, textHeight);
    avoidDrawing(labels, group);
    std::vector<Tape> tapes;
    for (const Field f : fields)
      if (Tape tape = tapeOn(where, figure, f); tape.view == view) tapes.push_back(std::move(tape));
    for (const Tape& tape : tapes) {
      addTape(group, tape, textHeight);
      labels.avoid(tape.way, kOnTape);
      for (const std::vector<Path>* paths : {&tape.behind, &tape.levels})
        for (const Path& p : *paths)
          labels.avoid(p, kOnDrawing);
    }
    for (const Tape& tape : tapes) {
      const auto number = std::find(fields.begin(), fields.end(), tape.field) - fields.begin() + 1;
      labels.besideAnyhow(tape.way, std::to_string(number), Role::Lit, tape.field);
    }
    const Box box = group.box();
    // Figures are tall and stand side by side; garments are wide and lie one above the other.
    moveGroup(group,
              corner - Vec2(box.low.x(), where == Source::Body ? box.low.y() : box.high.y()));
    corner += where == Source::Body ? Vec2(box.size().x() + 2 * textHeight, 0)
                                    : Vec2(0, -box.size().y() - 1.5 * textHeight);
    groups.push_back(std::move(group));
  }
  return groups;
}

Picture measuringOverview(Source where, Figure figure, const Phrases& phrases, double textHeight) {
  Picture picture{phrases.say(where == Source::Body ? "guide.title.body" : "guide.title.garment"),
                  numberedViews(where, figure, textHeight), textHeight};
  const Box drawing = picture.box();
  Group list;
  list.id = "list", list.title = picture.title;
  const std::vector<Field> fields = measuredOn(where);
  const double line = 1.7 * textHeight;
  const auto rows = std::max<std::size_t>(10, std::size_t(drawing.size().y() / line));
  double x = drawing.high.x() + 3 * textHeight, wide = 0;
  for (std::size_t i = 0; i < fields.size(); ++i) {
    if (i > 0 && i % rows == 0) x += wide + 2 * textHeight, wide = 0;
    const double y = drawing.high.y() - double(i % rows + 1) * line;
    list.labels.push_back(
        {{x + 1.3 * textHeight, y}, std::to_string(i + 1), Role::Lit, textHeight, Anchor::End});
    list.labels.push_back({{x + 2 * textHeight, y},
                           nameOf(phrases, fields[i]),
                           Role::Caption,
                           textHeight,
                           Anchor::Start});
    wide = std::max(wide, 2 * textHeight + textWidth(list.labels.back().text, textHeight));
    list.hotSpots.push_back({labelBox(list.labels.back()), fields[i]});
  }
  picture.groups.push_back(std::move(list));
  return picture;
}

} // namespace scye
