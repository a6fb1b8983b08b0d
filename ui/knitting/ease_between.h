// How much ease lies between any two pin marks of one side of an armhole: a side and two marks to
// choose, and the answer in words.
#pragma once

#include "knitting/answer_box.h"
#include "making_up/seam_marks.h"
#include "model/phrases.h"

namespace scye {

class ChoiceBox;

class EaseBetween : public AnswerBox {
  Q_OBJECT
public:
  EaseBetween(const Phrases& phrases, QWidget* parent);

  // Right armhole, left armhole; back and front of each. What was chosen stays where it can.
  void setMarks(const std::vector<SeamMarks>& marks, LengthUnit unit);

private:
  void fillMarks();
  void answer();

  const Phrases& phrases_;
  std::vector<SeamMarks> marks_;
  LengthUnit unit_ = LengthUnit::Centimetre;
  ChoiceBox *side_, *from_, *to_;
};

} // namespace scye
