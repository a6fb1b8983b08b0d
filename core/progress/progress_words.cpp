#include "progress/progress_words.h"

#include <cmath>

namespace scye {
namespace {

Param count(const char* name, int n) {
  return numberParam(name, n);
}

// Millimetres a person can do something with.
std::string seamText(const SeamNow& seam, double wanted, bool left, const Phrases& phrases,
                     LengthUnit unit, const char* key) {
  return phrases.say(key,
                     {phraseParam("side", left ? "progress.left" : "progress.right"),
                      lengthParam("armhole", seam.armhole), lengthParam("cap", seam.cap),
                      lengthParam("ease", seam.ease()), lengthParam("wanted", wanted)},
                     unit);
}

} // namespace

std::string workPieceName(const Phrases& phrases, PieceId piece) {
  return phrases.say(piece == PieceId::Sleeve ? "piece.rightSleeve"
                                              : "piece." + std::string(pieceKey(piece)));
}

std::string changeText(const Phrases& phrases, const PlanChange& c) {
  const std::string key = "progress.change." + std::string(kChangeKeys[c.what]);
  return phrases.say(c.what == PlanChange::What::Shaping ? key
                     : c.after > c.before                ? key + ".more"
                                                         : key + ".less",
                     {count("n", std::abs(c.after - c.before)), count("before", c.before),
                      count("after", c.after)});
}

std::vector<std::string> refitText(const Refit& r, const Phrases& phrases, LengthUnit unit) {
  std::vector<std::string> lines;
  for (const PieceId id : {PieceId::Back, PieceId::Front, PieceId::LeftFront, PieceId::RightFront,
                           PieceId::Sleeve, PieceId::LeftSleeve}) {
    std::vector<std::string> parts;
    for (const PlanChange& change : r.changes)
      if (change.piece == id) parts.push_back(changeText(phrases, change));
    if (!parts.empty())
      lines.push_back(phrases.say("progress.refit.piece",
                                  {textParam("piece", workPieceName(phrases, id)),
                                   textParam("changes", phrases.rules().commas(parts))}));
  }
  for (const RipBack& rip : r.ripBack)
    lines.push_back(phrases.say(
        rip.finished    ? "progress.refit.ripFinished"
        : rip.lines > 0 ? "progress.refit.rip"
                        : "progress.refit.ripAll",
        {textParam("piece", workPieceName(phrases, rip.piece)), count("row", rip.row)}));
  if (lines.empty()) lines.push_back(phrases.say("progress.refit.none"));
  for (const bool left : {false, true}) {
    const std::size_t i = left ? 1 : 0;
    if (r.after[i].cap <= 0) continue;
    lines.push_back(seamText(r.after[i], r.easeWanted, left, phrases, unit, "progress.refit.seam"));
    if (std::abs(r.before[i].cap - r.after[i].cap) > 0.05)
      lines.push_back(
          seamText(r.before[i], r.easeWanted, left, phrases, unit, "progress.refit.before"));
  }
  return lines;
}

std::string conflictText(const WorkedConflict& c, const Phrases& phrases) {
  const Params params{textParam("piece", workPieceName(phrases, c.piece)), count("row", c.row),
                      count("worked", c.stitchesWorked), count("designed", c.stitchesDesigned)};
  return phrases.say(c.stitchesWorked == c.stitchesDesigned ? "progress.conflict.shaping"
                                                            : "progress.conflict",
                     params);
}

std::vector<std::string> gaugeWarningText(const GaugeWarning& w, const Phrases& phrases,
                                          LengthUnit unit) {
  const auto tenths = [](double x) { return 0.1 * std::round(10 * x); };
  std::vector<std::string> lines{phrases.say(
      w.across ? "progress.gauge.across" : "progress.gauge.along",
      {textParam("piece", workPieceName(phrases, w.piece)), numberParam("here", tenths(w.perTen)),
       numberParam("swatch", tenths(w.swatchPerTen)),
       phraseParam("where", "field." + std::string(info(w.where).key)),
       lengthParam("comesTo", w.comesTo), lengthParam("wanted", w.wanted)},
      unit)};
  lines.push_back(
      phrases.say(w.largerNeedles ? "progress.gauge.larger" : "progress.gauge.smaller"));
  if (w.canRecount) lines.push_back(phrases.say("progress.gauge.recount"));
  lines.push_back(phrases.say("progress.gauge.live"));
  return lines;
}

std::string repeatText(const Phrases& phrases, const RepeatPlace& r) {
  return phrases.say("progress.repeat", {count("time", r.time), count("times", r.times),
                                         count("row", r.row), count("every", r.every)});
}

std::string toEventText(const Words& words, const Place& place) {
  if (!place.toEvent) return words.sayPlain("progress.event.none");
  if (*place.toEvent == 0) return words.sayPlain("progress.event.now");
  return words.sayPlain("progress.event", {count("n", *place.toEvent),
                                           textParam("row", rowName(words, *place.event))});
}

std::string timeText(const Phrases& phrases, double seconds) {
  const int minutes = int(std::lround(seconds / 60));
  return phrases.say(minutes >= 60 ? "progress.hours" : "progress.minutes",
                     {count("h", minutes / 60), count("m", minutes % 60)});
}

} // namespace scye
