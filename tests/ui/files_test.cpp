// New, open, save; what is refused and what is kept.
#include "window_fixture.h"

#include "document/design_store.h"
#include "shell/banner.h"
#include "shell/start_page.h"
#include "values/field_box.h"

#include <QAction>
#include <QApplication>
#include <QDir>
#include <QPushButton>
#include <QTest>

namespace scye::test {
namespace {

class Files : public WindowFixture {
protected:
  void write(const QString& path, const QByteArray& text) {
    QFile f(path);
    ASSERT_TRUE(f.open(QIODevice::WriteOnly));
    f.write(text);
  }
  QPushButton* drawButton() {
    for (QPushButton* b : window_->startPage().findChildren<QPushButton*>())
      if (b->text() == QStringLiteral("Draw it")) return b;
    return nullptr;
  }
  void change() {
    document().edit(QStringLiteral("change"),
                    Design(document().design()).set(Field::EaseBust, 12.3));
    settle();
  }
};

TEST_F(Files, aNewDesignNeedsThreeAnswersAndIsDrawnAtOnce) {
  const struct {
    const char* name;
    const char* text;
  } answers[] = {{"Bust", "92"}, {"Upper arm", "29"}, {"Gauge", "22"}};
  for (const auto& a : answers) {
    auto* box = named<FieldBox>(QString::fromLatin1(a.name), &window_->startPage());
    ASSERT_TRUE(box);
    EXPECT_TRUE(box->hasFocus()) << a.name;
    QTest::keyClicks(box, QString::fromLatin1(a.text));
    QTest::keyClick(box, Qt::Key_Return);
  }
  settle();
  EXPECT_TRUE(table().isVisible());
  EXPECT_EQ(document().design().given(Field::Bust), 92);
  EXPECT_EQ(document().design().given(Field::UpperArm), 29);
  EXPECT_EQ(document().derived().draft.sizes.origin(Field::Waist), Origin::Estimate);
  EXPECT_EQ(table().picture().groups.size(), document().derived().draft.pieces.size());
  EXPECT_TRUE(document().isModified());
}

TEST_F(Files, theTitleNamesTheDesignAtOnceAndWhetherItIsSaved) {
  EXPECT_EQ(window_->windowTitle(), QStringLiteral("Scyewright"));
  openDemo();
  EXPECT_EQ(window_->windowTitle(), QStringLiteral("demo[*] — Scyewright"));
  EXPECT_FALSE(window_->isWindowModified());
  change();
  EXPECT_TRUE(window_->isWindowModified());
  window_->actions().newDesign->trigger();
  EXPECT_EQ(window_->windowTitle(), QStringLiteral("Scyewright"));
  window_->openStyle(demoFile());
  EXPECT_EQ(
      window_->windowTitle(),
      QStringLiteral("%1[*] — Scyewright").arg(QString::fromStdString(document().design().title)));
}

TEST_F(Files, whatWasSaidOfADesignGoesWithIt) {
  openDemo();
  window_->banner().say(Severity::Note, QStringLiteral("Exported."), file("a.pdf"));
  window_->actions().newDesign->trigger();
  EXPECT_FALSE(window_->banner().isVisible());
  window_->banner().say(Severity::Warning, QStringLiteral("On the start page"), {});
  window_->actions().newFromStyle->trigger();
  EXPECT_TRUE(window_->banner().isVisible()) << "the page is the same";
  window_->openStyle(demoFile());
  EXPECT_FALSE(window_->banner().isVisible());
}

TEST_F(Files, anAnswerThatIsMissingIsAskedForAgain) {
  auto* bust = named<FieldBox>(QStringLiteral("Bust"), &window_->startPage());
  QTest::keyClicks(bust, QStringLiteral("92"));
  QTest::mouseClick(drawButton(), Qt::LeftButton);
  EXPECT_TRUE(window_->startPage().isVisible());
  EXPECT_TRUE(named<FieldBox>(QStringLiteral("Upper arm"), &window_->startPage())->hasFocus());
}

TEST_F(Files, whatIsSavedIsReadBackEqual) {
  openDemo();
  change();
  EXPECT_TRUE(document().isModified());
  ASSERT_TRUE(window_->files().saveTo(file("a.scye")));
  EXPECT_FALSE(document().isModified());
  const Design saved = document().design();
  MainWindow other(paths(), builtinPhrases());
  other.openFile(file("a.scye"));
  EXPECT_EQ(other.document().design(), saved);
  EXPECT_FALSE(other.document().isModified());
}

TEST_F(Files, undoingBackToTheSavedStateLeavesNothingToSave) {
  openDemo();
  ASSERT_TRUE(window_->files().saveTo(file("a.scye")));
  change();
  EXPECT_TRUE(document().isModified());
  window_->actions().undo->trigger();
  EXPECT_FALSE(document().isModified());
}

TEST_F(Files, anUnreadableFileIsRefusedWithLineAndReasonAndLeftAsItIs) {
  openDemo();
  const Design before = document().design();
  const QByteArray broken =
      "{\"format\": \"scyewright-design\", \"version\": 1,\n \"title\": \"x\",\n oops";
  write(file("broken.scye"), broken);
  window_->openFile(file("broken.scye"));
  EXPECT_TRUE(window_->banner().isVisible());
  EXPECT_TRUE(window_->banner().text().contains(QStringLiteral("line 3")))
      << window_->banner().text().toStdString();
  EXPECT_EQ(document().design(), before);
  EXPECT_FALSE(window_->files().saveTo(file("broken.scye"))) << "never written over";
  EXPECT_EQ(contents(file("broken.scye")), broken);
}

TEST_F(Files, aPlaceThatCannotBeWrittenIsSaidAndTheDesignStaysUnsaved) {
  openDemo();
  change();
  EXPECT_FALSE(window_->files().saveTo(file("no/such/folder/a.scye")));
  EXPECT_TRUE(window_->banner().isVisible());
  EXPECT_TRUE(document().isModified());
}

TEST_F(Files, unsavedWorkIsAskedAboutOnceBeforeItIsLeft) {
  openDemo();
  change();
  int asked = 0;
  FileKeeper::Answer answer = FileKeeper::Answer::Stay;
  window_->files().setAsking({[] { return QString(); },
                              [this](const QString&) { return file("kept.scye"); },
                              [&](const QString&) { return ++asked, answer; }});
  const Design changed = document().design();
  EXPECT_FALSE(window_->close());
  EXPECT_EQ(asked, 1);
  EXPECT_EQ(document().design(), changed);
  answer = FileKeeper::Answer::Save;
  EXPECT_TRUE(window_->close());
  EXPECT_EQ(std::get<Design>(readDesign(file("demo.scye"), builtinPhrases())), changed);
}

TEST_F(Files, recentFilesAreKeptNewestFirstAndOnce) {
  openDemo();
  ASSERT_TRUE(window_->files().saveTo(file("a.scye")));
  ASSERT_TRUE(window_->files().saveTo(file("b.scye")));
  ASSERT_TRUE(window_->files().saveTo(file("a.scye")));
  const QStringList recent = window_->settings().recentFiles();
  EXPECT_EQ(recent.value(0), file("a.scye"));
  EXPECT_EQ(recent.value(1), file("b.scye"));
  EXPECT_EQ(recent.count(file("a.scye")), 1);
}

TEST_F(Files, aCopyOfUnsavedWorkIsOfferedAfterACrash) {
  openDemo();
  change();
  window_->recovery().writeNow();
  const QString copy = window_->recovery().file();
  ASSERT_TRUE(QFile::exists(copy));
  // As a program that ended badly leaves it: the copy without anybody who holds it.
  QDir().mkpath(file("elsewhere"));
  AppPaths elsewhere = paths();
  elsewhere.recovery = file("elsewhere");
  ASSERT_TRUE(QFile::copy(copy, file("elsewhere/left.scye")));
  MainWindow next(elsewhere, builtinPhrases());
  next.files().setAsking({{}, {}, [](const QString&) { return FileKeeper::Answer::Discard; }});
  next.show();
  next.offerRecovered();
  ASSERT_TRUE(next.banner().isVisible());
  QPushButton* open = nullptr;
  for (QPushButton* b : next.banner().findChildren<QPushButton*>())
    if (b->text() == QStringLiteral("Open the copy")) open = b;
  ASSERT_TRUE(open);
  QTest::mouseClick(open, Qt::LeftButton);
  EXPECT_EQ(next.document().design(), document().design());
  EXPECT_TRUE(next.document().isModified());
  EXPECT_FALSE(QFile::exists(file("elsewhere/left.scye")));
  EXPECT_FALSE(next.banner().isVisible()) << "there is no other";
}

TEST_F(Files, aSavedDesignLeavesNoCopyBehind) {
  openDemo();
  change();
  window_->recovery().writeNow();
  ASSERT_TRUE(window_->files().saveTo(file("a.scye")));
  window_->recovery().wait();
  EXPECT_FALSE(QFile::exists(window_->recovery().file()));
}

TEST_F(Files, theWindowComesBackAsItWasLeft) {
  openDemo();
  window_->resize(1111, 777);
  QApplication::processEvents();
  window_->close();
  MainWindow next(paths(), builtinPhrases());
  EXPECT_EQ(next.size(), QSize(1111, 777));
}

} // namespace
} // namespace scye::test
