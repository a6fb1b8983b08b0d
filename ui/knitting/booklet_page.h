// The booklet before it is printed or written to a file: the same pages, laid out beside the
// window. Its paper and the size of its letters are chosen here and hold for print and export too.
#pragma once

#include "document/beside.h"
#include "knitting/knit_page.h"

class QBoxLayout;
class QCheckBox;
class QComboBox;
class QLabel;
class QToolButton;

namespace scye {

class BookletView;

class BookletPage : public KnitPage {
  Q_OBJECT
public:
  BookletPage(Document& document, Settings& settings, QWidget* parent = nullptr);

  [[nodiscard]] BookletView& view() const { return *view_; }
  // Nothing is being laid out: the pages are those of the design that is shown.
  [[nodiscard]] bool isLaidOut() const { return shown_ == wanted_; }

Q_SIGNALS:
  void printWanted();
  void fileWanted();

protected:
  void refresh() override;

private:
  void refreshChoices();
  void tellPage();

  BookletView* view_;
  QComboBox* paper_;
  QCheckBox* large_;
  QLabel* place_;
  quint64 wanted_ = 0, shown_ = 0;
  Beside beside_;
};

} // namespace scye
