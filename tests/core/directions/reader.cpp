#include "core/directions/reader.h"

#include "core/directions/reader_needle.h"
#include "core/directions/reader_notes.h"
#include "core/directions/reader_page.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <set>

namespace scye::reader {

namespace {

struct Word {
  std::string_view uk, us;
};
constexpr std::array<Word, 5> kUkWords = {{{"cast off", "bind off"},
                                           {"straight", "even"},
                                           {"Making up", "Finishing"},
                                           {"stocking stitch", "stockinette"},
                                           {"moss stitch", "seed stitch"}}};

constexpr std::array<std::string_view, 7> kPieces = {
    "Back", "Front", "Left front", "Right front", "Sleeve (make 2)", "Left sleeve", "Right sleeve"};

constexpr std::array<std::string_view, 15> kAbbreviations = {
    "ssk",  "k2tog", "p2tog", "ssp", "M1", "M1L", "M1R",  "M1LP",
    "M1RP", "st",    "sts",   "RS",  "WS", "w&t", "wraps"};

class Reader {
public:
  Reader(std::string_view text, Terms terms) : terms_(terms) {
    std::vector<PageLine> lines = pageLines(text);
    lines.emplace_back().blank = true; // looked at when there is no more
    for (PageLine& line : lines) {
      line_ = &line;
      if (terms_ == Terms::Uk) toUs(line.text);
      if (line.underlined)
        heading();
      else if (place_ == Place::Abbreviations)
        abbreviation();
      else if (place_ == Place::Piece && !line.blank)
        line.deep ? rows() : partOrNote();
    }
    if (place_ != Place::End) complain("the directions end too soon");
  }

  Reading reading() && { return std::move(out_); }

private:
  enum class Place { Front, Abbreviations, Piece, End };

  void complain(std::string why, bool edgeNames = false) {
    out_.complaints.push_back({line_->number, line_->text, std::move(why), edgeNames});
  }

  // Words of the other terms must not be among them.
  void toUs(std::string& text) {
    for (const auto& [uk, us] : kUkWords) {
      if (place_ == Place::Piece && line_->deep && text.find(us) != text.npos)
        complain("not a word of these terms");
      for (std::size_t at = 0; (at = text.find(uk, at)) != text.npos;)
        text.replace(at, uk.size(), us);
    }
  }

  void heading() {
    const std::string& text = line_->text;
    if (place_ == Place::Front) {
      if (text == "Abbreviations") place_ = Place::Abbreviations;
      return;
    }
    closePiece();
    if (std::find(kPieces.begin(), kPieces.end(), text) != kPieces.end() && place_ != Place::End) {
      place_ = Place::Piece;
      out_.pieces.push_back({.name = text, .rows = {}, .rib = {}});
      at_ = {};
    } else if (text == "Finishing" && place_ != Place::End) { // of a garment that has no pieces too
      place_ = Place::End;
    } else {
      complain("no heading that belongs here");
    }
  }

  void abbreviation() { explained_.insert(line_->text.substr(0, line_->text.find(':'))); }

  void closePiece() {
    if (place_ != Place::Piece) return;
    closePart();
    if (at_.needle.stitches() != 0 || at_.held) complain("the piece before is not finished");
    if (const std::string why = at_.announced.broken(at_.underarm); !why.empty()) complain(why);
    if (const auto longer = at_.announced.longer()) out_.lengths.push_back(*longer);
    const int band = at_.announced.band();
    if (band > 0 && band_ > 0 && band != band_) complain("the other band is not as wide");
    band_ = std::max(band, band_);
  }

  void closePart() {
    if (at_.part.hasRows && at_.next != at_.part.last + 1)
      complain("the part before ends elsewhere");
  }

