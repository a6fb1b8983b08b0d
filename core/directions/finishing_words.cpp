#include "directions/finishing_words.h"

#include "directions/materials_words.h"
#include "directions/rib_words.h"

#include <cmath>

namespace scye {
namespace {

// cm of ease: less would read as nothing.
double worthTelling(const Words& words) {
  return words.unit() == LengthUnit::Inch ? kCmPerInch / 16 : 0.1;
}

// "20 rows to 21 rows, 6 times, then ..."
std::string inOrder(const Words& words, const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts)
    text = text.empty() ? part
                        : words.say("finishing.then", {textParam("a", text), textParam("b", part)});
  return text;
}

Param times(const Words& words, int n) {
  return textParam("times",
                   words.say(n == 1 ? "finishing.once" : "finishing.times", {countParam("n", n)}));
}

class Sentences {
public:
  Sentences(const Words& words, const Directions& d) : words_(words), d_(d), f_(d.finishing) {}

  std::vector<std::string> all() {
    say("block");
    say(f_.threeNeedles        ? "shoulders.threeNeedles"
        : f_.shoulderShortRows ? "shoulders.shortRows"
                               : "shoulders",
        {countParam("k", f_.shoulder)});
    if (d_.slit) slit();
    const PickUps& p = f_.makingUp.pickUps;
    if (p.band.stitches > 0 && !p.band.withNeck) bands();
    if (p.neck.total() > 0) neck();
    if (d_.capKnitted) sleeves();
    upToSleeves_ = out_.size();
    seams();
    if (f_.faced) say("facing");
    if (const int n = buttonsWithHoles(d_); n > 0) say("buttons", {countParam("n", n)});
    say("ends");
    if (d_.figure == Figure::Child || d_.figure == Figure::Baby)
      out_.push_back(words_.sayPlain("finding.child.safety"));
    return std::move(out_);
  }

  [[nodiscard]] std::size_t upToSleeves() const { return upToSleeves_; }

private:
  void say(const std::string& key, Params params = {}) {
    out_.push_back(words_.say("finishing." + key, std::move(params)));
  }
  [[nodiscard]] std::string inner(const std::string& key, Params params = {}) const {
    return words_.say("finishing." + key, std::move(params));
  }

  void bands() {
    const PickUps& p = f_.makingUp.pickUps;
    say("bands", {countParam("k", p.band.stitches), countParam("rows", p.band.rows), ratio()});
    bandRows(f_.buttonBandRows, f_.buttonBand, "bands.rows");
    buttonholes();
    say("bands.off");
  }

  void slit() {
    say("slit", {countParam("rows", f_.slitRows), countParam("k", f_.slitStitches)});
    say(d_.figure == Figure::Baby ? "slit.baby" : "slit.closed");
  }

  // How many rows of a band, and how they begin; a band worked to and fro begins on the wrong side.
  void bandRows(int rows, double width, const char* key) {
    const RibStitch& rib = d_.rib;
    say(key, {countParam("n", rows), lengthParam("width", width),
              textParam("rib", ribName(words_, rib))});
    if (rib.columns() && std::string_view(key) != "neck.rows.round")
      say("bands.alike", {textParam("knit", words_.say("rib.knit", {countParam("n", rib.knit)}))});
  }

  void buttonholes() {
    const BandButtonholes& b = f_.makingUp.pickUps.buttonholes;
    if (b.count == 0) return;
    // At most two distances, the larger first.
    std::vector<std::string> between;
    for (std::size_t i = 0; i < b.between.size();) {
      std::size_t j = i;
      while (j < b.between.size() && b.between[j] == b.between[i])
        ++j;
      between.push_back(
          inner("bands.between", {countParam("k", b.between[i]), times(words_, int(j - i))}));
      i = j;
    }
    say(between.empty() ? "bands.hole" : "bands.holes",
        {textParam("front", words_.sayPlain(b.piece == PieceId::LeftFront ? "piece.leftFront"
                                                                          : "piece.rightFront")),
         countParam("n", b.count), countParam("k", b.stitches), countParam("before", b.before),
         countParam("row",
                    (f_.makingUp.pickUps.band.withNeck ? f_.neckRows : f_.buttonBandRows) / 2 + 1),
         textParam("between", inOrder(words_, between)), countParam("after", b.after)});
    out_.push_back(words_.say(b.stitches > 1 ? "piece.buttonhole.how" : "piece.buttonhole.one",
                              {countParam("k", b.stitches)}));
  }

