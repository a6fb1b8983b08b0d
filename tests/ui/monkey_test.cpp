// Somebody who does anything at all with the window: seeded actions by mouse and keyboard on
// whatever is in view. Nothing breaks; and undone to the bottom the design is the first, redone to
// the top the last. SCYE_MONKEY_ACTIONS sets how many actions.
#include "event_clock.h"
#include "window_fixture.h"

#include "fit/finding_card.h"

#include <QAbstractButton>
#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QTabBar>
#include <QTest>
#include <QTimer>
#include <QToolButton>

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <random>

namespace scye::test {
namespace {

constexpr int kActions = 120; // in a normal run
constexpr int kBack = 40;     // so often back to the drafting, where most can be changed
// ms of the window's own work at one event; half of it is aimed at, here a machine may be slower,
// and sanitizers are.
#if defined(__SANITIZE_ADDRESS__)
constexpr double kAtOneEvent = 2000;
#else
constexpr double kAtOneEvent = 100;
#endif

class Monkey : public WindowFixture {
protected:
  void SetUp() override {
    openDemo();
    first_ = document().design();
    // Whatever opens a window of its own is closed again.
    connect_ = QObject::connect(&closer_, &QTimer::timeout, [] {
      if (QWidget* popup = QApplication::activePopupWidget()) popup->close();
      if (QWidget* modal = QApplication::activeModalWidget()) modal->close();
    });
    closer_.start(20);
  }

  int below(int n) { return std::uniform_int_distribution<int>(0, n - 1)(engine_); }
  bool oneIn(int n) { return below(n) == 0; }

  // What leads away from the design, to files, or out of the program.
  [[nodiscard]] bool leavesTheDesign(const QAction* action) {
    const Actions& a = window_->actions();
    for (const auto& [output, exports] : a.exports)
      if (action == exports) return true;
    const QAction* all[] = {a.newDesign, a.newFromStyle,    a.open,       a.save, a.saveAs, a.quit,
                            a.print,     a.printDirections, a.printChart, a.undo, a.redo};
    return std::find(std::begin(all), std::end(all), action) != std::end(all);
  }

  template <class Widget>
  Widget* any() {
    QList<Widget*> seen;
    for (Widget* w : window_->findChildren<Widget*>())
      if (w->isVisible() && w->isEnabled() && !w->visibleRegion().isEmpty()) seen.append(w);
    return seen.isEmpty() ? nullptr : seen[below(int(seen.size()))];
  }
  QPoint anywhere(const QWidget* w) {
    return {below(std::max(1, w->width())), below(std::max(1, w->height()))};
  }

  void drag(QWidget* w) {
    QTest::mousePress(w, Qt::LeftButton, {}, anywhere(w));
    for (int i = below(6); i > 0; --i) {
      QTest::mouseMove(w, anywhere(w));
      if (oneIn(2)) QApplication::processEvents();
    }
    if (oneIn(5)) QTest::keyClick(w, Qt::Key_Escape);
    if (oneIn(9)) document().undo(); // in the middle of it
    QTest::mouseRelease(w, Qt::LeftButton, {}, anywhere(w));
  }

