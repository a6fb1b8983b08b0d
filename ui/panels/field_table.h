// The rows of one part of the panel, in shared columns: name, up to three figures, source.
#pragma once

#include "panels/choice_row.h"
#include "panels/field_row.h"

#include <QWidget>

namespace scye {

class FieldTable : public QWidget {
  Q_OBJECT
public:
  explicit FieldTable(const PanelContext& context, QWidget* parent = nullptr);

  void addHeads(); // body, ease, finished, source; figures below are then shown without units
  void addMeasurement(Field measurement);
  void addValue(Field field);
  // A count over a length, as read off a swatch.
  void addCount(const QString& name, Field count, Field over);
  void addChoice(Choice choice);
  void addNamed(const QString& name, QWidget* editor);
  void addWide(QWidget* widget);

  [[nodiscard]] FieldRow* rowOf(Field field) const;

Q_SIGNALS:
  void inUse(scye::FieldRow* row);
  void howWanted(scye::Field measurement);

protected:
  void changeEvent(QEvent* event) override;

private:
  void add(const QString& name, std::vector<CellSpec> cells, bool unitInHead);
  void refresh();
  void refreshHeads();

  PanelContext context_;
  QGridLayout* grid_;
  std::vector<FieldRow*> rows_;
  std::vector<ChoiceRow*> choices_;
  QLabel* unitHead_ = nullptr; // the heads of measurements: unit, where taken, ease
  QLabel* takenHead_ = nullptr;
  QLabel* easeHead_ = nullptr;
};

} // namespace scye
