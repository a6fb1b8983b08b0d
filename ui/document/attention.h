// What she has in hand just now: the value that is being changed, a remedy she is looking at, a
// place she asked to be taken to. Not part of the design, never saved.
#pragma once

#include "model/design.h"

#include <QObject>

namespace scye {

class Attention : public QObject {
  Q_OBJECT
public:
  using QObject::QObject;

  [[nodiscard]] std::optional<Field> lit() const { return lit_; }
  void light(std::optional<Field> field) {
    if (lit_ == field) return;
    lit_ = field;
    Q_EMIT changed();
  }
  // A design to be shown pale behind the present one.
  [[nodiscard]] const std::optional<Design>& preview() const { return preview_; }
  void setPreview(std::optional<Design> design) {
    if (preview_ == design) return;
    preview_ = std::move(design);
    Q_EMIT changed();
  }
  // `finished`: to the finished size rather than to the body measurement.
  void goTo(Field field, bool finished) { Q_EMIT asked(field, finished); }

Q_SIGNALS:
  void changed();
  void asked(scye::Field field, bool finished);

private:
  std::optional<Field> lit_;
  std::optional<Design> preview_;
};

} // namespace scye