  void type(QWidget* box) {
    static const char* const kTexts[] = {"",   "0",   "-5",  "12",  "31.5",   "48",
                                         "96", "120", "1e9", "nan", "12 1/2", "abc"};
    box->setFocus();
    QTest::keyClick(box, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(box, QString::fromUtf8(kTexts[below(int(std::size(kTexts)))]));
    static constexpr Qt::Key kEnds[] = {Qt::Key_Return, Qt::Key_Tab, Qt::Key_Escape, Qt::Key_Up};
    QTest::keyClick(box, kEnds[below(int(std::size(kEnds)))]);
  }

  void press(QAbstractButton* button) {
    auto* tool = qobject_cast<QToolButton*>(button);
    if (tool && (tool->menu() || leavesTheDesign(tool->defaultAction()))) return;
    // An export's button asks for a file's name.
    if (button->text().contains(QStringLiteral("Export"))) return;
    QTest::mouseClick(button, Qt::LeftButton);
  }

  void act() {
    switch (below(13)) {
    case 0:
    case 1:
      if (auto* w = any<QAbstractSlider>()) drag(w);
      break;
    case 2:
    case 3:
      if (auto* w = any<QAbstractSpinBox>()) type(w);
      break;
    case 4:
      if (auto* w = any<QComboBox>()) {
        w->setFocus();
        QTest::keyClick(w, oneIn(2) ? Qt::Key_Down : Qt::Key_Up);
      }
      break;
    case 5:
      if (auto* w = any<QAbstractButton>()) press(w);
      break;
    case 6:
      if (auto* card = any<FindingCard>())
        if (auto* remedy = card->findChild<QPushButton*>(); remedy && remedy->isEnabled())
          QTest::mouseClick(remedy, Qt::LeftButton);
      break;
    case 7:
      oneIn(3) ? document().redo() : document().undo();
      break;
    case 8:
      drag(&table());
      break;
    case 9:
      if (auto* w = any<QTabBar>()) w->setCurrentIndex(below(std::max(1, w->count())));
      break;
    case 10: {
      const QList<QAction*> actions = window_->findChildren<QAction*>();
      QAction* action = actions[below(int(actions.size()))];
      const bool exportsPicture = action->text().contains(QStringLiteral("port"));
      if (!action->menu() && !action->isSeparator() && action->isEnabled() &&
          !leavesTheDesign(action) && !exportsPicture && action->parent() == window_.get())
        action->trigger();
      break;
    }
    case 11:
      window_->resize(800 + below(800), 560 + below(500));
      break;
    default:
      if (QWidget* w = QApplication::focusWidget()) {
        static constexpr Qt::Key kKeys[] = {Qt::Key_Tab,  Qt::Key_Up,     Qt::Key_Down,
                                            Qt::Key_Left, Qt::Key_PageUp, Qt::Key_Escape};
        QTest::keyClick(w, kKeys[below(int(std::size(kKeys)))]);
      }
    }
    QApplication::processEvents();
  }

  std::mt19937_64 engine_;
  Design first_;
  QTimer closer_;
  QMetaObject::Connection connect_;
};

TEST_F(Monkey, undoesEverythingAndRedoesIt) {
  const char* wanted = std::getenv("SCYE_TEST_SEED");
  const std::uint64_t seed = wanted ? std::strtoull(wanted, nullptr, 10) : 2026;
  std::cout << "seed " << seed << '\n';
  engine_.seed(seed);
  const int actions = qEnvironmentVariableIntValue("SCYE_MONKEY_ACTIONS");
  int replaced = 0;
  QObject::connect(&document(), &Document::changed, window_.get(),
                   [&](const Document::Event& event) { replaced += event.replaced && event.file; });
  EventClock::instance().forget();
  for (int i = 0; i < (actions > 0 ? actions : kActions); ++i) {
    SCOPED_TRACE("action " + std::to_string(i));
    if (i % kBack == 0) window_->actions().drafting->trigger();
    act();
    ASSERT_EQ(replaced, 0) << "it has left the design";
  }
  const EventClock::Longest longest = EventClock::instance().longest();
  std::cout << "at one event at most " << longest.ms << " ms: " << longest.what.toStdString()
            << '\n';
  EXPECT_LT(longest.ms, kAtOneEvent) << longest.what.toStdString();
  document().endGesture();
  settle();
  EXPECT_EQ(document().derived().draft.design, document().design());
  std::cout << document().history().count() << " steps to undo\n";
  EXPECT_GT(document().history().count(), 3);
  while (document().history().canRedo())
    document().redo();
  const Design last = document().design();
  while (document().history().canUndo())
    document().undo();
  EXPECT_EQ(document().design(), first_);
  while (document().history().canRedo())
    document().redo();
  EXPECT_EQ(document().design(), last);
  settle();
  EXPECT_EQ(document().derived().draft.design, last);
}

} // namespace
} // namespace scye::test
