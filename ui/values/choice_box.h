// A box to choose from, with room for each of its options. The wheel scrolls the panel and never
// changes a choice.
#pragma once

#include <QAbstractItemView>
#include <QComboBox>
#include <QWheelEvent>

namespace scye {

class ChoiceBox : public QComboBox {
public:
  explicit ChoiceBox(QWidget* parent = nullptr) : QComboBox(parent) {
    setFocusPolicy(Qt::StrongFocus);
    // Room for every option where there is any; no window grows for it.
    setSizeAdjustPolicy(AdjustToContents);
    setMinimumContentsLength(8);
  }
  // A style's own may leave out some pixels of the arrow.
  [[nodiscard]] QSize sizeHint() const override { return withAir(QComboBox::sizeHint()); }
  void showPopup() override {
    view()->setMinimumWidth(view()->sizeHintForColumn(0) + 4 * fontMetrics().averageCharWidth());
    QComboBox::showPopup();
  }

protected:
  void wheelEvent(QWheelEvent* event) override { event->ignore(); } // closed it scrolls the panel

private:
  [[nodiscard]] QSize withAir(const QSize& hint) const {
    return {hint.width() + fontMetrics().averageCharWidth(), hint.height()};
  }
};

} // namespace scye
