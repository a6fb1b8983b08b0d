#include "shell/appearance.h"

#include <QActionGroup>
#include <QApplication>
#include <QFont>
#include <QMenu>
#include <QPalette>
#include <QStyleFactory>

#include <cmath>
#include <utility>

namespace scye {
namespace {

struct AppearanceText {
  Q_DECLARE_TR_FUNCTIONS(Appearance)
};

// Plain greys; the accent is laid over them (start_up.cpp). Every text stands out from its ground
// by 4.5 to 1 or more.
QPalette paletteOf(Look look) {
  const bool dark = look == Look::Dark;
  const QColor window(dark ? 0x2a2c2f : 0xefefef), base(dark ? 0x1f2123 : 0xffffff),
      ink(dark ? 0xeeeeee : 0x141414), button(dark ? 0x35383c : 0xf2f2f2),
      off(dark ? 0x85898e : 0x8c8c8c);
  QPalette p(button, window);
  for (const QPalette::ColorRole role :
       {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::ToolTipText})
    p.setColor(role, ink);
  p.setColor(QPalette::Base, base);
  p.setColor(QPalette::AlternateBase, window);
  p.setColor(QPalette::Button, button);
  p.setColor(QPalette::ToolTipBase, dark ? QColor(0x3a3d41) : QColor(0xffffdc));
  for (const QPalette::ColorRole role :
       {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    p.setColor(QPalette::Disabled, role, off);
  return p;
}

} // namespace

Appearance::Appearance(Settings& settings, QObject* parent) : QObject(parent), settings_(settings) {
  connect(&settings_, &Settings::changed, this, &Appearance::apply);
  apply();
}

void Appearance::apply() {
  static const QFont desktops = QApplication::font(); // before anything of ours was laid on it
  QFont font = desktops;
  if (font.pointSizeF() > 0)
    font.setPointSizeF(settings_.textSize() * font.pointSizeF());
  else
    font.setPixelSize(int(settings_.textSize() * font.pixelSize()));
  if (font != QApplication::font()) QApplication::setFont(font);
  if (settings_.look() == std::exchange(look_, settings_.look())) return;
  if (look_ == Look::Desktop) {
    QApplication::setPalette(QPalette());
    return;
  }
  // Other styles may have colours of their own.
  QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
  QApplication::setPalette(paletteOf(look_));
}

void fillAppearanceMenu(QMenu& menu, Settings& settings) {
  auto* looks = new QActionGroup(&menu);
  for (const auto& [look, name] : {std::pair(Look::Desktop, AppearanceText::tr("As the &desktop")),
                                   std::pair(Look::Light, AppearanceText::tr("&Light")),
                                   std::pair(Look::Dark, AppearanceText::tr("D&ark"))}) {
    QAction* action = looks->addAction(name);
    action->setCheckable(true);
    action->setData(int(look));
    QObject::connect(action, &QAction::triggered, &settings,
                     [&settings, look = look] { settings.setLook(look); });
  }
  auto* sizes = new QActionGroup(&menu);
  for (const int percent : {100, 125, 150, 200}) {
    QAction* action = sizes->addAction(AppearanceText::tr("Text %L1 %").arg(percent));
    action->setCheckable(true);
    action->setData(percent);
    QObject::connect(action, &QAction::triggered, &settings,
                     [&settings, percent] { settings.setTextSize(percent / 100.0); });
  }
  menu.addActions(looks->actions());
  menu.addSeparator();
  menu.addActions(sizes->actions());
  QObject::connect(&menu, &QMenu::aboutToShow, &menu, [looks, sizes, &settings] {
    for (QAction* a : looks->actions())
      a->setChecked(a->data().toInt() == int(settings.look()));
    for (QAction* a : sizes->actions())
      a->setChecked(std::abs(a->data().toInt() / 100.0 - settings.textSize()) < 0.01);
  });
}

} // namespace scye
