#include "directions/materials_words.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

std::string millimetres(const Words& words, double mm) {
  return words.phrases().number(mm, 2);
}

// To halves, as gauges are printed; ten centimetres are printed beside four inches.
Param gaugeParam(const Words& words, const char* name, double size) {
  const double over = words.unit() == LengthUnit::Inch ? 4 * kCmPerInch : 10;
  return textParam(name, words.phrases().number(0.5 * std::round(2 * over / size), 1));
}

class Sentences {
public:
  Sentences(const Words& words, const Directions& d) : words_(words), d_(d), m_(d.materials) {}

  std::vector<std::string> all() {
    yarn();
    needles();
    const int holes = buttonsWithHoles(d_), loops = m_.buttons - holes;
    if (holes > 0) say("materials.buttons", {countParam("n", holes), lengthParam("hole", m_.hole)});
    if (loops > 0) say("materials.button.loop", {countParam("n", loops)});
    notions();
    const bool inches = words_.unit() == LengthUnit::Inch;
    say(inches ? "gauge.inch" : "gauge.cm",
        {gaugeParam(words_, "stitches", d_.size.width), gaugeParam(words_, "rows", d_.size.height),
         textParam("stitch",
                   words_.say(d_.patternMultiple > 1 ? "gauge.pattern" : "gauge.stockinette"))});
    return std::move(out_);
  }

private:
  void say(const std::string& key, Params params = {}) {
    out_.push_back(words_.say(key, std::move(params)));
  }

  // Rounded up: to 10 g, 10 m or 10 yards.
  static Param upToTens(const char* name, double amount) {
    return numberParam(name, 10 * std::ceil(amount / 10 - 1e-9));
  }

  void yarn() {
    const YarnNeed& y = m_.yarn;
    if (!y.grams.any() && !y.metres.any()) return say("yarn");
    const bool yards = words_.unit() == LengthUnit::Inch;
    const double run = yards ? 1 / 0.9144 : 1;
    const double more = 1 + y.reserve;
    const Params params{upToTens("grams", more * y.grams.high),
                        upToTens("low", y.grams.low),
                        upToTens("metres", run * more * y.metres.high),
                        upToTens("metresLow", run * y.metres.low),
                        textParam("run", words_.say(yards ? "yarn.yards" : "yarn.metres")),
                        textParam("reserve", words_.phrases().percent(y.reserve)),
                        countParam("balls", y.balls),
                        numberParam("ball", y.ballWeight),
                        numberParam("ballRun", std::round(run * y.ballLength))};
    if (y.weighed)
      say(y.metres.any() ? "yarn.weighed.run" : "yarn.weighed", params);
    else
      say(y.grams.any() ? "yarn.ranged" : "yarn.ranged.run", params);
    if (y.balls > 0) say(y.ballLength > 0 ? "yarn.balls.run" : "yarn.balls", params);
  }

  void needles() {
    if (m_.needle > 0) {
      const Params params{textParam("body", millimetres(words_, m_.needle)),
                          textParam("rib", millimetres(words_, m_.ribNeedle))};
      say(m_.edges && m_.thinner() ? "needles.two" : "needles.one", params);
    } else {
      say(m_.edges ? "needles.edges" : "needles");
      if (m_.usual)
        say(m_.usual->high > 0 ? "needles.usual" : "needles.usual.from",
            {textParam("low", millimetres(words_, m_.usual->low)),
             textParam("high", millimetres(words_, m_.usual->high))});
    }
    if (m_.round) say("needles.round");
    if (m_.third) say("needles.third");
  }

  void notions() {
    std::vector<std::string> things;
    const auto add = [&](const char* key, int n) {
      if (n > 0) things.push_back(words_.say(key, {countParam("n", n)}));
    };
    add("materials.holders", m_.holders);
    add("materials.markers", m_.markers);
    add("materials.hook", m_.hook ? 1 : 0);
    for (const char* always : {"materials.pins", "materials.tapestryNeedle", "materials.tape"})
      add(always, 1);
    say("materials.notions", {textParam("things", words_.phrases().list(things))});
  }

  const Words& words_;
  const Directions& d_;
  const Materials& m_;
  std::vector<std::string> out_;
};

} // namespace

std::vector<std::string> materialSentences(const Words& words, const Directions& directions) {
  return Sentences(words, directions).all();
}

int buttonsWithHoles(const Directions& d) {
  const bool loop = d.finishing.slitRows > 0 && d.figure != Figure::Baby;
  return std::max(0, d.materials.buttons - int(loop));
}

std::string finishedSizeText(const Words& words, const FinishedSize& size, Figure figure) {
  const std::string what = size.key == "bust" && figure != Figure::Woman
                               ? words.say("finished.chest")
                           : size.key == "crown" ? words.say("finished.crown")
                                                 : words.sayPlain("knitted." + size.key);
  const Params params{textParam("what", what), lengthParam("length", size.cm),
                      lengthParam("ease", std::abs(size.ease.value_or(0)))};
  constexpr double kNone = 0.05; // cm: as the body
  const char* key = !size.ease                     ? "finished.size"
                    : std::abs(*size.ease) < kNone ? "finished.size.body"
                    : *size.ease > 0               ? "finished.size.ease"
                                                   : "finished.size.less";
  return words.say(key, params);
}

std::string castOnText(const Words& words, const Step& step, EdgeMade edge,
                       const Directions& directions) {
  const Materials& m = directions.materials;
  const bool ribbed = edge == EdgeMade::Ribbed || edge == EdgeMade::Garter;
  const double needle = ribbed && m.thinner() ? m.ribNeedle : m.needle;
  return words.say(
      m.needle > 0            ? "castOn.needles"
      : ribbed && m.thinner() ? "castOn.smaller"
                              : "castOn",
      {countParam("k", step.stitches.value()), textParam("needle", millimetres(words, needle))});
}

std::string needleChangeText(const Words& words, const Materials& m) {
  return words.say(m.needle > 0 ? "needles.change" : "needles.larger",
                   {textParam("needle", millimetres(words, m.needle))});
}

} // namespace scye
