// A field for one value that speaks the value's kind: lengths in either unit, per cent, counts. The
// text is taken when it is finished (Return or leaving); until then nothing changes, and
// Escape puts the old text back. What cannot be read or is refused stays in the box until it is put
// right or given up: it is said, never guessed.
#pragma once

#include "values/value_text.h"

#include <QAbstractSpinBox>

namespace scye {

class FieldBox : public QAbstractSpinBox {
  Q_OBJECT
public:
  FieldBox(FieldKind kind, const Phrases& phrases, QWidget* parent = nullptr);

  void setValueStyle(const ValueStyle& style);
  void setValue(double value); // shows it; says nothing
  void setBlank();             // no value yet
  [[nodiscard]] std::optional<double> value() const { return value_; }
  // A value that was filled in is shown paler than one that was given.
  void setFilledIn(bool filledIn);
  void refuse();  // what was entered last: it stays as it was typed
  void forgive(); // the value's own text again
  [[nodiscard]] bool isRefused() const { return refused_; }

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }
  void stepBy(int steps) override;

Q_SIGNALS:
  void entered(double value);
  void stepped(double value);
  void unreadable(const QString& text);
  void focused();
  void gaveUp(); // of a refused entry
  void done();   // Return, and the value was taken

protected:
  [[nodiscard]] StepEnabled stepEnabled() const override;
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void commit();
  void showText();
  void colour();

  FieldKind kind_;
  const Phrases& phrases_;
  ValueStyle style_;
  std::optional<double> value_;
  QString typed_; // as it was entered last
  bool dirty_ = false, filledIn_ = false, refused_ = false;
};

} // namespace scye
