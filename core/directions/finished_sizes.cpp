#include "directions/directions.h"

#include <algorithm>
#include <array>

namespace scye {
namespace {

// In this order they are told; what is not named here comes after them as it was rounded.
constexpr std::array<std::string_view, 20> kOrder{
    "bust",       "length",         "hem",           "waist",        "hemToUnderarm", "backWidth",
    "frontWidth", "frontHalfWidth", "crossShoulder", "crossBack",    "crossFront",    "shoulder",
    "neckWidth",  "neckDrop",       "backNeckDrop",  "armholeDepth", "upperArm",      "elbow",
    "cuff",       "sleeveLength"};

std::size_t placeOf(std::string_view key) {
  return std::size_t(std::find(kOrder.begin(), kOrder.end(), key) - kOrder.begin());
}

// The row above the lower edge and what is changed after it.
std::size_t aboveEdge(const KnitPiece& piece) {
  Rows row = std::max(piece.hemRows, Rows(0));
  for (const Act& a : piece.sections.front().acts)
    if (a.kind == ActKind::IncreaseEvenly && a.shapes == Shapes::Hem) row = std::max(row, a.row);
  return std::size_t(row.value());
}

class Sizing {
public:
  Sizing(const GarmentDraft& draft, const KnitGarment& knit)
      : s_(draft.sizes), neckBand_(2 * draft.bodice.halfNeck - draft.sizes[Field::NeckWidth]),
        k_(knit), l_(knit.lattice) {}

  std::vector<FinishedSize> all() {
    double bust = 0;
    for (const Rounded& r : k_.rounded) {
      if (r.key == "backWidth" || r.key == "frontWidth") bust += r.knitted;
      if (r.key == "frontHalfWidth") bust += 2 * r.knitted;
    }
    add("bust", bust, Field::Bust);
    add("length", l_.size.up(l_.neckTop - std::max(l_.foldRow, Rows(1))));
    hem();
    const Stitches taken = l_.back.away - l_.back.grown + l_.selvedge;
    add("crossShoulder", l_.size.across(l_.back.bust() - 2 * taken), Field::CrossShoulder);
    if (const double inner = neckWidth(); inner > 0) add("neckWidth", inner);
    for (const Rounded& r : k_.rounded)
      if (!told(r.key)) add(r.key, r.knitted, measured(r));
    std::stable_sort(out_.begin(), out_.end(), [](const FinishedSize& a, const FinishedSize& b) {
      return placeOf(a.key) < placeOf(b.key);
    });
    return std::move(out_);
  }

private:
  void add(const std::string& key, double cm, std::optional<Field> of = {}) {
    FinishedSize size{key, cm, {}};
    if (of && s_.origin(*of) == Origin::GivenBody)
      if (const auto ease = easeOf(*of)) size.ease = cm - (s_.finished(*of) - s_[*ease]);
    out_.push_back(std::move(size));
  }
  [[nodiscard]] bool told(std::string_view key) const {
    return std::any_of(out_.begin(), out_.end(),
                       [&](const FinishedSize& size) { return size.key == key; });
  }
  // What of the body the size lies round or across.
  [[nodiscard]] std::optional<Field> measured(const Rounded& r) const {
    if (r.key == "crossBack") return Field::CrossBack;
    if (r.key == "crossFront") return Field::CrossFront;
    if (r.key == "armholeDepth") return Field::ArmholeDepth;
    if (r.key == "upperArm") return Field::UpperArm;
    if (r.key == "elbow") return Field::Elbow;
    if (r.key == "cuff" && r.field == Field::EaseWrist) return Field::Wrist;
    return std::nullopt;
  }

  // Round the lower edge, above its rib; of a jacket as it lies closed.
  void hem() {
    const KnitPiece* back = k_.piece(PieceId::Back);
    const KnitPiece* front = k_.piece(s_.style.jacket() ? PieceId::LeftFront : PieceId::Front);
    if (!back || !front) return;
    const RowLine& b = back->rows[std::min(aboveEdge(*back), back->rows.size() - 1)];
    const RowLine& f = front->rows[std::min(aboveEdge(*front), front->rows.size() - 1)];
    const double half = f.rightEdge - l_.selvedge.value();
    const double across = b.rightEdge - b.leftEdge - 2 * l_.selvedge.value();
    add("hem", (across + 2 * half) * l_.size.width);
  }

  // Between the inner edges of the neckband.
  [[nodiscard]] double neckWidth() const {
    return l_.size.across(l_.back.neck(true) + 2 * l_.pickUp) - neckBand_;
  }

  const Sizes& s_;
  double neckBand_; // both sides of it, across
  const KnitGarment& k_;
  const Lattice& l_;
  std::vector<FinishedSize> out_;
};

} // namespace

std::vector<FinishedSize> finishedSizes(const GarmentDraft& draft, const KnitGarment& garment) {
  if (garment.rounded.empty()) return {};
  return Sizing(draft, garment).all();
}

} // namespace scye
