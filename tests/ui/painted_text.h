// What a widget paints in letters, whoever paints it: a label, a delegate, the drawing. Found by
// having it paint on a device that keeps nothing else.
#pragma once

#include <QStringList>

class QWidget;

namespace scye::test {

// Line by line, as it is painted.
[[nodiscard]] QStringList paintedIn(QWidget& in);

} // namespace scye::test
