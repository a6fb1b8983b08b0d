// A small table of figures: a name, then figures with their units, right-aligned. As large as what
// it holds; whoever shows it scrolls.
#pragma once

#include <QAbstractTableModel>
#include <QTableView>

namespace scye {

struct FigureRow {
  QString name;
  QStringList figures;
  bool operator==(const FigureRow&) const = default;
};

class FigureModel : public QAbstractTableModel {
  Q_OBJECT
public:
  FigureModel(QStringList columns, QObject* parent);

  void setRows(const QList<FigureRow>& rows);
  [[nodiscard]] const QList<FigureRow>& rows() const { return rows_; }
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role) const override;

private:
  QStringList columns_; // the first one names the rows
  QList<FigureRow> rows_;
};

class FigureTable : public QTableView {
  Q_OBJECT
public:
  FigureTable(const QString& name, const QStringList& columns, QWidget* parent);

  void setRows(const QList<FigureRow>& rows);
  [[nodiscard]] const QList<FigureRow>& rows() const { return model_->rows(); }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
  void changeEvent(QEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

private:
  void fitColumns(bool anew);

  FigureModel* model_;
};

} // namespace scye
