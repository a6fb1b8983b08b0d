#include "seam/checks.h"

#include "draft/complete.h"
#include "seam/garment_draft.h"
#include "seam/room.h"
#include "seam/walk.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// The least of sign * x along a flattened edge at a height; very large where it does not reach
// there.
double leastX(const std::vector<Vec2>& points, double y, double sign) {
  double x = 1e300;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const Vec2 &a = points[i], &b = points[i + 1];
    if (std::min(a.y(), b.y()) > y || std::max(a.y(), b.y()) < y) continue;
    const double share = a.y() == b.y() ? 0 : (y - a.y()) / (b.y() - a.y());
    x = std::min(x, sign * (a.x() + share * (b.x() - a.x())));
  }
  return x;
}

// The narrowest strip of fabric, measured across, between neckline or front edge and armhole or
// side of half a piece, up to the shoulder tip. Curves are followed in steps of an eighth.
double narrowestStrip(const std::vector<PieceEdge>& half) {
  std::vector<Vec2> inner, outer;
  for (const PieceEdge& e : half) {
    const bool isInner = e.kind == EdgeKind::Neck || e.kind == EdgeKind::Opening;
    if (!isInner && e.kind != EdgeKind::Side && e.kind != EdgeKind::Armhole) continue;
    const auto points = e.path.flattened(8);
    auto& into = isInner ? inner : outer;
    into.insert(into.end(), points.begin(), points.end());
  }
  double strip = 1e300;
  const double tip = outer.back().y();
  for (const Vec2& p : inner)
    if (p.y() <= tip) strip = std::min(strip, leastX(outer, p.y(), 1) - p.x());
  for (const Vec2& p : outer)
    strip = std::min(strip, p.x() + leastX(inner, p.y(), -1));
  return strip;
}

class DraftChecks {
public:
  explicit DraftChecks(const GarmentDraft& g) : g_(g), s_(g.sizes) {}

  Findings run() {
    vanished();
    armhole();
    room();
    widths();
    match();
    cap();
    drawnIn();
    sleeve();
    neck();
    body();
    notes();
    return std::move(out_);
  }

private:
  void say(Severity severity, std::string code, std::vector<Field> fields, Params params = {}) {
    out_.push_back({severity, std::move(code), std::move(fields), std::move(params), {}});
  }
  static constexpr double kLeastAway = 1.5; // cm
  [[nodiscard]] double depth() const { return s_.finished(Field::ArmholeDepth); }

  // Negative ease may eat up a measurement; half of what can be entered at all must be left.
  void vanished() {
    for (int i = 0; i < kFieldCount; ++i) {
      const Field m = Field(i);
      const auto ease = easeOf(m);
      if (!ease && m != Field::HemToUnderarm) continue;
      const double finished = s_.finished(m), least = 0.5 * info(m).low;
      if (finished < least)
        say(Severity::Blocking, "size.vanishes", {ease ? *ease : m},
            {phraseParam("what", "field." + std::string(info(m).key)),
             lengthParam("finished", finished), lengthParam("least", least)});
    }
  }

  void armhole() {
    const ArmholeShape &back = g_.bodice.back, &front = g_.bodice.front;
    const double away = std::min(back.away(), front.away());
    const Field cross = back.away() <= front.away() ? Field::CrossBack : Field::CrossFront;
    if (away < kLeastAway)
      say(Severity::Blocking, "armhole.narrow", {Field::EaseBust, cross},
          {lengthParam("away", std::max(away, 0.0)), lengthParam("least", kLeastAway)});
    else if (back.curveStart() > back.halfBust - back.underarm + 1e-9 ||
             front.curveStart() > front.halfBust - front.underarm + 1e-9)
      say(Severity::Warning, "underarm.wide", {Field::UnderarmBack, Field::UnderarmFront},
          {lengthParam("underarm", std::max(back.underarm, front.underarm)),
           lengthParam("away", away)});
    constexpr double kHighestRise = 2.0 / 3;
    if (s_[Field::RiseShare] > kHighestRise)
      say(Severity::Warning, "armhole.shapingHigh", {Field::RiseShare},
          {percentParam("rise", s_[Field::RiseShare])});
    const double below = depth() + s_[Field::ShoulderDrop] - s_[Field::BackNeckDrop]; // the nape
    if (below > s_[Field::LimitUnderarm] * s_[Field::BackWaistLength])
      say(Severity::Warning, "underarm.low", {Field::EaseArmholeDepth, Field::ArmholeDepth},
          {lengthParam("below", below), percentParam("limit", s_[Field::LimitUnderarm]),
           lengthParam("waist", s_[Field::BackWaistLength])});
    if (s_[Field::EaseArmholeDepth] > s_[Field::LimitDepthEase] &&
        !s_.fromGarment(Field::ArmholeDepth))
      say(Severity::Warning, "depth.ease", {Field::EaseArmholeDepth},
          {lengthParam("ease", s_[Field::EaseArmholeDepth]),
           lengthParam("limit", s_[Field::LimitDepthEase])});
  }

