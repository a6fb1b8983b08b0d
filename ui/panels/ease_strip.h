// The ease in hand: sliders for the bust, the upper arm, the armhole's depth and the cap, always in
// view while drafting, and which value is worked out from them. In one line where there is room,
// else in as many as it takes.
#pragma once

#include "panels/panel_context.h"

#include <QFrame>

class QLabel;

namespace scye {

class EaseDial;

class EaseStrip : public QFrame {
  Q_OBJECT
public:
  explicit EaseStrip(const PanelContext& context, QWidget* parent = nullptr);

  [[nodiscard]] const QList<EaseDial*>& dials() const { return dials_; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void refresh();
  int arrange(int width, bool place) const; // the height it takes

  PanelContext context_;
  QList<EaseDial*> dials_;
  QLabel* worked_;
};

} // namespace scye
