// The parts the searches for armhole and cap are made of: the ladder of acceptable run kinds, the
// lengths of chords between events, and the walk upward from the underarm in ever smaller steps.
#pragma once

#include "shaping/corridor.h"
#include "shaping/cost.h"
#include "shaping/runs.h"

#include <cmath>
#include <utility>
#include <vector>

namespace scye {

// One way of shaping; the ladder runs from steep to sparse: bind-offs from the widest step down to
// 2 (of many widths only some), decreases every row where allowed, then every 2nd, 4th ... 12th
// row.
struct Rung {
  ShapingKind kind = ShapingKind::Decrease;
  int stitches = 1;
  int every = 2;
  [[nodiscard]] bool bindOff() const { return kind == ShapingKind::BindOff; }
  // Decreases on every row come two by two, so that the next run starts from a right-side row.
  [[nodiscard]] int together() const { return every == 1 ? 2 : 1; }
};
inline constexpr int kSparsest = 12;    // rows between decreases
inline constexpr int kBindOffRungs = 7; // at most
[[nodiscard]] std::vector<Rung> shapingLadder(const ShapingStyle& style, const StitchSize& size);

enum class AskedEdges { Both, Right, Left };

// Lengths of chords, summed over the asked edges. On the left edge bind-offs come a row later.
class Chords {
public:
  Chords(const StitchSize& size, AskedEdges edges, int widestStep);
  // From an event of `stitches` to the next event `gap` rows later (as the right edge counts).
  [[nodiscard]] double chord(int stitches, bool fromBindOff, bool toBindOff, int gap) const {
    return gap < kRows ? table_[((stitches * 2 + fromBindOff) * 2 + toBindOff) * kRows + gap]
                       : sum(stitches, fromBindOff, toBindOff, gap);
  }

private:
  static constexpr int kRows = 16;
  [[nodiscard]] double sum(int stitches, bool fromBindOff, bool toBindOff, int gap) const;
  StitchSize size_;
  AskedEdges edges_;
  std::vector<double> table_;
};

// A beginning of a schedule: some runs, the last event in row `row`.
struct Climb {
  int row = 0, taken = 0;
  double length = 0;    // over the asked edges, without the underarm and the last event's chord
  double deviation = 0; // stitches, up to the last event
  int rung = 0;         // of the last run
  int lines = 0;
};

struct RungRun {
  int rung = 0, times = 0;
};
[[nodiscard]] std::vector<Run> toRuns(const std::vector<Rung>& ladder,
                                      const std::vector<RungRun>& runs);

// Visits every acceptable beginning whose steps never grow, inside the corridor, with at most
// `taken` stitches in at most `rows` rows. `visit(climb, runs)` says whether to go on from there.
template <class Visit>
class Climber {
public:
  Climber(const std::vector<Rung>& ladder, const Chords& chords, const Corridor& corridor,
          int underarm, int maxSteps, int taken, int rows, Visit visit)
      : ladder_(ladder), chords_(chords), corridor_(corridor), underarm_(underarm),
        maxSteps_(maxSteps), taken_(taken), rows_(rows), visit_(visit) {}

  void run() { from(Climb{.rung = -1}, 0); }

private:
  void from(const Climb& start, int bindOffs) {
    for (int next = start.rung + 1; next < int(ladder_.size()); ++next) {
      const Rung& rung = ladder_[next];
      // The first shaping comes on the second row after the underarm bind-off.
      if (start.rung < 0 && rung.every != 2) continue;
      // On the left edge a bind-off comes a row later: a decrease in the row after it would meet
      // it.
      if (start.rung >= 0 && ladder_[start.rung].bindOff() && rung.every == 1) continue;
      runs_.push_back({next, 0});
      const bool any = repeat(start, next, bindOffs);
      runs_.pop_back();
      if (!any && rung.every >= 2 && !rung.bindOff()) break; // so will sparser ones be
    }
  }

  // Runs of one rung on top of what is there, an event at a time; false if not even one has room.
  bool repeat(Climb at, int index, int bindOffs) {
    const Rung& rung = ladder_[index];
    at.lines += 1;
    while (!rung.bindOff() || bindOffs++ < maxSteps_) {
      for (int i = 0; i < rung.together(); ++i)
        if (!step(at, index)) return runs_.back().times > 0;
      runs_.back().times += rung.together();
      if (!visit_(std::as_const(at), std::as_const(runs_))) return true;
      from(at, bindOffs);
    }
    return true;
  }

  bool step(Climb& at, int index) {
    const Rung& rung = ladder_[index];
    const int row = at.row + rung.every;
    if (row > rows_ || at.taken + rung.stitches > taken_) return false;
    if (!corridor_.stands(at.row, row, at.taken, at.deviation)) return false;
    if (at.rung >= 0) {
      const Rung& last = ladder_[at.rung];
      at.length += chords_.chord(last.stitches, last.bindOff(), rung.bindOff(), rung.every);
    } else { // straight up from the underarm bind-off, itself a row later on the left edge
      at.length += chords_.chord(0, underarm_ > 0, rung.bindOff(), rung.every);
    }
    at.row = row, at.taken += rung.stitches, at.rung = index;
    return true;
  }

  const std::vector<Rung>& ladder_;
  const Chords& chords_;
  const Corridor& corridor_;
  int underarm_, maxSteps_, taken_, rows_;
  Visit visit_;
  std::vector<RungRun> runs_;
};

} // namespace scye
