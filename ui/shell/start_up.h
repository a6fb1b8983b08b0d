// What the program is called, its one accent laid over the desktop's own palette, its language.
#pragma once

#include "model/phrases.h"
#include "settings/app_paths.h"

class QApplication;

namespace scye {

void startUp(QApplication& app);

// The language of the preferences, else the desktop's, as far as it is there. Lays the translations
// of the window's own texts and of Qt's over the application, and returns all other words. To be
// called once, before the first widget; phrases that cannot be read are told on stderr.
[[nodiscard]] Phrases takeLanguage(const AppPaths& paths);

} // namespace scye
