// The first thing to be seen: three questions are enough for a garment on the drawing table; or one
// begins with a style from the library, or goes on with something.
#pragma once

#include "model/design.h"
#include "settings/settings.h"

#include <QWidget>

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace scye {

class FieldBox;
class StyleGallery;
class TakenOnBox;

class StartPage : public QWidget {
  Q_OBJECT
public:
  explicit StartPage(Settings& settings, QWidget* parent = nullptr);

  void begin(); // empties the questions and takes the keyboard to the first
  void goToLibrary();

Q_SIGNALS:
  void designed(const scye::Design& design);
  void styleWanted(const QString& path); // of the library: to be opened as a copy
  void openWanted();
  void fileWanted(const QString& path);

protected:
  void keyPressEvent(QKeyEvent* event) override;

private:
  struct Question {
    Field field;
    FieldBox* box;
    QLabel* complaint;
    QLabel* how;
  };
  [[nodiscard]] QWidget* makeColumn();
  [[nodiscard]] QWidget* makeQuestions();
  [[nodiscard]] QWidget* makeOthers();
  [[nodiscard]] QWidget* makeLibrary();
  FieldBox* addBox(Field field, const QString& name, QLabel* complaint, QLabel* how);
  [[nodiscard]] Source whereOf(Field field) const;
  void refreshHow();
  void refresh();
  void answer(const Question& question, double value);
  void draw();

  Settings& settings_;
  std::vector<Question> questions_;
  TakenOnBox* takenOn_;
  QPushButton* draw_;
  QVBoxLayout* recent_;
  QLabel* recentHead_;
  StyleGallery* gallery_;
};

} // namespace scye
