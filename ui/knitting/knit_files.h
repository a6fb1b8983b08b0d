// Asks where to, and writes or prints what she knits from.
#pragma once

#include "document/document.h"
#include "settings/settings.h"

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

  bool exportDirectionsTo(const QString& path);
  bool exportChartTo(const QString& path);
  bool exportRowsTo(const QString& path);

Q_SIGNALS:
  void exported(const QString& path);
  void failed(const QString& reason);

private:
  // A file name with one of the endings, the first one where she names none; empty: she left it.
  [[nodiscard]] QString ask(const QString& title, const QString& suffix,
                            const QStringList& endings);
  bool tell(const QString& path, const std::optional<QString>& problem);
  // Whether she has chosen a printer.
  [[nodiscard]] bool choose(QPrinter& printer);

  Document& document_;
  Settings& settings_;
  QWidget* parent_;
};

} // namespace scye
