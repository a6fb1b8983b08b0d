#include "directions/finishing_words.h"
#include "directions/step_words.h"
#include "model/plain_text.h"

#include <algorithm>
#include <cctype>

namespace scye {
namespace {

class Lines {
public:
  Lines(const Directions& d, const Wording& wording) : d_(d), words_(wording) {}

  std::vector<DirectionLine> all() {
    before();
    std::vector<DirectionLine> pieces;
    std::swap(pieces, out_);
    for (const PieceSteps& piece : d_.pieces)
      add(piece);
    std::swap(pieces, out_);
    abbreviations(pieces);
    out_.insert(out_.end(), pieces.begin(), pieces.end());
    after();
    return std::move(out_);
  }

  std::vector<DirectionLine> one(PieceId id) {
    for (const PieceSteps& piece : d_.pieces)
      if (piece.id == id) add(piece);
    return std::move(out_);
  }

private:
  DirectionLine& put(LineKind kind, std::string text) {
    DirectionLine line;
    line.kind = kind;
    line.text = std::move(text);
    line.piece = piece_;
    out_.push_back(std::move(line));
    return out_.back();
  }
  void note(std::string_view key, Params params = {}) {
    put(LineKind::Note, words_.say(key, std::move(params)));
  }
  void heading(std::string_view key) { put(LineKind::Heading, words_.say(key)); }

  void before() {
    const bool jacket = d_.garment == Garment::Jacket;
    put(LineKind::Title, d_.title.empty() ? words_.say(jacket ? "title.jacket" : "title.pullover")
                                          : plainLine(d_.title));
    if (!d_.wearer.empty()) note("for", {textParam("wearer", d_.wearer)});
    heading("before");
    const bool inches = words_.unit() == LengthUnit::Inch;
    const double over = inches ? 4 * kCmPerInch : 10;
    const auto tenths = [&](double size) { return 0.1 * std::round(10 * over / size); };
    note(inches ? "gauge.inch" : "gauge.cm", {numberParam("stitches", tenths(d_.size.width)),
                                              numberParam("rows", tenths(d_.size.height))});
    note("needles");
    note("yarn");
    if (!d_.notes.empty()) note("notes", {textParam("notes", d_.notes)});
    note("hands");
    heading("finished");
    for (const FinishedSize& size : d_.finished)
      note("finished.size", {textParam("what", words_.sayPlain("knitted." + size.key)),
                             lengthParam("length", size.cm)});
    heading("reading");
    for (const char* key :
         {"reading.rows", "reading.count", "reading.even", "reading.as", "reading.sides"})
      note(key);
    if (hasShortRows()) note("reading.waiting");
  }

  [[nodiscard]] bool hasShortRows() const {
    for (const PieceSteps& piece : d_.pieces)
      for (const Part& part : piece.parts)
        for (const Step& step : part.steps)
          if (step.waiting > Stitches(0)) return true;
    return false;
  }

  // Those that the lines use, in the order of the alphabet.
  void abbreviations(const std::vector<DirectionLine>& lines) {
    heading("abbreviations");
    std::vector<std::pair<std::string, std::string>> used; // the word, the key
    for (const std::string& key : words_.namesAfter("abbr.")) {
      const std::string word = words_.say("word." + key);
      if (std::any_of(lines.begin(), lines.end(),
                      [&](const DirectionLine& line) { return hasWord(line.text, word); }))
        used.emplace_back(word, key);
    }
    std::sort(used.begin(), used.end(), [&](const auto& a, const auto& b) {
      return words_.phrases().rules().isBefore(a.first, b.first);
    });
    for (const auto& [word, key] : used)
      note("abbreviation",
           {textParam("short", word), textParam("long", words_.say("abbr." + key))});
  }

  static bool hasWord(const std::string& text, const std::string& word) {
    const auto isWord = [&](std::size_t i) {
      // Letters beyond ASCII are some bytes each, all of them 0x80 or more.
      return i < text.size() && (std::isalnum(static_cast<unsigned char>(text[i])) ||
                                 static_cast<unsigned char>(text[i]) >= 0x80);
    };
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1))
      if (!(at > 0 && isWord(at - 1)) && !isWord(at + word.size())) return true;
    return false;
  }

