// What the user has in hand just now: the value that is being changed, a remedy that is looked at,
// a place to be taken to, rows pointed at or followed. Not part of the design, never
// saved.
#pragma once

#include "knit/row_table.h"
#include "model/design.h"

#include <QObject>

namespace scye {

// Rows of a section, first and last included.
struct PieceRows {
  PieceId piece = PieceId::Back;
  SectionId section = SectionId::Undivided;
  int first = 0, last = 0;
  bool operator==(const PieceRows&) const = default;
};

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
  // Others for whom the same garment is drawn behind it: their measurements (model/wearer.h).
  [[nodiscard]] const std::vector<Design>& others() const { return others_; }
  void setOthers(std::vector<Design> wearers) {
    if (others_ == wearers) return;
    others_ = std::move(wearers);
    Q_EMIT changed();
  }
  // The current line of the directions; it stays while something else is looked at.
  [[nodiscard]] const std::optional<PieceRows>& chosenRows() const { return chosen_; }
  void chooseRows(const std::optional<PieceRows>& rows) { setRows(chosen_, rows); }
  // What is under the pointer, or the row the keyboard is at in a chart.
  [[nodiscard]] const std::optional<PieceRows>& pointedRows() const { return pointed_; }
  void pointAtRows(const std::optional<PieceRows>& rows) { setRows(pointed_, rows); }
  // To be lit: what is pointed at before what was chosen.
  [[nodiscard]] const std::optional<PieceRows>& rows() const {
    return pointed_ ? pointed_ : chosen_;
  }

  // `finished`: to the finished size rather than to the body measurement.
  void goTo(Field field, bool finished) { Q_EMIT asked(field, finished); }
  // To the row in directions and chart, when they next come into view.
  void goToRows(const PieceRows& rows) { Q_EMIT rowsAsked(rows); }

Q_SIGNALS:
  void changed();
  void rowsChanged();
  void asked(scye::Field field, bool finished);
  void rowsAsked(const scye::PieceRows& rows);

private:
  void setRows(std::optional<PieceRows>& rows, const std::optional<PieceRows>& now) {
    if (rows == now) return;
    rows = now;
    Q_EMIT rowsChanged();
  }

  std::optional<Field> lit_;
  std::optional<Design> preview_;
  std::vector<Design> others_;
  std::optional<PieceRows> chosen_, pointed_;
};

} // namespace scye
