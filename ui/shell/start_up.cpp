#include "shell/start_up.h"

#include "look/icons.h"
#include "paint/picture_colours.h"

#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QKeyEvent>
#include <QPalette>

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

} // namespace

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
