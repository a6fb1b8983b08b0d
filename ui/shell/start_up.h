// What the program is called, and its one accent laid over the desktop's own palette.
#pragma once

class QApplication;

namespace scye {

void startUp(QApplication& app);

} // namespace scye