  void partOrNote() {
    const std::string_view text = line_->text;
    if (const auto part = partHeading(text)) {
      closePart();
      if (part->section != at_.section) changeSection(part->section);
      at_.part = *part, at_.names.reset();
      if (!part->hasRows) return;
      if (part->first != std::max(at_.next, 1)) complain("the part begins elsewhere");
      if (part->upper && !at_.underarm) at_.underarm = part->first;
      note(part->last - part->first + 1, part->length, part->inches);
    } else if (const auto names = atTheSameTime(text)) {
      at_.names = names;
    } else if (const auto told = noteRead(text)) {
      if (told->needle > 0) sameNeedle(changedNeedle_, told->needle);
      at_.announced.add(*told, line_->number);
    } else {
      complain("no heading or note");
    }
  }

  void changeSection(std::string_view to) {
    if (at_.section == "body" && to == "right") {
      at_.split = at_.next;
    } else if (at_.section == "right" && to == "left" && at_.needle.stitches() == 0) {
      at_.next = at_.split;
    } else {
      complain("this side cannot follow");
    }
    at_.section = to;
  }

  void note(int rows, double length, bool inches) {
    out_.lengths.push_back({line_->number, rows, length, inches});
  }

  void rows() {
    out_.steps += 1;
    explainedAll();
    Finger finger(line_->text);
    shaped_ = {false, false};
    int count = 0;
    if (finger.take("Cast on @", {&count})) {
      double needle = 0;
      if (finger.take(" with the smaller needles"))
        castOnWith(-1);
      else if (finger.take(" with ")) {
        if (!finger.takeMillimetres(needle) || !finger.take(" needles"))
          return complain("no needles");
        castOnWith(needle);
      }
      if (!finger.take(".") || !finger.done()) return complain("the line goes on");
      return castOn(count);
    } else {
      const auto named = takeRows(finger);
      if (!named) return complain("no rows");
      if (named->first != at_.next) complain("another row comes next");
      if (named->side != WorkSide::Any &&
          (named->side == WorkSide::Right) != rightSide(named->first))
        complain("the row is on the other side");
      if (!(named->first == named->last && row(finger, *named)) && !several(finger, *named))
        return complain("no such sentence");
      checkEdges(*named);
    }
    int waiting = 0;
    const bool taken = at_.needle.waiting() > 0
                           ? finger.take(" (@, # waiting).", {&count, &waiting})
                           : finger.take(" (@).", {&count});
    if (!taken || !finger.done()) return complain("no count ends the line");
    if (count != at_.needle.stitches() || waiting != at_.needle.waiting())
      complain("on the needle are " + std::to_string(at_.needle.stitches()) + ", and " +
               std::to_string(at_.needle.waiting()) + " wait");
  }

  // Plain edges on one size, ribs on another.
  void castOnWith(double needle) {
    edgeNeedles_.insert(needle);
    if (edgeNeedles_.size() > 2) complain("other needles than for the pieces before");
  }
  void sameNeedle(std::optional<double>& known, double told) {
    if (known && *known != told) complain("other needles than for another piece");
    known = told;
  }

  void castOn(int count) {
    if (at_.next != 0 || count < 1) complain("not the place to cast on");
    const std::string& name = out_.pieces.back().name;
    at_.needle.castOn(count, name == "Left front" ? "right" : name == "Right front" ? "left" : "");
    record();
  }

  // One row, and perhaps the even one after it.
  bool row(Finger& finger, const RowsNamed& named) {
    if (finger.take("work even")) return even(1), true;
    if (finger.take("purl across, for the fold line")) return fold(named), true;
    if (finger.take("work row 1 again")) {
      if (at_.rib.size() != 2 || at_.next != 3) complain("no two rows to repeat");
      return even(1), true;
    }
    if (at_.next <= 2 && at_.rib.size() + 1 == std::size_t(at_.next)) {
      Finger ahead = finger;
      if (auto rib = takeRib(ahead, at_.needle.stitches())) {
        finger = ahead;
        return ribRow(std::move(*rib)), true;
      }
    }
    const bool rs = rightSide(named.first);
    Finger ahead = finger;
    const auto parts = takeParts(ahead, rs);
    if (!parts) return false;
    finger = ahead;
    at_.told[{at_.section, named.first}] = *parts;
    knit(*parts);
    int after = 0;
    if (finger.take("; row #: work even", {&after})) {
      if (after != at_.next) complain("another row comes next");
      even(1);
    }
    return true;
  }

