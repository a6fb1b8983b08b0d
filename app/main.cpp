#include "command_line.h"
#include "environment_phrases.h"
#include "shell/main_window.h"
#include "shell/start_up.h"
#include "terminal.h"

#include <QApplication>
#include <QFile>

namespace scye {
namespace {

int runWindow(int argc, char** argv) {
  guardQt(false);
  QApplication app(argc, argv);
  const WindowArguments wanted = windowArguments(argc, argv);
  if (wanted.exitCode) return *wanted.exitCode;
  const QString file = QFile::decodeName(wanted.file.c_str());
  if (QFile::encodeName(file).toStdString() != wanted.file)
    return failed(kFileFailed,
                  environmentPhrases().say("cli.name", {textParam("file", wanted.file)}));
  startUp(app);
  const AppPaths paths = standardPaths();
  const Phrases phrases = takeLanguage(paths);
  MainWindow window(paths, phrases);
  if (!file.isEmpty()) wanted.copy ? window.openStyle(file) : window.openFile(file);
  window.show();
  window.offerRecovered();
  return QApplication::exec() == 0 ? kDrafted : kFileFailed;
}

} // namespace
} // namespace scye

int main(int argc, char** argv) {
  scye::guardTheEnd();
  return scye::guarded([&] {
    if (const auto code = scye::runCommandLine(argc, argv)) return scye::finished(*code);
    return scye::runWindow(argc, argv);
  });
}
