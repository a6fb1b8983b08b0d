// A window with settings, recovery copies and files in a folder of its own, and hands to work it
// with.
#pragma once

#include "canvas/drawing_table.h"
#include "panels/edit_panel.h"
#include "shell/main_window.h"
#include "shell/workbench.h"

#include <QApplication>
#include <QMouseEvent>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace scye::test {

class WindowFixture : public testing::Test {
protected:
  explicit WindowFixture(const Phrases& phrases = builtinPhrases());
  ~WindowFixture() override;

  void openDemo(); // a copy of it, which may be written over
  // Waits until views have heard of the present state, by their signal, never by time.
  void settle();

  // Waits until the file that was asked for is there, or is not to be.
  [[nodiscard]] static bool isMade(ExportQueue& exports);

  [[nodiscard]] QString file(const char* name) const {
    return folder_.filePath(QString::fromLatin1(name));
  }
  [[nodiscard]] Document& document() { return window_->document(); }
  [[nodiscard]] DrawingTable& table() { return window_->workbench().table(); }
  [[nodiscard]] AppPaths paths() const;

  // Finds by accessible name, as a reader of the screen would; fails the test when it is not there.
  template <class Widget>
  [[nodiscard]] Widget* named(const QString& name, QWidget* in = nullptr) {
    for (Widget* w : (in ? in : window_.get())->template findChildren<Widget*>())
      if (w->accessibleName() == name && w->isVisible()) return w;
    ADD_FAILURE() << "nothing visible is called " << name.toStdString();
    return nullptr;
  }

  // Of a widget whose name goes on with what it answers.
  template <class Widget>
  [[nodiscard]] Widget* beginning(const QString& name) {
    for (Widget* w : window_->findChildren<Widget*>())
      if (w->accessibleName().startsWith(name) && w->isVisible()) return w;
    ADD_FAILURE() << "nothing visible begins " << name.toStdString();
    return nullptr;
  }

  // As the pointer does, also where the platform's screen is smaller than the window.
  static void pointAt(QWidget* widget, const QPoint& at) {
    QMouseEvent move(QEvent::MouseMove, at, widget->mapToGlobal(at), Qt::NoButton, Qt::NoButton,
                     Qt::NoModifier);
    QApplication::sendEvent(widget, &move);
  }

  QTemporaryDir folder_;
  std::unique_ptr<MainWindow> window_;
};

[[nodiscard]] QString demoFile();
[[nodiscard]] QByteArray contents(const QString& path);

} // namespace scye::test
