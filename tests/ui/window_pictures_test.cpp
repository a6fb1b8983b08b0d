// The window as it looks at the sizes people have, light and dark. Nothing that is read may be
// cut off. With SCYE_PICTURES=folder the pictures are kept, for the handbook and for looking at
// them.
#include "window_fixture.h"

#include "fit/fit_panel.h"
#include "library/style_gallery.h"
#include "look/quiet_button.h"
#include "panels/field_row.h"
#include "shell/start_page.h"
#include "values/field_box.h"
#include "values/value_slider.h"

#include <QApplication>
#include <QLabel>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

namespace scye::test {
namespace {

QPalette darkPalette() {
  QPalette p;
  const QColor window(0x24, 0x26, 0x29), base(0x1b, 0x1c, 0x1e), text(0xe6, 0xe6, 0xe6);
  p.setColor(QPalette::Window, window);
  p.setColor(QPalette::WindowText, text);
  p.setColor(QPalette::Base, base);
  p.setColor(QPalette::AlternateBase, window);
  p.setColor(QPalette::ToolTipBase, window);
  p.setColor(QPalette::ToolTipText, text);
  p.setColor(QPalette::Text, text);
  p.setColor(QPalette::Button, QColor(0x33, 0x36, 0x3a));
  p.setColor(QPalette::ButtonText, text);
  p.setColor(QPalette::PlaceholderText, QColor(0xa2, 0xa4, 0xa8));
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    p.setColor(QPalette::Disabled, role, QColor(0x77, 0x79, 0x7d));
  return p;
}

class WindowPictures : public WindowFixture {
protected:
  void TearDown() override { QApplication::setPalette(QPalette()); }

  void keep(const char* name) { keep(name, *window_); }
  void keep(const char* name, MainWindow& window) {
    QApplication::processEvents();
    const QByteArray folder = qgetenv("SCYE_PICTURES");
    if (folder.isEmpty()) return;
    const QString path =
        QStringLiteral("%1/%2.png").arg(QString::fromLocal8Bit(folder), QLatin1String(name));
    EXPECT_TRUE(window.grab().save(path)) << path.toStdString();
  }

  // Their pictures are painted one by one after the page is shown.
  void waitForStyles() {
    const auto& gallery = *window_->startPage().findChild<StyleGallery*>();
    QApplication::processEvents();
    ASSERT_TRUE(QTest::qWaitFor([&] { return gallery.isPainted(); }));
  }

  // Texts of labels and buttons have room; figures too.
  void expectNothingCut() { expectNothingCut(*window_); }
  void expectNothingCut(const MainWindow& window) {
    for (const QLabel* label : window.findChildren<QLabel*>()) {
      if (!label->isVisible() || label->text().isEmpty() || label->wordWrap()) continue;
      EXPECT_GE(label->width(), label->sizeHint().width()) << label->text().toStdString();
    }
    for (const QLabel* label : window.findChildren<QLabel*>()) {
      if (!label->isVisible() || !label->wordWrap() || label->text().isEmpty()) continue;
      EXPECT_GE(label->height(), label->heightForWidth(label->width()))
          << label->text().toStdString();
    }
    for (const QAbstractButton* button : window.findChildren<QAbstractButton*>()) {
      const auto* tool = qobject_cast<const QToolButton*>(button);
      if (!button->isVisible() || button->text().isEmpty() ||
          (tool && tool->toolButtonStyle() == Qt::ToolButtonIconOnly))
        continue;
      const int least = qobject_cast<const QuietButton*>(button) // may have a sign instead
                            ? button->minimumSizeHint().width()
                            : button->fontMetrics().horizontalAdvance(button->text());
      EXPECT_GE(button->width(), least) << button->text().toStdString();
    }
    for (const FieldBox* box : window.findChildren<FieldBox*>()) {
      if (!box->isVisible()) continue;
      EXPECT_GE(box->width(), box->sizeHint().width()) << box->accessibleName().toStdString();
    }
  }
};

TEST_F(WindowPictures, startPage) {
  const struct {
    QSize size;
    const char *light, *dark;
  } views[] = {{{1000, 700}, "start-1000", "start-1000-dark"},
               {{1280, 800}, "start-1280", "start-1280-dark"},
               {{1920, 1080}, "start-1920", "start-1920-dark"}};
  for (const auto& view : views) {
    window_->resize(view.size);
    waitForStyles();
    keep(view.light);
    expectNothingCut();
    QApplication::setPalette(darkPalette());
    waitForStyles();
    keep(view.dark);
    QApplication::setPalette(QPalette());
  }
}

TEST_F(WindowPictures, jacketAt1280) {
  openDemo();
  keep("jacket-1280");
  expectNothingCut();
  QApplication::setPalette(darkPalette());
  keep("jacket-1280-dark");
}

TEST_F(WindowPictures, jacketAt1920) {
  window_->resize(1920, 1080);
  openDemo();
  window_->workbench().panel().focusField(Field::Bust, true);
  settle();
  keep("jacket-1920");
  expectNothingCut();
  QApplication::setPalette(darkPalette());
  keep("jacket-1920-dark");
}

TEST_F(WindowPictures, whileASliderIsDragged) {
  openDemo();
  window_->workbench().panel().focusField(Field::EaseBust, false);
  settle();
  auto* slider = named<ValueSlider>(QStringLiteral("Bust ease, slider"));
  QTest::mousePress(slider, Qt::LeftButton, {}, QPoint(slider->width() / 2, slider->height() / 2));
  QTest::mouseMove(slider, QPoint(slider->width() * 4 / 5, slider->height() / 2));
  settle();
  keep("drag-1280");
  expectNothingCut();
  QTest::mouseRelease(slider, Qt::LeftButton, {},
                      QPoint(slider->width() * 4 / 5, slider->height() / 2));
}

TEST_F(WindowPictures, messagesAndExport) {
  openDemo();
  QFile broken(file("broken.scye"));
  ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
  broken.write("{\"format\": \"scyewright-design\",\n\"version\": 99}\n");
  broken.close();
  window_->openFile(broken.fileName());
  window_->actions().exportSchematic.at(FileFormat::Png)->trigger();
  window_->workbench().panel().focusField(Field::Bust, false);
  auto* bust = named<FieldBox>(QStringLiteral("Bust"));
  QTest::keyClicks(bust, QStringLiteral("900"));
  QTest::keyClick(bust, Qt::Key_Return);
  settle();
  keep("messages-1280");
  expectNothingCut();
}

TEST_F(WindowPictures, largerLetters) {
  const QFont before = QApplication::font();
  QFont large = before;
  large.setPointSize(13);
  QApplication::setFont(large);
  {
    MainWindow other(paths(), builtinPhrases());
    other.resize(1600, 1000);
    other.show();
    other.openFile(demoFile());
    keep("large-1600", other);
    expectNothingCut(other);
  }
  QApplication::setFont(before);
}

TEST_F(WindowPictures, aSleeveThatCannotFit) {
  openDemo();
  Design design = document().design();
  design.set(Field::EaseUpperArm, 32)
      .set(Field::FrontNeckDrop, 3)
      .choose(Choice::Washed, int(YesNo::No));
  document().edit(QStringLiteral("a very wide sleeve"), design);
  settle();
  keep("findings-1280");
  expectNothingCut();
  window_->settings().setUnit(LengthUnit::Inch);
  settle();
  keep("findings-1280-inches");
  expectNothingCut();
}

} // namespace
} // namespace scye::test
