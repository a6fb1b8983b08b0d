// The work side by side: what is given, the drawing with the ease in hand below it, what the design
// answers. While knitting and making up the pages come forward and the measurements make room. In a
// window too narrow for three the answers make room too, until they are asked for.
#pragma once

#include "knitting/knit_files.h"
#include "panels/panel_context.h"
#include "shell/knit_pages.h"
#include "shell/stage.h"

#include <QWidget>

class QSplitter;

namespace scye {

class Answers;
class DrawingTable;
class EaseStrip;
class EditPanel;
class ExportStrip;
class WorkArea;

class Workbench : public QWidget {
  Q_OBJECT
public:
  explicit Workbench(const PanelContext& context, QWidget* parent = nullptr);

  void setStage(Stage stage);
  [[nodiscard]] DrawingTable& table() const { return *table_; }
  [[nodiscard]] EditPanel& panel() const { return *panel_; }
  [[nodiscard]] EaseStrip& ease() const { return *ease_; }
  [[nodiscard]] Answers& answers() const { return *answers_; }
  [[nodiscard]] ExportStrip& exports() const { return *exports_; }
  [[nodiscard]] QByteArray saveState() const;
  bool takeState(const QByteArray& state);
  [[nodiscard]] WorkArea& area() const { return *area_; }
  [[nodiscard]] const KnitPages& pages() const { return *pages_; }
  [[nodiscard]] KnitFiles& knitFiles() const { return *knitFiles_; }
  void setAnswersShown(bool shown);
  void goToNextPart(int by); // with the keyboard: measurements, drawing or page, ease, answers

Q_SIGNALS:
  void answersShown(bool shown);
  void stageShown(scye::Stage stage);

protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void takeStage();
  void divide();
  void makeRoom();

  bool narrow_ = false;
  bool placed_ = false; // widths have been given, by us or from the last time
  QSplitter* parts_;
  DrawingTable* table_;
  EditPanel* panel_;
  EaseStrip* ease_;
  ExportStrip* exports_;
  WorkArea* area_;
  Answers* answers_;
  KnitFiles* knitFiles_;
  std::unique_ptr<KnitPages> pages_;
};

} // namespace scye
