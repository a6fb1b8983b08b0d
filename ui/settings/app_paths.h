// Where the program keeps its own files; tests put them elsewhere.
#pragma once

#include <QString>

namespace scye {

struct AppPaths {
  QString settings;    // preferences
  QString windowState; // size, place and splitters of the window
  QString recovery;    // folder of the copies of unsaved designs
  QString wearers;     // folder of the measurements kept for other designs
};

[[nodiscard]] AppPaths standardPaths();

} // namespace scye
