// A box to choose from. The wheel scrolls the panel and never changes a choice.
#pragma once

#include <QAbstractItemView>
#include <QComboBox>
#include <QWheelEvent>

namespace scye {

class ChoiceBox : public QComboBox {
public:
  explicit ChoiceBox(QWidget* parent = nullptr) : QComboBox(parent) {
    setFocusPolicy(Qt::StrongFocus);
    // As wide as its place; the list that opens is as wide as its longest option.
    setSizeAdjustPolicy(AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(8);
  }
  void showPopup() override {
    view()->setMinimumWidth(view()->sizeHintForColumn(0) + 4 * fontMetrics().averageCharWidth());
    QComboBox::showPopup();
  }

protected:
  void wheelEvent(QWheelEvent* event) override { event->ignore(); } // closed it scrolls the panel
};

} // namespace scye
