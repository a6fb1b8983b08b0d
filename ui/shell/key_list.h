// The keys of the window, to look up.
#pragma once

class QWidget;

namespace scye {

void showKeyList(QWidget& window);

} // namespace scye
