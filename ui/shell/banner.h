// A message in the window, with what can be done about it. It stays until it is answered.
#pragma once

#include "model/finding.h"

#include <QFrame>

class QLabel;
class QToolButton;

namespace scye {

class FlowLayout;

class Banner : public QFrame {
  Q_OBJECT
public:
  explicit Banner(QWidget* parent = nullptr);

  struct Offer {
    QString text;
    std::function<void()> act;
  };
  void say(Severity severity, const QString& title, const QString& text,
           const QList<Offer>& offers = {});
  // The same while something is being made: said again, only its words change.
  void sayWorking(const QString& title, const QString& text, Offer offer);
  [[nodiscard]] QString text() const;
  void dismiss();

protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

private:
  void setWords(const QString& title, const QString& text);

  bool working_ = false;
  Severity severity_ = Severity::Note;
  QLabel* sign_;
  QLabel* text_;
  FlowLayout* offers_;
  QToolButton* close_;
};

} // namespace scye
