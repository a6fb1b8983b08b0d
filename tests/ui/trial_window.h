// The window in the made-up language of support/trial_language.h: its own texts taken from the
// sources by lupdate, changed by the same rule, and laid over the application as a translator's
// file would be.
#pragma once

#include "window_fixture.h"

#include <QTemporaryDir>

class QTranslator;

namespace scye::test {

// Lays the language over the application while it lives.
class TrialLanguage {
public:
  TrialLanguage();
  ~TrialLanguage();
  [[nodiscard]] const Phrases& phrases() const { return *phrases_; }
  [[nodiscard]] QString folder() const { return folder_.path(); } // phrases and .qm file

private:
  void writeTranslations();

  QList<QTranslator*> before_; // not ours
  QTemporaryDir folder_;
  std::unique_ptr<Phrases> phrases_;
};

struct SpokenText {
  QString where, text;
};
// Everything that a widget, what lies in it, and its actions show, tell or say to a screen reader.
[[nodiscard]] std::vector<SpokenText> textsOf(QWidget& in);
// The visible widgets in it whose text has not the room it asks for, and by how much.
[[nodiscard]] std::vector<SpokenText> clippedIn(QWidget& in);

} // namespace scye::test