  [[nodiscard]] Param ratio() const {
    const PickUpRatio& r = f_.makingUp.pickUps.ratio;
    return textParam("ratio",
                     inner("ratio", {countParam("a", r.stitches), countParam("b", r.rows)}));
  }

  void neck() {
    if (f_.neckBand < kLeastBandWidth && !f_.makingUp.pickUps.band.withNeck) {
      say("neck.bare");
      return;
    }
    const NeckPickUp& n = f_.makingUp.pickUps.neck;
    const BandPickUp& band = f_.makingUp.pickUps.band;
    const int half = n.back / 2;
    Params params{countParam("back", n.back),
                  countParam("front", n.front),
                  countParam("top", n.bandTop),
                  countParam("half", half),
                  countParam("other", n.back - half),
                  countParam("band", band.stitches),
                  countParam("total", n.total() + (band.withNeck ? 2 * band.stitches : 0)),
                  ratio()};
    say(n.round         ? "neck.round"
        : !n.twoFronts  ? "neck.slit"
        : band.withNeck ? "neck.withBands"
        : n.bandTop > 0 ? "neck.overBands"
                        : "neck.fronts",
        std::move(params));
    bandRows(f_.neckRows, f_.neckBand, n.round ? "neck.rows.round" : "neck.rows");
    if (band.withNeck) buttonholes();
    if (f_.neckline.stands) say("neck.stands", {lengthParam("width", f_.neckBand)});
    mitres(n);
    say(n.twoFronts ? "neck.fold" : "neck.loose");
  }

  // On every 2nd row a stitch is taken away on either side of a point or corner.
  void mitres(const NeckPickUp& n) {
    const bool point = f_.neckline.straight && !n.twoFronts;
    const int times = f_.neckRows / 2;
    if ((!point && !f_.neckline.corner) || times == 0) return;
    const int left = n.total() - times * (point ? 2 : 4);
    if (left < 1) return;
    say(point ? "neck.point" : "neck.corners",
        {textParam("times", words_.say(times == 1 ? "finishing.once" : "finishing.times",
                                       {countParam("n", times)})),
         countParam("left", left)});
  }

  // Once where both armholes have it, to what a length is told in.
  void edgeLengths() {
    const auto told = [&](double cm) { return words_.phrases().length(cm, words_.unit()); };
    const bool alike =
        told(f_.armhole[0]) == told(f_.armhole[1]) && told(f_.cap[0]) == told(f_.cap[1]);
    say(alike ? "edges" : "edges.two",
        {lengthParam("armhole", f_.armhole[0]), lengthParam("cap", f_.cap[0]),
         lengthParam("otherArmhole", f_.armhole[1]), lengthParam("otherCap", f_.cap[1])});
  }

  void sleeves() {
    say("pin");
    edgeLengths();
    const bool alike = pinnedAlike(f_.makingUp.marks);
    say(alike ? "marks.alike" : "marks");
    for (std::size_t side = 0; side < f_.makingUp.marks.size(); side += 2) {
      if (side > 0 && alike) break;
      if (!alike) say(side == 0 ? "marks.right" : "marks.left");
      marks(f_.makingUp.marks[side]);
      marks(f_.makingUp.marks[side + 1]);
      shoulder(f_.makingUp.marks[side].marks.back(), f_.makingUp.marks[side + 1].marks.back());
    }
    if (f_.top.any()) drawnIn();
    if (f_.eased > worthTelling(words_))
      say(f_.top.any() ? "ease.rest" : "ease", {lengthParam("ease", f_.eased)});
    say("sew", {countParam("n", f_.selvedge)});
  }

