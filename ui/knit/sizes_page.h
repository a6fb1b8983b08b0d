// What whole stitches and rows make of the sizes: wanted, knitted, and the difference; the
// armhole's and the cap's edges as they are knitted; and which rows of both are pinned to one
// another.
#pragma once

#include "knit/knit_page.h"
#include "knit/seam_marks.h"

#include <QList>

class QLabel;
class QScrollArea;

namespace scye {

class FigureTable;

class SizesPage : public KnitPage {
  Q_OBJECT
public:
  SizesPage(Document& document, Settings& settings, QWidget* parent = nullptr);

protected:
  void refresh() override;
  void resizeEvent(QResizeEvent* event) override;

private:
  struct Block {
    QLabel* title;
    FigureTable* table;
    QLabel* note = nullptr;
  };
  Block makeBlock(const QString& title, const QStringList& columns, const QString& note = {});
  void fillSizes(const KnitGarment& knit);
  void fillEdges(const KnitGarment& knit);
  void fillMarks(const Derived& derived);
  void arrange();
  [[nodiscard]] QString length(double cm, bool sign = false) const;
  [[nodiscard]] QString fine(double cm) const;
  [[nodiscard]] QStringList markFigures(const SeamMark& mark) const;

  QScrollArea* scroll_;
  QWidget* content_;
  Block sizes_, edges_, shaping_;
  Block marks_[2]; // the wearer's right armhole, the left one
};

} // namespace scye
