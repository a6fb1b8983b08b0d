// As it came out: what was counted and measured on each piece, and what that asks of the pieces
// that are still to be knitted. Answers are worked out beside the window.
#pragma once

#include "document/beside.h"
#include "knitting/knit_page.h"
#include "progress/progress_words.h"

#include <array>

class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QPushButton;

namespace scye {

class CameOutPage : public KnitPage {
  Q_OBJECT
public:
  CameOutPage(Document& document, Settings& settings, QWidget* parent = nullptr);

  [[nodiscard]] QDoubleSpinBox& box(Reading reading) const { return *boxes_[std::size_t(reading)]; }
  [[nodiscard]] QString answer() const;
  [[nodiscard]] QPushButton& planAnew() const { return *plan_; }

protected:
  void refresh() override;

private:
  struct Answer {
    Refit refit;
    std::vector<GaugeWarning> warnings;
    std::optional<Work> recounted;
  };
  void fillPieces();
  void fillBoxes();
  void take(Reading reading, double value);
  void ask();
  void show(const Answer& answer);
  [[nodiscard]] double perUnit(Reading reading) const; // cm
  [[nodiscard]] std::optional<PieceId> piece() const;

  QComboBox *pieces_, *as_;
  std::array<QDoubleSpinBox*, kReadings> boxes_{};
  QLabel *warning_, *answer_;
  QPushButton *plan_, *recount_;
  std::optional<Answer> shown_;
  quint64 asked_ = 0;
  Beside beside_; // last: its thread ends before what it hands over to
};

} // namespace scye
