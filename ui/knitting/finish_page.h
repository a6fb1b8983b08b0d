// Blocking and making up: all that is to be done, in the order of work, to be ticked off, the
// chosen line in letters that are read from where the pieces lie; and for each piece what is
// wanted, knitted and measured, and what to pin it out to.
#pragma once

#include "knitting/knit_page.h"

class QDoubleSpinBox;
class QListWidget;

namespace scye {

class BigText;
class FigureTable;

class FinishPage : public KnitPage {
  Q_OBJECT
public:
  FinishPage(Document& document, Settings& settings, QWidget* parent = nullptr);

  [[nodiscard]] QListWidget& list() const { return *list_; }
  [[nodiscard]] BigText& now() const { return *now_; }
  [[nodiscard]] FigureTable& sizes() const { return *sizes_; }

protected:
  void refresh() override;

private:
  void fillSizes();
  void fillList();
  void tellChosen();

  BigText* now_;
  FigureTable* sizes_;
  QListWidget* list_;
  QDoubleSpinBox* seam_;
};

} // namespace scye
