// Taking the schematic out of the program: kind of file, paper, dots per inch, in a strip below the
// drawing table, so that what is exported stays in view.
#pragma once

#include "document/document.h"
#include "export/export_queue.h"
#include "settings/settings.h"

#include <QFrame>

class QComboBox;
class QLabel;
class QSpinBox;

namespace scye {

class ExportStrip : public QFrame {
  Q_OBJECT
public:
  ExportStrip(Document& document, Settings& settings, QWidget* parent = nullptr);

  void open(FileFormat format);
  void print();
  // Made beside the window; `exports` tells how it went.
  void exportTo(const QString& path);
  [[nodiscard]] ExportQueue& exports() { return exports_; }

protected:
  void keyPressEvent(QKeyEvent* event) override;

private:
  [[nodiscard]] FileFormat format() const;
  [[nodiscard]] ExportOptions options() const;
  void adapt();
  void ask();

  Document& document_;
  Settings& settings_;
  QComboBox* kind_;
  QLabel* paperName_;
  QComboBox* paper_;
  QSpinBox* dots_;
  ExportQueue exports_;
};

} // namespace scye
