// What the design answers: whether the sleeve fits, and below it the findings. The findings take
// what they need as long as the comparison can still be read, and scroll beyond that; during
// a drag, or while the pointer is here, nothing is rearranged.
#pragma once

#include "document/attention.h"
#include "document/document.h"
#include "settings/settings.h"

#include <QWidget>

namespace scye {

class FindingsPanel;
class FitPanel;

class Answers : public QWidget {
  Q_OBJECT
public:
  Answers(Document& document, Attention& attention, Settings& settings, QWidget* parent = nullptr);

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void resizeEvent(QResizeEvent* event) override;
  void leaveEvent(QEvent* event) override;

private:
  void arrange();

  bool arrangeLater_ = false;

  FitPanel* fit_;
  FindingsPanel* findings_;
};

} // namespace scye
