#include "language_walk.h"

#include "library/style_library.h"
#include "model/languages.h"
#include "painted_text.h"
#include "shell/banner.h"
#include "shell/work_area.h"
#include "support/trial_language.h"

#include <QAction>
#include <QApplication>
#include <QFileInfo>
#include <QRegularExpression>
#include <QTest>
#include <QTimer>

#include <algorithm>

namespace scye::test {

LanguageWalk::LanguageWalk(std::unique_ptr<TrialLanguage> language)
    : WindowFixture(language->phrases()), language_(std::move(language)) {
  names_ = {folder_.path(),
            QFileInfo(folder_.path()).fileName(),
            QStringLiteral("Scyewright"),
            QStringLiteral("demo.scye"),
            QStringLiteral("a.svg"),
            QStringLiteral("settings.json"),
            QStringLiteral("/recovery")};
  whole_ = {QStringLiteral("demo"), QStringLiteral("SVG"), QStringLiteral("PNG"),
            QStringLiteral("PDF"), QStringLiteral("DXF")};
  // Qt's own, in the language that the made-up one counts by.
  for (const char* text : {"Scroll Left", "Scroll Right"})
    whole_.append(QCoreApplication::translate("QTabBar", text));
  for (const char* text : {"Close", "Cancel", "Save", "Discard", "Close without Saving"})
    whole_.append(QCoreApplication::translate("QPlatformTheme", text).remove(u'&'));
  for (const QAction* action : window_->findChildren<QAction*>())
    whole_.append(QKeySequence::listToString(action->shortcuts(), QKeySequence::NativeText));
  for (const std::string& tag : languagesThere())
    names_.append(QString::fromStdString(phrasesIn(tag).say("language.name")));
  for (const Style& style : styleLibrary(builtinPhrases()))
    for (const std::string& name : {style.design.notes, style.design.title, style.design.wearer}) {
      names_.append(QString::fromStdString(name));
      names_.append(QString::fromStdString(name).toHtmlEscaped());
    }
}

QString LanguageWalk::withoutNames(QString text) const {
  if (whole_.contains(QString(text).remove(u'&'))) return {};
  text.remove(QRegularExpression(QStringLiteral("</?(b|p|br)>")));
  for (const QString& name : names_)
    text.remove(name, Qt::CaseInsensitive);
  return text;
}

std::string LanguageWalk::firstEnglishWordIn(const QString& text) const {
  return firstEnglishWord(withoutNames(text).toStdString());
}

void LanguageWalk::expectTranslated(const QString& where, const QString& text) {
  const std::string english = firstEnglishWordIn(text);
  if (!english.empty() && told_.insert(where + text).second)
    ADD_FAILURE() << where.toStdString() << ": \"" << english << "\" in \"" << text.toStdString()
                  << "\"";
}

void LanguageWalk::expectTranslated(QWidget& in) {
  for (const SpokenText& spoken : textsOf(in))
    expectTranslated(spoken.where, spoken.text);
}

void LanguageWalk::expectRoom(QWidget& in) {
  QApplication::processEvents();
  for (const SpokenText& clipped : clippedIn(in))
    if (told_.insert(clipped.where + clipped.text).second)
      ADD_FAILURE() << clipped.where.toStdString() << ": " << clipped.text.toStdString();
}

void LanguageWalk::expectPainted(QWidget& in) {
  QStringList spoken;
  for (const SpokenText& text : textsOf(in))
    spoken.append(text.text);
  const QString all = spoken.join(u'\n').remove(u'&');
  for (const QString& painted : paintedIn(in)) {
    const auto holds = [&](const QString& name) { return name.contains(painted); };
    if (std::any_of(names_.begin(), names_.end(), holds)) continue; // a line of it
    expectTranslated(QStringLiteral("painted"), painted);
    const bool isShortened = painted.contains(QChar(0x2026)) && !all.contains(painted);
    if (isShortened && told_.insert(painted).second)
      ADD_FAILURE() << "painted shortened: " << painted.toStdString();
  }
}

void LanguageWalk::expectAll(QWidget& in) {
  expectTranslated(in);
  expectRoom(in);
  if (in.isVisible()) expectPainted(in);
}

void LanguageWalk::show(QWidget* page) {
  window_->workbench().area().showPage(page);
  settle();
  expectAll(*window_);
}

void LanguageWalk::openNamelessDemo() {
  openDemo();
  Design design = document().design();
  design.title = "\u0416", design.wearer = "\u0429", design.notes = "\u042e";
  document().replace(design, {});
  settle();
}

void LanguageWalk::change(const std::function<void(Design&)>& how) {
  Design design = document().design();
  how(design);
  document().edit({}, design);
  settle();
}

void LanguageWalk::expectDialog(const std::function<void()>& opens) {
  bool seen = false;
  QTimer::singleShot(0, [&] {
    QWidget* dialog = QApplication::activeModalWidget();
    ASSERT_TRUE(dialog);
    seen = true;
    expectAll(*dialog);
    dialog->close();
  });
  opens();
  EXPECT_TRUE(seen);
}

void LanguageWalk::expectBanner(const std::function<void()>& raises) {
  window_->banner().dismiss();
  raises();
  ASSERT_TRUE(QTest::qWaitFor([&] { return window_->banner().isVisible(); }));
  expectAll(window_->banner());
}

} // namespace scye::test
