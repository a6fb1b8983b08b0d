// What takes long runs beside the window: it answers meanwhile, what was in view stays until there
// is something newer, and remedies appear where the pointer is not.
#include "window_fixture.h"

#include "document/beside.h"
#include "document/design_store.h"
#include "fit/finding_card.h"
#include "picture_file.h"
#include "schematic/schematic.h"
#include "shell/banner.h"
#include "shell/export_strip.h"

#include <pthread.h>

#include <QElapsedTimer>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <algorithm>
#include <atomic>
#include <iostream>
#include <thread>

namespace scye::test {
namespace {

TEST(Besides, theNewestWorkWinsAndWhatRunsIsTold) {
  std::atomic<int> first = 0, second = 0, third = 0;
  std::atomic<bool> told = false, begun = false;
  {
    Beside beside;
    beside.start([&](const std::stop_token& stop) {
      ++first;
      begun = true;
      while (!stop.stop_requested())
        std::this_thread::yield();
      told = true;
    });
    while (!begun)
      std::this_thread::yield();
    beside.start([&](const std::stop_token&) { ++second; });
    beside.start([&](const std::stop_token&) { ++third; });
    while (third == 0)
      std::this_thread::yield();
    EXPECT_TRUE(told);
  }
  EXPECT_EQ(first, 1);
  EXPECT_LE(second, 1) << "it may have begun before the third came";
  EXPECT_EQ(third, 1);
}

TEST(Besides, isFinishedOnceNothingRuns) {
  Beside beside;
  EXPECT_TRUE(beside.finished(std::chrono::milliseconds(0))) << "nothing was begun";
  std::atomic<bool> go = false;
  beside.start([&](const std::stop_token&) {
    while (!go)
      std::this_thread::yield();
  });
  EXPECT_FALSE(beside.finished(std::chrono::milliseconds(1)));
  go = true;
  EXPECT_TRUE(beside.finished(std::chrono::minutes(1)));
}

double ms(const timespec& t) {
  return double(t.tv_sec) * 1e3 + double(t.tv_nsec) / 1e6;
}

// Delays of events that another thread posts, one after the other, for as long as something goes
// on.
class Delays {
public:
  struct Waits {
    double clock = 0; // ms by the clock on the wall
    double work = 0; // ms that the window's thread worked meanwhile: whatever else the machine does
  };
  // The longest of each.
  template <class GoesOn>
  Waits longest(const GoesOn& goesOn) {
    std::atomic<bool> over = false;
    Waits worst;
    QObject here;
    clockid_t window;
    pthread_getcpuclockid(pthread_self(), &window);
    const auto worked = [window] {
      timespec t;
      clock_gettime(window, &t);
      return ms(t);
    };
    std::thread poster([&] {
      while (!over) {
        std::atomic<bool> came = false;
        QElapsedTimer since;
        since.start();
        const double before = worked();
        QMetaObject::invokeMethod(
            &here,
            [&] {
              worst.clock = std::max(worst.clock, double(since.nsecsElapsed()) / 1e6);
              worst.work = std::max(worst.work, worked() - before);
              came = true;
            },
            Qt::QueuedConnection);
        while (!came && !over)
          std::this_thread::sleep_for(std::chrono::microseconds(200));
        while (!came) // posted, and to be gone before this frame is left
          std::this_thread::sleep_for(std::chrono::microseconds(200));
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
      }
      done_ = true;
    });
    while (goesOn())
      QCoreApplication::processEvents(QEventLoop::AllEvents, 5);
    over = true;
    while (!done_)
      QCoreApplication::processEvents(QEventLoop::AllEvents, 5);
    poster.join();
    done_ = false;
    return worst;
  }
  // An idle window's own, over this many ms: what a busy machine adds.
  Waits idle(int ms) {
    QElapsedTimer since;
    since.start();
    return longest([&] { return since.elapsed() < ms; });
  }

private:
  std::atomic<bool> done_ = false;
};

#ifdef __SANITIZE_ADDRESS__
constexpr double kAnswers = 250; // ms: with every access looked at even an idle window takes 70
#else
constexpr double kAnswers = 50; // ms
#endif

void tell(const Delays::Waits& worst, const Delays::Waits& idle) {
  std::cout << "a posted event waits " << worst.clock << " ms at most (" << worst.work
            << " of the window's own work), in an idle window " << idle.clock << " (" << idle.work
            << ")\n";
}

class BesideTheWindow : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    document().setPatience(std::chrono::milliseconds(kWaitMs)); // as it is worked with
  }
  // Much to find, at a gauge where each trial takes its time.
  [[nodiscard]] Design demanding() {
    Design d = document().design();
    return d.set(Field::EaseUpperArm, 24)
        .set(Field::SwatchStitches, 36)
        .set(Field::SwatchWidth, 10)
        .set(Field::SwatchRows, 50)
        .set(Field::SwatchHeight, 10)
        .set(Field::EaseArmholeDepth, 6)
        .set(Field::FrontNeckDrop, 3);
  }
};

