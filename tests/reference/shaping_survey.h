// Bodies of the survey as designs, and what their knitted armholes and caps come to. Everything is
// read off the row tables and worked out here by slow and obvious means; nothing of the search, of
// its bands or of its lengths is used. Source of the bodies: 1988 anthropometric survey
// (tests/data/README.md).
#pragma once

#include "garment/derived.h"

#include <array>
#include <string>
#include <vector>

namespace scye::survey {

struct Body {
  bool woman = true;
  double bust = 0, upperArm = 0, crossShoulder = 0, scyeDepth = 0; // cm
};
// All women, then all men of the two files in tests/data.
[[nodiscard]] std::vector<Body> bodies();

struct Gauge {
  int stitches, rows; // in 10 cm
};
inline constexpr Gauge kGauges[] = {{12, 17}, {16, 22}, {18, 24}, {20, 28},
                                    {22, 30}, {28, 38}, {36, 50}};

enum class Fit { Close, Usual, Loose };

struct Case {
  Gauge gauge{22, 30};
  Fit fit = Fit::Usual;
  Garment garment = Garment::Pullover;
  bool narrow = false; // cross-back 1.5 cm narrower, cross-front 3
  CapLean lean = CapLean::Upright;
};
[[nodiscard]] Design designOf(const Body& body, const Case& c);
// The design as the program is told it: "scyewright draft EMPTY.scye --with bust=92 ...".
[[nodiscard]] std::string commandLine(const Design& design);

// One edge of a piece as its column of the row table has it.
struct Edge {
  std::vector<double> inward; // stitches moved in from the side seam, after each row from the
                              // underarm bind-off's on, up to the row that ends it
  int underarm = 0;           // stitches of it
  int firstRow = 0;           // of the underarm bind-off, 0 on the right edge, 1 on the left
};
struct Lengths {
  double chord = 0, corner = 0, middle = 0; // cm
  [[nodiscard]] double mean() const { return (chord + corner + middle) / 3; }
};
[[nodiscard]] Lengths lengths(const Edge& edge, double w, double h, double flatTop);

// What one knitted garment comes to. Stitches, rows and cm as named.
struct Figures {
  bool knitted = false; // with a cap
  double capRatio = 0;  // drafted cap height / armhole depth
  double crownOff = 0;  // stitches from the wanted crown
  double crownOffCm = 0;
  double heightOff = 0;       // rows, from the curve solved for whole-stitch width and underarm
  double capOff = 0;          // stitches off that curve
  double armholeOff = 0;      // stitches off the drafted curve with whole-stitch underarm
  double armholeOffWhole = 0; // likewise, with the cross width in whole stitches too
  int armholeLines = 0;       // that take away; the increases of a narrow cross width beside them
  int increaseLines = 0;
  int capLines = 0;
  int armholeBindOffs = 0; // stepped, after the underarm's
  bool armholeStepsGrow = false;
  bool printedWay = false; // an armhole of "1 on every right-side row", and nothing else that takes
  double widestStep = 0;   // cm, of armhole and cap
  int widestStitches = 0;
  double takenAway = 0; // cm, by the armhole
  double seam = 0;      // cm, cap - armhole - ease by the mean of the measures, worse side
  double spread = 0;    // cm, between the three measures, worse side
  double sidesRows = 0; // rows, between the wearer's left and right armhole, by the mean
  bool sleevesMirrored = true;
  int crown = 0, capRows = 0, underarm = 0; // stitches, rows
  int underarmMoved = 0;                    // stitches from the drafted
  bool oneSchedule = true;                  // of back and front
};
[[nodiscard]] Figures figures(const Derived& derived);

} // namespace scye::survey
