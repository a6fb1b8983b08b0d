// The head of the window: tools, the three stages of the work, and whether the sleeve fits. All in
// one line where there is room; otherwise the answer has a line of its own. It is never cut.
#pragma once

#include <QWidget>

class QHBoxLayout;
class QToolBar;
class QToolButton;

namespace scye {

class Actions;
class Document;
class Settings;
class VerdictLine;

class HeadBar : public QWidget {
  Q_OBJECT
public:
  HeadBar(Actions& actions, Document& document, Settings& settings, QWidget* parent = nullptr);

  void setWorking(bool working); // stages and answer only where there is a design
  [[nodiscard]] VerdictLine& verdict() const { return *verdict_; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  // Lays everything out, or only tells the height it would take.
  int arrange(int width, bool place) const;

  QToolBar* tools_;
  QToolButton* copy_ = nullptr; // of the schematic
  QWidget* stages_;
  VerdictLine* verdict_;
};

} // namespace scye
