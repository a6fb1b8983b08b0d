#include "directions/finishing_words.h"
#include "directions/materials_words.h"
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
    after();
    std::swap(pieces, out_);
    abbreviations(pieces);
    out_.insert(out_.end(), pieces.begin(), pieces.end());
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
    if (!d_.unmet.empty()) put(LineKind::Warning, words_.say("unmet"));
    for (const Finding& finding : d_.unmet)
      put(LineKind::Warning, words_.sayPlain("finding." + finding.code, finding.params));
    heading("before");
    for (std::string& sentence : materialSentences(words_, d_))
      put(LineKind::Note, std::move(sentence));
    if (!d_.notes.empty()) note("notes", {textParam("notes", d_.notes)});
    note("hands");
    heading("finished");
    for (const FinishedSize& size : d_.finished)
      put(LineKind::Note, finishedSizeText(words_, size, d_.figure));
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
      const bool counted = key == "k" || key == "p"; // "k2"
      if (std::any_of(lines.begin(), lines.end(),
                      [&](const DirectionLine& line) { return hasWord(line.text, word, counted); }))
        used.emplace_back(word, key);
    }
    std::sort(used.begin(), used.end(), [&](const auto& a, const auto& b) {
      return words_.phrases().rules().isBefore(a.first, b.first);
    });
    for (const auto& [word, key] : used)
      note("abbreviation",
           {textParam("short", word), textParam("long", words_.say("abbr." + key))});
  }

  // As it stands, or `counted` with a number behind it.
  static bool hasWord(const std::string& text, const std::string& word, bool counted) {
    const auto isWord = [&](std::size_t i) {
      // Letters beyond ASCII are some bytes each, all of them 0x80 or more.
      return i < text.size() && (std::isalnum(static_cast<unsigned char>(text[i])) ||
                                 static_cast<unsigned char>(text[i]) >= 0x80);
    };
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1))
      if (!(at > 0 && isWord(at - 1)) &&
          (counted ? isDigit(text, at + word.size()) : !isWord(at + word.size())))
        return true;
    return false;
  }

  static bool isDigit(const std::string& text, std::size_t i) {
    return i < text.size() && text[i] >= '0' && text[i] <= '9';
  }

  void add(const PieceSteps& piece) {
    piece_ = piece.id;
    put(LineKind::Heading, pieceTitle(piece.id));
    pieceNotes(piece.id);
    const bool thinner = piece.edge == EdgeMade::Ribbed || piece.edge == EdgeMade::Garter;
    bool changed = !(thinner && d_.materials.thinner());
    for (const Part& part : piece.parts) {
      DirectionLine& title = put(LineKind::Part, partText(words_, part, piece.id));
      title.section = part.section;
      title.first = part.first(), title.last = part.last();
      if (part.together) put(LineKind::Note, togetherText(words_, part)).section = part.section;
      for (const Step& step : part.steps) {
        if (!changed && step.kind != StepKind::CastOn && !ofEdge(step.kind)) {
          put(LineKind::Note, needleChangeText(words_, d_.materials)).section = part.section;
          changed = true;
        }
        DirectionLine& line = put(LineKind::Step, step.kind == StepKind::CastOn
                                                      ? castOnText(words_, step, piece.edge, d_)
                                                      : stepText(words_, step, part, piece));
        line.section = step.section;
        line.first = step.first, line.last = step.last;
        line.stitches = step.stitches;
        line.fromCastOn = step.fromCastOn, line.fromUnderarm = step.fromUnderarm;
      }
    }
    piece_.reset();
  }

  static bool ofEdge(StepKind kind) {
    return kind == StepKind::Hem || kind == StepKind::RibRow || kind == StepKind::RibOn;
  }
  static bool mayCurl(const PieceSteps& piece) {
    return piece.edge == EdgeMade::Plain ||
           (piece.edge == EdgeMade::Ribbed && piece.rib.kind == RibKind::Plain);
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
    for (const PieceSteps& piece : d_.pieces)
      if (piece.id == id && mayCurl(piece)) note("piece.curls");
    if (id == PieceId::LeftSleeve) note("piece.leftSleeve.front");
    if (id == PieceId::Sleeve && twoSleeves()) note("piece.rightSleeve.front");
    if (id == PieceId::Back && d_.slit) note("piece.slit");
    const bool half = id == PieceId::LeftFront || id == PieceId::RightFront;
    if ((half || id == PieceId::Front) && d_.finishing.bustShortRows)
      note("piece.bust", {lengthParam("longer", d_.finishing.bustLonger)});
    if (!half || d_.bandStitches <= Stitches(0)) return;
    std::string band = id == PieceId::LeftFront ? "piece.band.end" : "piece.band.start";
    for (const PieceSteps& piece : d_.pieces)
      if (piece.id == id && (piece.edge != EdgeMade::Ribbed || piece.rib.kind == RibKind::Plain))
        band += ".garter"; // no edge that lies flat goes on into it
    note(band, {countParam("k", d_.bandStitches)});
    const Buttonholes& holes = d_.finishing.buttonholes;
    if (id == holes.piece && !holes.rows.empty()) buttonholeNotes(holes);
  }

  void buttonholeNotes(const Buttonholes& holes) {
    const Params params{countParam("n", int(holes.rows.size())), countParam("k", holes.stitches)};
    note("piece.buttonholes", params);
    if (holes.bustHole > 0)
      note(d_.figure == Figure::Woman ? "piece.buttonholes.bust" : "piece.buttonholes.chest",
           {countParam("n", holes.bustHole)});
    note(holes.stitches > Stitches(1) ? "piece.buttonhole.how" : "piece.buttonhole.one", params);
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
