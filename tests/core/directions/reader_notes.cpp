#include "core/directions/reader_notes.h"

#include "core/directions/reader_words.h"

#include <algorithm>
#include <cstdlib>

namespace scye::reader {

std::optional<NoteRead> noteRead(std::string_view text) {
  NoteRead note;
  const auto is = [&](std::string_view form, std::initializer_list<int*> figures = {}) {
    Finger finger(text);
    return finger.take(form, figures) && finger.done();
  };
  if (is("The first @ of RS rows are the button band: go on with them in the stitch of the lower "
         "edge, "
         "up to the neck.",
         {&note.band}) ||
      is("The last @ of RS rows are the button band: go on with them in the stitch of the lower "
         "edge, "
         "up to the neck.",
         {&note.band}) ||
      is("The first @ of RS rows are the button band: work them in garter stitch, from the cast-on "
         "up "
         "to the neck.",
         {&note.band}) ||
      is("The last @ of RS rows are the button band: work them in garter stitch, from the cast-on "
         "up "
         "to the neck.",
         {&note.band}) ||
      is("The stitch pattern repeats over @: in its first row, on the right side, a repeat begins "
         "after @.",
         {&note.repeat, &note.repeatAfter}) ||
      is("The stitch pattern repeats over @: in its first row, on the right side, a repeat begins "
         "with the first st.",
         {&note.repeat}) ||
      is("The front of the sleeve is at the beginning of RS rows.") ||
      is("The front of the sleeve is at the end of RS rows.") ||
      is("Change to the larger needles.") ||
      is("This edge is plain and will curl. If it is to lie flat, begin with garter rows or a "
         "facing, "
         "or crochet along it.") ||
      is("The piece is divided early, for a slit at the back neck.") ||
      is("Counted from below, number # lies at the bust.", {&note.atBust}) ||
      is("Counted from below, number # lies at the chest.", {&note.atBust}))
    return note;
  Finger needles(text);
  if (needles.take("Change to ") && needles.takeMillimetres(note.needle) &&
      needles.take(" needles.") && needles.done())
    return note;
  note.needle = 0;
  note.holes = 1;
  if (is("1 buttonhole over @ is worked in this band; it stands in the lines below.",
         {&note.over}) ||
      (is("# buttonholes over @ are worked in this band; they stand in the lines below.",
          {&note.holes, &note.over}) &&
       note.holes > 1))
    return note;
  note = {};
  int passed = 1, more = 1;
  note.explained = 1;
  if (is("A buttonhole over 1 st: yarn over, then knit the next 2 sts together.")) return note;
  if (is("A buttonhole over # sts in one row: bring the yarn to the front, slip a st purlwise, "
         "take the yarn back and "
         "leave it. Slip the next st and pass the one before it over, # times. Put the last st "
         "back on the left needle "
         "and turn. Cast on # sts and one more, each between the last two sts, and turn. Slip a "
         "st, pass the last st "
         "that was cast on over it, and draw up the yarn.",
         {&note.explained, &passed, &more}))
    return passed == note.explained && more == note.explained ? std::optional(note) : std::nullopt;
  note = {};
  Finger finger(text);
  if (finger.take("Rows that turn early make the front ") &&
      finger.takeLength(note.longer, note.inches) &&
      finger.take(" longer over the bust than at its side edges. The wrapped st keeps the turn "
                  "from leaving a hole: "
                  "when you come to it again, work the wrap together with its st.") &&
      finger.done())
    return note;
  return {};
}

void Announced::add(const NoteRead& note, int line) {
  if (note.band > 0) told_.band = note.band;
  if (note.holes > 0) told_.holes = note.holes, told_.over = note.over;
  if (note.explained > 0) told_.explained = note.explained;
  if (note.atBust > 0) told_.atBust = note.atBust;
  if (note.longer > 0) told_.longer = note.longer, told_.inches = note.inches, longerLine_ = line;
}

void Announced::worked(const RowRead& row, const Waiting& waiting, bool belowUnderarm) {
  for (const Hole& hole : row.holes) {
    holeRows_.push_back(row.row);
    otherHoles_ = otherHoles_ || hole.right - hole.left != told_.over;
  }
  if (!belowUnderarm) return;
  turnedLeft_ += waiting.left > 0 ? 1 : 0;
  turnedRight_ += waiting.right > 0 ? 1 : 0;
}

std::string Announced::broken(std::optional<int> underarm) const {
  if (told_.holes == 0) return {}; // nothing is announced
  if (told_.explained != told_.over || otherHoles_)
    return "the buttonholes are not those that are explained";
  if (int(holeRows_.size()) != told_.holes) return "the buttonholes are not as many as announced";
  if (told_.atBust == 0) return {};
  if (!underarm || told_.atBust > told_.holes) return "no such buttonhole lies at the bust";
  const auto away = [&](int row) { return std::abs(row - (*underarm - 1)); };
  const auto nearest = std::min_element(holeRows_.begin(), holeRows_.end(),
                                        [&](int a, int b) { return away(a) < away(b); });
  // It was chosen before it was put on a row.
  if (away(holeRows_[std::size_t(told_.atBust - 1)]) > away(*nearest) + 2)
    return "another buttonhole lies at the bust";
  return {};
}

std::optional<LengthRead> Announced::longer() const {
  if (told_.longer <= 0) return {};
  return LengthRead{longerLine_, std::max(turnedLeft_, turnedRight_), told_.longer, told_.inches};
}

} // namespace scye::reader