  void add(const PieceSteps& piece) {
    piece_ = piece.id;
    put(LineKind::Heading, pieceTitle(piece.id));
    pieceNotes(piece.id);
    for (const Part& part : piece.parts) {
      DirectionLine& title = put(LineKind::Part, partText(words_, part, piece.id));
      title.section = part.section;
      title.first = part.first(), title.last = part.last();
      if (part.together) put(LineKind::Note, togetherText(words_, part)).section = part.section;
      for (const Step& step : part.steps) {
        DirectionLine& line = put(LineKind::Step, stepText(words_, step, part, piece.id));
        line.section = step.section;
        line.first = step.first, line.last = step.last;
        line.stitches = step.stitches;
        line.fromCastOn = step.fromCastOn, line.fromUnderarm = step.fromUnderarm;
      }
    }
    piece_.reset();
  }

  [[nodiscard]] bool twoSleeves() const {
    return std::any_of(d_.pieces.begin(), d_.pieces.end(),
                       [](const PieceSteps& p) { return p.id == PieceId::LeftSleeve; });
  }

  std::string pieceTitle(PieceId id) const {
    if (id == PieceId::LeftSleeve) return words_.say("piece.leftSleeve");
    if (id == PieceId::Sleeve && twoSleeves()) return words_.say("piece.rightSleeve");
    std::string name = words_.sayPlain("piece." + std::string(pieceKey(id)));
    return id == PieceId::Sleeve ? words_.say("piece.two", {textParam("piece", name)}) : name;
  }

  void patternNote(PieceId id) {
    if (d_.patternMultiple < 2) return;
    for (std::size_t i = 0; i < d_.pieces.size(); ++i)
      if (d_.pieces[i].id == id)
        note(d_.patternAfter[i] > Stitches(0) ? "piece.pattern" : "piece.pattern.atOnce",
             {countParam("m", d_.patternMultiple), countParam("k", d_.patternAfter[i].value())});
  }

  void pieceNotes(PieceId id) {
    patternNote(id);
    if (id == PieceId::LeftSleeve) note("piece.leftSleeve.front");
    if (id == PieceId::Sleeve && twoSleeves()) note("piece.rightSleeve.front");
    if (id == PieceId::Back && d_.slit) note("piece.slit");
    const bool half = id == PieceId::LeftFront || id == PieceId::RightFront;
    if ((half || id == PieceId::Front) && d_.finishing.bustShortRows)
      note("piece.bust", {lengthParam("longer", d_.finishing.bustLonger)});
    if (!half || d_.bandStitches.value() <= 0) return;
    note(id == PieceId::LeftFront ? "piece.band.end" : "piece.band.start",
         {countParam("k", d_.bandStitches.value())});
    const Buttonholes& holes = d_.finishing.buttonholes;
    if (id == holes.piece && !holes.rows.empty()) buttonholeNotes(holes);
  }

  void buttonholeNotes(const Buttonholes& holes) {
    const Params params{countParam("n", int(holes.rows.size())), countParam("k", holes.stitches)};
    note("piece.buttonholes", params);
    if (holes.bustHole > 0)
      note(d_.figure == Figure::Woman ? "piece.buttonholes.bust" : "piece.buttonholes.chest",
           {countParam("n", holes.bustHole)});
    note(holes.stitches > 1 ? "piece.buttonhole.how" : "piece.buttonhole.one", params);
  }

  void after() {
    heading("finishing");
    for (std::string& sentence : finishingSentences(words_, d_))
      put(LineKind::Note, std::move(sentence));
  }

  const Directions& d_;
  Words words_;
  std::optional<PieceId> piece_;
  std::vector<DirectionLine> out_;
};

} // namespace

std::vector<DirectionLine> directionLines(const Directions& directions, const Wording& wording) {
  return Lines(directions, wording).all();
}

std::vector<DirectionLine> pieceLines(const Directions& directions, PieceId piece,
                                      const Wording& wording) {
  return Lines(directions, wording).one(piece);
}

} // namespace scye
