// Does the sleeve fit? One sentence, three numbers as drafted and as knitted, how the sleeve hangs,
// and the cap laid over its armhole.
#pragma once

#include "document/document.h"
#include "settings/settings.h"

#include <QWidget>

class QLabel;

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
  void refresh();
  [[nodiscard]] Picture comparison(double textHeight, int perRow) const;

  Document& document_;
  Settings& settings_;
  QLabel* sign_;
  QLabel* sentence_;
  struct Number {
    QLabel* name;
    QLabel* drafted;
    QLabel* knitted; // of the side that is farther from the ease wanted
  };
  std::array<Number, 3> numbers_;
  QLabel* knittedName_;
  QLabel* hang_;
  QLabel* room_;
  PictureWidget* picture_;
};

} // namespace scye
