// A small live picture of the half cap with its two fullnesses, beside their sliders: the arm whose
// value is in hand is lit.
#pragma once

#include "canvas/picture_widget.h"
#include "panels/panel_context.h"

namespace scye {

class CapShapeView : public PictureWidget {
  Q_OBJECT
public:
  explicit CapShapeView(const PanelContext& context, QWidget* parent = nullptr);

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }
};

} // namespace scye
