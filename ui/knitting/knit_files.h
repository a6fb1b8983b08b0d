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

  void askDirections();
  void askChart();
  void askRows();
  void printDirections();
  void printChart();

  // Made beside the window; `exports` tells how it went.
  void exportDirectionsTo(const QString& path);
  void exportChartTo(const QString& path);
  void exportRowsTo(const QString& path);
  [[nodiscard]] ExportQueue& exports() { return exports_; }

private:
  // A file name with one of the endings, the first one where none is named; empty: given up.
  [[nodiscard]] QString ask(const QString& title, const QString& suffix,
                            const QStringList& endings);
  // The printer that was chosen; none: the dialog was left.
  [[nodiscard]] std::shared_ptr<QPrinter> choose();

  Document& document_;
  Settings& settings_;
  QWidget* parent_;
  ExportQueue exports_;
};

} // namespace scye
