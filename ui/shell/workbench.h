// The three parts of the work side by side: what she says, the drawing table, what the design
// answers. In a window too narrow for three the answers make room, until she asks for them.
#pragma once

#include "knitting/knit_files.h"
#include "panels/panel_context.h"
#include "shell/knit_pages.h"

#include <QSplitter>

namespace scye {

class Answers;
class DrawingTable;
class EditPanel;
class ExportStrip;
class WorkArea;

class Workbench : public QSplitter {
  Q_OBJECT
public:
  explicit Workbench(const PanelContext& context, QWidget* parent = nullptr);

  [[nodiscard]] DrawingTable& table() const { return *table_; }
  [[nodiscard]] EditPanel& panel() const { return *panel_; }
  [[nodiscard]] ExportStrip& exports() const { return *exports_; }
  bool takeState(const QByteArray& state);
  [[nodiscard]] WorkArea& area() const { return *area_; }
  [[nodiscard]] const KnitPages& pages() const { return *pages_; }
  [[nodiscard]] KnitFiles& knitFiles() const { return *knitFiles_; }
  void setAnswersShown(bool shown);

Q_SIGNALS:
  void answersShown(bool shown);

protected:
  void resizeEvent(QResizeEvent* event) override;

private:
  bool narrow_ = false;
  bool placed_ = false; // widths have been given, by us or from the last time
  DrawingTable* table_;
  EditPanel* panel_;
  ExportStrip* exports_;
  WorkArea* area_;
  Answers* answers_;
  KnitFiles* knitFiles_;
  std::unique_ptr<KnitPages> pages_;
};

} // namespace scye