TEST_F(BesideTheWindow, theWindowAnswersWhileRemediesAreLookedFor) {
  Delays delays;
  const Delays::Waits idle = delays.idle(500);
  document().edit(QStringLiteral("demanding"), demanding());
  const Delays::Waits worst = delays.longest([&] { return document().isStale(); });
  tell(worst, idle);
  EXPECT_TRUE(document().remediesFound());
  EXPECT_LT(worst.work, kAnswers);
  EXPECT_LT(worst.clock, kAnswers + 10 * idle.clock);
}

TEST_F(BesideTheWindow, theWindowAnswersWhileALargePictureIsMade) {
  Delays delays;
  const Delays::Waits idle = delays.idle(500);
  ExportStrip& strip = window_->workbench().exports();
  QSignalSpy made(&strip.exports(), &ExportQueue::made);
  window_->workbench().knitFiles().exportTo(OutputId::Chart, file("chart.pdf"));
  strip.exportTo(file("large.png"));
  const Delays::Waits worst = delays.longest([&] {
    return !strip.exports().isIdle() || !window_->workbench().knitFiles().exports().isIdle();
  });
  tell(worst, idle);
  EXPECT_EQ(made.count(), 1) << window_->banner().text().toStdString();
  EXPECT_LT(worst.work, kAnswers);
  EXPECT_LT(worst.clock, kAnswers + 10 * idle.clock);
}

TEST_F(BesideTheWindow, everythingAndTheSizesOfATableAreWritten) {
  KnitFiles& files = window_->workbench().knitFiles();
  files.exportEverything(folder_.path());
  EXPECT_TRUE(isMade(files.exports())) << window_->banner().text().toStdString();
  for (const OutputFile& each : everyOutput(document().derived(), true))
    EXPECT_GT(QFileInfo(file(each.name.c_str())).size(), 0) << each.name;
  EXPECT_EQ(std::get<Design>(readDesign(file("design.scye"), builtinPhrases())),
            document().design());

  QFile table(file("wearers.csv"));
  ASSERT_TRUE(table.open(QIODevice::WriteOnly));
  table.write("name,bust\nIda,94\nNell,118\n");
  table.close();
  files.exportSizes(file("wearers.csv"), file("sizes.csv"));
  EXPECT_TRUE(isMade(files.exports())) << window_->banner().text().toStdString();
  EXPECT_EQ(contents(file("sizes.csv")).count('\n'), 3);
  files.exportSizes(file("none.csv"), file("no.csv"));
  EXPECT_FALSE(isMade(files.exports()));
  EXPECT_FALSE(QFile::exists(file("no.csv")));
}

