#include "making_up/yarn.h"

#include "body/yarn_classes.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr double kRibTakes = 1.1;
constexpr double kSeamTakes = 3, kEnds = 0.02;
constexpr YarnRange kStitchTakes{3.6, 4.3}; // widths of a stitch
constexpr double kMetrePerYard = 0.9144, kGramPerPound = 453.59237;

double takes(const RibStitch& rib) {
  return rib.columns() || rib.kind == RibKind::Seed ? kRibTakes : 1;
}

// Every stitch of every row, the cast-on and what is bound off included.
double stitchesOf(const KnitPiece& piece) {
  double n = 0;
  for (const RowLine& line : piece.rows) {
    double row = line.stitches().value();
    for (const Act& a : line.acts)
      if (a.kind == ActKind::BindOff || a.kind == ActKind::Close) row += a.stitches.value();
    const bool edge = piece.edge == EdgeMade::Ribbed && line.row <= piece.hemRows;
    n += row * (edge ? takes(piece.rib) : 1);
  }
  return n;
}

double bandStitches(const GarmentDraft& draft, const KnitGarment& garment, const PickUps& picked) {
  const double row = garment.lattice.size.height;
  double n = 0;
  const double neckBand = draft.sizes[Field::NeckBand];
  const bool withNeck = picked.band.withNeck;
  if (picked.neck.total() > 0 && (neckBand >= kLeastBandWidth || withNeck))
    n += (picked.neck.total() + (withNeck ? 2 * picked.band.stitches : 0)) *
         (bandRows(neckBand, row) + 2); // picked up, and bound off
  if (picked.band.stitches > 0 && !withNeck)
    n += 2 * picked.band.stitches * (bandRows(draft.sizes[Field::ButtonBand], row) + 2);
  return n * takes(garment.lattice.rib);
}

// cm of all seams.
double seamLength(const KnitGarment& garment) {
  const Lattice& l = garment.lattice;
  const double side = l.size.up(l.underarmRow - Rows(1));
  const double sleeve = l.size.up(l.sleeveUnderarmRow - Rows(1));
  return 2 * (side + sleeve + l.size.across(l.back.shoulder)) + garment.left.armhole.mean() +
         garment.right.armhole.mean();
}

// Metres in a gram.
YarnRange runOf(const Sizes& s, const Design& design, YarnNeed& need) {
  if (need.ballWeight > 0 && need.ballLength > 0) {
    const double run = need.ballLength / need.ballWeight;
    return {run, run};
  }
  const YarnClass* yarn = yarnClassByGauge(1 / s.stitch.width);
  if (const auto named = namedYarnClass(design.option(Choice::YarnClass)))
    yarn = &yarnClasses()[std::size_t(*named)];
  if (!yarn || yarn->lowYards == 0) return {};
  need.yarnClass = yarn->number;
  const double perGram = kMetrePerYard / kGramPerPound;
  // An open end is taken a third further.
  const double high = yarn->highYards > 0 ? yarn->highYards : 4.0 / 3 * yarn->lowYards;
  return {yarn->lowYards * perGram, high * perGram};
}

} // namespace

int bandRows(double width, double rowHeight) {
  return std::max(1, int(std::lround(width / rowHeight)));
}

YarnNeed yarnNeed(const GarmentDraft& draft, const KnitGarment& garment, const MakingUp& makingUp) {
  YarnNeed need;
  if (!garment.gaugeUsable || garment.pieces.empty()) return need;
  const Sizes& s = draft.sizes;
  const StitchSize& size = garment.lattice.size;
  const bool oneSleeve = !garment.piece(PieceId::LeftSleeve);
  double widths = 0; // cm, of all stitches side by side
  const auto add = [&](double stitches, const StitchSize& each) {
    need.stitches += stitches;
    need.area += stitches * each.width * each.height;
    widths += stitches * each.width;
  };
  for (const KnitPiece& piece : garment.pieces)
    add(stitchesOf(piece) * (piece.id == PieceId::Sleeve && oneSleeve ? 2 : 1), piece.fabric(size));
  add(bandStitches(draft, garment, makingUp.pickUps), size);
  need.reserve = s[Field::YarnReserve];
  need.ballWeight = s[Field::BallWeight], need.ballLength = s[Field::BallLength];
  const YarnRange run = runOf(s, draft.design, need);
  const double seams = kSeamTakes * seamLength(garment) / 100; // m
  const double swatch = s[Field::SwatchWidth] * s[Field::SwatchHeight];
  need.weighed = s[Field::SwatchWeight] > 0 && swatch > 0;
  if (need.weighed) {
    double grams = need.area * s[Field::SwatchWeight] / swatch;
    if (run.any()) grams += seams / (0.5 * (run.low + run.high));
    grams *= 1 + kEnds;
    need.grams = {grams, grams};
    if (need.ballWeight > 0 && need.ballLength > 0)
      need.metres = {grams * run.low, grams * run.high}, need.yarnClass = -1;
  } else {
    const auto metres = [&](double each) { return (1 + kEnds) * (each * widths / 100 + seams); };
    need.metres = {metres(kStitchTakes.low), metres(kStitchTakes.high)};
    if (run.any()) need.grams = {need.metres.low / run.high, need.metres.high / run.low};
  }
  if (need.ballWeight > 0 && need.grams.any())
    need.balls = int(std::ceil(need.grams.high * (1 + need.reserve) / need.ballWeight - 1e-9));
  return need;
}

} // namespace scye
