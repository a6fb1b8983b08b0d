// Some boxes in a row, each after its word, and below them what follows from what is in them.
#pragma once

#include <QWidget>

class QLabel;
class QVBoxLayout;

namespace scye {

class FlowLayout;

class AnswerBox : public QWidget {
  Q_OBJECT
protected:
  AnswerBox(const QString& answerName, QWidget* parent);

  void ask(const QString& word, const QString& name, QWidget* box); // at the end of the row
  [[nodiscard]] QVBoxLayout& column() { return *column_; }
  [[nodiscard]] QLabel& answerLabel() { return *answer_; }

private:
  QVBoxLayout* column_;
  FlowLayout* row_;
  QLabel* answer_;
};

} // namespace scye
