// The first thing she sees: three questions are enough for a garment on the drawing table; or she
// goes on with something, or looks at the demo.
#pragma once

#include "model/design.h"
#include "schematic/picture.h"
#include "settings/settings.h"

#include <QWidget>

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace scye {

class FieldBox;

class StartPage : public QWidget {
  Q_OBJECT
public:
  explicit StartPage(Settings& settings, QWidget* parent = nullptr);

  void begin(); // empties the questions and takes the keyboard to the first

Q_SIGNALS:
  void designed(const scye::Design& design);
  void demoWanted();
  void openWanted();
  void fileWanted(const QString& path);

protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

private:
  struct Question {
    Field field;
    FieldBox* box;
    QLabel* complaint;
  };
  [[nodiscard]] QWidget* makeQuestions();
  [[nodiscard]] QWidget* makeOthers();
  FieldBox* addBox(Field field, const QString& name, QLabel* complaint);
  void refresh();
  void answer(const Question& question, double value);
  void draw();

  Settings& settings_;
  std::vector<Question> questions_;
  QPushButton* draw_;
  QVBoxLayout* recent_;
  QLabel* recentHead_;
  Picture backdrop_; // drawn pale behind the page
};

} // namespace scye
