// The lines of the directions to read and to go along: headings, notes, and steps that begin with
// their rows and end with their stitch count. The current line is marked; it and the place on the
// page stay where they are while the design changes under them.
#pragma once

#include "directions/directions.h"

#include <QAbstractListModel>
#include <QListView>

namespace scye {

class LinesModel : public QAbstractListModel {
  Q_OBJECT
public:
  using QAbstractListModel::QAbstractListModel;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] const DirectionLine& line(const QModelIndex& index) const {
    return lines_[std::size_t(index.row())];
  }
  [[nodiscard]] const std::vector<DirectionLine>& lines() const { return lines_; }
  // Line for line where both have the same kinds in the same order, else anew.
  void setLines(std::vector<DirectionLine> lines);

private:
  std::vector<DirectionLine> lines_;
};

class LinesView : public QListView {
  Q_OBJECT
public:
  LinesView(const Phrases& phrases, QWidget* parent);

  // `sameText`: the same piece at another moment; else it is read from the top.
  void setLines(std::vector<DirectionLine> lines, bool sameText);
  [[nodiscard]] const std::vector<DirectionLine>& lines() const { return model_->lines(); }
  [[nodiscard]] const DirectionLine* current() const;
  void goToRow(SectionId section, int row); // the line that tells it
  [[nodiscard]] const DirectionLine* pointed() const;

Q_SIGNALS:
  void currentMoved();
  void pointedMoved();

protected:
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  bool viewportEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

private:
  void point(const QModelIndex& index);
  [[nodiscard]] QModelIndex alike(const DirectionLine& line) const;

  LinesModel* model_;
  QPersistentModelIndex pointed_;
};

} // namespace scye
