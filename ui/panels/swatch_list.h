// Further swatches: the same fabric again, the first one before it was washed, another stitch
// pattern. Adding and removing are undo steps.
#pragma once

#include "panels/swatch_card.h"

class QPushButton;
class QVBoxLayout;

namespace scye {

class SwatchList : public QWidget {
  Q_OBJECT
public:
  explicit SwatchList(const PanelContext& context, QWidget* parent = nullptr);

private:
  void add();
  void remove(std::size_t at);
  void refresh();

  PanelContext context_;
  QVBoxLayout* column_;
  QPushButton* add_;
  QList<SwatchCard*> cards_;
};

} // namespace scye
