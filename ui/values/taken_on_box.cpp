#include "values/taken_on_box.h"

#include "model/phrases.h"

namespace scye {

TakenOnBox::TakenOnBox(QWidget* parent) : ChoiceBox(parent) {
  const auto say = [](const char* key) {
    return QString::fromStdString(builtinPhrases().say(key));
  };
  addItem(say("choice.takenOn.body"));
  addItem(say("choice.takenOn.garment"));
  setAccessibleName(say("choice.takenOn"));
  setToolTip(say("takenOn.hint"));
  connect(this, &QComboBox::activated, this, [this](int option) { Q_EMIT chosen(Source(option)); });
}

} // namespace scye
