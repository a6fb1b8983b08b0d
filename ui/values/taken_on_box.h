// Where measurements are taken: on the body, or on a garment that fits. One box, wherever it is
// asked; what is chosen is for its owner to carry out (takenOn() in model/design.h).
#pragma once

#include "model/design.h"
#include "model/phrases.h"
#include "values/choice_box.h"

namespace scye {

class TakenOnBox : public ChoiceBox {
  Q_OBJECT
public:
  explicit TakenOnBox(const Phrases& phrases, QWidget* parent = nullptr);

  [[nodiscard]] Source where() const { return Source(currentIndex()); }
  void setWhere(Source where) { setCurrentIndex(int(where)); }

Q_SIGNALS:
  void chosen(scye::Source where); // by hand
};

} // namespace scye