TEST_F(BesideTheWindow, bookletsForATableOfWearersAreWritten) {
  QFile table(file("wearers.csv"));
  ASSERT_TRUE(table.open(QIODevice::WriteOnly));
  table.write("name,bust\nIda,94\nNell,118\nOtto,none\n");
  table.close();
  KnitFiles& files = window_->workbench().knitFiles();
  QSignalSpy progressed(&files.exports(), &ExportQueue::progressed);
  files.exportBooklets(file("wearers.csv"), file("for/them"));
  EXPECT_TRUE(isMade(files.exports())) << window_->banner().text().toStdString();
  EXPECT_EQ(QDir(file("for/them")).entryList(QDir::Files),
            QStringList({QStringLiteral("Ida.pdf"), QStringLiteral("Nell.pdf"),
                         QStringLiteral("sizes.csv")}));
  EXPECT_TRUE(contents(file("for/them/Nell.pdf")).startsWith("%PDF"));
  EXPECT_EQ(contents(file("for/them/sizes.csv")).count('\n'), 4) << "a line for Otto too";

  // Where nothing can be written it says which file could not.
  QFile blocked(file("blocked"));
  ASSERT_TRUE(blocked.open(QIODevice::WriteOnly));
  blocked.close();
  QSignalSpy failed(&files.exports(), &ExportQueue::failed);
  files.exportBooklets(file("wearers.csv"), file("blocked"));
  EXPECT_FALSE(isMade(files.exports()));
  ASSERT_EQ(failed.count(), 1);
  EXPECT_TRUE(failed.first().first().toString().contains(QStringLiteral("blocked")));
}

TEST_F(BesideTheWindow, bookletsForATableOfWearersCanBeGivenUp) {
  QFile table(file("wearers.csv"));
  ASSERT_TRUE(table.open(QIODevice::WriteOnly));
  table.write("name,bust\n");
  constexpr int kMany = 200;
  for (int i = 0; i < kMany; ++i)
    table.write("Wearer " + QByteArray::number(i) + ",94\n");
  table.close();
  KnitFiles& files = window_->workbench().knitFiles();
  QSignalSpy progressed(&files.exports(), &ExportQueue::progressed),
      cancelled(&files.exports(), &ExportQueue::cancelled);
  files.exportBooklets(file("wearers.csv"), file("many"));
  ASSERT_TRUE(progressed.wait(20000));
  files.exports().cancel();
  EXPECT_FALSE(isMade(files.exports()));
  EXPECT_EQ(cancelled.count(), 1);
  const QStringList there = QDir(file("many")).entryList(QDir::Files);
  EXPECT_LT(there.size(), kMany);
  EXPECT_FALSE(there.contains(QStringLiteral("sizes.csv")));
  for (const QString& name : there)
    EXPECT_TRUE(contents(file("many") + u'/' + name).trimmed().endsWith("%%EOF")) << "not whole";
}

TEST_F(BesideTheWindow, anExportCanBeGivenUpAndLeavesNoFile) {
  ExportQueue queue;
  QSignalSpy cancelled(&queue, &ExportQueue::cancelled),
      progressed(&queue, &ExportQueue::progressed);
  std::atomic<bool> begun = false;
  queue.add(file("never.pdf"), [&](const GoOn& goOn) -> std::optional<QString> {
    begun = true;
    while (goOn(0.25))
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
    return QStringLiteral("given up");
  });
  ASSERT_TRUE(progressed.wait());
  queue.cancel();
  EXPECT_FALSE(isMade(queue));
  EXPECT_EQ(cancelled.count(), 1);
  // The makers themselves stop when they are told.
  ExportOptions options;
  options.dpi = 60;
  int asked = 0;
  options.goOn = [&](double) { return ++asked < 2; };
  const QString png = file("given_up.png"), pdf = file("given_up.pdf");
  const auto picture = [&](double textHeight) {
    SchematicOptions schematic;
    schematic.textHeight = textHeight;
    return pieceSchematic(document().draft(), builtinPhrases(), schematic);
  };
  EXPECT_TRUE(exportPicture(picture, png, options));
  options.goOn = [](double) { return false; };
  EXPECT_TRUE(exportPicture(picture, pdf, options));
  EXPECT_FALSE(QFile::exists(png));
  EXPECT_FALSE(QFile::exists(pdf));
}

