// What is written reaches the disk or is said not to have: full disks, devices, odd names; and no
// file is replaced without a question.
#include "window_fixture.h"

#include "document/design_store.h"
#include "document/disk.h"
#include "guide/guide_window.h"
#include "knitting/knit_files.h"
#include "shell/banner.h"
#include "shell/export_strip.h"
#include "support/disk.h"

#include <QAction>
#include <QApplication>
#include <QDir>
#include <QFileDialog>
#include <QLineEdit>
#include <QMessageBox>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTest>
#include <QTimer>

#include <sys/stat.h>

namespace scye::test {
namespace {

class FilesDisk : public WindowFixture {
protected:
  static QString of(const std::filesystem::path& path) { return QString::fromStdString(path); }
  void change(double ease = 12.3) {
    document().edit(QStringLiteral("change"),
                    Design(document().design()).set(Field::EaseBust, ease));
    settle();
  }
  static void put(const QString& path, const QByteArray& text) {
    QFile f(path);
    ASSERT_TRUE(f.open(QIODevice::WriteOnly));
    f.write(text);
  }

  // Answers what a file dialog and the questions after it ask, as a hand would: types the name and
  // presses Return, then the button of that name. `names` and `answers` in the order asked.
  struct Hand {
    QStringList names, answers;
    int questions = 0, dialogs = 0;
  };
  void work(Hand& hand) {
    QObject::disconnect(&timer_, nullptr, nullptr, nullptr);
    QObject::connect(&timer_, &QTimer::timeout, &timer_, [&hand] { act(hand); });
    timer_.start(20);
  }
  static void act(Hand& hand) {
    QWidget* modal = QApplication::activeModalWidget();
    if (auto* dialog = qobject_cast<QFileDialog*>(modal)) {
      auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
      if (!name || !name->isVisible()) return;
      ++hand.dialogs;
      if (hand.names.isEmpty()) return dialog->reject();
      name->selectAll();
      QTest::keyClicks(name, hand.names.takeFirst());
      QTest::keyClick(name, Qt::Key_Return);
    } else if (auto* box = qobject_cast<QMessageBox*>(modal)) {
      ++hand.questions;
      const QString wanted = hand.answers.isEmpty() ? QString() : hand.answers.takeFirst();
      for (QAbstractButton* b : box->buttons())
        if (QString(b->text()).remove(u'&') == wanted) return QTest::mouseClick(b, Qt::LeftButton);
      QTest::keyClick(box, Qt::Key_Escape);
    }
  }
  QTimer timer_;

