// Does the sleeve fit? The answer in words and with a sign, always in view at the head of the
// window, and how many findings there are. Pressed it shows or hides what stands behind it. A
// changed answer is announced to readers of the screen.
#pragma once

#include "document/document.h"
#include "settings/settings.h"

#include <QAbstractButton>
#include <QIcon>

namespace scye {

class VerdictLine : public QAbstractButton {
  Q_OBJECT
public:
  VerdictLine(Document& document, Settings& settings, QWidget* parent = nullptr);

  [[nodiscard]] const QString& sentence() const { return sentence_; }
  [[nodiscard]] bool fits() const { return fits_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  // Room for two lines at least, so that nothing moves when the answer grows longer.
  [[nodiscard]] int heightForWidth(int width) const override;

Q_SIGNALS:
  void grown(); // needs another height

protected:
  void paintEvent(QPaintEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;
  void enterEvent(QEnterEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

private:
  void refresh();
  [[nodiscard]] QFont sentenceFont() const;
  [[nodiscard]] int beside() const; // px taken by sign, count and margins
  [[nodiscard]] int linesHigh(int width) const;

  Document& document_;
  Settings& settings_;
  QString sentence_, count_;
  QIcon sign_;
  bool fits_ = false;
};

} // namespace scye
