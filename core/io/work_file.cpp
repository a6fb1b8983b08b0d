#include "io/work_file.h"

#include <array>
#include <charconv>

namespace scye {
namespace {

constexpr EnumKeys<ActKind, ActKind::Buttonhole> kActKeys{{
    {ActKind::CastOn, "castOn"},
    {ActKind::Increase, "increase"},
    {ActKind::Decrease, "decrease"},
    {ActKind::BindOff, "bindOff"},
    {ActKind::Close, "close"},
    {ActKind::Rest, "rest"},
    {ActKind::Rejoin, "rejoin"},
    {ActKind::Wait, "wait"},
    {ActKind::TakeUp, "takeUp"},
    {ActKind::IncreaseEvenly, "spread"},
    {ActKind::Hold, "hold"},
    {ActKind::Buttonhole, "buttonhole"},
}};
constexpr EnumKeys<Shapes, Shapes::Opening> kShapesKeys{{
    {Shapes::Hem, "hem"},
    {Shapes::Side, "side"},
    {Shapes::Underarm, "underarm"},
    {Shapes::Armhole, "armhole"},
    {Shapes::Shoulder, "shoulder"},
    {Shapes::Neck, "neck"},
    {Shapes::Sleeve, "sleeve"},
    {Shapes::Cap, "cap"},
    {Shapes::Crown, "crown"},
    {Shapes::Bust, "bust"},
    {Shapes::Cuff, "cuff"},
    {Shapes::Opening, "opening"},
}};
constexpr EnumKeys<EdgeSide, EdgeSide::Left> kSideKeys{
    {{EdgeSide::Right, "right"}, {EdgeSide::Left, "left"}}};
constexpr EnumKeys<SectionId, SectionId::Left> kSectionKeys{
    {{SectionId::Undivided, "body"}, {SectionId::Right, "right"}, {SectionId::Left, "left"}}};
constexpr EnumKeys<EdgeMade, EdgeMade::Faced> kEdgeKeys{{{EdgeMade::Ribbed, "ribbed"},
                                                         {EdgeMade::Plain, "plain"},
                                                         {EdgeMade::Garter, "garter"},
                                                         {EdgeMade::Faced, "faced"}}};
constexpr EnumKeys<RibSides, RibSides::RightFree> kSidesKeys{{{RibSides::BothSewn, "sewn"},
                                                              {RibSides::LeftFree, "leftFree"},
                                                              {RibSides::RightFree, "rightFree"}}};
enum class Yes : std::uint8_t { No, Yes };
constexpr EnumKeys<Yes, Yes::Yes> kYesKeys{{{Yes::No, "no"}, {Yes::Yes, "yes"}}};

constexpr std::array<Rows KnitPiece::*, 7> kMarks{
    &KnitPiece::hemRows,  &KnitPiece::foldRow, &KnitPiece::underarmRow, &KnitPiece::shoulderRow,
    &KnitPiece::splitRow, &KnitPiece::neckRow, &KnitPiece::crownRow};

// No piece has more; memory stays within bounds.
constexpr int kMostRows = 6000, kMostStitches = 6000;

using Json = nlohmann::ordered_json;

std::string actText(const Act& a) {
  std::string text = std::to_string(a.row.value());
  text.append(" ").append(kActKeys[a.kind]).append(" ").append(kSideKeys[a.side]);
  text.append(" ").append(std::to_string(a.stitches.value()));
  text.append(" ").append(kShapesKeys[a.shapes]);
  return text.append(" ").append(std::to_string(a.from.value()));
}

std::optional<int> wholeIn(std::string_view word) {
  int n = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), n);
  return error == std::errc() && end == word.data() + word.size() ? std::optional(n) : std::nullopt;
}

std::optional<Act> actFrom(std::string_view text) {
  std::array<std::string_view, 6> words;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::size_t space = text.find(' ');
    if ((space == std::string_view::npos) != (i + 1 == words.size())) return std::nullopt;
    words[i] = text.substr(0, space);
    text = space == std::string_view::npos ? std::string_view() : text.substr(space + 1);
  }
  const auto row = wholeIn(words[0]), stitches = wholeIn(words[3]), from = wholeIn(words[5]);
  const auto kind = kActKeys.find(words[1]);
  const auto side = kSideKeys.find(words[2]);
  const auto shapes = kShapesKeys.find(words[4]);
  if (!row || !kind || !side || !stitches || !shapes || !from) return std::nullopt;
  if (*stitches < 0 || *stitches > kMostStitches || *from < 0 || *from > kMostStitches)
    return std::nullopt;
  return Act{Rows(*row), *kind, *side, Stitches(*stitches), *shapes, Stitches(*from)};
}

