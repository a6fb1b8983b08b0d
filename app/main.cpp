#include "command_line.h"
#include "shell/main_window.h"
#include "shell/start_up.h"

#include <QApplication>

int main(int argc, char** argv) {
  if (const auto code = scye::runCommandLine(argc, argv)) return *code;
  QApplication app(argc, argv);
  const scye::WindowArguments wanted = scye::windowArguments(argc, argv);
  if (wanted.exitCode) return *wanted.exitCode;
  scye::startUp(app);
  scye::MainWindow window(scye::standardPaths());
  const QString file = QString::fromLocal8Bit(wanted.file.c_str());
  if (!file.isEmpty()) wanted.copy ? window.openStyle(file) : window.openFile(file);
  window.show();
  window.offerRecovered();
  return QApplication::exec();
}
