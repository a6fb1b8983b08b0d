// Shaping schedules: what a knitter is told to do along one kind of edge.
//
// A run is "k stitches every p rows, n times": each of its events comes p rows after the event
// before it (of this run, the run before, or the schedule's start). Decreases and increases are
// worked on right-side rows, on both edges in the same row. Bind-offs come at the beginning of two
// rows: the right edge on the right-side row, the left edge on the row after.
//
// A schedule's rows count from its start, row 0, which is a right-side row: the row of the right
// edge's underarm bind-off (the left edge's is row 1). Its runs' events then fall on rows p, 2p,
// ... after it.
#pragma once

#include "model/units.h"
#include "shaping/edge_length.h"

#include <vector>

namespace scye {

enum class ShapingKind { Decrease, BindOff, Increase };

struct Run {
  ShapingKind kind = ShapingKind::Decrease;
  Stitches stitches{1}; // at each edge, each time; positive
  Rows every{2};
  int times = 1;
  // Rows worked even before the first `every` starts to count; negative where the first event comes
  // sooner.
  Rows rest{0};
  bool operator==(const Run&) const = default;

  [[nodiscard]] Stitches total() const { return times * stitches; }
  [[nodiscard]] Rows rows() const { return rest + times * every; }
};

struct Schedule {
  Stitches underarm{0}; // bound off at each side at the start
  std::vector<Run> runs{};
  Rows rows{0};      // from the start to the row that closes the right edge
  Stitches crown{0}; // bound off in the closing row, selvedges included; 0: it is no cap
  bool operator==(const Schedule&) const = default;

  [[nodiscard]] Stitches taken() const;  // by the runs at each edge; increases count against
  [[nodiscard]] Rows shapedRows() const; // from the start to the last event
  [[nodiscard]] int lines() const { return int(runs.size()); }
};

// The events of runs alone, from row `start` (right side); bind-offs come `bindOffLater` rows
// later.
[[nodiscard]] std::vector<EdgeEvent> runEvents(const std::vector<Run>& runs, Rows start,
                                               Rows bindOffLater);

// The events of one edge in rows of the piece, where the schedule's start is row `firstRow`.
// An armhole's left edge ends a row later than its right edge (shoulders are bound off right on RS,
// left on WS); a cap's edges both end at the crown bind-off. `selvedge` stitches at each end of the
// crown do not count for length.
[[nodiscard]] KnittedEdge knittedEdge(const Schedule& schedule, EdgeSide side, Rows firstRow,
                                      Stitches selvedge = Stitches(0));

// Lengths in cm, flats included. Independent of `firstRow`.
[[nodiscard]] EdgeLength edgeLength(const Schedule& schedule, EdgeSide side, const StitchSize& size,
                                    Stitches selvedge = Stitches(0));

// Adjacent runs of the same kind, stitches and spacing made one; empty runs dropped.
[[nodiscard]] std::vector<Run> joined(std::vector<Run> runs);

// How shaping is to be knitted; shared by armhole, neck and cap.
struct ShapingStyle {
  double fidelity = 0.5;   // 0: as few lines as can be; 1: as near to the drafted curve as can be
  bool everyRow = false;   // decreases on wrong-side rows too
  double maxStep = 1.5;    // cm: the widest stepped bind-off without a price; see cost.h
  double widestStep = 1.9; // cm: the widest at all; two stitches are always allowed
  int wider = 1;           // times that, where nothing else comes near the curve
  int maxSteps = 4;        // pairs of stepped bind-offs after the underarm, and before the crown
  bool operator==(const ShapingStyle&) const = default;

  // In stitches: the widest stepped bind-off within `maxStep`, and for coarse stitches three within
  // `widestStep`; at least 2.
  [[nodiscard]] int plainStep(const StitchSize& size) const;
  [[nodiscard]] int widestBindOff(const StitchSize& size) const; // in stitches, at least 2
  [[nodiscard]] ShapingStyle widened(int by,
                                     int more) const; // steps so many times as wide, and as many
};

} // namespace scye