Json planToJson(const KnitPiece& plan) {
  Json marks = Json::array(), sections = Json::array();
  for (const auto mark : kMarks)
    marks.push_back((plan.*mark).value());
  for (const Section& s : plan.sections) {
    Json acts = Json::array();
    for (const Act& a : s.acts)
      acts.push_back(actText(a));
    sections.push_back({{"section", kSectionKeys[s.id]},
                        {"first", s.first.value()},
                        {"last", s.last.value()},
                        {"left", jsonNumber(s.leftEdge)},
                        {"right", jsonNumber(s.rightEdge)},
                        {"waiting", s.waiting.value()},
                        {"acts", std::move(acts)}});
  }
  const auto& ribs = info(Choice::Rib).options;
  Json edge = {{"made", kEdgeKeys[plan.edge]},    {"rib", ribs.begin()[int(plan.rib.kind)]},
               {"multiple", plan.rib.multiple},   {"name", plan.rib.name},
               {"sides", kSidesKeys[plan.sides]}, {"selvedge", plan.selvedge.value()},
               {"band", plan.band.value()}};
  return {{"marks", std::move(marks)},
          {"edge", std::move(edge)},
          {"fabric", {jsonNumber(plan.size.width), jsonNumber(plan.size.height)}},
          {"sections", std::move(sections)}};
}

std::string markText(std::uint64_t mark) {
  std::array<char, 17> digits{};
  std::snprintf(digits.data(), digits.size(), "%016llx", static_cast<unsigned long long>(mark));
  return digits.data();
}

Json pieceToJson(const PieceWork& p) {
  Json json = {{"piece", pieceKey(p.piece)},
               {"worked", p.worked},
               {"answers", markText(p.answers)},
               {"ownPlan", kYesKeys[Yes(p.ownPlan)]}};
  if (p.measured.any()) {
    Json measured = Json::object();
    for (int i = 0; i < kReadings; ++i)
      if (const auto value = p.measured[Reading(i)])
        measured[std::string(kReadingKeys[Reading(i)])] = jsonNumber(*value);
    measured["as"] = kMeasuredAsKeys[p.measured.as];
    json["measured"] = std::move(measured);
  }
  for (const RowNote& note : p.notes)
    json["notes"].push_back(
        {{"section", kSectionKeys[note.section]}, {"row", note.row}, {"text", note.text}});
  if (p.pace.rows > 0)
    json["pace"] = {{"rows", p.pace.rows}, {"seconds", jsonNumber(p.pace.seconds)}};
  json["plan"] = planToJson(p.plan);
  return json;
}

Json entryToJson(const DiaryEntry& e) {
  Json json = {{"on", e.on}, {"kind", kDiaryKeys[e.kind]}};
  if (e.piece) json["piece"] = pieceKey(*e.piece);
  if (e.row != 0) json["row"] = e.row;
  if (e.to != 0) json["to"] = e.to;
  if (!e.text.empty()) json["text"] = e.text;
  return json;
}

// Goes down the tree; the first problem ends it.
class WorkReader {
public:
  explicit WorkReader(const RefuseAt& refuse) : refuse_(refuse) {}

  std::optional<Work> read(const JsonNode& tree) {
    Work work;
    if (!group(tree, {"pieces", "diary", "done", "lastSeam"})) return std::nullopt;
    each(tree.find("pieces"), [&](const JsonNode& node) { piece(node, work); });
    each(tree.find("diary"), [&](const JsonNode& node) { entry(node, work); });
    each(tree.find("done"), [&](const JsonNode& node) {
      if (isText(node)) work.done.push_back(node.text);
    });
    if (const JsonNode* seam = tree.find("lastSeam")) {
      double cm = 0;
      number(seam, cm, -100, 100);
      work.lastSeam = cm;
    }
    if (refused_) return std::nullopt;
    return work;
  }

private:
  using Kind = JsonNode::Kind;

  void no(const JsonNode& node, std::string_view phrase, const Params& params = {}) {
    if (!std::exchange(refused_, true)) refuse_(node.at, phrase, params);
  }
  bool is(const JsonNode& node, Kind kind, const char* phrase) {
    if (node.kind == kind) return true;
    no(node, "file.wrongType", {textParam("key", node.key), phraseParam("kind", phrase)});
    return false;
  }
  bool isText(const JsonNode& node) { return is(node, Kind::Text, "file.kind.text"); }

