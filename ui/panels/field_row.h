// One line of a panel: the name of a value, the boxes it is typed into, and where it came from. The
// widgets lie in a grid that the rows of a table share, so that figures stand under one another.
// The row in use opens a slider beneath itself, and what is doubted about its values with the
// correction; the mark beside the name opens whatever is found there.
#pragma once

#include "panels/panel_context.h"

#include <QPointer>

class QGridLayout;
class QLabel;
class QToolButton;

namespace scye {

class FieldBox;
class FindingCard;
class QuietButton;
class RowSlider;

// Columns of the grid.
namespace column {
inline constexpr int kName = 0, kFirst = 1, kSecond = 2, kThird = 3, kSource = 4, kAll = 5;
}

struct CellSpec {
  Field field;
  int column;
  bool finished = false; // the finished size of a measurement; writes its ease
};

class FieldRow : public QObject {
  Q_OBJECT
public:
  // `cells`: the first is the field that the row is named for.
  FieldRow(const PanelContext& context, QGridLayout* grid, const QString& name,
           const std::vector<CellSpec>& cells, bool unitInHead, QObject* parent);

  [[nodiscard]] bool has(Field field) const;
  // What it is the row of, if that can be measured.
  [[nodiscard]] std::optional<Field> measurement() const;
  [[nodiscard]] bool holds(const QWidget* widget) const; // or what is open beneath it does
  void refresh();
  void focus(Field field, bool finished);
  bool
  focusColumn(int column); // its box in that column, or its first; false: it has none to type in
  void showSlider();
  void close(); // the slider and the finding
  void refreshFinding();
  [[nodiscard]] QWidget* lowest() const; // of what is open beneath the row

Q_SIGNALS:
  void inUse(scye::FieldRow* row);
  void howWanted(scye::Field measurement); // how is it measured?
  void wentDown(scye::FieldRow* row, int column);

private:
  struct Cell {
    CellSpec spec;
    FieldBox* box;
  };
  void addCell(const CellSpec& spec, const QString& name);
  void take(std::size_t cell);
  void enter(std::size_t cell, double value, int run);
  void clear(Field field); // back to what is filled in
  void refuse(std::size_t cell, Field field, Refusal refusal);
  void openSourceMenu();
  [[nodiscard]] QString sourceText(Field first, bool flat) const;
  void refreshMark(const Finding* worst);
  void refreshCard(const Finding* worst);
  void askFinding();
  [[nodiscard]] const Finding* worstFinding() const;
  [[nodiscard]] Field target(const Cell& cell) const; // what its slider moves
  [[nodiscard]] const Sizes& sizes() const { return context_.document.draft().sizes; }

  PanelContext context_;
  QGridLayout* grid_;
  int line_;
  bool unitInHead_;
  std::vector<Cell> cells_;
  QWidget* nameArea_;
  QLabel* name_;
  QToolButton* mark_;
  QuietButton* source_;
  QPointer<RowSlider> slider_;
  QPointer<FindingCard> card_;
  bool asked_ = false;     // by its mark
  bool open_ = false;      // its slider is
  std::size_t inHand_ = 0; // the cell that the slider moves
  int run_ = 0;
};

} // namespace scye
