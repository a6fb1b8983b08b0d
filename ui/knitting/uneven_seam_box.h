// For any straight seam whose edges have unequal rows: their rows, and how to sew them, in words.
#pragma once

#include "directions/directions.h"
#include "knitting/answer_box.h"

#include <optional>

class QSpinBox;

namespace scye {

class UnevenSeamBox : public AnswerBox {
  Q_OBJECT
public:
  explicit UnevenSeamBox(QWidget* parent);

  void setWording(const Wording& wording);
  // Where nothing was set: a seam of this garment.
  void suggest(int first, int second);

private:
  void answer();

  std::optional<Wording> wording_;
  QSpinBox *first_, *second_;
  bool touched_ = false;
};

} // namespace scye