  // Whether an arm and its shoulder have room. A garment's armhole that fits is taken as it is.
  void room() {
    const ArmholeRoom room = armholeRoom(g_);
    if (s_.fromGarment(Field::ArmholeDepth) || g_.bodice.back.away() < kLeastAway ||
        g_.bodice.front.away() < kLeastAway)
      return;
    const bool tight = room.value() < s_[Field::LimitRoomLow];
    if (!tight && room.value() <= s_[Field::LimitRoomHigh]) return;
    const Field limit = tight ? Field::LimitRoomLow : Field::LimitRoomHigh;
    say(Severity::Warning, tight ? "armhole.tight" : "armhole.roomy",
        {Field::EaseArmholeDepth, Field::ScyeGirth, Field::ArmholeDepth},
        {lengthParam("edge", room.edge), lengthParam("girth", room.girth),
         lengthParam("room", room.value()), lengthParam("limit", s_[limit]),
         phraseParam("known", room.measured ? "room.measured" : "room.estimated")});
  }

  // Over the armhole a piece cannot widen again, so a cross width ends at the shoulders. A body's
  // back may well be wider than they are cut (1988 survey: over 4 cm wider in one of twenty): that
  // is told; more than that, or widths that were set so, contradict each other.
  void widths() {
    constexpr double kAlike = 0.1, kBodiesReach = 3.9; // cm
    const double shoulder = s_.finished(Field::CrossShoulder);
    for (const auto& [cross, ease] : {std::pair{Field::CrossBack, Field::EaseCrossBack},
                                      {Field::CrossFront, Field::EaseCrossFront}}) {
      const bool set = s_.fromGarment(cross) || g_.design.has(ease);
      if (!set && !g_.design.has(cross)) continue;
      const double wanted = set ? s_[cross] + s_[ease] : s_[cross];
      if (wanted <= shoulder + kAlike) continue;
      const bool usual = !set && s_[cross] - s_.body(Field::CrossShoulder) <= kBodiesReach;
      say(usual ? Severity::Note : Severity::Warning, "cross.wider",
          {cross, Field::CrossShoulder, ease},
          {phraseParam("what", "field." + std::string(info(cross).key)),
           lengthParam("cross", wanted), lengthParam("shoulder", shoulder)});
    }
  }

  void match() {
    const CapMatch& m = g_.cap;
    if (std::min(m.back.span(), m.front.span()) <= 0.3) {
      say(Severity::Blocking, "cap.crownWide", {Field::CrownWidth, Field::EaseUpperArm},
          {lengthParam("crown", s_[Field::CrownWidth])});
      return;
    }
    if (m.found) return;
    static constexpr Field kShown[] = {Field::EaseUpperArm, Field::EaseUpperArm,
                                       Field::EaseArmholeDepth, Field::CrownWidth, Field::CapEase};
    const Field shown = kShown[int(m.unknown)];
    if (m.unknown == WorkedOut::CapHeight)
      say(Severity::Blocking, "match.tooWide", {shown, Field::ArmholeDepth, Field::CapEase},
          {lengthParam("sleeve", s_.finished(Field::UpperArm)),
           lengthParam("target", m.armhole() + m.easeWanted)});
    else
      say(Severity::Blocking, m.nearest ? "match.unreachable" : "match.nowhere",
          {shown, Field::CapHeight},
          {phraseParam("what", "field." + std::string(info(shown).key)), lengthParam("low", m.low),
           lengthParam("high", m.high), lengthParam("height", m.height),
           lengthParam("nearest", m.nearest ? m.nearest->height : 0),
           lengthParam("value", m.nearest ? m.nearest->value : 0)});
  }