TEST_F(BesideTheWindow, aPictureTooLargeForMemoryIsRefusedWithItsSize) {
  ExportOptions options;
  options.dpi = 1200;
  const auto problem = exportPicture(
      [&](double) { return pieceSchematic(document().draft(), builtinPhrases(), {}); },
      file("huge.png"), options);
  ASSERT_TRUE(problem);
  EXPECT_TRUE(problem->contains(QStringLiteral(" MB")) && problem->contains(QStringLiteral(" x ")))
      << problem->toStdString();
  EXPECT_FALSE(QFile::exists(file("huge.png")));
}

TEST_F(BesideTheWindow, remediesAreShownAsTheyAreFoundAndTheNextEditStopsTheSearch) {
  QSignalSpy changed(&document(), &Document::changed);
  document().edit(QStringLiteral("demanding"), demanding());
  // The first are there before all are.
  const auto offered = [&] {
    std::size_t n = 0;
    for (const Finding& f : document().derived().findings)
      if (!f.code.starts_with("doubt.")) n += f.remedies.size();
    return n;
  };
  while (offered() == 0 && document().isStale())
    ASSERT_TRUE(changed.wait());
  EXPECT_GT(offered(), 0u);
  const Design calm = Design(document().design()).set(Field::EaseUpperArm, 4);
  document().edit(QStringLiteral("another"), calm);
  EXPECT_FALSE(document().remediesFound());
  settle();
  EXPECT_EQ(document().derived().draft.design, calm);
  for (const Finding& f : document().derived().findings)
    for (const Remedy& r : f.remedies)
      if (!f.code.starts_with("doubt.")) {
        EXPECT_FALSE(findCode(findingsOf(applied(calm, r)), f.code)) << f.code << ' ' << r.key;
      }
}

TEST_F(BesideTheWindow, howeverFastChangesComeTheNewestIsShownInTheEnd) {
  for (int i = 0; i < 40; ++i) {
    document().edit(QStringLiteral("bust"), Design(document().design())
                                                .set(Field::Bust, 90 + 0.5 * i)
                                                .set(Field::SwatchStitches, i % 2 ? 38 : 20)
                                                .set(Field::SwatchWidth, 10));
    // What is in hand is always the present design's, whatever is in view.
    EXPECT_EQ(document().draft().sizes[Field::Bust], 90 + 0.5 * i);
    if (i % 4 == 0) QCoreApplication::processEvents();
  }
  settle();
  EXPECT_EQ(document().derived().draft.design, document().design());
}

TEST_F(BesideTheWindow, remediesMoveNothingThatIsPointedAt) {
  Attention attention;
  FindingCard card(document(), attention, builtinPhrases(), nullptr);
  Finding finding{Severity::Warning, "neck.base", {Field::NeckWidth}, {}, {}};
  const auto remedy = [](const char* key, Field field) {
    return Remedy{key, {lengthParam("to", 20), lengthParam("by", 2)}, {{field, 20}}, {}};
  };
  finding.remedies = {remedy("more.neckDrop", Field::FrontNeckDrop)};
  card.setFinding(finding, LengthUnit::Centimetre, false, false);
  auto* first = card.findChild<QPushButton*>();
  const QString text = first->text();
  // A better one is found while the pointer is there.
  finding.remedies.insert(finding.remedies.begin(), remedy("more.neckWidth", Field::NeckWidth));
  card.setFinding(finding, LengthUnit::Centimetre, false, true);
  EXPECT_EQ(first->text(), text);
  EXPECT_EQ(card.findChildren<QPushButton*>().size(), 2);
  // Once it is gone, the better one comes first.
  card.setFinding(finding, LengthUnit::Centimetre, true, false);
  EXPECT_NE(first->text(), text);
}

} // namespace
} // namespace scye::test