  // As it looks from the right side the second row lies on the first, or against it.
  void ribRow(std::vector<bool> row) {
    if (at_.next == 2) {
      const std::vector<bool>& before = at_.rib.front();
      const bool seed = std::equal(row.rbegin(), row.rend(), before.begin());
      std::vector<bool> seen(row.rbegin(), row.rend());
      seen.flip();
      if (!seed && seen != before) complain("the second row does not go on with the first");
      if (seed && before.size() > 1)
        for (std::size_t i = 1; i < before.size(); ++i)
          if (before[i] == before[i - 1]) return complain("no seed stitch");
    } else {
      out_.pieces.back().rib = row;
    }
    at_.rib.push_back(std::move(row));
    even(1);
  }

  void fold(const RowsNamed& named) {
    if (named.side != WorkSide::Right || at_.facing != at_.next - 1 || at_.next < 2)
      complain("no facing ends before the fold");
    at_.fold = at_.next;
    even(1);
  }

  bool several(Finger& finger, const RowsNamed& named) {
    const bool taken = evenRows(finger, named) || bindOffs(finger, named) || repeats(finger);
    if (taken && at_.next != named.last + 1) complain("the rows are not as many as named");
    return taken;
  }

  bool evenRows(Finger& finger, const RowsNamed& named) {
    int count = named.last - named.first + 1;
    Finger ahead = finger;
    const bool facing = ahead.take("work the facing");
    const bool again = ahead.take("repeat rows 1 and 2");
    if (again && (at_.rib.size() != 2 || at_.next != 3)) complain("no two rows to repeat");
    if (!facing && !again && !edgeStitch(ahead, named)) {
      if (!ahead.take("work ~ even", {&count})) return false;
    }
    const bool ws = ahead.take(", ending with a WS row");
    if (!ws && !ahead.take(", ending with an RS row")) return false;
    finger = ahead;
    if (facing && named.first != 1) complain("a facing begins at the cast-on");
    even(count);
    if (facing) at_.facing = named.last;
    if (ws == rightSide(at_.next - 1)) complain("the rows end on the other side");
    const int done = at_.next - 1;
    if (finger.take("; the piece measures ")) {
      measure(finger, at_.fold ? done - *at_.fold + 1 : done);
      if (finger.take(" from the fold") != at_.fold.has_value())
        complain("the fold is where a piece begins");
    } else if (finger.take("; the armhole measures ") || finger.take("; the cap measures "))
      measure(finger, at_.underarm ? done - underarmHere() + 1 : -1);
    return true;
  }

  // The row in which the armhole of the side in work begins. Of the left half of a divided piece it
  // is the piece's left edge, which is bound off on the wrong side.
  [[nodiscard]] int underarmHere() const {
    if (at_.section != "left") return *at_.underarm;
    std::optional<int> edge;
    for (const RowRead& row : out_.pieces.back().rows) {
      if (row.section == "right") continue;
      if (edge && row.row >= *at_.underarm && row.left != *edge) return row.row;
      edge = row.left;
    }
    return *at_.underarm;
  }

  // A lower edge that is not written out.
  bool edgeStitch(Finger& finger, const RowsNamed& named) {
    int repeat = 0, before = 0, after = 0;
    if (named.first != 1) return false;
    for (const char* plain :
         {"knit every row", "work in stockinette", "work in 2x2 rib", "work in 1x1 rib",
          "work in rib of 3 knit and 1 purl", "work in seed stitch", "work in garter stitch"})
      if (finger.take(plain)) return true;
    if (!finger.take(
            "work in your edge stitch, a repeat of @, with @ before the first repeat and @ "
            "after the last",
            {&repeat, &before, &after}))
      return false;
    const int rest = at_.needle.stitches() - before - after;
    if (repeat < 1 || rest < 0 || rest % repeat != 0) complain("the repeats do not come out");
    return true;
  }

