// As it came out: what was counted and measured on each piece, and what that asks of the pieces
// that are still to be knitted: in words, and drawn, the new plan over the old one. Answers are
// worked out beside the window.
#pragma once

#include "document/beside.h"
#include "knitting/knit_page.h"
#include "progress/progress_words.h"
#include "schematic/picture.h"

#include <array>

class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QPushButton;

namespace scye {

class PictureWidget;

class CameOutPage : public KnitPage {
  Q_OBJECT
public:
  CameOutPage(Document& document, Settings& settings, QWidget* parent = nullptr);

  [[nodiscard]] QDoubleSpinBox& box(Reading reading) const { return *boxes_[std::size_t(reading)]; }
  [[nodiscard]] QString answer() const;
  [[nodiscard]] QString warning() const;
  [[nodiscard]] QComboBox& pieces() const { return *pieces_; }
  [[nodiscard]] QComboBox& as() const { return *as_; }
  [[nodiscard]] QPushButton& planAnew() const { return *plan_; }
  [[nodiscard]] QPushButton& otherCounts() const { return *recount_; }
  [[nodiscard]] PictureWidget& drawn() const { return *drawn_; }

protected:
  void refresh() override;

private:
  struct PieceChange {
    KnitPiece before, after;
    StitchSize size; // of the fabric
    int worked = 0;
  };
  struct Answer {
    Refit refit;
    std::vector<GaugeWarning> warnings;
    std::optional<Work> recounted;
    Work before;
    std::vector<PieceChange> pieces; // that are planned anew
  };
  void fillPieces();
  void fillBoxes();
  void take(Reading reading, double value);
  void ask();
  void show(const Answer& answer);
  void measure(const std::function<void(Measured&)>& set);
  void settle(bool recount);
  [[nodiscard]] Picture oldOverNew(double textHeight, int perRow) const;
  [[nodiscard]] double perUnit(Reading reading) const; // cm
  [[nodiscard]] std::optional<PieceId> piece() const;

  QComboBox *pieces_, *as_;
  std::array<QDoubleSpinBox*, kReadings> boxes_{};
  QLabel *warning_, *answer_;
  QPushButton *plan_, *recount_;
  PictureWidget* drawn_;
  std::optional<Answer> shown_;
  quint64 asked_ = 0;
  Beside beside_; // last: its thread ends before what it hands over to
};

} // namespace scye
