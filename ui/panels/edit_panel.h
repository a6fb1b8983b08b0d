// The work, in the knitter's order: who it is for and the measurements, the swatch, the body, the
// sleeve and its cap, the knitting, and where warnings begin.
#pragma once

#include "panels/field_table.h"
#include "panels/fold.h"

#include <QScrollArea>

namespace scye {

class EditPanel : public QScrollArea {
  Q_OBJECT
public:
  EditPanel(const PanelContext& context, QWidget* parent = nullptr);

  // Opens what hides it, brings it into view and takes the keyboard there.
  void focusField(Field field, bool finished);
  // Of the row that the keyboard is in.
  [[nodiscard]] std::optional<Field> measurementInUse() const;
  [[nodiscard]] bool isWhole() const { return toOpen_.empty(); } // not only its first view
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
  void howWanted(scye::Field measurement); // how is it measured?

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  using Fill = std::function<void(FieldTable&)>;
  struct Part {
    Fold* fold;
    FieldTable* table = nullptr; // once it has been made
  };
  // A section holds rows, and may end in a fold with the rarer ones.
  void addSection(const QString& title, bool open, Fill fill, Fill rarer = {},
                  const QString& rarerTitle = {});
  std::size_t addPart(Fold::Rank rank, const QString& title, Fill fill);
  void useRow(FieldRow* row);
  void settle();
  void showLowest(); // of what is open beneath the row in use
  void keepInPlace(const QWidget* widget, int y);
  void openRest();

  PanelContext context_;
  QWidget* content_;
  QWidget* ballast_; // room above, where nothing is left to scroll
  std::vector<std::unique_ptr<Part>> parts_;
  int sections_ = 0;
  std::vector<Fold*> toOpen_;   // below the first view: opened once the window has been painted
  FieldRow* row_ = nullptr;     // whose slider is open
  FieldRow* waiting_ = nullptr; // to be opened once the mouse is let go
};

} // namespace scye