  // Gathers and pleats need length to draw in, a place for it, and fabric that is not folded too
  // thick.
  void drawnIn() {
    if (!s_.style.capDrawnIn() || !g_.cap.found) return;
    const double drawn = drawnInAtCrown(s_.style, g_.cap.easeWanted), over = s_[Field::GatherWidth];
    if (drawn <= 0) {
      say(Severity::Warning, "gathers.nothing", {Field::CapEase},
          {lengthParam("least", kSmoothEase)});
      return;
    }
    // The armhole's way from the end of its underarm bind-off to the shoulder, on its shorter side.
    const auto way = [](const ArmholeShape& a) { return armholeEdge(a) - a.underarm; };
    const double room = 2 * std::min(way(g_.bodice.back), way(g_.bodice.front));
    if (const double most = kMostGathered * room; over > most)
      say(Severity::Warning, "gathers.wide", {Field::GatherWidth},
          {lengthParam("over", over), lengthParam("room", most)});
    constexpr double kLeastPleat = 2; // stitches
    const double each = drawn / s_[Field::Pleats] / s_.stitch.width;
    if (s_.style.pleated() && each < kLeastPleat)
      say(Severity::Warning, "pleats.small", {Field::Pleats, Field::CapEase},
          {numberParam("pleats", s_[Field::Pleats]),
           numberParam("each", std::round(10 * each) / 10)});
    constexpr double kThickest = 3; // cm of fabric in one of seam: common practice 1.5 to 2.5
    if (drawn + over > kThickest * over)
      say(Severity::Warning, "gathers.thick", {Field::GatherWidth, Field::CapEase},
          {lengthParam("drawn", drawn + over), lengthParam("over", over)});
  }

  void cap() {
    const CapMatch& m = g_.cap;
    const double ratio = m.height / depth();
    const Params params{percentParam("ratio", ratio), lengthParam("height", m.height),
                        lengthParam("depth", depth())};
    if (m.found && ratio < s_[Field::LimitCapLow])
      say(Severity::Warning, "cap.low", {Field::EaseUpperArm, Field::CapHeight}, params);
    // What is drawn in at the crown stands up (common practice: a puff is higher than its armhole
    // asks for).
    constexpr double kPuff = 0.25;
    const bool puffed = drawnInAtCrown(s_.style, m.easeWanted) > 0;
    if (m.found && ratio > s_[Field::LimitCapHigh] + (puffed ? kPuff : 0))
      say(Severity::Warning, "cap.high", {Field::EaseUpperArm, Field::CapHeight}, params);
    const double ease = m.easeWanted;
    if (ease > s_[Field::LimitCapEase] && !s_.style.capDrawnIn())
      say(Severity::Warning, "capEase.high", {Field::CapEase},
          {lengthParam("ease", ease), lengthParam("limit", s_[Field::LimitCapEase])});
    if (ease < 0)
      say(Severity::Warning, "capEase.negative", {Field::CapEase}, {lengthParam("ease", -ease)});
    // Common practice: 5 to 7.5 cm, up to 12.5 for a wide cap.
    const double crown = s_[Field::CrownWidth], drawn = drawnInAtCrown(s_.style, ease);
    const double widest = std::max(12.5, 0.4 * s_.finished(Field::UpperArm)) + drawn;
    if (m.found && crown > widest)
      say(Severity::Warning, "crown.wide", {Field::CrownWidth},
          {lengthParam("crown", crown), lengthParam("most", widest)});
    halves();
    lean();
  }

  // A leaning cap is solved for together with its height; with another unknown it stands upright.
  void lean() {
    if (s_.style.capLean == CapLean::Leaning && g_.cap.unknown != WorkedOut::CapHeight)
      say(Severity::Note, "lean.notNow", {Field::CapHeight});
  }

