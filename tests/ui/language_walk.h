// Looks at every part of the window in the made-up language: nothing stays English, nothing is cut
// off, whether it is a widget's text or painted.
#pragma once

#include "trial_window.h"

#include <set>

namespace scye::test {

class LanguageWalk : public WindowFixture {
protected:
  LanguageWalk() : LanguageWalk(std::make_unique<TrialLanguage>()) {}
  ~LanguageWalk() override { window_.reset(); } // before the words that it holds on to

  void expectTranslated(QWidget& in);
  void expectRoom(QWidget& in);
  // What is painted in it now.
  void expectPainted(QWidget& in);
  void expectAll(QWidget& in);
  [[nodiscard]] std::string firstEnglishWordIn(const QString& text) const;
  void show(QWidget* page); // and all of the window is looked at

  // The demo; the knitter's own words in no language at all.
  void openNamelessDemo();
  void change(const std::function<void(Design&)>& how);

  // What opens a dialog, which is looked at and closed.
  void expectDialog(const std::function<void()>& opens);
  void expectBanner(const std::function<void()>& raises);

  [[nodiscard]] const Phrases& phrases() const { return language_->phrases(); }

private:
  explicit LanguageWalk(std::unique_ptr<TrialLanguage> language);
  // What is the knitter's own, or a name, and stays in any language.
  [[nodiscard]] QString withoutNames(QString text) const;
  void expectTranslated(const QString& where, const QString& text);

  std::unique_ptr<TrialLanguage> language_;
  QStringList names_, whole_; // in a text; a text by itself
  std::set<QString> told_;
};

} // namespace scye::test
