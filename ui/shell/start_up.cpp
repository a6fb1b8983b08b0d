#include "shell/start_up.h"

#include "look/icons.h"
#include "paint/picture_colours.h"

#include <QApplication>
#include <QPalette>

// Resources of a static library are dropped by the linker unless somebody asks for them; this must
// stand outside of any namespace.
static void takeResources() {
  Q_INIT_RESOURCE(scyewright);
}

namespace scye {
namespace {

// Only the highlight is ours; all other colours stay the desktop's and go on following it.
void layAccent() {
  const bool dark = isDark(QGuiApplication::palette());
  if (QGuiApplication::palette().color(QPalette::Highlight) == accent(dark)) return;
  QPalette ours = QGuiApplication::palette(); // keeps what was set, and only that
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

} // namespace

void startUp(QApplication& app) {
  takeResources();
  QApplication::setApplicationName(QStringLiteral("scyewright"));
  QApplication::setApplicationDisplayName(QStringLiteral("Scyewright"));
  QApplication::setDesktopFileName(QStringLiteral("org.scyewright.Scyewright"));
  QApplication::setWindowIcon(appIcon());
  layAccent();
  app.installEventFilter(new PaletteWatch(&app));
}

} // namespace scye
