// What stands in lines as words do: side by side where there is room, else on the next line, so
// that nothing is cut off when words are longer or letters larger. What is left of a line goes to
// the items in it that expand. An item alone wider than the line gets the whole line.
#pragma once

#include <QLayout>

namespace scye {

class FlowLayout : public QLayout {
  Q_OBJECT
public:
  explicit FlowLayout(QWidget* parent = nullptr) : QLayout(parent) {}
  ~FlowLayout() override;

  void addLayout(QLayout* layout);
  // Stay together on one line.
  void addTogether(std::initializer_list<QWidget*> widgets);

  void addItem(QLayoutItem* item) override;
  [[nodiscard]] int count() const override { return int(items_.size()); }
  [[nodiscard]] QLayoutItem* itemAt(int index) const override { return items_.value(index); }
  QLayoutItem* takeAt(int index) override;
  [[nodiscard]] Qt::Orientations expandingDirections() const override { return Qt::Horizontal; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override; // all on one line
  [[nodiscard]] QSize minimumSize() const override;
  void setGeometry(const QRect& place) override;

private:
  int arrange(const QRect& place, bool put) const; // the height that is taken

  QList<QLayoutItem*> items_;
};

} // namespace scye
