// How a picture is taken out of the program: on which paper, how fine, and whether to go on.
#pragma once

#include "schematic/picture.h"

#include <functional>

namespace scye {

enum class Paper : int {
  TrueSize, // a page as large as the drawing
  A4,       // scaled down to 1 : n, n a whole number; the scale is printed
  Letter,
};

// Asked while something is being made, with the share that is done; false: it is given up. Empty:
// it is made to its end.
using GoOn = std::function<bool(double share)>;

// What stands at the foot of a sheet, beside what the picture is and its scale. What is empty is
// left out.
struct TitleBlock {
  std::string title{}, wearer{}, gauge{}, date{};
};

struct ExportOptions {
  Paper paper = Paper::TrueSize; // PDF, PNG and SVG
  double dpi = 100;              // PNG; rounded to whole dots in a metre
  bool toScale = true;           // false: a sheet is filled, and no scale is told
  bool largePrint = false;       // of a booklet's letters
  GoOn goOn{};
  TitleBlock block{};
};

// A picture whose letters are to be `textHeight` (cm of the drawing) high; asked for once the scale
// on the paper is known, so that letters are readable there.
using PictureMaker = std::function<Picture(double textHeight)>;

// The same, in parts of which none is larger than `room` cm of paper, in cm of paper.
using PartsMaker = std::function<std::vector<Picture>(const Vec2& room, double letters)>;

// A cell of a chart that a finger and an eye still keep to (common practice).
inline constexpr double kLeastDetailMm = 2.5;

// Of a page: its margin, a pen, the letters of a page of true size.
inline constexpr double kMarginMm = 12, kPenMm = 0.25, kTrueLettersMm = 6;

} // namespace scye
