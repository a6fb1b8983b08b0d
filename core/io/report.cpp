#include "io/report.h"

#include "io/json_number.h"
#include "model/enum_keys.h"
#include "model/plain_text.h"
#include "seam/hang.h"
#include "seam/room.h"

namespace scye {
namespace {

using Json = nlohmann::ordered_json;

constexpr EnumKeys<Origin, Origin::Rule> kOriginKeys{{
    {Origin::GivenBody, "body"},
    {Origin::GivenGarment, "garment"},
    {Origin::Set, "set"},
    {Origin::Table, "table"},
    {Origin::Estimate, "estimate"},
    {Origin::Rule, "rule"},
}};

std::string keyOf(Field field) {
  return std::string(info(field).key);
}

Json choicesOf(const Design& design) {
  Json out = Json::object();
  for (int i = 0; i < kChoiceCount; ++i) {
    const ChoiceInfo& c = info(Choice(i));
    out[std::string(c.key)] = c.options.begin()[design.option(c.id)];
  }
  return out;
}

// The value of every field, and where it came from; for a measurement also what the garment is to
// measure there, its ease included.
Json valuesOf(const Sizes& sizes) {
  Json out = Json::object();
  for (int i = 0; i < kFieldCount; ++i) {
    const Field field = Field(i);
    Json& entry = out[keyOf(field)];
    entry = {{"value", jsonNumber(sizes[field])}, {"origin", kOriginKeys[sizes.origin(field)]}};
    if (isMeasurement(field)) entry["finished"] = jsonNumber(sizes.finished(field));
    if (const auto& likely = sizes.likely[std::size_t(i)])
      entry["likely"] = {jsonNumber(likely->low), jsonNumber(likely->high)};
  }
  return out;
}

Json roomOf(const ArmholeRoom& room) {
  return {{"edge", jsonNumber(room.edge)},
          {"girth", jsonNumber(room.girth)},
          {"room", jsonNumber(room.value())},
          {"likely", {jsonNumber(room.low), jsonNumber(room.high)}}};
}

Json sleeveMatch(const GarmentDraft& g) {
  const CapMatch& m = g.cap;
  return {{"fits", m.found},
          {"workedOut", info(Choice::WorkedOut).options.begin()[int(m.unknown)]},
          {"value", jsonNumber(m.value)},
          {"reach", {jsonNumber(m.low), jsonNumber(m.high)}},
          {"iterations", m.summary.iterations},
          {"armholeBack", jsonNumber(m.armholeBack)},
          {"armholeFront", jsonNumber(m.armholeFront)},
          {"armhole", jsonNumber(m.armhole())},
          {"capBack", jsonNumber(m.capBack)},
          {"capFront", jsonNumber(m.capFront)},
          {"cap", jsonNumber(m.cap())},
          {"ease", jsonNumber(m.ease())},
          {"easeWanted", jsonNumber(m.easeWanted)},
          {"capHeight", jsonNumber(m.height)},
          {"crownWidth", jsonNumber(m.back.crownHalf + m.front.crownHalf)},
          {"crownMark", jsonNumber(m.crownMark)},
          {"lean", jsonNumber(m.lean)},
          {"room", roomOf(armholeRoom(g))},
          {"hang", hangKey(sleeveHang(g).hang)}};
}

Json pieceOf(const Piece& piece, const Phrases& phrases) {
  Json edges = Json::array();
  for (const PieceEdge& e : piece.edges) {
    Json points = Json::array();
    for (const Vec2& p : e.path.flattened(kReportChords))
      points.push_back({jsonNumber(p.x()), jsonNumber(p.y())});
    edges.push_back({{"edge", edgeKey(e.kind)},
                     {"length", jsonNumber(e.path.length())},
                     {"points", std::move(points)}});
  }
  const std::string key(pieceKey(piece.id));
  return {{"piece", key}, {"title", phrases.say("piece." + key)}, {"edges", std::move(edges)}};
}

// By the mean of the three measures of an edge, and by each of them.
Json armholeFit(const ArmholeFit& fit, double easeWanted) {
  const auto by = [&](double armhole, double cap) -> Json {
    return {{"armhole", jsonNumber(armhole)},
            {"cap", jsonNumber(cap)},
            {"mismatch", jsonNumber(cap - armhole - easeWanted)}};
  };
  Json out = by(fit.armhole.mean(), fit.cap.mean());
  out["chord"] = by(fit.armhole.chord, fit.cap.chord);
  out["corner"] = by(fit.armhole.corner, fit.cap.corner);
  out["middle"] = by(fit.armhole.middle, fit.cap.middle);
  return out;
}

Json capCurve(const KnitGarment& k) {
  const auto half = [](const CapShape& s) -> Json {
    return {{"halfWidth", jsonNumber(s.halfWidth)},
            {"underarm", jsonNumber(s.underarm)},
            {"crownHalf", jsonNumber(s.crownHalf)},
            {"lean", jsonNumber(s.lean)}};
  };
  return {{"height", jsonNumber(k.cap.referenceHeight)},
          {"back", half(k.cap.referenceBack)},
          {"front", half(k.cap.referenceFront)}};
}

Json pinOf(const PinPlace& pin) {
  static constexpr EnumKeys<Flat, Flat::Crown> kFlats{{
      {Flat::None, "none"},
      {Flat::Underarm, "underarm"},
      {Flat::Crown, "crown"},
  }};
  return {{"along", jsonNumber(pin.along)},
          {"row", pin.row},
          {"rowsUp", pin.up},
          {"flat", kFlats[pin.flat]},
          {"stitches", pin.stitches}};
}

Json seamsOf(const std::vector<SeamMarks>& seams) {
  Json out = Json::array();
  for (const SeamMarks& side : seams) {
    Json marks = Json::array();
    for (const SeamMark& m : side.marks)
      marks.push_back({{"mark", notchKey(m.kind)},
                       {"armhole", pinOf(m.armhole)},
                       {"cap", pinOf(m.cap)},
                       {"letIn", jsonNumber(m.letIn)}});
    out.push_back({{"side", side.half == ArmholeHalf::Back ? "back" : "front"},
                   {"wearers", side.wearersLeft ? "left" : "right"},
                   {"marks", std::move(marks)}});
  }
  return out;
}

Json pickUpsOf(const PickUps& p) {
  return {{"stitches", p.ratio.stitches},
          {"forRows", p.ratio.rows},
          {"neckBack", p.neck.back},
          {"neckFront", p.neck.front},
          {"neckAll", p.neck.total()},
          {"band", p.band.stitches},
          {"bandButtonholes", p.buttonholes.count}};
}

// In whole stitches and rows.
Json knittedOf(const Derived& derived, const Phrases& phrases) {
  const KnitGarment& k = derived.knit;
  Json rounded = Json::array(), pieces = Json::array(), holes = Json::array();
  for (const Rows row : k.buttonholes.rows)
    holes.push_back(row.value());
  for (const Rounded& r : k.rounded)
    rounded.push_back({{"key", r.key},
                       {"title", phrases.say("knitted." + r.key)},
                       {"wanted", jsonNumber(r.wanted)},
                       {"knitted", jsonNumber(r.knitted)},
                       {"difference", jsonNumber(r.knitted - r.wanted)}});
  for (const KnitPiece& p : k.pieces)
    pieces.push_back({{"piece", pieceKey(p.id)},
                      {"castOn", p.castOn().value()},
                      {"lastRow", p.lastRow().value()},
                      {"foldRow", p.foldRow.value()},
                      {"underarmRow", p.underarmRow.value()},
                      {"neckRow", p.neckRow.value()},
                      {"shoulderRow", p.shoulderRow.value()}});
  return {
      {"stitchWidth", jsonNumber(k.lattice.size.width)},
      {"rowHeight", jsonNumber(k.lattice.size.height)},
      {"cap", k.capKnitted},
      {"left", armholeFit(k.left, k.easeWanted)},
      {"right", armholeFit(k.right, k.easeWanted)},
      {"easeWanted", jsonNumber(k.easeWanted)},
      {"mismatch", jsonNumber(k.mismatch())},
      {"largestDeviation", jsonNumber(k.deviation)},
      {"capRows", k.cap.front.rows.value()},
      {"crownStitches", k.cap.front.crown.value()},
      {"capLines", k.cap.lines()},
      {"armholeLines", std::max(k.backArmhole.schedule.lines(), k.frontArmhole.schedule.lines())},
      {"capCurve", k.capKnitted ? capCurve(k) : Json::object()},
      {"pieces", std::move(pieces)},
      {"buttonholes",
       {{"piece", pieceKey(k.buttonholes.piece)},
        {"rows", std::move(holes)},
        {"stitches", k.buttonholes.stitches.value()},
        {"fromEdge", k.buttonholes.from.value()}}},
      {"pickUp", pickUpsOf(derived.makingUp.pickUps)},
      {"pins", seamsOf(derived.makingUp.marks)},
      {"sizes", std::move(rounded)}};
}

Json remedyOf(const Remedy& remedy, const Phrases& phrases) {
  Json values = Json::object(), choices = Json::object();
  for (const auto& [field, value] : remedy.changes)
    values[keyOf(field)] = jsonNumber(value);
  for (const auto& [choice, option] : remedy.picks)
    choices[std::string(info(choice).key)] = info(choice).options.begin()[option];
  Json onGarment = Json::array();
  for (const Field field : remedy.onGarment)
    onGarment.push_back(keyOf(field));
  return {{"key", remedy.key},
          {"message", phrases.say("remedy." + remedy.key, remedy.params)},
          {"values", std::move(values)},
          {"choices", std::move(choices)},
          {"onGarment", std::move(onGarment)}};
}

Json findingOf(const Finding& finding, const Phrases& phrases) {
  Json fields = Json::array(), remedies = Json::array();
  for (Field field : finding.fields)
    fields.push_back(keyOf(field));
  for (const Remedy& remedy : finding.remedies)
    remedies.push_back(remedyOf(remedy, phrases));
  return {{"severity", severityKey(finding.severity)},
          {"code", finding.code},
          {"message", phrases.say("finding." + finding.code, finding.params)},
          {"fields", std::move(fields)},
          {"remedies", std::move(remedies)}};
}

} // namespace

std::string reportToJson(const Derived& derived, const Phrases& phrases) {
  const GarmentDraft& draft = derived.draft;
  Json report;
  report["format"] = "scyewright-report";
  report["version"] = 1;
  report["unit"] = "cm";
  report["title"] = draft.design.title;
  report["wearer"] = draft.design.wearer;
  report["choices"] = choicesOf(draft.design);
  report["values"] = valuesOf(draft.sizes);
  report["sleeve"] = sleeveMatch(draft);
  report["pieces"] = Json::array();
  for (const Piece& piece : draft.pieces)
    report["pieces"].push_back(pieceOf(piece, phrases));
  report["knitted"] = knittedOf(derived, phrases);
  report["findings"] = Json::array();
  for (const Finding& finding : derived.findings)
    report["findings"].push_back(findingOf(finding, phrases));
  return plainJson(report.dump(1, ' ', false, Json::error_handler_t::replace)) + "\n";
}

} // namespace scye
