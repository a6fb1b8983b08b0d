#include "panels/cap_shape_view.h"

#include "schematic/cap_shape.h"

namespace scye {

CapShapeView::CapShapeView(const PanelContext& context, QWidget* parent)
    : PictureWidget(
          [context](double textHeight, int) {
            SchematicOptions options;
            options.unit = context.settings.unit();
            options.textHeight = textHeight;
            options.lit = context.attention.lit();
            return capShapePicture(context.document.draft(), context.phrases(), options);
          },
          {1}, parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(phraseText(context.phrases(), "capShape.title"));
  setToolTip(phraseText(context.phrases(), "capShape.tip"));
  connect(&context.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refresh();
  });
  connect(&context.attention, &Attention::changed, this, &PictureWidget::refresh);
}

QSize CapShapeView::sizeHint() const {
  return {36 * fontMetrics().averageCharWidth(), 9 * fontMetrics().height()};
}

} // namespace scye