  void measure(Finger& finger, int rows) {
    double length = 0;
    bool inches = false;
    if (!finger.takeLength(length, inches)) return complain("no length");
    note(rows, length, inches);
  }

  bool bindOffs(Finger& finger, const RowsNamed& named) {
    int stitches = 0, times = 0;
    if (!finger.take("bind off @ at the beginning of ", {&stitches})) return false;
    const std::vector<Part> parts = {{Move::BindOff, stitches}, {Move::ToEnd, 0}};
    if (finger.take("these # rows", {&times})) {
      for (int i = 0; i < times; ++i)
        knit(parts);
      return true;
    }
    const bool rs = finger.take("every RS row, # times", {&times});
    if (!rs && !finger.take("every WS row, # times", {&times})) return false;
    if (rs != rightSide(named.first)) complain("the rows are on the other side");
    for (int i = 0; i < times && at_.next <= named.last; ++i) {
      knit(parts);
      if (at_.next <= named.last) even(1);
    }
    if (named.last - named.first + 2 < 2 * times) complain("there are too few rows");
    return true;
  }

  // "decrease as on row 17 on every 4th row, 5 times more", "work 5 rows even, then ...".
  bool repeats(Finger& finger) {
    int every = 1, times = 1, like = 0;
    const bool once = finger.take("work ~ even, then ", {&every});
    if (once) every += 1;
    const bool decrease = finger.take("decrease"), increase = !decrease && finger.take("increase");
    if (!decrease && !increase && !finger.take("shape")) return false;
    if (!finger.take(" as on row #", {&like})) return false;
    if (!once && finger.take(" on ")) {
      const auto named = takeEvery(finger);
      if (!named || !finger.take(", # times more", {&times})) return false;
      every = *named;
    }
    const std::vector<Part>* parts = told(like);
    if (!parts) return complain("no such row to go by"), true;
    if (!repeatable(*parts, decrease, increase)) complain("the row to go by does not do that");
    std::optional<std::vector<Part>> other;
    const bool rs = rightSide(like);
    if (finger.take(rs ? "; on WS rows: " : "; on RS rows: ")) {
      other = takeParts(finger, !rs);
      if (!other) return false;
      if (shapedBy(*other, !rs) != shapedBy(*parts, rs)) complain("the other side does otherwise");
    }
    bool otherUsed = false;
    for (int i = 0; i < times; ++i) {
      even(every - 1);
      const bool same = rightSide(at_.next) == rs;
      otherUsed = otherUsed || !same;
      if (!same && !other) complain("the row to go by is on the other side");
      knit(same || !other ? *parts : *other);
    }
    if (other && !otherUsed) complain("told for the other side without need");
    return true;
  }

  const std::vector<Part>* told(int row) const {
    for (const std::string_view section : {at_.section, std::string_view("body")})
      if (const auto found = at_.told.find({section, row}); found != at_.told.end())
        return &found->second;
    return nullptr;
  }

  static bool repeatable(const std::vector<Part>& parts, bool decrease, bool increase) {
    bool less = false, more = false;
    for (const Part& part : parts) {
      less = less || part.move == Move::Decrease;
      more = more || part.move == Move::Increase;
      if (part.move != Move::Plain && part.move != Move::Decrease && part.move != Move::Increase &&
          part.move != Move::ToEnd && part.move != Move::ToLast)
        return false;
    }
    return decrease ? less && !more : increase ? more && !less : less && more;
  }

  static bool rightSide(int row) { return row % 2 == 1; }

  void even(int count) {
    for (int i = 0; i < count; ++i)
      knit({{Move::ToEnd, 0}});
  }

