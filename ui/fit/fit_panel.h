// Whether the sleeve fits, in three numbers as drafted and as knitted, and as the cap laid over its
// armhole: as curves, or both edges straightened as they are pinned.
#pragma once

#include "document/document.h"
#include "settings/settings.h"

#include <QWidget>

class QLabel;
class QToolButton;

namespace scye {

class PictureWidget;

class FitPanel : public QWidget {
  Q_OBJECT
public:
  FitPanel(Document& document, Settings& settings, QWidget* parent = nullptr);

  // Below it the comparison's letters would lie on one another.
  [[nodiscard]] int leastHeight(int width) const;

protected:
  void changeEvent(QEvent* event) override;

private:
  QToolButton* makeSwitch(const QString& text, const QString& tip);
  void refresh();
  [[nodiscard]] Picture comparison(double textHeight, int perRow) const;

  Document& document_;
  Settings& settings_;
  struct Number {
    QLabel* name;
    QLabel* drafted;
    QLabel* knitted; // of the side that is farther from the ease wanted
  };
  std::array<Number, 3> numbers_;
  QLabel* unit_;
  QLabel* knittedName_;
  QToolButton* straight_;
  QToolButton* asKnitted_;
  PictureWidget* picture_;
};

} // namespace scye
