#include "core/progress/knitter.h"

#include "directions/virtual_knitter.h"
#include "io/design_file.h"
#include "io/files.h"
#include "progress/gauge_watch.h"

#include <cmath>
#include <filesystem>

namespace scye {
namespace {

double between(std::mt19937& random, double low, double high) {
  return std::uniform_real_distribution(low, high)(random);
}

bool isSleeve(PieceId id) {
  return id == PieceId::Sleeve || id == PieceId::LeftSleeve;
}

// An edge by the column of its row table alone.
double columnLength(const KnitPiece& piece, EdgeSide side, const StitchSize& size,
                    Stitches selvedge) {
  const bool sleeve = isSleeve(piece.id);
  const Rows later(side == EdgeSide::Left ? 1 : 0), begin = piece.underarmRow + later;
  const Rows end = sleeve ? piece.crownRow : piece.shoulderRow + later;
  std::vector<double> column;
  for (Rows row = begin - Rows(1); row < end; ++row)
    for (const RowLine& line : piece.rows) {
      const SectionId own = side == EdgeSide::Left ? SectionId::Left : SectionId::Right;
      if (line.row == row && (line.section == SectionId::Undivided || line.section == own))
        column.push_back(side == EdgeSide::Left ? line.leftEdge : line.rightEdge);
    }
  double flat = 0;
  if (sleeve)
    for (const RowLine& line : piece.rows)
      if (line.row == piece.crownRow - Rows(1))
        flat = 0.5 * line.stitches().value() - selvedge.value();
  return edgeLength(edgeFromColumn(column, side, begin, end, flat), size).mean();
}

// Rows over the bust that end before the edge.
Rows shortRows(const KnitPiece& piece) {
  return Rows(int(std::count_if(piece.rows.begin(), piece.rows.end(), [&](const RowLine& line) {
    return line.row < piece.underarmRow && line.waiting > Stitches(0);
  })));
}

} // namespace

std::vector<std::string> demoNames() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(SCYE_RESOURCES "/demos"))
    if (entry.path().extension() == ".scye") names.push_back(entry.path().stem());
  std::sort(names.begin(), names.end());
  return names;
}

Design demoDesign(const std::string& name) {
  const FileText file = readWhole(std::string(SCYE_RESOURCES "/demos/") + name + ".scye");
  const DesignRead read = designFromJson(file.text.value_or(""), builtinPhrases());
  EXPECT_TRUE(read.design.has_value()) << name;
  return read.design.value_or(Design());
}

Knitter::Knitter(const Design& design, unsigned seed)
    : random_(seed), draft_(draftGarment(design)), design_(knitGarment(draft_)) {
  real_ = {draft_.sizes.stitch.width * between(random_, 0.95, 1.05),
           draft_.sizes.stitch.height * between(random_, 0.95, 1.05)};
  const double armhole = design_.right.armhole.mean();
  armholeOff_ = between(random_, -2, 2) / armhole;
}

double Knitter::armholeOf(PieceId piece, EdgeSide edge) const {
  const PieceWork* p = work_.find(piece);
  return columnLength(p->plan, edge, real_, Stitches(0)) * (1 + armholeOff_);
}

void Knitter::works(PieceId piece, int lines) {
  PieceWork* p = workOn(work_, presentGarment(draft_, design_, work_), design_, piece);
  p->worked = std::min(lines, int(p->plan.rows.size()));
}

int Knitter::index(int below) {
  return std::uniform_int_distribution(0, std::max(1, below) - 1)(random_);
}

// The pieces one after the other, so many lines in all.
void Knitter::goTo(std::span<const PieceId> order, int lines) {
  for (const PieceId id : order) {
    const int all = int(plannedPiece(design_, id)->rows.size());
    if (lines <= 0) return;
    works(id, std::min(lines, all));
    if (lines < all) stoppedInTheBodice_ = !isSleeve(id);
    lines -= all;
  }
}

void Knitter::knitsToARandomRow() {
  std::vector<PieceId> bodice, sleeves;
  for (const PieceId id : piecesToKnit(design_))
    (isSleeve(id) ? sleeves : bodice).push_back(id);
  std::shuffle(bodice.begin(), bodice.end(), random_);
  std::shuffle(sleeves.begin(), sleeves.end(), random_);
  const int each = int(plannedPiece(design_, PieceId::Sleeve)->rows.size());
  if (index(4) == 0) // a sleeve or both are begun before the body, as a large swatch
    for (const PieceId id : sleeves)
      if (index(2) == 0) works(id, 1 + index(each - 1));
  std::vector<PieceId> order = bodice;
  if (work_.pieces.empty()) order.insert(order.end(), sleeves.begin(), sleeves.end());
  int lines = 0;
  for (const PieceId id : order)
    lines += int(plannedPiece(design_, id)->rows.size());
  goTo(order, 1 + index(lines - 1));
  if (stoppedInTheBodice_ && index(3) == 0) { // another piece is on other needles
    const PieceId other = bodice[std::size_t(index(int(bodice.size())))];
    if (!work_.find(other))
      works(other, 1 + index(int(plannedPiece(design_, other)->rows.size()) - 1));
  }
}

