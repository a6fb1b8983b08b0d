// What a widget paints in letters, whoever paints it: a label, a delegate, the drawing. Found by
// having it paint on a device that keeps nothing else.
#pragma once

#include <QString>

#include <vector>

class QWidget;

namespace scye::test {

struct PaintedText {
  QString text;
  double cut = 0; // px of its width that lie outside of what can be seen of its widget
};
[[nodiscard]] std::vector<PaintedText> paintedIn(QWidget& in);

} // namespace scye::test
