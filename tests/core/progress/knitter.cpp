#include "core/progress/knitter.h"

#include "directions/virtual_knitter.h"
#include "io/design_file.h"
#include "io/files.h"

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
double columnLength(const KnitPiece& piece, EdgeSide side, const StitchSize& size, int selvedge) {
  const bool sleeve = isSleeve(piece.id);
  const int begin = piece.underarmRow + (side == EdgeSide::Left ? 1 : 0);
  const int end = sleeve ? piece.crownRow : piece.shoulderRow + (side == EdgeSide::Left ? 1 : 0);
  std::vector<double> column;
  for (int row = begin - 1; row < end; ++row)
    for (const RowLine& line : piece.rows) {
      const SectionId own = side == EdgeSide::Left ? SectionId::Left : SectionId::Right;
      if (line.row == row && (line.section == SectionId::Body || line.section == own))
        column.push_back(side == EdgeSide::Left ? line.leftEdge : line.rightEdge);
    }
  double flat = 0;
  if (sleeve)
    for (const RowLine& line : piece.rows)
      if (line.row == piece.crownRow - 1) flat = 0.5 * line.stitches().value() - selvedge;
  return edgeLength(edgeFromColumn(column, side, begin, end, flat), size).mean();
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
  return columnLength(p->plan, edge, real_, 0) * (1 + armholeOff_);
}

void Knitter::works(PieceId piece, int lines) {
  PieceWork* p = workOn(work_, presentGarment(draft_, design_, work_), design_, piece);
  p->worked = std::min(lines, int(p->plan.rows.size()));
}

void Knitter::knitsTheBodice() {
  for (const PieceId id : piecesToKnit(design_)) {
    if (isSleeve(id)) continue;
    works(id, 1 << 20);
    PieceWork* p = work_.find(id);
    const double right = armholeOf(id, EdgeSide::Right), left = armholeOf(id, EdgeSide::Left);
    p->measured.set(Reading::Armhole, id == PieceId::LeftFront    ? right
                                      : id == PieceId::RightFront ? left
                                                                  : 0.5 * (right + left));
    p->measured.set(Reading::StitchCount, 10 / real_.width);
    p->measured.set(Reading::RowCount, 10 / real_.height);
  }
}

void Knitter::knitsToARandomRowOfTheSleeves() {
  const int each = int(plannedPiece(design_, PieceId::Sleeve)->rows.size());
  const int rows = std::uniform_int_distribution(0, 2 * each - 2)(random_);
  if (rows > 0) works(PieceId::Sleeve, std::min(rows, each - 1));
  if (rows >= each) works(PieceId::LeftSleeve, rows - each + 1);
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

double Knitter::worstSeam() const {
  double worst = 0;
  const bool pullover = work_.find(PieceId::Front) != nullptr;
  const int selvedge = design_.lattice.selvedge;
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
