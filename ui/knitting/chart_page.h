// The chart, a piece at a time, with the row that is pointed at named below.
#pragma once

#include "knitting/knit_page.h"

#include <optional>

class QBoxLayout;
class QLabel;

namespace scye {

class ChartView;
class PieceList;

class ChartPage : public KnitPage {
  Q_OBJECT
public:
  ChartPage(Document& document, Attention& attention, Settings& settings,
            QWidget* parent = nullptr);

  void showPiece(PieceId piece);
  [[nodiscard]] ChartView& view() const { return *view_; }

Q_SIGNALS:
  void pieceChosen(scye::PieceId piece);

protected:
  void refresh() override;
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

private:
  void light();
  void name();
  void makeRoomForRow();

  Attention& attention_;
  QBoxLayout* beside_;
  PieceList* pieces_;
  ChartView* view_;
  QLabel* row_;
  std::optional<PieceId> shown_;
};

} // namespace scye
