#include "shell/start_up.h"

#include "look/icons.h"
#include "model/languages.h"
#include "paint/picture_colours.h"
#include "settings/settings.h"

#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QKeyEvent>
#include <QLibraryInfo>
#include <QLocale>
#include <QPalette>
#include <QTranslator>

#include <cstdio>
#include <memory>

// Resources of a static library are dropped by the linker unless somebody asks for them; this must
// stand outside of any namespace.
static void takeResources() {
  Q_INIT_RESOURCE(scyewright);
}

namespace scye {
namespace {

// Only the highlight and the hints are ours; all other colours stay the desktop's and go on
// following it.
void layAccent() {
  const bool dark = isDark(QGuiApplication::palette());
  QPalette ours = QGuiApplication::palette(); // keeps what was set, and only that
  // Hints are paler, but to be read.
  const QColor hint = mixed(ours.color(QPalette::Window), ours.color(QPalette::WindowText), 0.72);
  if (ours.color(QPalette::Highlight) == accent(dark) &&
      ours.color(QPalette::PlaceholderText) == hint)
    return;
  ours.setColor(QPalette::PlaceholderText, hint);
  ours.setColor(QPalette::Highlight, accent(dark));
  ours.setColor(QPalette::HighlightedText, dark ? Qt::black : Qt::white);
  ours.setColor(QPalette::Link, accent(dark));
  QApplication::setPalette(ours);
}

class PaletteWatch : public QObject {
public:
  using QObject::QObject;

protected:
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (event->type() == QEvent::ApplicationPaletteChange) layAccent();
    return QObject::eventFilter(watched, event);
  }
};

// Return presses the button that has the keyboard; the wheel scrolls a panel, and never changes a
// list that is closed.
class HandWatch : public QObject {
public:
  using QObject::QObject;

protected:
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (event->type() == QEvent::KeyPress) {
      const auto* key = static_cast<QKeyEvent*>(event);
      if (key->key() != Qt::Key_Return && key->key() != Qt::Key_Enter) return false;
      if (auto* button = qobject_cast<QAbstractButton*>(watched);
          button && button->isEnabled() && key->modifiers() == Qt::NoModifier) {
        if (!key->isAutoRepeat()) button->click();
        return true;
      }
    }
    if (event->type() == QEvent::Wheel && qobject_cast<QComboBox*>(watched)) {
      event->ignore();
      return true;
    }
    return false;
  }
};

void layTranslation(std::unique_ptr<QTranslator> translator, bool loaded) {
  if (!loaded) return;
  translator->setParent(QCoreApplication::instance());
  QCoreApplication::installTranslator(translator.release());
}

void layTranslations(const QLocale& locale, const QString& tag) {
  auto qts = std::make_unique<QTranslator>(), ours = std::make_unique<QTranslator>();
  const bool hasQts = qts->load(locale, QStringLiteral("qtbase"), QStringLiteral("_"),
                                QLibraryInfo::path(QLibraryInfo::TranslationsPath));
  const QString file = QStringLiteral("scyewright_") + tag;
  const QString folder = QString::fromStdString(languagesFolder());
  const bool hasOurs =
      (!folder.isEmpty() && ours->load(file, folder)) || ours->load(file, QStringLiteral(":/i18n"));
  layTranslation(std::move(qts), hasQts);
  layTranslation(std::move(ours), hasOurs);
}

} // namespace

Phrases takeLanguage(const AppPaths& paths) {
  std::vector<std::string> wishes;
  const QString chosen = Settings::languageIn(paths.settings);
  if (!chosen.isEmpty()) wishes.push_back(chosen.toStdString());
  for (const QString& wish : QLocale::system().uiLanguages())
    wishes.push_back(wish.toStdString());
  const std::string language = pickLanguage(wishes, languagesThere());
  // The desktop's own way with dates, where it speaks that language.
  const QString tag = QString::fromStdString(language);
  const QLocale plain(tag), system = QLocale::system();
  QLocale locale = plain.language() == system.language() ? system : plain;
  locale.setNumberOptions(QLocale::OmitGroupSeparator); // as the core writes numbers
  QLocale::setDefault(locale);
  layTranslations(locale, tag);
  std::vector<std::string> problems;
  Phrases phrases = phrasesIn(language, &problems);
  for (const std::string& problem : problems)
    std::fprintf(stderr, "scyewright: %s\n", problem.c_str());
  return phrases;
}

void startUp(QApplication& app) {
  takeResources();
  QApplication::setApplicationName(QStringLiteral("scyewright"));
  QApplication::setApplicationDisplayName(QStringLiteral("Scyewright"));
  QApplication::setDesktopFileName(QStringLiteral("org.scyewright.Scyewright"));
  QApplication::setWindowIcon(appIcon());
  layAccent();
  app.installEventFilter(new PaletteWatch(&app));
  app.installEventFilter(new HandWatch(&app));
}

} // namespace scye
