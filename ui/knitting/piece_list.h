// The pieces to choose from, in the order of the directions, in the trade's names; for the
// directions also what stands before and after them.
#pragma once

#include "draft/piece.h"

#include <QListWidget>

#include <optional>
#include <vector>

namespace scye {

class PieceList : public QListWidget {
  Q_OBJECT
public:
  enum class Part { Before, Piece, After };
  struct Place {
    Part part = Part::Piece;
    PieceId piece = PieceId::Back; // meant where `part` is Piece
    bool operator==(const Place&) const = default;
  };

  PieceList(const Phrases& phrases, bool withWhole, QWidget* parent);

  // Stays at the same piece, or goes to the first one.
  void setPieces(const std::vector<PieceId>& pieces);
  [[nodiscard]] std::optional<Place> place() const;
  // Without the signal; once there is such a piece.
  void showPiece(PieceId piece);
  // One below the other, or one beside the other in as many lines as they need in that width.
  void setAcross(bool across, int width);

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
  void chosen();

private:
  void fitHeight();

  const Phrases& phrases_;
  bool withWhole_, across_ = false;
  std::optional<PieceId> wanted_; // asked for before it was there
  std::vector<PieceId> pieces_;
  std::vector<Place> places_;
};

// Pages narrower than this (characters) have the pieces above them.
inline constexpr int kNarrow = 90;

// "Right sleeve" where the two differ.
[[nodiscard]] QString pieceName(const Phrases& phrases, PieceId piece,
                                const std::vector<PieceId>& all);

} // namespace scye
