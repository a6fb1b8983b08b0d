// All findings, gravest first, with remedies as they are found, and how the sleeve hangs. What lies
// under the pointer stays where it is: remedies of the cards above wait until the pointer is gone.
#pragma once

#include "fit/finding_card.h"

#include <QScrollArea>
#include <QTimer>

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
  void leaveEvent(QEvent* event) override;

private:
  void refresh();     // all cards
  void addRemedies(); // to the cards that are there
  void tellSearch();
  [[nodiscard]] Findings sorted();

  Document& document_;
  Attention& attention_;
  Settings& settings_;
  QWidget* content_;
  QVBoxLayout* column_;
  QLabel* head_;
  QLabel* none_;
  QLabel* givenUp_;
  QTimer looking_; // a search shorter than this is not spoken of
  bool lookingTold_ = false;
  QLabel* hang_;
  QLabel* room_;
  QList<FindingCard*> cards_;
};

} // namespace scye
