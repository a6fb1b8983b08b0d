// From the start of a process to its first painted frame: a bare Qt window, our window with its
// start page, and our window with a design. Each is a process of its own, this program once more,
// which tells the time when its window has been painted, and leaves; so the loading of libraries
// and the start of Qt are in all three. Offscreen where the platform is not set. The table of
// ratios at the end takes the bare window for one.
#include "shell/main_window.h"
#include "shell/start_up.h"

#include <benchmark/benchmark.h>

#include <QApplication>
#include <QEvent>
#include <QProcess>
#include <QTemporaryDir>

#include <chrono>
#include <cstdio>
#include <map>

namespace {

// Of a clock that all processes of a machine share.
qint64 nanosecondsNow() {
  return std::chrono::nanoseconds(std::chrono::steady_clock::now().time_since_epoch()).count();
}

void tellAndLeave() {
  std::printf("%lld\n", static_cast<long long>(nanosecondsNow()));
  QCoreApplication::quit();
}

class LeavesWhenPainted : public QObject {
public:
  bool eventFilter(QObject* watched, QEvent* event) override {
    // What is painted last, when all its parts are.
    if (event->type() == QEvent::UpdateRequest && watched->isWidgetType())
      QMetaObject::invokeMethod(qApp, tellAndLeave, Qt::QueuedConnection);
    return false;
  }
};

template <class Window>
int paintedOnce(QApplication& app, Window& window) {
  LeavesWhenPainted leaves;
  window.installEventFilter(&leaves);
  window.resize(1280, 800);
  window.show();
  return app.exec();
}

int child(const std::string& what, int argc, char** argv) {
  QApplication app(argc, argv);
  if (what == "bare") {
    QMainWindow window;
    return paintedOnce(app, window);
  }
  QTemporaryDir home;
  scye::startUp(app);
  const auto in = [&](const char* name) { return home.filePath(QString::fromLatin1(name)); };
  const scye::Phrases phrases = scye::takeLanguage({in("settings"), {}, {}, {}});
  scye::MainWindow window({in("settings"), in("state"), in("recovery"), in("wearers")}, phrases);
  if (what == "design") window.openStyle(QStringLiteral(":/demos/jacket.scye"));
  return paintedOnce(app, window);
}

std::map<std::string, double> best; // seconds

void start(benchmark::State& state, const std::string& what) {
  for (auto _ : state) {
    QProcess process;
    const qint64 begun = nanosecondsNow();
    process.start(QCoreApplication::applicationFilePath(),
                  {QStringLiteral("--child"), QString::fromStdString(what)});
    process.waitForFinished();
    const qint64 painted = process.readAllStandardOutput().split('\n').first().toLongLong();
    if (process.exitCode() != 0 || painted == 0) state.SkipWithError("the window did not come up");
    const double seconds = 1e-9 * double(painted - begun);
    state.SetIterationTime(seconds);
    const auto [at, fresh] = best.try_emplace(what, seconds);
    if (!fresh) at->second = std::min(at->second, seconds);
  }
}
BENCHMARK_CAPTURE(start, bare, "bare")->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(start, startPage, "page")->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(start, design, "design")->UseManualTime()->Unit(benchmark::kMillisecond);

} // namespace

int main(int argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  if (argc > 2 && std::string(argv[1]) == "--child") return child(argv[2], argc, argv);
  QCoreApplication app(argc, argv);
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  benchmark::RunSpecifiedBenchmarks();
  for (const auto& [what, seconds] : best)
    std::printf("first frame, best of all: %s %.1f ms, %.2f times a bare window\n", what.c_str(),
                1e3 * seconds, seconds / best["bare"]);
  benchmark::Shutdown();
}
