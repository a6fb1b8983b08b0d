#include "knitting/piece_list.h"

#include "model/phrases.h"

#include <QSignalBlocker>

#include <algorithm>

namespace scye {

QString pieceName(const Phrases& phrases, PieceId piece, const std::vector<PieceId>& all) {
  const bool two = std::find(all.begin(), all.end(), PieceId::LeftSleeve) != all.end();
  const std::string key =
      piece == PieceId::Sleeve && two ? "rightSleeve" : std::string(pieceKey(piece));
  return QString::fromStdString(phrases.say("piece." + key));
}

PieceList::PieceList(const Phrases& phrases, bool withWhole, QWidget* parent)
    : QListWidget(parent), phrases_(phrases), withWhole_(withWhole) {
  setAccessibleName(tr("Piece"));
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
  setResizeMode(QListView::Adjust);
  setSpacing(std::max(1, fontMetrics().height() / 10));
  viewport()->setAutoFillBackground(false);
  connect(this, &QListWidget::currentRowChanged, this, &PieceList::chosen);
}

void PieceList::setPieces(const std::vector<PieceId>& pieces) {
  if (pieces == pieces_) return;
  const std::optional<Place> before = place();
  pieces_ = pieces;
  places_.clear();
  const QSignalBlocker quiet(this);
  clear();
  const auto add = [this](const Place& place, const QString& name) {
    places_.push_back(place);
    addItem(name);
  };
  if (withWhole_ && !pieces.empty()) add({Part::Before, {}}, tr("Before you begin"));
  for (const PieceId piece : pieces)
    add({Part::Piece, piece}, pieceName(phrases_, piece, pieces));
  if (withWhole_ && !pieces.empty()) add({Part::After, {}}, tr("Finishing"));
  if (pieces.empty()) return;
  const auto at = before ? std::find(places_.begin(), places_.end(), *before) : places_.end();
  showPiece(wanted_.value_or(pieces.front()));
  if (currentRow() < 0) showPiece(pieces.front());
  if (at != places_.end()) setCurrentRow(int(at - places_.begin()));
  fitHeight();
  updateGeometry();
}

std::optional<PieceList::Place> PieceList::place() const {
  const int row = currentRow();
  if (row < 0 || row >= int(places_.size())) return std::nullopt;
  return places_[std::size_t(row)];
}

void PieceList::showPiece(PieceId piece) {
  const auto at = std::find(places_.begin(), places_.end(), Place{Part::Piece, piece});
  wanted_ = at == places_.end() ? std::optional(piece) : std::nullopt;
  const QSignalBlocker quiet(this);
  if (!wanted_) setCurrentRow(int(at - places_.begin()));
}

void PieceList::setAcross(bool across, int width) {
  across_ = across;
  setFlow(across ? LeftToRight : TopToBottom);
  setWrapping(across);
  setMinimumHeight(0);
  setMaximumHeight(QWIDGETSIZE_MAX);
  setSizePolicy(across ? QSizePolicy::Expanding : QSizePolicy::Fixed, QSizePolicy::Expanding);
  if (across) resize(width, height());
  fitHeight();
}

void PieceList::fitHeight() {
  if (!across_ || count() == 0) return;
  doItemsLayout();
  setFixedHeight(visualItemRect(item(count() - 1)).bottom() + 2 * spacing() + 1);
}

QSize PieceList::sizeHint() const {
  const int em = fontMetrics().averageCharWidth();
  return {std::max(sizeHintForColumn(0), 12 * em) + 3 * em, 10 * fontMetrics().height()};
}
QSize PieceList::minimumSizeHint() const {
  return {across_ ? 0 : sizeHint().width(), 2 * fontMetrics().height()};
}

} // namespace scye
