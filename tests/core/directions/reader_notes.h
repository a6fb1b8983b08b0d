// The sentences of a piece that have no rows, held against its rows.
#pragma once

#include "core/directions/reader.h"
#include "core/directions/reader_needle.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace scye::reader {

struct NoteRead {
  int band = 0;                    // "The last 8 sts of RS rows are the button band ..."
  int holes = 0, over = 0;         // "8 buttonholes over 3 sts are worked in this band ..."
  int explained = 0;               // over so many, in "A buttonhole over 3 sts in one row: ..."
  int atBust = 0;                  // "Counted from below, number 7 lies at the bust."
  int repeat = 0, repeatAfter = 0; // "The stitch pattern repeats over 12 sts: ..."
  double needle = 0;               // "Change to 4 mm needles."
  double longer = 0;               // "Rows that turn early make the front 4 cm longer ..."
  bool inches = false;
};
// Absent if it is no such sentence.
[[nodiscard]] std::optional<NoteRead> noteRead(std::string_view text);

class Announced {
public:
  void add(const NoteRead& note, int line);
  // `waiting` after the row.
  void worked(const RowRead& row, const Waiting& waiting, bool belowUnderarm);
  // What the rows did not bear out; `underarm`: the row in which the armhole begins.
  [[nodiscard]] std::string broken(std::optional<int> underarm) const;
  // How much longer the front is said to be, with the rows that are turned at its side.
  [[nodiscard]] std::optional<LengthRead> longer() const;
  [[nodiscard]] int band() const { return told_.band; }

private:
  NoteRead told_;
  int longerLine_ = 0;
  std::vector<int> holeRows_;
  bool otherHoles_ = false;
  int turnedLeft_ = 0, turnedRight_ = 0; // rows after which stitches wait there
};

} // namespace scye::reader
