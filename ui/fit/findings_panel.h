// All findings, gravest first, and how the sleeve hangs.
#pragma once

#include "fit/finding_card.h"

#include <QScrollArea>

class QLabel;

namespace scye {

class FindingsPanel : public QScrollArea {
  Q_OBJECT
public:
  FindingsPanel(Document& document, Attention& attention, Settings& settings,
                QWidget* parent = nullptr);

  [[nodiscard]] int heightWanted(int width) const;

protected:
  void changeEvent(QEvent* event) override;

private:
  void refresh();

  Document& document_;
  Attention& attention_;
  Settings& settings_;
  QWidget* content_;
  QVBoxLayout* column_;
  QLabel* head_;
  QLabel* none_;
  QLabel* hang_;
  QLabel* room_;
  QList<FindingCard*> cards_;
};

} // namespace scye