  void askWithDialogs() {
    QApplication::setAttribute(Qt::AA_DontUseNativeDialogs);
    window_->files().setAsking(askingWithDialogs(window_.get(), window_->settings()));
    window_->settings().setLastFolder(folder_.path());
  }
};

TEST_F(FilesDisk, onAFullDiskNothingIsLostAndItIsSaid) {
  SmallDisk disk(256 << 10);
  openDemo();
  const QString design = of(disk / "a.scye");
  ASSERT_TRUE(window_->files().saveTo(design));
  const QByteArray before = contents(design);
  change();
  disk.fill();
  EXPECT_FALSE(window_->files().saveTo(design));
  EXPECT_TRUE(window_->banner().isVisible());
  EXPECT_TRUE(window_->isWindowModified()) << "the star stays";
  EXPECT_EQ(contents(design), before);

  for (const char* name : {"a.svg", "a.png", "a.pdf"}) {
    ExportStrip& strip = window_->workbench().exports();
    strip.exportTo(of(disk / name));
    EXPECT_FALSE(isMade(strip.exports())) << name;
    EXPECT_FALSE(QFile::exists(of(disk / name))) << name;
  }
  KnitFiles& knit = window_->workbench().knitFiles();
  knit.exportTo(OutputId::Directions, of(disk / "a.html"));
  EXPECT_FALSE(isMade(knit.exports()));
  knit.exportTo(OutputId::Directions, of(disk / "a.txt"));
  EXPECT_FALSE(isMade(knit.exports()));
  knit.exportTo(OutputId::Chart, of(disk / "chart.pdf"));
  EXPECT_FALSE(isMade(knit.exports()));
  knit.exportTo(OutputId::RowList, of(disk / "a.csv"));
  EXPECT_FALSE(isMade(knit.exports()));
  knit.exportEverything(of(disk.path()));
  EXPECT_FALSE(isMade(knit.exports()));
  knit.exportTo(OutputId::Template, of(disk / "blocking.pdf"));
  EXPECT_FALSE(isMade(knit.exports()));
  window_->guide().saveSheet(of(disk / "sheet.pdf"));
  EXPECT_FALSE(isMade(window_->guide().exports()));
  EXPECT_EQ(QDir(of(disk.path())).entryList(QDir::Files | QDir::Hidden),
            disk.mounted() ? QStringList({QStringLiteral("a.scye"), QStringLiteral("filler")})
                           : QStringList({QStringLiteral("a.scye")}));
  disk.empty();
  EXPECT_TRUE(window_->files().saveTo(design));
  EXPECT_EQ(std::get<Design>(readDesign(design, builtinPhrases())), document().design());
}

TEST_F(FilesDisk, wearersAreKeptOrSaidNotToBe) {
  SmallDisk disk(256 << 10);
  AppPaths there = paths();
  there.wearers = of(disk / "wearers");
  MainWindow next(there, builtinPhrases());
  Design design;
  design.wearer = "Ottilie";
  design.set(Field::Bust, 92);
  ASSERT_TRUE(next.wearers().keep(design, QDate(2026, 5, 1)));
  disk.fill();
  design.set(Field::Bust, 96);
  EXPECT_FALSE(next.wearers().keep(design, QDate(2026, 5, 2)));
  EXPECT_TRUE(next.banner().text().contains(QStringLiteral("Not kept")));
  next.wearers().reload();
  ASSERT_TRUE(next.wearers().find(QStringLiteral("Ottilie")));
  EXPECT_EQ(next.wearers().find(QStringLiteral("Ottilie"))->wearer.given(Field::Bust), 92);
}

TEST_F(FilesDisk, aCopyThatCannotBeKeptIsSaid) {
  SmallDisk disk(256 << 10);
  AppPaths there = paths();
  there.recovery = of(disk / "recovery");
  MainWindow next(there, builtinPhrases());
  next.openStyle(demoFile());
  disk.fill();
  next.document().edit(QStringLiteral("change"),
                       Design(next.document().design()).set(Field::EaseBust, 12.3));
  EXPECT_FALSE(next.recovery().writeNow());
  QApplication::processEvents();
  EXPECT_TRUE(next.banner().text().contains(QStringLiteral("No copy of your unsaved work")))
      << next.banner().text().toStdString();
  disk.empty();
  EXPECT_TRUE(next.recovery().writeNow());
}

TEST_F(FilesDisk, settingsComeBackAndAFullDiskLeavesTheOldOnes) {
  SmallDisk disk(256 << 10);
  const QString path = of(disk / "settings.json");
  {
    Settings settings(path, builtinPhrases());
    settings.setUnit(LengthUnit::Inch);
    settings.addRecentFile(QStringLiteral("/a/Käthe.scye"));
    settings.setExportOptions({Paper::Letter, 300});
  }
  const QByteArray before = contents(path);
  disk.fill();
  {
    Settings settings(path, builtinPhrases());
    EXPECT_EQ(settings.unit(), LengthUnit::Inch);
    EXPECT_EQ(settings.recentFiles(), QStringList(QStringLiteral("/a/Käthe.scye")));
    EXPECT_EQ(settings.exportOptions().paper, Paper::Letter);
    EXPECT_EQ(settings.exportOptions().dpi, 300);
    settings.setUnit(LengthUnit::Centimetre);
  }
  EXPECT_EQ(contents(path), before);
}

TEST_F(FilesDisk, twoWindowsShareTheirSettings) {
  const QString path = file("shared.json");
  {
    Settings one(path, builtinPhrases()), other(path, builtinPhrases());
    one.setUnit(LengthUnit::Inch);
    other.setTerms(QStringLiteral("uk"));
  }
  Settings both(path, builtinPhrases());
  EXPECT_EQ(both.unit(), LengthUnit::Inch);
  EXPECT_EQ(both.terms(), QStringLiteral("uk"));
}

TEST_F(FilesDisk, settingsThatCannotBeReadAreKeptAside) {
  const QString path = file("odd.json");
  put(path, "[grid]\nshown = yes, please");
  {
    Settings settings(path, builtinPhrases());
    EXPECT_EQ(settings.unit(), LengthUnit::Centimetre);
    settings.setUnit(LengthUnit::Inch);
  }
  EXPECT_EQ(Settings(path, builtinPhrases()).unit(), LengthUnit::Inch);
  EXPECT_EQ(contents(path + QStringLiteral(".unreadable")), "[grid]\nshown = yes, please");
}

TEST_F(FilesDisk, settingsFromBeforeAreTakenOver) {
  put(file("former.ini"), "[General]\nunit=inch\n[files]\nrecent=/a.scye, /b.scye\n"
                          "[export]\ndpi=150\npaper=2\n");
  Settings settings(file("former.json"), builtinPhrases());
  EXPECT_EQ(settings.unit(), LengthUnit::Inch);
  EXPECT_EQ(settings.recentFiles(),
            QStringList({QStringLiteral("/a.scye"), QStringLiteral("/b.scye")}));
  EXPECT_EQ(settings.exportOptions().dpi, 150);
  EXPECT_EQ(settings.exportOptions().paper, Paper::Letter);
}

TEST_F(FilesDisk, linksDevicesAndProtectedFilesAreLeftAsTheyAre) {
  openDemo();
  change();
  ASSERT_TRUE(QFile::copy(file("demo.scye"), file("far.scye")));
  ASSERT_TRUE(QFile::link(QStringLiteral("far.scye"), file("link.scye")));
  EXPECT_TRUE(window_->files().saveTo(file("link.scye")));
  EXPECT_TRUE(QFileInfo(file("link.scye")).isSymLink());
  EXPECT_EQ(std::get<Design>(readDesign(file("far.scye"), builtinPhrases())), document().design());

  ASSERT_TRUE(QFile::link(QStringLiteral("nowhere.scye"), file("dangling.scye")));
  EXPECT_FALSE(window_->files().saveTo(file("dangling.scye")));
  EXPECT_TRUE(QFileInfo(file("dangling.scye")).isSymLink());

  put(file("protected.scye"), "x");
  QFile(file("protected.scye")).setPermissions(QFile::ReadOwner);
  EXPECT_FALSE(window_->files().saveTo(file("protected.scye")));
  EXPECT_EQ(contents(file("protected.scye")), "x");

  ASSERT_EQ(mkfifo(file("pipe.svg").toLocal8Bit().constData(), 0600), 0);
  ExportStrip& strip = window_->workbench().exports();
  strip.exportTo(file("pipe.svg"));
  EXPECT_FALSE(isMade(strip.exports())) << "nobody reads";
  EXPECT_FALSE(QFileInfo(file("pipe.svg")).isFile());
  window_->openFile(file("pipe.svg")); // and the window does not wait for a writer
  EXPECT_TRUE(window_->banner().text().contains(QStringLiteral("device or a pipe")));
}

TEST_F(FilesDisk, aNameThatIsNoUtf8IsRefusedAndNeverWrittenAsAnother) {
  openDemo();
  const QByteArray odd = folder_.path().toLocal8Bit() + "/odd\xff.scye";
  const auto designs = [this] {
    return QDir(folder_.path()).entryList({QStringLiteral("*.scye")}, QDir::Files);
  };
  const QStringList before = designs();
  EXPECT_FALSE(window_->files().saveTo(QFile::decodeName(odd)));
  EXPECT_TRUE(window_->banner().isVisible());
  EXPECT_EQ(designs(), before);
  EXPECT_EQ(diskPath(QStringLiteral("/a/Käthe.scye")), "/a/Käthe.scye");
}

TEST_F(FilesDisk, aNameTypedWithoutItsEndingIsAskedAboutBeforeItIsReplaced) {
  openDemo();
  change();
  put(file("other.scye"), "mine");
  askWithDialogs();
  Hand no{{QStringLiteral("other")}, {QStringLiteral("Cancel")}};
  work(no);
  EXPECT_FALSE(window_->files().saveAs());
  EXPECT_EQ(no.questions, 1);
  EXPECT_EQ(no.dialogs, 2) << "and the name is asked for again";
  EXPECT_EQ(contents(file("other.scye")), "mine");
  Hand yes{{QStringLiteral("other")}, {QStringLiteral("Replace it")}};
  work(yes);
  EXPECT_TRUE(window_->files().saveAs());
  EXPECT_EQ(yes.questions, 1);
  EXPECT_EQ(std::get<Design>(readDesign(file("other.scye"), builtinPhrases())),
            document().design());
  Hand fresh{{QStringLiteral("Harbour v1.2")}, {}};
  work(fresh);
  EXPECT_TRUE(window_->files().saveAs());
  EXPECT_EQ(fresh.questions, 0);
  EXPECT_TRUE(QFile::exists(file("Harbour v1.2.scye")));
}

TEST_F(FilesDisk, everyExportAsksBeforeItReplaces) {
  openDemo();
  askWithDialogs();
  ExportStrip& strip = window_->workbench().exports();
  const auto exportButton = [&] {
    for (QPushButton* b : strip.findChildren<QPushButton*>())
      if (b->text() == QStringLiteral("Export…")) return b;
    return static_cast<QPushButton*>(nullptr);
  };
  const auto schematic = [&](FileFormat kind) {
    strip.open(kind);
    QTest::mouseClick(exportButton(), Qt::LeftButton);
  };
  Actions& actions = window_->actions();
  const struct {
    const char* made;
    std::function<void()> ask;
  } exports[] = {
      {"out.svg", [&] { schematic(FileFormat::Svg); }},
      {"out.png", [&] { schematic(FileFormat::Png); }},
      {"out.pdf", [&] { schematic(FileFormat::Pdf); }},
      {"out.html", [&] { actions.exports.at(OutputId::Directions)->trigger(); }},
      {"out.csv", [&] { actions.exports.at(OutputId::RowList)->trigger(); }},
  };
  for (const auto& e : exports) {
    SCOPED_TRACE(e.made);
    put(file(e.made), "mine");
    Hand hand{{QStringLiteral("out")}, {QStringLiteral("Cancel")}};
    work(hand);
    e.ask();
    timer_.stop(); // before its hand goes
    EXPECT_EQ(hand.questions, 1);
    EXPECT_EQ(contents(file(e.made)), "mine");
  }
}

TEST_F(FilesDisk, whatIsStillBeingTypedIsSaved) {
  openDemo();
  QTest::mouseClick(named<QWidget>(QStringLiteral("Notes")), Qt::LeftButton); // the heading
  auto* notes = named<QPlainTextEdit>(QStringLiteral("Notes"));
  ASSERT_TRUE(notes);
  notes->setFocus();
  QTest::keyClicks(notes, QStringLiteral("grey, "));
  auto* title = named<QLineEdit>(QStringLiteral("Title"));
  ASSERT_TRUE(title);
  title->setFocus();
  title->selectAll();
  QTest::keyClicks(title, QStringLiteral("Quay"));
  QTest::keyClick(window_.get(), Qt::Key_S, Qt::ControlModifier);
  const Design saved = std::get<Design>(readDesign(file("demo.scye"), builtinPhrases()));
  EXPECT_EQ(saved.title, "Quay");
  EXPECT_NE(saved.notes.find("grey, "), std::string::npos);
  EXPECT_FALSE(document().isModified());
}

} // namespace
} // namespace scye::test
