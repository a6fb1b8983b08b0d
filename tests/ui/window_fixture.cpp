#include "window_fixture.h"

#include "panels/edit_panel.h"

#include <QApplication>
#include <QEventLoop>
#include <QFile>
#include <QSignalSpy>
#include <QTest>

namespace scye::test {

WindowFixture::WindowFixture(const Phrases& phrases)
    : window_(std::make_unique<MainWindow>(paths(), phrases)) {
  window_->files().setAsking({[] { return QString(); }, [](const QString&) { return QString(); },
                              [](const QString&) { return FileKeeper::Answer::Discard; }});
  window_->setWindowState(Qt::WindowNoState); // the screen may be a small one
  // What is in view is the present design's, however busy the machine.
  document().setPatience(std::chrono::minutes(1));
  window_->resize(1280, 800);
  window_->show();
  window_->activateWindow();
  EXPECT_TRUE(QTest::qWaitForWindowActive(window_.get()));
  // A platform that has filled its screen with the window says so only now.
  QApplication::processEvents();
  window_->resize(1280, 800);
  QApplication::processEvents();
}

WindowFixture::~WindowFixture() = default;

AppPaths WindowFixture::paths() const {
  return {folder_.filePath(QStringLiteral("settings.json")),
          folder_.filePath(QStringLiteral("window.json")),
          folder_.filePath(QStringLiteral("recovery")),
          folder_.filePath(QStringLiteral("wearers"))};
}

void WindowFixture::openDemo() {
  const QString copy = file("demo.scye");
  ASSERT_TRUE(QFile::exists(copy) || QFile::copy(demoFile(), copy));
  QFile(copy).setPermissions(QFile::ReadOwner | QFile::WriteOwner);
  window_->openFile(copy);
  settle();
  EXPECT_TRUE(QTest::qWaitFor([this] { return window_->workbench().panel().isWhole(); }));
}

void WindowFixture::settle() {
  QApplication::processEvents();
  QSignalSpy drawn(&document(), &Document::changed);
  // While a slider is held, remedies wait until it is let go.
  while (document().isStale())
    ASSERT_TRUE(drawn.wait());
  QApplication::processEvents();
}

bool WindowFixture::isMade(ExportQueue& exports) {
  bool made = false;
  QEventLoop loop;
  QObject::connect(&exports, &ExportQueue::made, &loop, [&] {
    made = true;
    loop.quit();
  });
  QObject::connect(&exports, &ExportQueue::failed, &loop, &QEventLoop::quit);
  QObject::connect(&exports, &ExportQueue::cancelled, &loop, &QEventLoop::quit);
  if (!exports.isIdle()) loop.exec();
  return made;
}

QString demoFile() {
  return QStringLiteral(SCYE_RESOURCES "/demos/jacket.scye");
}

QByteArray contents(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

} // namespace scye::test
