// One finding: what is the matter, in words and with a sign, and what can be done about it. Going
// to it (click, Return) leads to the value it concerns; a remedy is one click and one undo step,
// and shows what it would give while the pointer or the keyboard is on it.
#pragma once

#include "document/attention.h"
#include "document/document.h"
#include "settings/settings.h"

#include <QFrame>

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace scye {

class FindingCard : public QFrame {
  Q_OBJECT
public:
  FindingCard(Document& document, Attention& attention, const Phrases& phrases, QWidget* parent);

  // While remedies are still to be found, those the same finding had before stay below those that
  // have been found, greyed. `held`: no button changes its place, new ones come below.
  void setFinding(const Finding& finding, LengthUnit unit, bool remediesFound, bool held);

protected:
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  struct Offer {
    Remedy remedy;
    bool fresh = true; // else: of an earlier design, to be looked for again
  };
  void offer(const std::vector<Remedy>& found, bool all, bool held);
  void fitButtons();
  void activate();
  void apply(int remedy);

  Document& document_;
  Attention& attention_;
  const Phrases& phrases_;
  Finding finding_;
  LengthUnit unit_ = LengthUnit::Centimetre;
  QLabel* sign_;
  QLabel* severity_;
  QLabel* text_;
  QVBoxLayout* buttons_;
  std::vector<Offer> offers_;
  QList<QPushButton*> remedies_; // one for each
};

} // namespace scye
