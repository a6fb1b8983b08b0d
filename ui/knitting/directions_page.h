// The directions, a piece at a time.
#pragma once

#include "knitting/knit_page.h"
#include "knitting/piece_list.h"

#include "directions/directions.h"

class QBoxLayout;
class QComboBox;

namespace scye {

class LinesView;

class DirectionsPage : public KnitPage {
  Q_OBJECT
public:
  DirectionsPage(Document& document, Attention& attention, Settings& settings,
                 QWidget* parent = nullptr);

  void showPiece(PieceId piece);
  void showRow(const PieceRows& rows); // now, or when it is next seen
  [[nodiscard]] LinesView& lines() const { return *lines_; }

Q_SIGNALS:
  void pieceChosen(scye::PieceId piece);

protected:
  void refresh() override;
  void hideEvent(QHideEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

private:
  [[nodiscard]] std::vector<DirectionLine> linesOf(const PieceList::Place& place) const;
  void refreshTerms();

  Attention& attention_;
  QBoxLayout* row_;
  QBoxLayout* side_;
  PieceList* pieces_;
  LinesView* lines_;
  QComboBox* terms_;
  std::optional<PieceList::Place> shown_;
  std::optional<PieceRows> toShow_;
};

// Words and units as chosen in the settings.
[[nodiscard]] Wording wordingOf(const Settings& settings);

} // namespace scye
