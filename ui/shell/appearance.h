// How the window looks: light, dark or as the desktop, and how large its letters are. Taken from
// the settings when it is made and whenever they change; dark also where the desktop says nothing.
#pragma once

#include "settings/settings.h"

#include <QObject>

class QMenu;

namespace scye {

class Appearance : public QObject {
  Q_OBJECT
public:
  explicit Appearance(Settings& settings, QObject* parent = nullptr);

private:
  void apply();

  Settings& settings_;
  Look look_ = Look::Desktop;
};

// Its choices, ticked as they are set.
void fillAppearanceMenu(QMenu& menu, Settings& settings);

} // namespace scye
