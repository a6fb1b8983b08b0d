// A window on the page to knit by that works row after row, until it is killed: FILE.scye. Each row
// is told on stdout as soon as it is worked.
#include "knitting/needle_page.h"
#include "shell/knit_pages.h"
#include "shell/main_window.h"
#include "shell/start_up.h"
#include "shell/work_area.h"
#include "shell/workbench.h"

#include <QApplication>
#include <QTemporaryDir>
#include <QTest>

#include <cstdio>

namespace {
constexpr int kRowMs = 250; // nobody is quicker
}

int main(int argc, char** argv) {
  using namespace scye;
  QApplication app(argc, argv);
  startUp(app);
  if (argc < 2) return 2;
  const QTemporaryDir own;
  MainWindow window(
      {own.filePath(QStringLiteral("settings.json")), own.filePath(QStringLiteral("window.json")),
       own.filePath(QStringLiteral("recovery")), own.filePath(QStringLiteral("wearers"))},
      builtinPhrases());
  window.resize(800, 600);
  window.show();
  window.openFile(QString::fromLocal8Bit(argv[1]));
  NeedlePage* page = window.workbench().pages().needles;
  window.workbench().area().showPage(page);
  for (;;) {
    QTest::qWait(kRowMs);
    QTest::keyClick(page, Qt::Key_PageDown);
    const PieceWork* back = window.document().work().find(PieceId::Back);
    std::printf("%d\n", back ? back->worked : 0);
    std::fflush(stdout);
  }
}
