// The work of one row, as words and as stitches moved from the left needle to the right one.
#pragma once

#include "core/directions/reader_words.h"

#include <optional>
#include <string_view>

namespace scye::reader {

enum class Move {
  Return,     // `stitches` from the holder, right side facing, with new yarn
  BindOff,    // `stitches`; one more stitch is on the right needle afterwards
  BindOffAll, // the last `stitches`
  HoldFirst,  // `stitches`, worked and put aside for good
  Plain,      // knit or purl one
  Decrease,
  Increase,
  Work,       // `stitches` plain, up to a buttonhole
  Buttonhole, // over `stitches`
  MakeOne,    // after every `stitches`, `times` times
  ToEnd,
  ToLast,     // work until `stitches` are left on the left needle
  ToWrapped,  // work until `stitches` are left before those that wait
  WrapTurn,   // what is left waits too
  OverWraps,  // work to the end, over all that waits there
  UntilRight, // work until there are `stitches` on the right needle
  CountOff,   // work `stitches` from the beginning of the row, and no more
  Turn,       // `stitches` go to a holder unworked
};

struct Part {
  Move move = Move::Plain;
  int stitches = 0;
  int times = 1;
};

// "k1, ssk, work to last 3 sts, k2tog, k1": the parts of a shaped row; absent if they are no such
// thing, or if they are named for the other side of the work or the other end of the row.
[[nodiscard]] std::optional<std::vector<Part>> takeParts(Finger& finger, bool rightSide);

// How many stitches a row takes away at each edge by shaping; negative where it adds them. Of short
// rows only that they do.
struct Shaped {
  int right = 0, left = 0;
  bool operator==(const Shaped&) const = default;
};
[[nodiscard]] Shaped shapedBy(const std::vector<Part>& parts, bool rightSide);

struct Edges {
  int left = 0, right = 0; // from the left end of the cast-on, seen from the right side
};

// Stitches that wait beyond the turns, at either edge.
struct Waiting {
  int left = 0, right = 0;
};

// On the holder: a left-hand side, with what waits at its left edge.
struct Held {
  Edges edges;
  int waiting = 0;
  [[nodiscard]] int stitches() const { return edges.right - edges.left + waiting; }
};

// Stitches on a needle between two edges.
class Needle {
public:
  // Works the parts of one row; nothing, or why they cannot be worked. `held` stands for the
  // holder.
  [[nodiscard]] std::string work(const std::vector<Part>& parts, bool rightSide,
                                 std::optional<Held>& held);
  // `toward`: where stitches that are spread over a row lie: "right", "left" or half at either.
  void castOn(int stitches, std::string_view toward) {
    toward_ = toward;
    stitches_ = stitches, edges_ = {0, stitches}, waiting_ = {};
  }
  [[nodiscard]] int stitches() const { return stitches_; }
  [[nodiscard]] Edges edges() const { return edges_; }
  [[nodiscard]] int waiting() const { return waiting_.left + waiting_.right; }
  [[nodiscard]] Waiting waitingAt() const { return waiting_; }
  // Of the last row.
  [[nodiscard]] const std::vector<Edges>& holes() const { return holes_; }
  // In the last row the stitch that a bind-off left on the right needle had to be put back for a
  // decrease at the row's end: it can be done, but no line says so.
  [[nodiscard]] bool slippedBack() const { return slippedBack_; }

private:
  [[nodiscard]] std::string move(const Part& part, std::optional<Held>& held);
  [[nodiscard]] std::string shortRow(const Part& part);
  [[nodiscard]] std::string buttonhole(int stitches);
  [[nodiscard]] std::string makeOne(const Part& part);
  [[nodiscard]] int& ahead() { return rightSide_ ? waiting_.left : waiting_.right; }
  [[nodiscard]] int behind() const { return rightSide_ ? waiting_.right : waiting_.left; }
  std::string_view toward_;
  int stitches_ = 0; // in work
  Edges edges_;      // of those
  Waiting waiting_;
  std::vector<Edges> holes_;
  // Of the row in work:
  bool rightSide_ = true;
  int toWork_ = 0, worked_ = 0; // on the left and the right needle
  bool fresh_ = true;           // nothing worked yet
  bool middle_ = false;         // past the middle of the row
  Move before_ = Move::Return;  // the part before
  bool ended_ = false; // the row is turned before its edge, or worked over what waited there
  bool slippedBack_ = false;
  int lostAtStart_ = 0, lostAtEnd_ = 0;
  int made_ = 0; // in between, and the stitches before each of them
  int leastGap_ = 0, mostGap_ = 0;
};

} // namespace scye::reader
