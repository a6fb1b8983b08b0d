#include "workbench.h"

#include "command_line.h"
#include "export/export.h"
#include "shell/main_window.h"
#include "shell/start_up.h"
#include "terminal.h"

#include <QApplication>
#include <QFile>

#include <cstdlib>
#include <optional>

namespace scye {
namespace {

bool qtIsQuiet = false;
QtMessageHandler qtBefore = nullptr;

void onQtMessage(QtMsgType type, const QMessageLogContext& context, const QString& message) {
  if (type == QtFatalMsg) std::_Exit(cannotGoOn(message.toStdString()));
  if (!qtIsQuiet && qtBefore) qtBefore(type, context, message);
}

// Where Qt cannot go on (a display, its platform) the program ends as it does everywhere, not by a
// signal; `quiet`: its other remarks are swallowed.
void guardQt(bool quiet) {
  qtIsQuiet = quiet;
  if (const QtMessageHandler before = qInstallMessageHandler(onQtMessage); before != onQtMessage)
    qtBefore = before;
}

// Has an application of its own, on no display, from the first picture on.
class OffscreenDrawer : public PageDrawer {
public:
  FileBytes draw(const std::vector<Sheet>& sheets, FileFormat format,
                 const ExportOptions& options) const override {
    begin();
    return PageDrawer::draw(sheets, format, options);
  }

private:
  void begin() const {
    if (drawing_) return;
    guardQt(true); // its remarks on fonts and folders are no errors of the knitter's
    qputenv("QT_QPA_PLATFORM", "offscreen");
    drawing_.emplace(argc_, argv_);
  }

  // The application refers to its arguments.
  mutable int argc_ = 1;
  mutable char name_[11] = "scyewright";
  mutable char* argv_[2] = {name_, nullptr};
  mutable std::optional<QGuiApplication> drawing_;
};

} // namespace

std::unique_ptr<Drawer> pictureDrawer() {
  return std::make_unique<OffscreenDrawer>();
}

int openWorkbench(int argc, char** argv) {
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

} // namespace scye
