// A first sleeve, from the first start to a schematic on paper, on a real display: the mouse is
// moved and clicked by the display's own events (xdotool), figures are typed by its keys. Every
// click and every figure is an action; no more than kMostActions are allowed.
#include "shell/main_window.h"
#include "shell/start_up.h"
#include "shell/workbench.h"
#include "values/field_box.h"

#include <QAbstractButton>
#include <QApplication>
#include <QFileInfo>
#include <QLineEdit>
#include <QPrintDialog>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>
#include <QToolButton>

#include <cstdio>

namespace scye {
namespace {

constexpr int kMostActions = 14;
constexpr int kPatience = 10000; // ms; a test waits for what it sees, never for a time

class Hand {
public:
  [[nodiscard]] int actions() const { return actions_; }
  [[nodiscard]] bool click(const QWidget* widget) {
    if (!widget || !QTest::qWaitFor([widget] { return widget->isVisible(); }, kPatience))
      return false;
    const QPoint at = widget->mapToGlobal(widget->rect().center());
    ++actions_;
    return xdotool({QStringLiteral("mousemove"), QString::number(at.x()), QString::number(at.y()),
                    QStringLiteral("click"), QStringLiteral("1")});
  }
  [[nodiscard]] bool type(const QString& figure) {
    ++actions_;
    return xdotool(
        {QStringLiteral("type"), QStringLiteral("--delay"), QStringLiteral("30"), figure});
  }

private:
  static bool xdotool(const QStringList& arguments) {
    QProcess tool;
    tool.start(QStringLiteral("xdotool"), arguments);
    return tool.waitForStarted() &&
           QTest::qWaitFor([&] { return tool.state() == QProcess::NotRunning; }, kPatience) &&
           tool.exitCode() == 0;
  }
  int actions_ = 0;
};

template <class Widget>
Widget* named(const QString& name) {
  for (QWidget* top : QApplication::topLevelWidgets())
    for (Widget* w : top->findChildren<Widget*>())
      if (w->isVisible() && w->accessibleName() == name) return w;
  return nullptr;
}

int failed(const char* what) {
  std::fprintf(stderr, "first_sleeve: %s\n", what);
  return 1;
}

bool enter(Hand& hand, const QString& box, const QString& figure) {
  auto* field = named<FieldBox>(box);
  return hand.click(field) && QTest::qWaitFor([field] { return field->hasFocus(); }, kPatience) &&
         (field->selectAll(), hand.type(figure));
}

int run(MainWindow& window, const QString& paper) {
  Hand hand;
  // On the start page: what is asked there.
  for (const auto& [box, figure] :
       {std::pair("Bust", "92"), std::pair("Upper arm", "29"), std::pair("Gauge", "22")})
    if (!enter(hand, QString::fromLatin1(box), QString::fromLatin1(figure)))
      return failed("a question of the start page could not be answered");
  QAbstractButton* draw = nullptr;
  for (auto* button : window.findChildren<QAbstractButton*>())
    if (button->isVisible() && button->text() == QStringLiteral("Draw it")) draw = button;
  if (!hand.click(draw)) return failed("no button draws it");
  if (!QTest::qWaitFor([&] { return window.document().design().has(Field::Bust); }, kPatience))
    return failed("nothing was drawn");
  // The third measurement.
  if (!enter(hand, QStringLiteral("Armhole depth"), QStringLiteral("19")))
    return failed("the armhole depth could not be typed");
  // On paper: the printer's dialog is answered with its own button.
  QToolButton* print = nullptr;
  for (auto* button : window.findChildren<QToolButton*>())
    if (button->isVisible() && button->defaultAction() == window.actions().print) print = button;
  bool printed = false;
  QTimer answer;
  QObject::connect(&answer, &QTimer::timeout, [&] {
    auto* dialog = qobject_cast<QPrintDialog*>(QApplication::activeModalWidget());
    if (!dialog || printed) return;
    for (auto* edit : dialog->findChildren<QLineEdit*>())
      if (edit->isVisible() && edit->text().endsWith(QStringLiteral(".pdf"))) edit->setText(paper);
    for (auto* button : dialog->findChildren<QAbstractButton*>())
      if (button->isVisible() && button->text().remove(u'&') == QStringLiteral("Print"))
        printed = hand.click(button);
  });
  answer.start(200);
  if (!hand.click(print)) return failed("no button prints");
  if (!QTest::qWaitFor([&] { return printed && QFileInfo(paper).size() > 1000; }, 3 * kPatience))
    return failed("nothing was printed");
  const auto armhole = window.document().design().given(Field::ArmholeDepth);
  if (!armhole || *armhole != 19) return failed("the armhole depth was not taken");
  std::printf("first_sleeve: %d actions\n", hand.actions());
  return hand.actions() <= kMostActions ? 0 : failed("that was too long a way");
}

} // namespace
} // namespace scye

int main(int argc, char** argv) {
  QTemporaryDir home;
  qputenv("HOME", home.path().toLocal8Bit());
  QApplication app(argc, argv);
  scye::startUp(app);
  const auto in = [&](const char* name) { return home.filePath(QString::fromLatin1(name)); };
  scye::MainWindow window({in("settings.ini"), in("window.ini"), in("recovery"), in("wearers")},
                          scye::builtinPhrases());
  window.show();
  if (!QTest::qWaitForWindowActive(&window, 20000))
    return scye::failed("the window did not come up");
  return scye::run(window, in("schematic.pdf"));
}
