// The page to knit by: of one piece the row to work now in large letters, what comes after it, and
// how far it has come. Forward by the button, Space, Return, Page Down (a pedal), Right or Down;
// back by the button, Backspace, Page Up, Left or Up. The place is in the design's file with every
// step (document/place_keeper.h); several pieces can be on needles at once. The row is shown in the
// chart on the page, and on the drawing beside it.
#pragma once

#include "knitting/knit_page.h"
#include "progress/progress_words.h"

#include <QElapsedTimer>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;
class QSpinBox;

namespace scye {

class BigText;
class ChartView;
class ConflictBox;

class NeedlePage : public KnitPage {
  Q_OBJECT
public:
  NeedlePage(Document& document, Attention& attention, Settings& settings,
             QWidget* parent = nullptr);

  void step(int rows); // forward, or back
  void choosePiece(PieceId piece);
  [[nodiscard]] std::optional<PieceId> piece() const;
  [[nodiscard]] BigText& what() const { return *what_; }
  [[nodiscard]] ChartView& chart() const { return *chart_; }
  [[nodiscard]] ConflictBox& conflicts() const { return *conflicts_; }
  [[nodiscard]] QCheckBox& reminder() const { return *reminder_; }

protected:
  void refresh() override;
  void keyPressEvent(QKeyEvent* event) override;
  void showEvent(QShowEvent* event) override;

private:
  struct Here {
    const KnitPiece* plan = nullptr;
    int worked = 0;
  };
  [[nodiscard]] Here here() const;
  void fillPieces();
  void tell(const Place& place);
  void tellLeft(const Place& place);
  void tellGauge(const Here& at);
  void showChart(const Here& at, const Place& place);
  void lightRows(const Place& place);
  void keepNote();
  void ripBack();
  void stray();
  void remind();
  // The work with the piece begun; nothing where there is none.
  [[nodiscard]] std::pair<Work, PieceWork*> begun() const;

  Attention& attention_;
  QComboBox* pieces_;
  QProgressBar* share_;
  QLabel* row_;
  BigText* what_;
  QLabel *count_, *repeat_, *event_, *next_, *left_, *gauge_, *rest_;
  QLineEdit* note_;
  QPushButton *back_, *forward_, *rip_, *strayed_;
  QSpinBox *ripTo_, *more_;
  QCheckBox* reminder_;
  ConflictBox* conflicts_;
  ChartView* chart_;
  KnitPiece charted_; // what the chart shows
  QElapsedTimer sinceStep_, sinceRest_;
};

} // namespace scye
