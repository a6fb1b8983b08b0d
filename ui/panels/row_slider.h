// What opens under the row in use: a slider for the value in hand, its ends, and room for a
// refusal, which stays until it is put right or given up; of a value that is worked out, why it
// cannot be set.
#pragma once

#include "panels/panel_context.h"

#include <QWidget>

class QLabel;

namespace scye {

class QuietButton;
class FieldSlider;

class RowSlider : public QWidget {
  Q_OBJECT
public:
  RowSlider(const PanelContext& context, QWidget* parent);

  void setField(Field field); // takes hold of another value
  [[nodiscard]] Field field() const;
  void refresh();
  void say(const QString& refusal);
  void quiet();
  void setOpen(bool open); // else only a refusal is left of it
  [[nodiscard]] bool refuses() const;
  [[nodiscard]] FieldSlider* slider() const { return slider_; }

Q_SIGNALS:
  void howWanted(scye::Field measurement);

private:
  void showLikely();

  PanelContext context_;
  QLabel* name_;
  QLabel* low_;
  FieldSlider* slider_;
  QLabel* high_;
  QuietButton* how_;
  QLabel* likely_; // the slider's band in words
  QLabel* worked_; // shown while the value is worked out
  QLabel* refusal_;
};

} // namespace scye
