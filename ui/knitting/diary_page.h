// The diary: what was decided, measured, begun, ripped and planned anew, day by day, and a line to
// write something down by hand.
#pragma once

#include "knitting/knit_page.h"

class QComboBox;
class QDateEdit;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace scye {

class DiaryPage : public KnitPage {
  Q_OBJECT
public:
  DiaryPage(Document& document, Settings& settings, QWidget* parent = nullptr);

  [[nodiscard]] QListWidget& list() const { return *list_; }
  [[nodiscard]] QComboBox& kind() const { return *kind_; }
  [[nodiscard]] QComboBox& piece() const { return *piece_; }
  [[nodiscard]] QDateEdit& day() const { return *day_; }
  [[nodiscard]] QLineEdit& text() const { return *text_; }
  [[nodiscard]] QPushButton& write() const { return *write_; }
  [[nodiscard]] QPushButton& strike() const { return *strike_; }

protected:
  void refresh() override;

private:
  void add();
  void takeOut();
  void fillPieces();

  QListWidget* list_;
  QComboBox *kind_, *piece_;
  QDateEdit* day_;
  QLineEdit* text_;
  QPushButton *write_, *strike_;
};

} // namespace scye
