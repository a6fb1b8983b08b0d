// Copies of unsaved work: how far they are behind, and what is offered of them after a crash.
#include "window_fixture.h"

#include "document/design_store.h"
#include "shell/banner.h"

#include <QApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTest>

namespace scye::test {
namespace {

constexpr int kBehindAtMostMs = 2000;

class FilesRecovery : public WindowFixture {
protected:
  void edit(double ease) {
    document().edit(QStringLiteral("change"),
                    Design(document().design()).set(Field::EaseBust, ease));
  }
  [[nodiscard]] Design copied() const {
    const auto read = readDesign(window_->recovery().file(), builtinPhrases());
    const auto* design = std::get_if<Design>(&read);
    return design ? *design : Design();
  }
  // As a program that ended badly leaves it: the copy without anybody who holds it.
  void leave(const QString& folder, const QString& name, double ease) {
    ASSERT_TRUE(QDir().mkpath(folder));
    Design design = document().design();
    design.title = name.toStdString();
    ASSERT_EQ(writeDesign(folder + u'/' + name + QStringLiteral(".scye"),
                          design.set(Field::EaseBust, ease), builtinPhrases()),
              std::nullopt);
  }
  static void press(MainWindow& window, const char* text) {
    for (QPushButton* b : window.banner().findChildren<QPushButton*>())
      if (b->text() == QLatin1String(text) && b->isVisible())
        return QTest::mouseClick(b, Qt::LeftButton);
    ADD_FAILURE() << "nothing offers: " << text;
  }
};

TEST_F(FilesRecovery, theFirstEditIsKeptAsSoonAsAnyOther) {
  openDemo();
  edit(12.3);
  EXPECT_TRUE(QTest::qWaitFor([&] { return copied() == document().design(); }, kBehindAtMostMs));
}

TEST_F(FilesRecovery, editsThatNeverPauseAreKeptToo) {
  openDemo();
  QElapsedTimer time;
  time.start();
  std::vector<std::pair<qint64, Design>> history{{0, document().design()}};
  double ease = 5;
  while (time.elapsed() < 3 * kBehindAtMostMs) {
    edit(ease += 0.01);
    history.emplace_back(time.elapsed(), document().design());
    QTest::qWait(50);
    if (time.elapsed() < kBehindAtMostMs) continue;
    // The copy is one of the designs of the last two seconds.
    const Design copy = copied();
    const auto at = std::find_if(history.rbegin(), history.rend(),
                                 [&](const auto& entry) { return entry.second == copy; });
    ASSERT_NE(at, history.rend()) << "no copy at " << time.elapsed() << " ms";
    // Until the next edit after it the copy was not behind at all.
    const qint64 since = at == history.rbegin() ? time.elapsed() : std::prev(at)->first;
    EXPECT_LE(time.elapsed() - since, kBehindAtMostMs);
  }
}

TEST_F(FilesRecovery, whatIsHeldOrBeingTypedIsKept) {
  openDemo();
  document().beginGesture(QStringLiteral("slide"));
  edit(13.7);
  EXPECT_TRUE(QTest::qWaitFor([&] { return copied() == document().design(); }, kBehindAtMostMs));
  document().cancelGesture();
  EXPECT_TRUE(
      QTest::qWaitFor([&] { return !QFile::exists(window_->recovery().file()); }, kBehindAtMostMs))
      << "given up: there is nothing to keep";
  QTest::mouseClick(named<QWidget>(QStringLiteral("Notes")), Qt::LeftButton); // the heading
  auto* notes = named<QPlainTextEdit>(QStringLiteral("Notes"));
  ASSERT_TRUE(notes);
  notes->setFocus();
  QTest::keyClicks(notes, QStringLiteral("four balls"));
  EXPECT_TRUE(QTest::qWaitFor(
      [&] { return copied().notes.find("four balls") != std::string::npos; }, kBehindAtMostMs));
}

TEST_F(FilesRecovery, eachOfSeveralIsOffered) {
  openDemo();
  AppPaths there = paths();
  there.recovery = file("left");
  for (const char* name : {"one", "two", "three"})
    leave(there.recovery, QString::fromLatin1(name), 11);
  MainWindow next(there, builtinPhrases());
  int asked = 0;
  FileKeeper::Asking asking;
  asking.aboutUnsaved = [&](const QString&) { return ++asked, FileKeeper::Answer::Discard; };
  asking.mayThrowAway = [&](const QString&) { return ++asked, asked > 1; };
  next.files().setAsking(asking);
  next.show();
  next.offerRecovered();
  const auto left = [&] {
    return QDir(there.recovery)
        .entryList(
            {QStringLiteral("one.scye"), QStringLiteral("two.scye"), QStringLiteral("three.scye")});
  };
  ASSERT_TRUE(next.banner().isVisible());
  EXPECT_TRUE(next.banner().text().contains(QStringLiteral("2 more")))
      << next.banner().text().toStdString();
  press(next, "Throw it away");
  EXPECT_EQ(asked, 1);
  EXPECT_EQ(left().size(), 3) << "she was asked, and kept it";
  press(next, "Throw it away");
  EXPECT_EQ(left().size(), 2);
  press(next, "Open the copy");
  EXPECT_TRUE(next.document().isModified());
  EXPECT_EQ(left().size(), 1);
  ASSERT_TRUE(next.banner().isVisible()) << "the last one is still offered";
  // Another one opened in between does not make it forgotten.
  next.openStyle(demoFile());
  ASSERT_TRUE(next.banner().isVisible());
  press(next, "Later");
  next.openStyle(demoFile());
  EXPECT_FALSE(next.banner().isVisible());
  EXPECT_EQ(left().size(), 1);
}

TEST_F(FilesRecovery, openingACopyNeverDiscardsUnsavedWork) {
  openDemo();
  AppPaths there = paths();
  there.recovery = file("left");
  leave(there.recovery, QStringLiteral("one"), 11);
  MainWindow next(there, builtinPhrases());
  FileKeeper::Asking asking;
  asking.aboutUnsaved = [](const QString&) { return FileKeeper::Answer::Stay; };
  next.files().setAsking(asking);
  next.show();
  next.openStyle(demoFile());
  next.document().edit(QStringLiteral("change"),
                       Design(next.document().design()).set(Field::EaseBust, 9.9));
  const Design mine = next.document().design();
  next.offerRecovered();
  press(next, "Open the copy");
  EXPECT_EQ(next.document().design(), mine);
  EXPECT_TRUE(QFile::exists(file("left/one.scye"))) << "and the copy stays, and is offered";
  EXPECT_TRUE(next.banner().isVisible());
}

// A crash between opening the copy and saving it must find it again.
TEST_F(FilesRecovery, anOpenedCopyIsKeptUntilItIsSaved) {
  openDemo();
  AppPaths there = paths();
  there.recovery = file("left");
  leave(there.recovery, QStringLiteral("one"), 11);
  MainWindow next(there, builtinPhrases());
  next.show();
  next.offerRecovered();
  press(next, "Open the copy");
  EXPECT_EQ(std::get<Design>(readDesign(next.recovery().file(), builtinPhrases())),
            next.document().design());
}

TEST_F(FilesRecovery, aCopyOfAFileThatHasChangedSinceAsksBeforeItIsSaved) {
  openDemo();
  edit(12.3);
  ASSERT_TRUE(window_->recovery().writeNow());
  ASSERT_TRUE(QDir().mkpath(file("left")));
  const QString copy = window_->recovery().file();
  ASSERT_TRUE(QFile::copy(copy, file("left/one.scye")));
  ASSERT_TRUE(QFile::copy(copy + QStringLiteral(".original"), file("left/one.scye.original")));
  AppPaths there = paths();
  there.recovery = file("left");
  MainWindow next(there, builtinPhrases());
  int asked = 0;
  FileKeeper::Asking asking;
  asking.aboutConflict = [&](const QString&) { return ++asked, FileKeeper::Conflict::Stay; };
  next.files().setAsking(asking);
  next.show();
  next.offerRecovered();
  press(next, "Open the copy");
  EXPECT_EQ(next.document().path(), file("demo.scye"));
  ASSERT_EQ(writeDesign(file("demo.scye"), Design().set(Field::Bust, 101), builtinPhrases()),
            std::nullopt);
  EXPECT_FALSE(next.files().save());
  EXPECT_EQ(asked, 1);
  EXPECT_EQ(std::get<Design>(readDesign(file("demo.scye"), builtinPhrases())).given(Field::Bust),
            101);
}

} // namespace
} // namespace scye::test
