// Asks where to, and writes or prints what is knitted from.
#pragma once

#include "document/document.h"
#include "export/export_queue.h"
#include "settings/settings.h"

#include <memory>

class QPrinter;

namespace scye {

class KnitFiles : public QObject {
  Q_OBJECT
public:
  KnitFiles(Document& document, Settings& settings, QWidget* parent);

  // Asks for the file's name first.
  void ask(OutputId output);
  void askEverything(); // for a folder
  void askSizes();      // for a table of wearers, then for the table of their sizes
  void askBooklets();   // for a table of wearers, then for a folder
  void printDirections();
  void printChart();
  void printBooklet();

  // Made beside the window; `exports` tells how it went.
  void exportTo(OutputId output, const QString& path);
  void exportEverything(const QString& folder);
  void exportSizes(const QString& wearers, const QString& path);
  // A booklet for every wearer, and the table of their sizes, "sizes.csv".
  void exportBooklets(const QString& wearers, const QString& folder);
  [[nodiscard]] ExportQueue& exports() { return exports_; }

private:
  [[nodiscard]] QString askForWearers(); // empty: the dialog was left
  // The printer that was chosen; none: the dialog was left.
  [[nodiscard]] std::shared_ptr<QPrinter> choose();

  Document& document_;
  Settings& settings_;
  QWidget* parent_;
  ExportQueue exports_;
};

} // namespace scye
