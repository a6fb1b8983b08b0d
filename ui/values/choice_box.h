// A box to choose from. The wheel scrolls the panel; it changes a choice only when the box is in
// use.
#pragma once

#include <QComboBox>
#include <QWheelEvent>

namespace scye {

class ChoiceBox : public QComboBox {
public:
  explicit ChoiceBox(QWidget* parent = nullptr) : QComboBox(parent) {
    setFocusPolicy(Qt::StrongFocus);
  }

protected:
  void wheelEvent(QWheelEvent* event) override {
    if (hasFocus())
      QComboBox::wheelEvent(event);
    else
      event->ignore();
  }
};

} // namespace scye
