// A knitter made of code: reads the directions as they are printed and knits them, row by row, with
// stitches on a needle. Written from the key at the head of resources/phrases/en/directions.txt and
// from printed directions alone; it shares nothing with what words, makes or knits the steps in the
// core.
//
// Strict: a sentence it does not know, a place where it cannot go on, and anything that is told
// twice and differs (rows, RS/WS, counts, which edge is shaped) is a complaint. Lengths are handed
// back with the rows they are of. What stands before the abbreviations and after "Finishing" is not
// read.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace scye::reader {

// A buttonhole, where an edge would be told.
struct Hole {
  int left = 0, right = 0;
};

struct RowRead {
  std::string_view section; // "body", "right", "left"
  int row = 0;              // 0: the cast-on
  int left = 0,
      right = 0;    // edges in stitches from the left end of the cast-on, seen from the right side
  int stitches = 0; // counted on the needle, in work
  int waiting = 0;  // beyond the turns of short rows
  std::vector<Hole> holes;
};

struct PieceRead {
  std::string name; // as it is headed: "Left front"
  std::vector<RowRead> rows;
  std::vector<bool>
      rib; // which stitches row 1 knits, from its beginning, where that is written out
};

struct Complaint {
  int line = 0; // of the text, from 1
  std::string text, why;
  bool edgeNames = false; // only the words that tell two edges apart are wrong
};

struct LengthRead {
  int line = 0; // of the text
  int rows = 0; // that are said to be so long
  double length = 0;
  bool inches = false;
};

struct Reading {
  std::vector<PieceRead> pieces;
  std::vector<LengthRead> lengths;
  std::vector<Complaint> complaints;
  std::vector<Complaint> awkward; // what can be done, but takes a thought that no line spares
  int steps = 0;                  // lines that were knitted
};

enum class Terms { Us, Uk };

[[nodiscard]] Reading read(std::string_view text, Terms terms = Terms::Us);

} // namespace scye::reader
