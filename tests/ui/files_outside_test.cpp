// The open file changed by another program, or by a second window.
#include "window_fixture.h"

#include "document/design_store.h"
#include "shell/banner.h"

#include <QAction>
#include <QApplication>
#include <QPushButton>
#include <QTest>

#include <cstdio>

namespace scye::test {
namespace {

class FilesOutside : public WindowFixture {
protected:
  FilesOutside() {
    FileKeeper::Asking asking;
    asking.whereToSave = [this](const QString&) { return file("kept.scye"); };
    asking.aboutUnsaved = [](const QString&) { return FileKeeper::Answer::Discard; };
    asking.aboutConflict = [this](const QString&) { return ++asked_, answer_; };
    window_->files().setAsking(asking);
    openDemo();
  }
  [[nodiscard]] static Design other() {
    Design design;
    design.title = "Of another";
    return design.set(Field::Bust, 101);
  }
  // The way many programs save: a new file takes the place of the old one.
  void replaceOutside(const Design& design) {
    ASSERT_EQ(writeDesign(file("elsewhere"), design, builtinPhrases()), std::nullopt);
    ASSERT_EQ(std::rename(qPrintable(file("elsewhere")), qPrintable(file("demo.scye"))), 0);
  }
  void change() {
    document().edit(QStringLiteral("change"),
                    Design(document().design()).set(Field::EaseBust, 12.3));
    settle();
  }
  [[nodiscard]] bool said(const char* words) {
    return QTest::qWaitFor([&] {
      return window_->banner().isVisible() &&
             window_->banner().text().contains(QLatin1String(words));
    });
  }
  void press(const char* text) {
    for (QPushButton* b : window_->banner().findChildren<QPushButton*>())
      if (b->text() == QString::fromUtf8(text) && b->isVisible())
        return QTest::mouseClick(b, Qt::LeftButton);
    ADD_FAILURE() << "nothing offers: " << text;
  }
  [[nodiscard]] Design onDisk(const char* name = "demo.scye") {
    const auto read = readDesign(file(name), builtinPhrases());
    const auto* design = std::get_if<Design>(&read);
    return design ? *design : Design();
  }

  FileKeeper::Conflict answer_ = FileKeeper::Conflict::Stay;
  int asked_ = 0;
};

TEST_F(FilesOutside, savingComparesAndAsks) {
  change();
  replaceOutside(other());
  EXPECT_FALSE(window_->files().save());
  EXPECT_EQ(asked_, 1);
  EXPECT_EQ(onDisk(), other());
  EXPECT_TRUE(document().isModified());

  answer_ = FileKeeper::Conflict::OtherName;
  EXPECT_TRUE(window_->files().save());
  EXPECT_EQ(onDisk(), other());
  EXPECT_EQ(onDisk("kept.scye"), document().design());
  EXPECT_EQ(document().path(), file("kept.scye"));
}

TEST_F(FilesOutside, writingOverItIsAnAnswer) {
  change();
  replaceOutside(other());
  answer_ = FileKeeper::Conflict::KeepMine;
  EXPECT_TRUE(window_->files().save());
  EXPECT_EQ(onDisk(), document().design());
  EXPECT_TRUE(window_->files().save()) << "and asked no more";
  EXPECT_EQ(asked_, 1);
}

TEST_F(FilesOutside, theSameContentIsNoChange) {
  change();
  const QByteArray before = contents(file("demo.scye"));
  QFile::remove(file("demo.scye"));
  QFile f(file("demo.scye"));
  ASSERT_TRUE(f.open(QIODevice::WriteOnly));
  f.write(before);
  f.close();
  EXPECT_TRUE(window_->files().save());
  EXPECT_EQ(asked_, 0);
}

TEST_F(FilesOutside, aChangeIsSaidAtOnceAndTheOtherCanBeRead) {
  change();
  const Design mine = document().design();
  replaceOutside(other());
  ASSERT_TRUE(said("has changed on the disk"));
  EXPECT_EQ(document().design(), mine) << "nothing happens by itself";
  press("Read the file");
  settle();
  EXPECT_EQ(document().design(), other());
  EXPECT_FALSE(document().isModified());
  window_->actions().undo->trigger();
  EXPECT_EQ(document().design(), mine) << "nothing is lost by it";
  EXPECT_TRUE(document().isModified());
}

TEST_F(FilesOutside, aChangeUnderAnUntouchedDesignIsSaidToo) {
  ASSERT_FALSE(document().isModified());
  replaceOutside(other());
  ASSERT_TRUE(said("has changed on the disk"));
  EXPECT_TRUE(document().isModified()) << "what is here stands nowhere else now";
  press("Keep mine");
  EXPECT_TRUE(window_->files().save());
  EXPECT_EQ(asked_, 0) << "she has said so";
  EXPECT_EQ(onDisk(), document().design());
}

TEST_F(FilesOutside, everyReplacementIsSeen) {
  for (int i = 0; i < 3; ++i) {
    Design next = other();
    next.set(Field::Bust, 100 + i);
    window_->banner().dismiss();
    replaceOutside(next);
    EXPECT_TRUE(said("has changed on the disk")) << i;
  }
}

TEST_F(FilesOutside, aFileThatIsGoneIsSaidAndCanBeWrittenAgain) {
  ASSERT_TRUE(QFile::rename(file("demo.scye"), file("moved.scye")));
  ASSERT_TRUE(said("is no longer there"));
  EXPECT_TRUE(document().isModified());
  press("Save it again");
  EXPECT_EQ(onDisk(), document().design());
  EXPECT_FALSE(document().isModified());
}

TEST_F(FilesOutside, aSecondWindowIsAnotherProgram) {
  MainWindow second(paths(), builtinPhrases());
  second.openFile(file("demo.scye"));
  second.document().edit(QStringLiteral("change"), other());
  ASSERT_TRUE(second.files().save());
  change();
  EXPECT_FALSE(window_->files().save());
  EXPECT_EQ(asked_, 1);
  EXPECT_EQ(onDisk(), other());
}

TEST_F(FilesOutside, ourOwnSavesAreNotChanges) {
  for (int i = 0; i < 3; ++i) {
    document().edit(QStringLiteral("change"),
                    Design(document().design()).set(Field::EaseBust, 12 + 0.1 * i));
    ASSERT_TRUE(window_->files().save());
    QTest::qWait(250);
    EXPECT_FALSE(window_->banner().isVisible()) << window_->banner().text().toStdString();
  }
}

} // namespace
} // namespace scye::test
