// From the hand to the picture: a slider of the ease is moved, and the time the processor works
// until the whole window has been painted is set beside that of a bare window of the same size
// painting itself. And what the program holds in memory with a design open, beside a bare window.
// Each is a process of its own, this program once more. Processor time of one core, not that of the
// clock, so that a busy machine measures the same. Offscreen where the platform is not set.
#include "panels/ease_dial.h"
#include "panels/ease_strip.h"
#include "panels/field_slider.h"
#include "shell/main_window.h"
#include "shell/start_up.h"
#include "shell/workbench.h"

#include <benchmark/benchmark.h>

#include <QApplication>
#include <QMainWindow>
#include <QMouseEvent>
#include <QPainter>
#include <QProcess>
#include <QTemporaryDir>

#include <cstdio>
#include <ctime>
#include <fstream>
#include <map>

namespace {

constexpr int kSteps = 60;

double processorSeconds() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return double(now.tv_sec) + 1e-9 * double(now.tv_nsec);
}

double megabytesHeld() {
  std::ifstream status("/proc/self/status");
  for (std::string word; status >> word;)
    if (word == "VmRSS:") {
      double kilobytes = 0;
      status >> kilobytes;
      return kilobytes / 1024;
    }
  return 0;
}

class Bare : public QMainWindow {
protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.fillRect(rect(), Qt::white);
  }
};

void report(double seconds) {
  std::printf("%.6f %.1f\n", seconds / kSteps, megabytesHeld());
}

int bare(QApplication&, const QSize& size) {
  Bare window;
  window.resize(size);
  window.show();
  QApplication::processEvents();
  const double start = processorSeconds();
  for (int i = 0; i < kSteps; ++i)
    window.repaint();
  report(processorSeconds() - start);
  return 0;
}

int dragged(QApplication&, const QSize& size) {
  QTemporaryDir home;
  const auto in = [&](const char* name) { return home.filePath(QString::fromLatin1(name)); };
  scye::MainWindow window({in("settings"), in("state"), in("recovery"), in("wearers")},
                          scye::builtinPhrases());
  window.openStyle(QStringLiteral(":/demos/jacket.scye"));
  window.resize(size);
  window.show();
  scye::Document& document = window.document();
  while (document.isStale())
    QApplication::processEvents(QEventLoop::WaitForMoreEvents);
  QApplication::processEvents();
  auto* slider = window.workbench().ease().dials().front()->slider();
  const auto send = [&](QEvent::Type type, int x) {
    const QPointF at(x, slider->height() / 2.0);
    QMouseEvent event(type, at, slider->mapToGlobal(at), Qt::LeftButton, Qt::LeftButton,
                      Qt::NoModifier);
    QApplication::sendEvent(slider, &event);
  };
  send(QEvent::MouseButtonPress, slider->width() / 2);
  QApplication::processEvents();
  double used = 0;
  int drawn = 0;
  QObject::connect(&document, &scye::Document::changed, &window,
                   [&](const scye::Document::Event& event) { drawn += event.derived; });
  for (int i = 0; i < kSteps; ++i) {
    const int before = drawn;
    const double start = processorSeconds();
    send(QEvent::MouseMove, slider->width() / 2 + (i % 2 ? 1 : -1) * (8 + i / 2));
    while (drawn == before)
      QApplication::processEvents(QEventLoop::WaitForMoreEvents);
    QApplication::processEvents(); // painted
    used += processorSeconds() - start;
  }
  send(QEvent::MouseButtonRelease, slider->width() / 2);
  report(used);
  return 0;
}

struct Best {
  double seconds = 1e9, megabytes = 1e9;
};
std::map<std::string, Best> best;

void run(benchmark::State& state, const std::string& what, const char* wide, const char* high) {
  for (auto _ : state) {
    QProcess child;
    child.start(QCoreApplication::applicationFilePath(),
                {QStringLiteral("--child"), QString::fromStdString(what), QLatin1String(wide),
                 QLatin1String(high)});
    child.waitForFinished(120000);
    const QStringList said = QString::fromLatin1(child.readAllStandardOutput()).split(u' ');
    if (child.exitCode() != 0 || said.size() != 2) {
      state.SkipWithError("the window did not come up");
      return;
    }
    Best& b = best[what + " " + wide + "x" + high];
    b.seconds = std::min(b.seconds, said[0].toDouble());
    b.megabytes = std::min(b.megabytes, said[1].toDouble());
    state.SetIterationTime(said[0].toDouble());
  }
}
BENCHMARK_CAPTURE(run, bareHd, "bare", "1920", "1080")
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond)
    ->Iterations(3);
BENCHMARK_CAPTURE(run, dragHd, "drag", "1920", "1080")
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond)
    ->Iterations(3);
BENCHMARK_CAPTURE(run, bare4k, "bare", "3840", "2160")
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond)
    ->Iterations(3);
BENCHMARK_CAPTURE(run, drag4k, "drag", "3840", "2160")
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond)
    ->Iterations(3);

} // namespace

int main(int argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  if (argc > 4 && std::string(argv[1]) == "--child") {
    QApplication app(argc, argv);
    scye::startUp(app);
    const QSize size(std::atoi(argv[3]), std::atoi(argv[4]));
    return std::string(argv[2]) == "bare" ? bare(app, size) : dragged(app, size);
  }
  QCoreApplication app(argc, argv);
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  benchmark::RunSpecifiedBenchmarks();
  constexpr double kFrame = 1000.0 / 60; // ms
  for (const char* size : {"1920x1080", "3840x2160"}) {
    const Best &bareOne = best[std::string("bare ") + size],
               &drag = best[std::string("drag ") + size];
    std::printf("%s: hand to picture %.2f ms, %.2f frames of 60 Hz, %.1f times a bare window's "
                "painting; memory %.0f MB, a bare window's and %.0f MB\n",
                size, 1e3 * drag.seconds, 1e3 * drag.seconds / kFrame,
                drag.seconds / bareOne.seconds, drag.megabytes, drag.megabytes - bareOne.megabytes);
  }
  benchmark::Shutdown();
}
