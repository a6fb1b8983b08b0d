#include "panels/estimate_note.h"

namespace scye {

EstimateNote::EstimateNote(const PanelContext& context, QWidget* parent)
    : QLabel(parent), context_(context) {
  setWordWrap(true);
  setForegroundRole(QPalette::PlaceholderText);
  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refresh();
  });
  refresh();
}

void EstimateNote::refresh() {
  QString text;
  if (isChild(context_.document.design()))
    text = phraseText("estimate.children");
  else if (context_.document.derived().draft.sizes.beyondSurvey)
    text = phraseText("estimate.beyond");
  setText(text);
  setVisible(!text.isEmpty());
}

} // namespace scye
