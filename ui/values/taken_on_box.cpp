#include "values/taken_on_box.h"

namespace scye {

TakenOnBox::TakenOnBox(const Phrases& phrases, QWidget* parent) : ChoiceBox(parent) {
  const auto say = [&](const char* key) { return QString::fromStdString(phrases.say(key)); };
  addItem(say("choice.takenOn.body"));
  addItem(say("choice.takenOn.garment"));
  setAccessibleName(say("choice.takenOn"));
  setToolTip(say("takenOn.hint"));
  connect(this, &QComboBox::activated, this, [this](int option) { Q_EMIT chosen(Source(option)); });
}

} // namespace scye
