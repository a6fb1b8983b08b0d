// One further swatch, beside the one in the swatch fields: what it is, what it is for, its counts
// and its weight. Every change is an undo step. What was not counted or weighed is left blank.
#pragma once

#include "panels/panel_context.h"

#include <QWidget>

class QComboBox;
class QGridLayout;
class QLabel;
class QToolButton;

namespace scye {

class FieldBox;
class TextBox;

class SwatchCard : public QWidget {
  Q_OBJECT
public:
  // `at`: its place in Design::swatches, which must exist whenever this is refreshed.
  SwatchCard(const PanelContext& context, std::size_t at, QWidget* parent);
  void refresh();
  void focusFirst();
  // Its boxes come after that widget in the order of the keyboard.
  void followInTabOrder(QWidget* before);

Q_SIGNALS:
  void removed(std::size_t at);

private:
  struct Cell {
    FieldBox* box;
    double SwatchReading::*member;
    Field like; // of the first swatch: its kind and its limits
    bool mayBeMissing;
  };
  void addCell(const QString& name, double SwatchReading::*member, Field like, int line,
               int column);
  void put(const Cell& cell, double value, int run);
  void refuse(Field field, Refusal refusal);
  void change(const SwatchReading& next, int run = 0);
  [[nodiscard]] const SwatchReading& reading() const;
  void word(const QString& text, int line, int column);

  PanelContext context_;
  std::size_t at_;
  QGridLayout* grid_;
  TextBox* label_;
  QComboBox* use_;
  QToolButton* remove_;
  std::vector<Cell> cells_;
  QLabel* refusal_;
  int run_ = 0;
};

} // namespace scye
