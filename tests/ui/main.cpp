// The order matters: test discovery runs without a display, so it must not make an application.
#include "event_clock.h"

#include "shell/start_up.h"

#include <QFont>
#include <QStyleFactory>
#include <QTemporaryDir>

#include <gtest/gtest.h>

int main(int argc, char** argv) {
  testing::InitGoogleTest(&argc, argv);
  if (GTEST_FLAG_GET(list_tests)) return RUN_ALL_TESTS();
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  qputenv("LC_ALL", "C.UTF-8"); // elsewhere a decimal point may be a comma
  for (const char* name : {"QT_SCALE_FACTOR", "QT_FONT_DPI", "QT_STYLE_OVERRIDE"})
    qunsetenv(name);
  QTemporaryDir runtime; // private, as the platform demands
  qputenv("XDG_RUNTIME_DIR", runtime.path().toLocal8Bit());
  scye::test::EventClock app(argc, argv);
  QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
  QApplication::setFont(QFont(QStringLiteral("DejaVu Sans"), 9));
  scye::startUp(app);
  // English, as the environment wishes: its plurals are a translation like any other.
  (void)scye::takeLanguage({runtime.filePath(QStringLiteral("no settings")), {}, {}, {}});
  return RUN_ALL_TESTS();
}
