#include "core/directions/reader_needle.h"

#include <algorithm>

namespace scye::reader {

namespace {

// The shapings by side of the work and end of the row: a decrease leans toward the middle as it is
// seen from the right side; so does an increase in its way (common practice).
struct Named {
  std::string_view plain, decrease, increase;
};
constexpr Named kNames[2][2] = {{{"p1", "p2tog", "M1LP"}, {"p1", "ssp", "M1RP"}},
                                {{"k1", "ssk", "M1R"}, {"k1", "k2tog", "M1L"}}};

std::optional<Part> takePart(Finger& finger, const Named& names) {
  int n = 0;
  if (finger.take("with RS facing, return the # held sts to the needle and join the yarn", {&n}))
    return Part{Move::Return, n};
  if (finger.take("put the last @ on a holder, without working them", {&n}) ||
      finger.take("bind off the last @ and fasten off", {&n}) ||
      finger.take("bind off the remaining @ and fasten off", {&n}))
    return Part{Move::BindOffAll, n};
  if (finger.take("bind off @", {&n})) return Part{Move::BindOff, n};
  if (finger.take("work to end, picking up the wraps")) return Part{Move::OverWraps, 0};
  if (finger.take("work to end")) return Part{Move::ToEnd, 0};
  if (finger.take("work to @ before the wrapped st", {&n})) return Part{Move::ToWrapped, n};
  if (finger.take("work to last st")) return Part{Move::ToLast, 1};
  if (finger.take("work to last # sts", {&n}) && n != 1) return Part{Move::ToLast, n};
  if (finger.take("work until there is 1 st on the right needle")) return Part{Move::UntilRight, 1};
  if (finger.take("work until there are # sts on the right needle", {&n}) && n != 1)
    return Part{Move::UntilRight, n};
  if (finger.take("w&t")) return Part{Move::WrapTurn, 0};
  if (finger.take("make a buttonhole over the next @", {&n})) return Part{Move::Buttonhole, n};
  if (finger.take("work @ and put them on a holder", {&n})) return Part{Move::HoldFirst, n};
  if (finger.take("work @", {&n})) {
    Finger ahead = finger;
    return Part{ahead.take(", make a buttonhole") ? Move::Work : Move::CountOff, n};
  }
  if (finger.take("turn; leave the other @ on a holder", {&n})) return Part{Move::Turn, n};
  if (finger.take(names.decrease)) return Part{Move::Decrease, 1};
  if (finger.take(names.increase)) return Part{Move::Increase, 1};
  if (finger.take(names.plain)) return Part{Move::Plain, 1};
  return {};
}

// "M1 after every 2 sts, 24 times", "M1 after the next 3 sts".
std::optional<Part> takeMakeOne(Finger& finger) {
  int n = 1, times = 1;
  if (finger.take("M1 after the next @", {&n})) return Part{Move::MakeOne, n};
  if (!finger.take("M1 after every st, # times", {&times}) &&
      !(finger.take("M1 after every # sts, # times", {&n, &times}) && n > 1))
    return {};
  if (times < 2) return {};
  return Part{Move::MakeOne, n, times};
}

bool isMiddle(Move move) {
  return move == Move::ToEnd || move == Move::ToLast || move == Move::ToWrapped ||
         move == Move::OverWraps || move == Move::UntilRight || move == Move::CountOff;
}

} // namespace

std::optional<std::vector<Part>> takeParts(Finger& finger, bool rightSide) {
  std::vector<Part> parts;
  bool atEnd = false;
  do {
    if (const auto made = takeMakeOne(finger)) {
      if (atEnd) return {};
      parts.push_back(*made);
      while (finger.take(", then ")) {
        const auto then = takeMakeOne(finger);
        if (!then) return {};
        parts.push_back(*then);
      }
      continue;
    }
    const std::optional<Part> part = takePart(finger, kNames[rightSide][atEnd]);
    if (!part) return {};
    atEnd = atEnd || isMiddle(part->move);
    parts.push_back(*part);
  } while (finger.take(", "));
  return parts;
}

Shaped shapedBy(const std::vector<Part>& parts, bool rightSide) {
  int lost[2] = {0, 0}; // before and after the middle
  bool atEnd = false;
  for (const Part& part : parts) {
    atEnd = atEnd || isMiddle(part.move);
    if (part.move == Move::Increase) lost[atEnd] -= 1;
    if (part.move == Move::Decrease || part.move == Move::BindOff ||
        part.move == Move::BindOffAll || part.move == Move::HoldFirst)
      lost[atEnd] += part.stitches;
    if (part.move == Move::WrapTurn) lost[1] += 1; // at least; how many, the needle knows
    if (part.move == Move::OverWraps) lost[1] -= 1;
  }
  return rightSide ? Shaped{lost[0], lost[1]} : Shaped{lost[1], lost[0]};
}

std::string Needle::work(const std::vector<Part>& parts, bool rightSide,
                         std::optional<Held>& held) {
  rightSide_ = rightSide, fresh_ = true, middle_ = ended_ = slippedBack_ = false;
  toWork_ = stitches_, worked_ = 0, lostAtStart_ = lostAtEnd_ = made_ = 0;
  leastGap_ = stitches_, mostGap_ = 0;
  before_ = Move::Return;
  holes_.clear();
  for (const Part& part : parts) {
    if (ended_) return "the row has ended already";
    if (before_ == Move::ToWrapped && part.move != Move::WrapTurn)
      return "the row goes on to the wrapped stitch";
    if (std::string why = move(part, held); !why.empty()) return why;
    fresh_ = fresh_ && part.move == Move::Return;
    before_ = part.move;
  }
  if (toWork_ != 0) return std::to_string(toWork_) + " stitches are left unworked";
  if (ahead() > 0 && !ended_) return "stitches wait at the edge that the row goes on to";
  if (behind() > 0 && lostAtStart_ != 0) return "the edge is shaped while stitches wait there";
  stitches_ = worked_;
  // Of an odd number one more lies at the left.
  const int toRight = toward_ == "right" ? made_ : toward_ == "left" ? 0 : made_ / 2;
  edges_.right -= (rightSide_ ? lostAtStart_ : lostAtEnd_) - toRight;
  edges_.left += (rightSide_ ? lostAtEnd_ : lostAtStart_) - (made_ - toRight);
  if (edges_.right - edges_.left != stitches_) return "the edges do not hold what is on the needle";
  return {};
}

std::string Needle::move(const Part& part, std::optional<Held>& held) {
  const int n = part.stitches;
  int& lost = middle_ ? lostAtEnd_ : lostAtStart_;
  middle_ = middle_ || isMiddle(part.move);
  switch (part.move) {
  case Move::Return:
    if (!fresh_ || stitches_ != 0) return "other stitches are on the needle still";
    if (!rightSide_) return "the right side is not facing";
    if (!held || held->stitches() != n) return "that is not what is on the holder";
    edges_ = held->edges, toWork_ = n - held->waiting, waiting_ = {held->waiting, 0};
    held.reset();
    return {};
  case Move::BindOff:
    if (!fresh_) return "a bind-off in the middle of a row";
    // The last one is drawn over a stitch that is worked for it.
    if (n < 1 || n >= toWork_) return "there is no stitch to draw the last one over";
    lost += n, toWork_ -= n + 1, worked_ = 1;
    return {};
  case Move::HoldFirst:
    if (!fresh_ || n < 1 || n >= toWork_) return "there is nothing left to work";
    lost += n, toWork_ -= n;
    return {};
  case Move::BindOffAll:
    if (!fresh_ || n < 1 || n != toWork_) return "that is not all there is";
    lost += n, toWork_ = 0;
    return {};
  case Move::Plain:
  case Move::Decrease:
    // Does "k1" mean the stitch that the bind-off has left on the needle, or one more?
    if (before_ == Move::BindOff) return "it is not clear which stitch comes after the bind-off";
    if (toWork_ < (part.move == Move::Plain ? 1 : 2)) return "there are too few stitches";
    toWork_ -= part.move == Move::Plain ? 1 : 2, worked_ += 1;
    lost += part.move == Move::Plain ? 0 : 1;
    return {};
  case Move::Increase:
    if (toWork_ < 1 || worked_ < 1) return "there is no strand between two stitches";
    worked_ += 1, lost -= 1;
    return {};
  case Move::ToEnd:
    if (made_ > 0 && std::max(mostGap_, toWork_) - std::min(leastGap_, toWork_) > 1)
      return "they are not spread evenly";
    worked_ += toWork_, toWork_ = 0;
    return {};
  case Move::ToLast:
    if (before_ == Move::BindOff && toWork_ == n - 1)
      worked_ -= 1, toWork_ += 1, slippedBack_ = true;
    if (toWork_ < n) return "there are too few stitches left";
    worked_ += toWork_ - n, toWork_ = n;
    return {};
  case Move::UntilRight:
    if (worked_ > n || worked_ + toWork_ < n) return "there cannot be so many on the right needle";
    toWork_ -= n - worked_, worked_ = n;
    return {};
  case Move::CountOff:
    if (worked_ != 0) return "it is not clear from where they are counted";
    if (n < 1 || toWork_ < n) return "there are too few stitches";
    toWork_ -= n, worked_ = n;
    return {};
  case Move::Turn:
    if (held) return "the holder is full";
    if (!rightSide_ || toWork_ < 1 || toWork_ + ahead() != n)
      return "that is not what is left to be held";
    held = Held{{edges_.left, edges_.left + toWork_}, ahead()};
    lostAtEnd_ += toWork_, toWork_ = ahead() = 0;
    return {};
  case Move::Work:
    if (before_ == Move::BindOff) return "it is not clear which stitch comes after the bind-off";
    if (n < 1 || toWork_ < n) return "there are too few stitches";
    worked_ += n, toWork_ -= n;
    return {};
  case Move::Buttonhole:
    return buttonhole(n);
  case Move::MakeOne:
    return makeOne(part);
  case Move::ToWrapped:
  case Move::WrapTurn:
  case Move::OverWraps:
    return shortRow(part);
  }
  return "no move";
}

std::string Needle::shortRow(const Part& part) {
  const int n = part.stitches;
  if (part.move == Move::ToWrapped) {
    if (ahead() == 0) return "no stitch is wrapped there";
    if (n < 1 || toWork_ < n) return "there are too few stitches left";
    worked_ += toWork_ - n, toWork_ = n;
    return {};
  }
  ended_ = true;
  if (part.move == Move::OverWraps) {
    if (ahead() == 0) return "there are no wraps";
    lostAtEnd_ -= ahead();
    worked_ += toWork_ + ahead(), toWork_ = ahead() = 0;
    return {};
  }
  if (before_ != (ahead() > 0 ? Move::ToWrapped : Move::ToLast))
    return "it is not clear where the row is turned";
  if (worked_ < 1) return "nothing is worked before the turn";
  lostAtEnd_ += toWork_;
  ahead() += toWork_, toWork_ = 0;
  return {};
}

// The stitch after it is needed to close it.
std::string Needle::buttonhole(int stitches) {
  if (before_ != Move::Work && before_ != Move::ToLast)
    return "it is not clear where the buttonhole is";
  if (worked_ < 1 || toWork_ <= stitches) return "there are too few stitches for a buttonhole";
  const int end = rightSide_ ? edges_.left + toWork_ : edges_.right - toWork_;
  holes_.push_back(rightSide_ ? Edges{end - stitches, end} : Edges{end, end + stitches});
  worked_ += stitches, toWork_ -= stitches;
  return {};
}

std::string Needle::makeOne(const Part& part) {
  if (before_ == Move::BindOff) return "it is not clear which stitch comes after the bind-off";
  if (part.stitches < 1 || toWork_ <= part.times * part.stitches)
    return "there is no strand between two stitches";
  toWork_ -= part.times * part.stitches;
  worked_ += part.times * (part.stitches + 1);
  made_ += part.times;
  leastGap_ = std::min(leastGap_, part.stitches), mostGap_ = std::max(mostGap_, part.stitches);
  return {};
}

} // namespace scye::reader
