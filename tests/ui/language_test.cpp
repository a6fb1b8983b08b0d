// The drafting table in a made-up language, and what stands around it: nothing stays English,
// nothing is cut off.
#include "language_walk.h"

#include "document/design_store.h"
#include "fit/answers.h"
#include "guide/guide_window.h"
#include "library/style_gallery.h"
#include "panels/fold.h"
#include "shell/banner.h"
#include "shell/export_strip.h"
#include "support/trial_language.h"

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QListWidget>
#include <QMenu>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTest>
#include <QThread>

#include <atomic>

namespace scye::test {
namespace {

class Language : public LanguageWalk {};

TEST_F(Language, TheStartPageSpeaksIt) {
  for (const double letters : {1.0, 2.0}) {
    window_->settings().setTextSize(letters);
    QApplication::processEvents();
    expectAll(*window_);
  }
  window_->settings().setTextSize(1);
}

// All of every card, not only of those that are in view.
TEST_F(Language, TheLibrarysCardsHaveRoom) {
  auto* gallery = window_->findChild<StyleGallery*>();
  ASSERT_TRUE(gallery);
  const int page = std::max(1, gallery->viewport()->height() / 2);
  QScrollBar* bar = gallery->verticalScrollBar();
  for (int at = 0; at <= bar->maximum(); at += page) {
    bar->setValue(at);
    expectPainted(*gallery);
  }
}

TEST_F(Language, MenusAndToolsSpeakIt) {
  openNamelessDemo();
  for (QMenu* menu : window_->findChildren<QMenu*>()) {
    Q_EMIT menu->aboutToShow();
    expectTranslated(*menu);
  }
}

TEST_F(Language, TheWorkbenchSpeaksIt) {
  openNamelessDemo();
  for (int i = 0; i < 3; ++i) // what a fold holds is made when it opens, and may hold folds
    for (Fold* fold : window_->findChildren<Fold*>())
      fold->setOpen(true);
  settle();
  expectAll(*window_);
}

TEST_F(Language, DialogsSpeakIt) {
  openNamelessDemo();
  expectDialog([&] { window_->actions().keys->trigger(); });
  Settings settings(file("settings of dialogs.json"), phrases());
  const FileKeeper::Asking ask = askingWithDialogs(window_.get(), settings);
  expectDialog([&] { EXPECT_FALSE(ask.mayReplace(file("demo.scye"))); });
  expectDialog([&] { EXPECT_FALSE(ask.mayThrowAway(QStringLiteral("demo.scye"))); });
  expectDialog([&] {
    EXPECT_EQ(ask.aboutConflict(QStringLiteral("demo.scye")), FileKeeper::Conflict::Stay);
  });
  expectDialog(
      [&] { EXPECT_EQ(ask.aboutUnsaved(QStringLiteral("demo.scye")), FileKeeper::Answer::Stay); });
}

TEST_F(Language, BannersSpeakIt) {
  openNamelessDemo();
  expectBanner([&] { window_->actions().about->trigger(); });
  expectBanner([&] {
    Q_EMIT window_->actions().language->aboutToShow();
    window_->actions().language->actions().front()->trigger();
  });
  expectBanner([&] {
    QFile nonsense(file("a.svg"));
    ASSERT_TRUE(nonsense.open(QIODevice::WriteOnly) && nonsense.write("{\"bust\": 9") > 0);
    nonsense.close();
    window_->openFile(file("a.svg"));
  });
}

TEST_F(Language, WhatIsBeingMadeIsToldAndHowItEnded) {
  openNamelessDemo();
  ExportQueue& exports = window_->workbench().exports().exports();
  std::atomic<bool> mayEnd = false;
  const ExportQueue::Work slow = [&](const GoOn& goOn) -> std::optional<QString> {
    while (goOn(0.4) && !mayEnd)
      QThread::msleep(5);
    return mayEnd ? std::nullopt : std::optional(QStringLiteral("\u0416"));
  };
  for (const bool isGivenUp : {true, false}) {
    mayEnd = false;
    expectBanner([&] { exports.add(file("a.svg"), slow); });
    EXPECT_FALSE(exports.isIdle());
    window_->settings().setTextSize(2);
    settle();
    expectRoom(*window_);
    window_->settings().setTextSize(1);
    window_->banner().dismiss();
    QSignalSpy ended(&exports, isGivenUp ? &ExportQueue::cancelled : &ExportQueue::made);
    isGivenUp ? exports.cancel() : void(mayEnd = true);
    ASSERT_TRUE(!ended.isEmpty() || ended.wait());
    ASSERT_TRUE(QTest::qWaitFor([&] { return window_->banner().isVisible(); }));
    expectAll(window_->banner());
  }
}

TEST_F(Language, WhatCannotBeKeptIsTold) {
  openNamelessDemo();
  QFile::remove(paths().settings);
  ASSERT_TRUE(QFile::link(file("7/a.svg"), paths().settings)); // a link to nowhere
  expectBanner([&] { window_->actions().grid->toggle(); });
  QDir(paths().recovery).removeRecursively();
  QFile inTheWay(paths().recovery);
  ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
  change([](Design& d) { d.set(Field::EaseBust, 7); });
  expectBanner([&] { EXPECT_FALSE(window_->recovery().writeNow()); });
}

TEST_F(Language, BannersHaveRoomForLargeLetters) {
  openDemo();
  window_->settings().setTextSize(2);
  settle();
  ASSERT_TRUE(QFile::remove(file("demo.scye")));
  ASSERT_TRUE(QTest::qWaitFor([&] { return window_->banner().isVisible(); }));
  QApplication::processEvents();
  expectRoom(*window_);
  EXPECT_EQ(window_->size(), QSize(1280, 800));
  window_->settings().setTextSize(1);
}

TEST_F(Language, AFileThatIsGoneOrAnotherIsTold) {
  openDemo();
  expectBanner([&] { ASSERT_TRUE(QFile::remove(file("demo.scye"))); });
  openDemo();
  expectBanner([&] {
    QFile other(file("demo.scye"));
    ASSERT_TRUE(other.open(QIODevice::WriteOnly) && other.write("{}") > 0);
  });
}

TEST_F(Language, ACopyThatWasKeptIsOffered) {
  const QString left = paths().recovery;
  ASSERT_TRUE(QDir().mkpath(left));
  for (const char* name : {"/one.scye", "/two.scye", "/three.scye"})
    ASSERT_FALSE(writeDesign(left + QLatin1String(name), Design(), phrases()));
  expectBanner([&] { window_->offerRecovered(); });
}

// Why a file cannot be read or written, too.
TEST_F(Language, WhatCannotBeWrittenIsTold) {
  openNamelessDemo();
  expectBanner([&] { window_->openFile(folder_.path()); });
  expectBanner([&] { window_->openFile(file("a.svg")); });
  expectBanner([&] { (void)window_->files().saveTo(file("7/demo.scye")); });
  ASSERT_TRUE(QFile::link(file("7"), file("a.svg")));
  ExportStrip& strip = window_->workbench().exports();
  strip.open(FileFormat::Svg);
  expectBanner([&] {
    strip.exportTo(file("a.svg"));
    EXPECT_FALSE(isMade(strip.exports()));
  });
  ASSERT_TRUE(QFile::remove(file("a.svg")));
  window_->guide().saveSheet(file("7/a.svg"));
  EXPECT_FALSE(isMade(window_->guide().exports()));
  expectAll(*window_);
}

TEST_F(Language, FindingsSpeakIt) {
  openNamelessDemo();
  const auto misfits = std::initializer_list<std::function<void(Design&)>>{
      [](Design& d) {
        d.set(Field::UpperArm, 47).set(Field::EaseUpperArm, -6).set(Field::CapEase, 6);
      },
      [](Design& d) { d.set(Field::EaseUpperArm, 22); },
      [](Design& d) { d.set(Field::Bust, 49).set(Field::EaseBust, 40); },
  };
  const Design demo = document().design();
  for (const auto& misfit : misfits) {
    document().replace(demo, {});
    change(misfit);
    ASSERT_FALSE(document().derived().findings.empty());
    expectAll(window_->workbench().answers());
  }
  expectAll(*window_);
}

TEST_F(Language, TheMeasuringGuideSpeaksIt) {
  openNamelessDemo();
  window_->actions().guide->trigger();
  GuideWindow& guide = window_->guide();
  auto* where = guide.findChild<QComboBox*>();
  auto* list = guide.findChild<QListWidget*>();
  for (int body = 0; body < where->count(); ++body) {
    where->setCurrentIndex(body);
    for (int i = 0; i < list->count(); ++i) {
      list->setCurrentRow(i);
      QApplication::processEvents();
      expectRoom(guide);
      expectPainted(guide);
    }
    expectTranslated(guide);
  }
}

TEST_F(Language, TheExportStripAndTheBannerSpeakIt) {
  openNamelessDemo();
  for (const auto kind : {FileFormat::Svg, FileFormat::Png, FileFormat::Pdf}) {
    window_->workbench().exports().open(kind);
    expectAll(*window_);
  }
  ExportStrip& strip = window_->workbench().exports();
  strip.exportTo(file("a.svg"));
  ASSERT_TRUE(isMade(strip.exports()));
  expectAll(*window_);
  const std::string svg = contents(file("a.svg")).toStdString();
  for (std::size_t at = 0; (at = svg.find('>', at)) != svg.npos; ++at) { // what stands in elements
    const std::string text = svg.substr(at + 1, svg.find('<', at) - at - 1);
    EXPECT_EQ(firstEnglishWord(text), "") << text;
  }
}

TEST_F(Language, NumbersAreWrittenAndReadWithAComma) {
  openNamelessDemo();
  Design design = document().design();
  document().edit({}, design.set(Field::Bust, 94.5));
  settle();
  const QString name = QString::fromStdString(phrases().say("field.bust"));
  auto* box = named<QAbstractSpinBox>(name);
  ASSERT_TRUE(box);
  EXPECT_TRUE(box->text().startsWith(QStringLiteral("94,5"))) << box->text().toStdString();
  for (const auto& [typed, value] : {std::pair("95,5", 95.5), {"96.25", 96.25}}) {
    QTest::mouseDClick(box->findChild<QWidget*>(), Qt::LeftButton);
    box->selectAll();
    QTest::keyClicks(box, QString::fromLatin1(typed));
    QTest::keyClick(box, Qt::Key_Return);
    settle();
    EXPECT_EQ(document().design().given(Field::Bust), value) << typed;
  }
}

// English has forms of its own for one and for several.
TEST(LanguageEnglish, HasItsPlurals) {
  const auto more = [](int n) {
    return QCoreApplication::translate("scye::WearerRow", "%1 and %n more", nullptr, n);
  };
  EXPECT_NE(more(2), QString());
  EXPECT_FALSE(more(2).contains(QStringLiteral("%n")));
  const auto so = [](int n) {
    return QCoreApplication::translate("scye::FileNotices", " So were %n more.", nullptr, n);
  };
  EXPECT_EQ(so(1), QStringLiteral(" So was 1 more."));
  EXPECT_EQ(so(2), QStringLiteral(" So were 2 more."));
}

} // namespace
} // namespace scye::test