  void knit(const std::vector<Part>& parts) {
    const bool rs = rightSide(at_.next);
    if (at_.next == 0) return complain("nothing is cast on");
    if (at_.needle.stitches() == 0 && parts.front().move != Move::Return)
      complain("nothing is on the needle");
    if (const std::string why = at_.needle.work(parts, rs, at_.held); !why.empty())
      complain("row " + std::to_string(at_.next) + ": " + why);
    if (at_.needle.slippedBack())
      out_.awkward.push_back({line_->number, line_->text, "a stitch has to be put back", false});
    const Shaped shaped = shapedBy(parts, rs);
    shaped_.right = shaped_.right || shaped.right != 0;
    shaped_.left = shaped_.left || shaped.left != 0;
    if (at_.held.has_value() != (at_.section == "right"))
      complain("the holder is not as the part says");
    record();
  }

  void record() {
    const Edges edges = at_.needle.edges();
    RowRead row{at_.section,          at_.next, edges.left, edges.right, at_.needle.stitches(),
                at_.needle.waiting(), {}};
    for (const Edges& hole : at_.needle.holes())
      row.holes.push_back({hole.left, hole.right});
    at_.announced.worked(row, at_.needle.waitingAt(), !at_.underarm);
    out_.pieces.back().rows.push_back(std::move(row));
    at_.next += 1;
  }

  // Where the edges are shaped for different ends, a line names those that it shapes.
  void checkEdges(const RowsNamed& named) {
    ShapedAt told{false, false};
    for (const std::string_view edge : named.edges) {
      if (!at_.names) return complain("no edges are told apart here", true);
      const auto& [right, left] = *at_.names;
      if (std::find(right.begin(), right.end(), edge) != right.end())
        told.right = true;
      else if (std::find(left.begin(), left.end(), edge) != left.end())
        told.left = true;
      else
        complain("that is neither of the two edges", true);
    }
    if (at_.names && (told.right != shaped_.right || told.left != shaped_.left))
      complain("shaped are other edges", true);
  }

  void explainedAll() {
    for (const std::string_view word : kAbbreviations)
      if (!explained_.contains(word) && hasWord(line_->text, word))
        complain("not explained: " + std::string(word));
    for (const char* letter : {"k", "p"})
      if (!explained_.contains(letter) && hasCounted(line_->text, *letter))
        complain(std::string("not explained: ") + letter);
  }

  // "k2", but not "k2tog"
  static bool hasCounted(std::string_view text, char letter) {
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
      if (text[i] != letter || (i > 0 && std::isalnum(text[i - 1]))) continue;
      std::size_t end = i + 1;
      while (end < text.size() && std::isdigit(text[end]))
        ++end;
      if (end > i + 1 && (end == text.size() || !std::isalpha(text[end]))) return true;
    }
    return false;
  }

  static bool hasWord(std::string_view text, std::string_view word) {
    const auto letter = [&](std::size_t i) { return i < text.size() && std::isalnum(text[i]); };
    for (std::size_t at = 0; (at = text.find(word, at)) != text.npos; ++at)
      if (!(at > 0 && letter(at - 1)) && !letter(at + word.size())) return true;
    return false;
  }

  // The place in the piece in work.
  struct At {
    std::string_view section = "body";
    int next = 0;  // row
    int split = 0; // the row in which the piece is divided
    Needle needle;
    std::optional<Held> held;
    PartHeading part;
    std::optional<EdgeNames> names;
    std::optional<int> underarm; // the row in which armhole or cap begins
    Announced announced;
    std::vector<std::vector<bool>> rib; // rows that are written out: which stitches are knitted
    std::optional<int> facing, fold;    // the facing's last row, and the row of its fold
    std::map<std::pair<std::string_view, int>, std::vector<Part>> told; // rows that are written out
  };
  struct ShapedAt {
    bool right = false, left = false;
  };

  Terms terms_;
  Reading out_;
  const PageLine* line_ = nullptr;
  Place place_ = Place::Front;
  std::set<std::string, std::less<>> explained_;
  std::set<double> edgeNeedles_; // mm; -1: the smaller ones
  std::optional<double> changedNeedle_;
  int band_ = 0; // stitches of the button band, once it is told
  At at_;
  ShapedAt shaped_; // by the line in hand
};

} // namespace

Reading read(std::string_view text, Terms terms) {
  return Reader(text, terms).reading();
}

} // namespace scye::reader