  // Each half-cap against its own side. The mark moves along the crown; where that is not enough,
  // or the halves differ more than a knitter eases in, the cap should lean.
  void halves() {
    const CapMatch& m = g_.cap;
    if (!m.found || m.armhole() <= 0) return;
    const double share = m.armholeBack / m.armhole();
    const double off = m.capBack - m.armholeBack - share * m.ease();
    constexpr double kEasedIn = 0.5; // cm
    if (std::abs(off) > kEasedIn)
      say(Severity::Warning, "halfCap.uneven", {Field::UnderarmBack, Field::UnderarmFront},
          {lengthParam("off", std::abs(off)),
           phraseParam("longer", off > 0 ? "side.back" : "side.front")});
  }

  void sleeve() {
    const double arm = s_.finished(Field::UpperArm), body = s_.body(Field::UpperArm);
    constexpr double kStretch = 1.25; // of knitted fabric about an arm: common practice
    const bool bodyKnown = !s_.fromGarment(Field::UpperArm);
    if (bodyKnown && kStretch * arm < body)
      say(Severity::Blocking, "upperArm.closed", {Field::EaseUpperArm, Field::UpperArm},
          {lengthParam("finished", arm), lengthParam("body", body)});
    else if (bodyKnown && arm < body + s_[Field::LimitUpperArm])
      say(Severity::Warning, "upperArm.tight", {Field::EaseUpperArm, Field::UpperArm},
          {lengthParam("finished", arm), lengthParam("body", body)});
    const double cuff = 2 * g_.sleeve.halfCuff;
    if (cuff * s_[Field::LimitHandStretch] < s_[Field::HandGirth])
      say(Severity::Warning, "wrist.hand", {Field::EaseWrist, Field::HandGirth},
          {lengthParam("cuff", cuff), lengthParam("hand", s_[Field::HandGirth])});
    if (s_.style.sleeve().gathered && s_[Field::FullGirth] < s_[Field::CuffGirth])
      say(Severity::Warning, "sleeve.notFull", {Field::FullGirth, Field::CuffGirth},
          {lengthParam("full", s_[Field::FullGirth]), lengthParam("cuff", s_[Field::CuffGirth])});
    if (g_.sleeve.length < 2 * s_[Field::CuffDepth])
      say(Severity::Note, "sleeve.short", {Field::CuffDepth, Field::SleeveLength},
          {lengthParam("length", g_.sleeve.length), lengthParam("cuff", g_.sleeve.cuff)});
  }

  void neck() {
    const Bodice& b = g_.bodice;
    const double shoulder = b.back.halfShoulder - b.halfNeck;
    const double seam = std::hypot(std::max(shoulder, 0.0), s_[Field::ShoulderDrop]);
    if (shoulder < 1)
      say(Severity::Blocking, "neck.wide", {Field::NeckWidth, Field::CrossShoulder},
          {lengthParam("neck", 2 * b.halfNeck), lengthParam("shoulder", 2 * b.back.halfShoulder)});
    else if (seam < s_[Field::LimitShoulderLow])
      say(Severity::Warning, "shoulder.short", {Field::NeckWidth, Field::ShoulderLength},
          {lengthParam("seam", seam), lengthParam("limit", s_[Field::LimitShoulderLow])});
    else if (seam > s_[Field::LimitShoulderHigh])
      say(Severity::Warning, "shoulder.long", {Field::NeckWidth, Field::ShoulderLength},
          {lengthParam("seam", seam), lengthParam("limit", s_[Field::LimitShoulderHigh])});
    constexpr double kLeastStrip = 1; // cm
    const double strip = std::min(narrowestStrip(b.backHalf), narrowestStrip(b.frontHalf));
    if (shoulder >= 1 && strip < kLeastStrip)
      say(Severity::Blocking, "neck.armhole",
          {Field::NeckWidth, Field::FrontNeckDrop, Field::EaseCrossFront},
          {lengthParam("strip", std::max(strip, 0.0)), lengthParam("least", kLeastStrip)});
    if (b.frontAt.neckLow < b.frontAt.hem + 2)
      say(Severity::Blocking, "neck.deep", {Field::FrontNeckDrop},
          {lengthParam("drop", s_[Field::FrontNeckDrop])});
    if (g_.design.has(Field::NeckWidth) && s_.fromGarment(Field::ShoulderLength) &&
        std::abs(seam - s_[Field::ShoulderLength]) > 0.5)
      say(Severity::Warning, "shoulder.differs", {Field::ShoulderLength, Field::NeckWidth},
          {lengthParam("seam", seam), lengthParam("given", s_[Field::ShoulderLength])});
    constexpr double kMuchNarrower = 1; // cm
    if (g_.design.has(Field::ShoulderLength) && !s_.fromGarment(Field::ShoulderLength) &&
        !g_.design.has(Field::NeckWidth) && s_[Field::NeckWidth] > s_.neckAsked + kMuchNarrower)
      say(Severity::Note, "shoulder.neck", {Field::ShoulderLength, Field::CrossShoulder},
          {lengthParam("length", s_[Field::ShoulderLength]),
           lengthParam("asked", std::max(s_.neckAsked, 0.0)),
           lengthParam("neck", s_[Field::NeckWidth])});
    head();
  }