  // All but the shoulder where that divides the crown: it is told for both sides at once.
  void marks(const SeamMarks& side) {
    for (std::size_t i = 0; i < side.marks.size(); ++i) {
      const SeamMark& m = side.marks[i];
      if (m.kind == NotchKind::Shoulder && m.cap.flat == Flat::Crown) continue;
      const std::string name = words_.sayPlain("mark." + std::string(notchKey(m.kind)));
      Params params{
          textParam("Side", inner(side.half == ArmholeHalf::Back ? "mark.back" : "mark.front")),
          countParam("n", int(i) + 1),
          textParam("name", m.kind == NotchKind::Between
                                ? ""
                                : inner("mark.name", {textParam("name", name)})),
          textParam("places", markText(words_, m, side)), lengthParam("ease", m.ease)};
      say(m.ease > worthTelling(words_) ? "mark.ease" : "mark", std::move(params));
    }
  }
  void shoulder(const SeamMark& back, const SeamMark& front) {
    if (back.cap.flat != Flat::Crown) return;
    say("mark.shoulder", {countParam("crown", f_.crown), countParam("back", back.cap.stitches),
                          countParam("front", front.cap.stitches)});
  }

  void drawnIn() {
    const DrawnIn& d = f_.top.lengths;
    const auto pin = [](const SeamMarks& side) {
      int n = 1;
      for (const SeamMark& m : side.marks) {
        if (m.kind == NotchKind::GathersBegin) break;
        ++n;
      }
      return n;
    };
    Params params{lengthParam("cap", d.cap),
                  lengthParam("armhole", d.armhole),
                  countParam("back", pin(f_.makingUp.marks[0])),
                  countParam("front", pin(f_.makingUp.marks[1])),
                  lengthParam("crown", d.crown),
                  lengthParam("crownDrawn", d.crownDrawn)};
    if (f_.top.made == CapTop::Gathered) {
      say("gathers", params);
    } else {
      const double stitches = f_.top.takes / d_.size.width;
      const int low = int(std::floor(stitches + 0.2)), high = int(std::ceil(stitches - 0.2));
      params.push_back(countParam("n", f_.top.pleats));
      params.push_back(countParam("each", f_.top.pleats / 2));
      params.push_back(lengthParam("takes", f_.top.takes));
      params.push_back(textParam(
          "stitches", low == high
                          ? inner("pleats.sts", {countParam("k", low)})
                          : inner("pleats.stsTo", {countParam("k", low), countParam("m", high)})));
      say(f_.top.pleats % 2 == 0 ? "pleats" : "pleats.odd", params);
    }
    say("crown", params);
  }

  void seams() {
    say("seams", {countParam("n", f_.selvedge)});
    if (f_.sideBack != f_.sideFront)
      say("seams.uneven",
          {countParam("m", f_.sideBack), countParam("n", f_.sideFront),
           textParam("recipe", seamRecipe(words_, sewRows(f_.sideBack, f_.sideFront)))});
    else if (f_.bustShortRows)
      say("seams.bust", {countParam("n", f_.sideBack)});
  }

  const Words& words_;
  const Directions& d_;
  const Finishing& f_;
  std::vector<std::string> out_;
  std::size_t upToSleeves_ = 0;
};

} // namespace

std::size_t sentencesUpToSleeves(const Words& words, const Directions& directions) {
  Sentences sentences(words, directions);
  (void)sentences.all();
  return sentences.upToSleeves();
}

std::vector<std::string> finishingSentences(const Words& words, const Directions& directions) {
  return Sentences(words, directions).all();
}

std::string seamRecipe(const Words& words, const std::vector<SeamLine>& lines) {
  if (lines.size() == 1 && lines[0].first == lines[0].second)
    return words.say("finishing.recipe.even");
  std::vector<std::string> parts;
  for (const SeamLine& line : lines)
    parts.push_back(
        words.say("finishing.recipe", {countParam("a", line.first), countParam("b", line.second),
                                       times(words, line.times)}));
  return inOrder(words, parts);
}

std::string markText(const Words& words, const SeamMark& mark, const SeamMarks& side) {
  const std::string piece = side.half == ArmholeHalf::Back ? "side.back" : "side.front";
  const Params params{phraseParam("side", piece),
                      countParam("a", mark.armhole.up),
                      countParam("armholeRow", mark.armhole.row),
                      countParam("c", mark.cap.up),
                      countParam("capRow", mark.cap.row),
                      countParam("k", mark.cap.stitches)};
  return words.say(mark.armhole.flat == Flat::Underarm ? "finishing.mark.underarm"
                   : mark.cap.flat == Flat::Crown      ? "finishing.mark.crown"
                                                       : "finishing.mark.rows",
                   params);
}

} // namespace scye