  bool group(const JsonNode& node, std::initializer_list<std::string_view> keys) {
    if (!is(node, Kind::Group, "file.kind.group")) return false;
    for (const JsonNode& member : node.inside)
      if (std::find(keys.begin(), keys.end(), member.key) == keys.end()) {
        no(member, "file.unknownKey", {textParam("key", member.key)});
        return false;
      }
    return true;
  }
  template <class Work>
  void each(const JsonNode* list, Work&& work) {
    if (!list || !is(*list, Kind::List, "file.kind.list")) return;
    for (const JsonNode& node : list->inside)
      if (!refused_) work(node);
  }
  // A number that must be there and within its range.
  void number(const JsonNode* node, double& value, double low, double high) {
    if (!node || !is(*node, Kind::Number, "file.kind.number")) return;
    if (node->number >= low && node->number <= high)
      value = node->number;
    else
      no(*node, "file.outside",
         {textParam("key", node->key), numberParam("low", low), numberParam("high", high)});
  }
  void whole(const JsonNode* node, int& value, int low, int high) {
    double n = value;
    number(node, n, low, high);
    if (node && n != std::floor(n))
      no(*node, "file.notWhole", {textParam("key", node->key)});
    else
      value = int(n);
  }
  template <class Kind>
  void whole(const JsonNode* node, Count<Kind>& value, int low, int high) {
    int n = value.value();
    whole(node, n, low, high);
    value = Count<Kind>(n);
  }
  void text(const JsonNode* node, std::string& value) {
    if (node && isText(*node)) value = node->text;
  }
  template <class E, E last>
  void key(const JsonNode* node, const EnumKeys<E, last>& keys, E& value) {
    if (!node || !isText(*node)) return;
    if (const auto found = keys.find(node->text))
      value = *found;
    else
      no(*node, "file.noWord", {textParam("word", node->text), textParam("key", node->key)});
  }
  std::optional<PieceId> pieceId(const JsonNode* node) {
    if (!node || !isText(*node)) return std::nullopt;
    const auto id = pieceByKey(node->text);
    if (!id) no(*node, "file.noWord", {textParam("word", node->text), textParam("key", node->key)});
    return id;
  }

  void piece(const JsonNode& node, Work& work) {
    if (!group(node,
               {"piece", "worked", "answers", "ownPlan", "measured", "notes", "pace", "plan"}))
      return;
    PieceWork p;
    const auto id = pieceId(node.find("piece"));
    const JsonNode* planned = node.find("plan");
    if (!id || !planned || work.find(*id)) {
      no(node, "file.noPiece");
      return;
    }
    p.piece = *id;
    plan(*planned, p);
    if (refused_) return;
    whole(node.find("worked"), p.worked, 0, int(p.plan.rows.size()));
    if (const JsonNode* mark = node.find("answers"); mark && isText(*mark)) {
      const char* end = mark->text.data() + mark->text.size();
      if (std::from_chars(mark->text.data(), end, p.answers, 16).ptr != end)
        no(*mark, "file.noWord", {textParam("word", mark->text), textParam("key", mark->key)});
    }
    Yes own = Yes::No;
    key(node.find("ownPlan"), kYesKeys, own);
    p.ownPlan = own == Yes::Yes;
    if (const JsonNode* readings = node.find("measured")) measured(*readings, p.measured);
    each(node.find("notes"), [&](const JsonNode& n) { note(n, p); });
    if (const JsonNode* pace = node.find("pace"); pace && group(*pace, {"rows", "seconds"})) {
      whole(pace->find("rows"), p.pace.rows, 0, 1000000);
      number(pace->find("seconds"), p.pace.seconds, 0, 1e9);
    }
    work.pieces.push_back(std::move(p));
  }

  void measured(const JsonNode& node, Measured& measured) {
    if (!is(node, Kind::Group, "file.kind.group")) return;
    for (const JsonNode& member : node.inside) {
      if (member.key == "as") {
        key(&member, kMeasuredAsKeys, measured.as);
      } else if (const auto reading = kReadingKeys.find(member.key)) {
        double value = 0;
        const ReadingRange range = rangeOf(*reading);
        number(&member, value, range.low, range.high);
        measured.set(*reading, value);
      } else {
        no(member, "file.unknownKey", {textParam("key", member.key)});
      }
    }
  }

  void note(const JsonNode& node, PieceWork& p) {
    if (!group(node, {"section", "row", "text"})) return;
    RowNote note;
    key(node.find("section"), kSectionKeys, note.section);
    whole(node.find("row"), note.row, 0, kMostRows);
    text(node.find("text"), note.text);
    p.notes.push_back(std::move(note));
  }

