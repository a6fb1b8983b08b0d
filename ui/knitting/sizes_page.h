// What whole stitches and rows make of the sizes: wanted, knitted, and the difference; the
// armhole's and the cap's edges as they are knitted; which rows of both are pinned to one another,
// and the ease between any two pins; and how to sew edges of unequal rows.
#pragma once

#include "knitting/knit_page.h"
#include "making_up/seam_marks.h"

#include <QList>

class QLabel;
class QScrollArea;

namespace scye {

class EaseBetween;
class FigureTable;
class UnevenSeamBox;

class SizesPage : public KnitPage {
  Q_OBJECT
public:
  SizesPage(Document& document, Settings& settings, QWidget* parent = nullptr);

protected:
  void refresh() override;
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  struct Block {
    QLabel* title;
    QWidget* body;
    QLabel* note;
    FigureTable* table = nullptr; // the body, where it is one
    [[nodiscard]] bool any() const;
  };
  Block makeBlock(const QString& title, QWidget* body, const QString& note = {});
  Block makeTable(const QString& title, const QStringList& columns, const QString& note = {});
  void fillSizes(const KnitGarment& knit);
  void fillEdges(const KnitGarment& knit);
  void fillMarks(const Derived& derived);
  void arrange();
  [[nodiscard]] QString phraseOf(const std::string& key) const;
  [[nodiscard]] QString length(double cm, bool sign = false) const;
  [[nodiscard]] QString fine(double cm) const;
  [[nodiscard]] QStringList markFigures(const SeamMark& mark) const;

  QScrollArea* scroll_;
  QWidget* content_;
  Block sizes_, edges_, shaping_;
  Block marks_[2]; // the wearer's right armhole, the left one
  EaseBetween* ease_;
  UnevenSeamBox* seam_;
  Block between_, uneven_;
};

} // namespace scye
