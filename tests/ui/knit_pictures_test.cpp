// The pages as they look at the sizes people have, light and dark. With SCYE_PICTURES=folder the
// pictures are kept, for looking at them.
#include "window_fixture.h"

#include "knitting/chart_view.h"
#include "knitting/lines_view.h"
#include "shell/knit_pages.h"

#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QTest>

namespace scye::test {
namespace {

class KnitPictures : public WindowFixture, public testing::WithParamInterface<QSize> {
protected:
  void SetUp() override {
    window_->resize(GetParam());
    openDemo();
  }
  void TearDown() override { QApplication::setPalette(QPalette()); }

  void keep(const char* name) {
    QApplication::processEvents();
    expectNothingCut();
    const QByteArray folder = qgetenv("SCYE_PICTURES");
    if (folder.isEmpty()) return;
    const QString path = QStringLiteral("%1/%2-%3.png")
                             .arg(QString::fromLocal8Bit(folder), QLatin1String(name))
                             .arg(GetParam().width());
    EXPECT_TRUE(window_->grab().save(path)) << path.toStdString();
  }
  void expectNothingCut() {
    for (const QLabel* label : window_->findChildren<QLabel*>()) {
      if (!label->isVisible() || label->text().isEmpty() || label->wordWrap()) continue;
      EXPECT_GE(label->width(), label->sizeHint().width()) << label->text().toStdString();
    }
  }
  void useDark() {
    QPalette p;
    p.setColor(QPalette::Window, QColor(0x24, 0x26, 0x29));
    p.setColor(QPalette::Base, QColor(0x1b, 0x1c, 0x1e));
    p.setColor(QPalette::Button, QColor(0x33, 0x36, 0x3a));
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
      p.setColor(role, QColor(0xe6, 0xe6, 0xe6));
    p.setColor(QPalette::PlaceholderText, QColor(0xa2, 0xa4, 0xa8));
    QApplication::setPalette(p);
  }
};

TEST_P(KnitPictures, allPages) {
  LinesView& lines = window_->workbench().pages().directions->lines();
  window_->actions().directions->trigger();
  window_->actions().wholeStitches->trigger();
  lines.setFocus();
  for (int i = 0; i < 9; ++i)
    QTest::keyClick(&lines, Qt::Key_Down);
  keep("directions");
  window_->actions().chart->trigger();
  ChartView& chart = window_->workbench().pages().chart->view();
  for (int i = 0; i < 5; ++i)
    QTest::keyClick(&chart, Qt::Key_Up);
  keep("chart");
  window_->actions().sizes->trigger();
  keep("sizes");
  window_->actions().enlarge->trigger();
  keep("sizes-alone");
  window_->actions().chart->trigger();
  keep("chart-alone");
  QTest::keyClick(&chart, Qt::Key_F);
  keep("chart-alone-whole");
  window_->actions().directions->trigger();
  keep("directions-alone");
  useDark();
  keep("directions-alone-dark");
  window_->actions().enlarge->trigger();
  keep("directions-dark");
  window_->actions().chart->trigger();
  keep("chart-dark");
  window_->actions().sizes->trigger();
  keep("sizes-dark");
}

INSTANTIATE_TEST_SUITE_P(Sizes, KnitPictures, testing::Values(QSize(1280, 800), QSize(1920, 1080)));

} // namespace
} // namespace scye::test