  void entry(const JsonNode& node, Work& work) {
    if (!group(node, {"on", "kind", "piece", "row", "to", "text"})) return;
    DiaryEntry entry;
    text(node.find("on"), entry.on);
    key(node.find("kind"), kDiaryKeys, entry.kind);
    if (const JsonNode* piece = node.find("piece")) entry.piece = pieceId(piece);
    whole(node.find("row"), entry.row, 0, kMostRows);
    whole(node.find("to"), entry.to, -kMostRows, kMostRows);
    text(node.find("text"), entry.text);
    work.diary.push_back(std::move(entry));
  }

  void plan(const JsonNode& node, PieceWork& p) {
    if (!group(node, {"marks", "edge", "fabric", "sections"})) return;
    KnitPiece& plan = p.plan;
    plan.id = p.piece;
    std::size_t i = 0;
    each(node.find("marks"), [&](const JsonNode& mark) {
      if (i < kMarks.size()) whole(&mark, plan.*kMarks[i], -1, kMostRows);
      ++i;
    });
    i = 0;
    each(node.find("fabric"), [&](const JsonNode& side) {
      if (i < 2) number(&side, i == 0 ? plan.size.width : plan.size.height, 0, 20);
      ++i;
    });
    if (const JsonNode* made = node.find("edge")) edge(*made, plan);
    each(node.find("sections"), [&](const JsonNode& s) { section(s, plan); });
    if (refused_) return;
    const bool ordered = !plan.sections.empty() && plan.sections.size() <= 3 &&
                         plan.sections.front().id == SectionId::Undivided;
    if (ordered) plan.rows = workedRows(plan.sections);
    if (!ordered || plan.rows.empty() || !worksOut(plan)) no(node, "file.noPlan");
  }

  void edge(const JsonNode& node, KnitPiece& plan) {
    if (!group(node, {"made", "rib", "multiple", "name", "sides", "selvedge", "band"})) return;
    key(node.find("made"), kEdgeKeys, plan.edge);
    key(node.find("sides"), kSidesKeys, plan.sides);
    constexpr int kMostMultiple = 24, kMostSelvedge = 2;
    int multiple = plan.rib.multiple;
    whole(node.find("multiple"), multiple, 1, kMostMultiple);
    whole(node.find("selvedge"), plan.selvedge, 0, kMostSelvedge);
    whole(node.find("band"), plan.band, 0, kMostStitches);
    std::string kind, name;
    text(node.find("rib"), kind);
    text(node.find("name"), name);
    if (const auto rib = optionByKey(Choice::Rib, kind))
      plan.rib = ribStitch(RibKind(*rib), multiple, std::move(name));
    else if (!refused_)
      no(node, "file.noWord", {textParam("word", kind), textParam("key", "rib")});
  }

  void section(const JsonNode& node, KnitPiece& plan) {
    if (!group(node, {"section", "first", "last", "left", "right", "waiting", "acts"})) return;
    Section s;
    key(node.find("section"), kSectionKeys, s.id);
    whole(node.find("first"), s.first, 0, kMostRows);
    whole(node.find("last"), s.last, s.first.value(), kMostRows);
    number(node.find("left"), s.leftEdge, -kMostStitches, kMostStitches);
    number(node.find("right"), s.rightEdge, -kMostStitches, kMostStitches);
    whole(node.find("waiting"), s.waiting, 0, kMostStitches);
    Rows row = s.first;
    each(node.find("acts"), [&](const JsonNode& text) {
      if (!isText(text)) return;
      const auto act = actFrom(text.text);
      if (act && act->row >= row && act->row <= s.last)
        s.acts.push_back(*act), row = act->row;
      else
        no(text, "file.noAct", {textParam("act", text.text)});
    });
    plan.sections.push_back(std::move(s));
  }

  const RefuseAt& refuse_;
  bool refused_ = false;
};

} // namespace

nlohmann::ordered_json workToJson(const Work& work) {
  Json json = Json::object();
  for (const PieceWork& piece : work.pieces)
    json["pieces"].push_back(pieceToJson(piece));
  for (const DiaryEntry& entry : work.diary)
    json["diary"].push_back(entryToJson(entry));
  for (const std::string& key : work.done)
    json["done"].push_back(key);
  if (work.lastSeam) json["lastSeam"] = jsonNumber(*work.lastSeam);
  return json;
}

std::optional<Work> workFromTree(const JsonNode& tree, const RefuseAt& refuse) {
  return WorkReader(refuse).read(tree);
}

} // namespace scye
