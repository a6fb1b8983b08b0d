// Does the sleeve fit? One sentence, three numbers, and the cap laid over its armhole.
#pragma once

#include "document/document.h"
#include "settings/settings.h"

#include <QWidget>

class QLabel;

namespace scye {

class PictureWidget;

class FitPanel : public QWidget {
  Q_OBJECT
public:
  FitPanel(Document& document, Settings& settings, QWidget* parent = nullptr);

protected:
  void changeEvent(QEvent* event) override;

private:
  void refresh();
  [[nodiscard]] Picture comparison(double textHeight, int perRow) const;

  Document& document_;
  Settings& settings_;
  QLabel* sign_;
  QLabel* sentence_;
  struct Number {
    QLabel* name;
    QLabel* value;
  };
  std::array<Number, 3> numbers_;
  PictureWidget* picture_;
};

} // namespace scye
