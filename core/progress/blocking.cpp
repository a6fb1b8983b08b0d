#include "progress/blocking.h"

#include "directions/finishing_words.h"
#include "directions/words.h"
#include "progress/progress_words.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

bool isSleeve(PieceId id) {
  return id == PieceId::Sleeve || id == PieceId::LeftSleeve;
}

Reading readingOf(PieceSize::What what) {
  switch (what) {
  case PieceSize::What::Width:
    return Reading::Width;
  case PieceSize::What::Cross:
    return Reading::Cross;
  case PieceSize::What::Depth:
    return Reading::Depth;
  case PieceSize::What::Length:
    break;
  }
  return Reading::Length;
}

// What a piece measures in whole stitches and rows of some size.
double sizeOf(const KnitPiece& piece, PieceSize::What what, const StitchSize& size,
              Stitches selvedges) {
  const bool sleeve = isSleeve(piece.id);
  const auto stitchesAt = [&](Rows row) {
    for (const RowLine& line : piece.rows)
      if (line.row == row && line.section == SectionId::Undivided) return line.stitches();
    return Stitches(0);
  };
  switch (what) {
  case PieceSize::What::Width:
    return size.across(stitchesAt(piece.underarmRow - Rows(1)) - selvedges);
  case PieceSize::What::Cross: {
    Stitches least = stitchesAt(piece.underarmRow - Rows(1));
    for (const RowLine& line : piece.rows)
      if (line.section == SectionId::Undivided && line.row > piece.underarmRow + Rows(1) &&
          line.row < piece.shoulderRow && line.waiting == Stitches(0) &&
          line.stitches() > Stitches(0))
        least = std::min(least, line.stitches());
    return size.across(least - selvedges);
  }
  case PieceSize::What::Depth:
    return size.up((sleeve ? piece.crownRow : piece.shoulderRow) - piece.underarmRow);
  case PieceSize::What::Length:
    break;
  }
  return size.up(piece.underarmRow - Rows(1));
}

void addPins(std::vector<MakingUpItem>& list, const Words& words,
             const std::vector<SeamMarks>& sides) {
  for (const SeamMarks& side : sides) {
    const bool back = side.half == ArmholeHalf::Back;
    int number = 0;
    for (const SeamMark& mark : side.marks) {
      const std::string key = std::string("pin.") + (side.wearersLeft ? "left" : "right") +
                              (back ? ".back." : ".front.") + std::to_string(++number);
      list.push_back(
          {key, words.sayPlain(
                    mark.cap.flat == Flat::Crown ? "makingUp.pin.crown" : "makingUp.pin",
                    {phraseParam("side", side.wearersLeft ? "progress.left" : "progress.right"),
                     phraseParam("half", back ? "makingUp.back" : "makingUp.front"),
                     numberParam("n", number), numberParam("armhole", mark.armhole.row),
                     numberParam("cap", mark.cap.row), numberParam("k", mark.cap.stitches)})});
    }
  }
}

} // namespace

std::vector<PieceSize> pieceSizes(const GarmentDraft& draft, const KnitGarment& design,
                                  const KnitGarment& present, const Work& work) {
  std::vector<PieceSize> out;
  const GaugeReport gauge = gaugeReport(draft.design);
  for (const PieceId id : piecesToKnit(present)) {
    const KnitPiece& planned = *plannedPiece(present, id);
    const KnitPiece* asked = plannedPiece(design, id);
    const PieceWork* p = work.find(id);
    const StitchSize real = fabricOf(work, id, draft).size;
    const bool half = id == PieceId::LeftFront || id == PieceId::RightFront;
    const Stitches selvedges = (half ? 1 : 2) * present.lattice.selvedge;
    for (const PieceSize::What what : {PieceSize::What::Width, PieceSize::What::Cross,
                                       PieceSize::What::Depth, PieceSize::What::Length}) {
      if (what == PieceSize::What::Cross && isSleeve(id)) continue;
      PieceSize s{.piece = id, .what = what};
      s.knitted = sizeOf(planned, what, real, selvedges);
      s.wanted = asked ? sizeOf(*asked, what, draft.sizes.stitch, selvedges) : s.knitted;
      // A cap is as high as its own armhole wants it.
      if (isSleeve(id) && what == PieceSize::What::Depth) s.wanted = s.knitted;
      const bool across = what == PieceSize::What::Width || what == PieceSize::What::Cross;
      if (p)
        if (const auto cm = p->measured[readingOf(what)])
          s.measured = blocked(*cm, p->measured.as, across, gauge);
      const double is = s.measured.value_or(s.knitted);
      const double reach = kBlockingReach * is;
      s.canBlock = std::abs(s.wanted - is) <= reach + 1e-9;
      s.pinOut = std::clamp(s.wanted, is - reach, is + reach);
      out.push_back(s);
    }
  }
  return out;
}

std::vector<MakingUpItem> makingUpList(const Directions& directions, const Wording& wording) {
  const Words words(wording);
  std::vector<MakingUpItem> list;
  const auto block = [&](PieceId id) {
    list.push_back({"block." + std::string(pieceKey(id)),
                    words.sayPlain("makingUp.block",
                                   {textParam("piece", workPieceName(words.phrases(), id))})});
  };
  bool leftTold = false;
  for (const PieceSteps& piece : directions.pieces)
    leftTold |= piece.id == PieceId::LeftSleeve;
  for (const PieceSteps& piece : directions.pieces) {
    block(piece.id);
    if (piece.id == PieceId::Sleeve && !leftTold) block(PieceId::LeftSleeve);
  }
  const std::size_t pinned = sentencesUpToSleeves(words, directions);
  std::size_t n = 0;
  for (std::string& sentence : finishingSentences(words, directions)) {
    list.push_back({"finish." + std::to_string(++n), std::move(sentence)});
    if (n == pinned) addPins(list, words, directions.finishing.makingUp.marks);
  }
  return list;
}

} // namespace scye