  void head() {
    const bool pullover = !s_.style.jacket();
    const double edge = g_.bodice.neckEdge + (pullover ? 2 * s_[Field::BackOpening] : 0);
    const double stretched = edge * s_[Field::LimitNeckStretch], girth = s_[Field::HeadGirth];
    if (pullover && stretched < girth)
      say(Severity::Blocking, "neck.head",
          {Field::NeckWidth, Field::FrontNeckDrop, Field::HeadGirth},
          {lengthParam("stretched", stretched), lengthParam("head", girth)});
    else if (edge < s_[Field::NeckBase] && (pullover || s_.style.figure != Figure::Baby))
      say(Severity::Warning, "neck.base", {Field::NeckWidth, Field::NeckBase},
          {lengthParam("edge", edge), lengthParam("base", s_[Field::NeckBase])});
  }

  void body() {
    const BodiceHeights& at = g_.bodice.at;
    if (s_.style.waisted() && g_.design.has(Field::WaistHeight) &&
        (at.waist < at.hem || at.waist + kWaistEven >= at.underarm - kUnderarmEven))
      say(Severity::Warning, "waist.outside", {Field::WaistHeight},
          {lengthParam("waist", s_[Field::WaistHeight]), lengthParam("low", at.hem - at.fold),
           lengthParam("high", std::max(at.underarm - at.fold - kWaistEven - kUnderarmEven, 0.0))});
    if (s_.style.bustShortRows() && s_[Field::BustDepth] <= 0)
      say(Severity::Note, "bust.nothing", {Field::BustDepth, Field::FrontWaistLength});
    if (!s_.fromGarment(Field::Hip) && g_.bodice.at.hip >= 0 &&
        s_.finished(Field::Hip) < s_.body(Field::Hip))
      say(Severity::Warning, "hip.tight", {Field::EaseHip, Field::Hip},
          {lengthParam("finished", s_.finished(Field::Hip)),
           lengthParam("body", s_.body(Field::Hip))});
    if (!s_.fromGarment(Field::Bust) && s_[Field::EaseBust] < 0)
      say(Severity::Note, "bust.stretched", {Field::EaseBust},
          {lengthParam("finished", s_.finished(Field::Bust)),
           lengthParam("body", s_.body(Field::Bust))});
  }

  void notes() {
    if (!g_.design.has(Field::SwatchRows))
      say(Severity::Note, "gauge.rowsMissing", {Field::SwatchRows},
          {numberParam("rows", std::round(10 / s_.stitch.height * 10) / 10)});
    if (!g_.design.yes(Choice::Washed))
      say(Severity::Note, "gauge.unwashed", {Field::SwatchStitches});
    const Figure figure = s_.style.figure;
    if (figure == Figure::Child || figure == Figure::Baby)
      say(Severity::Note, "child.safety", {Field::Bust});
  }

  const GarmentDraft& g_;
  const Sizes& s_;
  Findings out_;
};

} // namespace

Findings checkDraft(const GarmentDraft& draft) {
  return DraftChecks(draft).run();
}

} // namespace scye