void Knitter::measures() {
  constexpr double kEnough = 10; // cm
  for (PieceWork& p : work_.pieces) {
    if (p.worked * real_.height < kEnough) continue;
    const double over = kEnough * (1 + index(3)); // in the middle of the piece
    p.measured.set(Reading::StitchCount, over / real_.width);
    p.measured.set(Reading::Across, over);
    p.measured.set(Reading::RowCount, kEnough / real_.height);
    if (isSleeve(p.piece) || !p.finished()) continue;
    const double right = armholeOf(p.piece, EdgeSide::Right),
                 left = armholeOf(p.piece, EdgeSide::Left);
    p.measured.set(Reading::Armhole, p.piece == PieceId::LeftFront    ? right
                                     : p.piece == PieceId::RightFront ? left
                                                                      : 0.5 * (right + left));
  }
  if (index(2) == 0) return;
  for (const GaugeWarning& w : gaugeWarnings(draft_, design_, work_)) {
    if (!w.canRecount || isSleeve(w.piece)) continue;
    const auto again = recounted(draft_, design_, work_, w.piece);
    EXPECT_TRUE(again);
    if (again) work_ = *again, ++recounts_;
    return;
  }
}

void Knitter::finishesTheBodice() {
  for (const PieceId id : piecesToKnit(design_))
    if (!isSleeve(id)) works(id, 1 << 20);
}

void Knitter::refits() {
  // Ripping back both sleeves may take two goes.
  for (int i = 0; i < 4; ++i) {
    const Refit again = refit(draft_, design_, work_);
    work_ = again.work;
    if (again.ripBack.empty()) return;
    for (const RipBack& rip : again.ripBack) {
      work_ = scye::ripped(work_, rip.piece, rip.lines);
      ++ripped_;
    }
  }
}

void Knitter::finishes() {
  works(PieceId::Sleeve, 1 << 20);
  works(PieceId::LeftSleeve, 1 << 20);
}

bool Knitter::countsAgree() const {
  for (const PieceWork& p : work_.pieces) {
    const Knitted knitted = knit(stepsOf(p.plan, draft_.sizes.stitch));
    if (!knitted.snags.empty() || knitted.rows.size() != p.plan.rows.size() || !worksOut(p.plan)) {
      for (const SnagAt& snag : knitted.snags)
        std::printf("%s row %d snag %d\n", std::string(pieceKey(p.piece)).c_str(), snag.row,
                    int(snag.snag));
      return false;
    }
    for (std::size_t i = 0; i < knitted.rows.size(); ++i)
      if (knitted.rows[i].stitches() != p.plan.rows[i].stitches()) return false;
  }
  return true;
}

bool Knitter::seamsMeet() const {
  const PieceWork* back = work_.find(PieceId::Back);
  const KnitPiece& designed = *design_.piece(PieceId::Back);
  bool meet = true;
  for (const PieceWork& p : work_.pieces) {
    if (isSleeve(p.piece)) continue;
    // Short rows over the bust make a front longer than its side seam.
    const KnitPiece& own = *plannedPiece(design_, p.piece);
    const Rows longer = own.underarmRow - designed.underarmRow + shortRows(p.plan) - shortRows(own);
    meet &= p.plan.underarmRow - back->plan.underarmRow == longer &&
            p.plan.shoulderRow - back->plan.shoulderRow == longer;
    if (!meet)
      std::printf("%s: underarm %d, shoulder %d; back %d, %d, longer %d\n",
                  std::string(pieceKey(p.piece)).c_str(), p.plan.underarmRow.value(),
                  p.plan.shoulderRow.value(), back->plan.underarmRow.value(),
                  back->plan.shoulderRow.value(), longer.value());
  }
  return meet;
}

double Knitter::worstSeam() const {
  double worst = 0;
  const bool pullover = work_.find(PieceId::Front) != nullptr;
  const Stitches selvedge = design_.lattice.selvedge;
  for (const bool left : {false, true}) {
    const PieceId front = pullover ? PieceId::Front
                          : left   ? PieceId::LeftFront
                                   : PieceId::RightFront;
    const double armhole = armholeOf(PieceId::Back, left ? EdgeSide::Left : EdgeSide::Right) +
                           armholeOf(front, left ? EdgeSide::Right : EdgeSide::Left);
    const KnitPiece& sleeve = work_.find(left ? PieceId::LeftSleeve : PieceId::Sleeve)->plan;
    const double cap = columnLength(sleeve, EdgeSide::Right, real_, selvedge) +
                       columnLength(sleeve, EdgeSide::Left, real_, selvedge);
    const double off = cap - armhole - draft_.cap.easeWanted;
    if (std::abs(off) > std::abs(worst)) worst = off;
  }
  return worst;
}

} // namespace scye
