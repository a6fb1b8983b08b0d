#include "panels/estimate_note.h"

#include <algorithm>

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
  const Derived& derived = context_.document.derived();
  // A slip of the tape makes a body look strange; then the slip is what is to be said.
  const bool doubted = std::any_of(derived.findings.begin(), derived.findings.end(),
                                   [](const Finding& f) { return f.code.starts_with("doubt."); });
  QString text;
  if (isChild(context_.document.design()))
    text = phraseText(context_.phrases(), "estimate.children");
  else if (derived.draft.sizes.beyondSurvey && !doubted)
    text = phraseText(context_.phrases(), "estimate.beyond");
  setText(text);
  setVisible(!text.isEmpty());
}

} // namespace scye
