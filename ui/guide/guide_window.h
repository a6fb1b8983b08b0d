// The measuring guide: for each measurement a picture of where the tape goes, on the body or on a
// garment that fits, with what to do without a helper and what spoils it; an overview of them all;
// and a sheet to fill in, as a file or on paper. Next and previous by Page Down and Page Up.
#pragma once

#include "document/document.h"
#include "export/export_queue.h"
#include "settings/settings.h"

#include <QWidget>

class QAbstractButton;
class QComboBox;
class QLabel;
class QListWidget;

namespace scye {

class PictureWidget;

class GuideWindow : public QWidget {
  Q_OBJECT
public:
  GuideWindow(Document& document, Settings& settings, QWidget* parent);

  // Nothing: the overview.
  void showMeasurement(std::optional<Field> measurement, Source where);
  void showPresent(); // as it was left, or the overview
  [[nodiscard]] std::optional<Field> measurement() const;
  [[nodiscard]] Source where() const;
  [[nodiscard]] PictureWidget& picture() const { return *picture_; }

  // Made beside the window; `exports` tells how it went.
  void saveSheet(const QString& path);
  [[nodiscard]] ExportQueue& exports() { return exports_; }

protected:
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  [[nodiscard]] QWidget* makeSide();
  [[nodiscard]] QWidget* makePage();
  [[nodiscard]] Picture draw(double textHeight) const;
  [[nodiscard]] Figure figure() const;
  [[nodiscard]] std::vector<Picture> sheet() const;
  void fillList();
  void refresh();
  void step(int by);
  void askWhereToSave();
  void print();

  Document& document_;
  Settings& settings_;
  QComboBox* where_;
  QListWidget* list_;
  QLabel* title_;
  PictureWidget* picture_;
  QLabel* text_;
  QAbstractButton *previous_, *next_;
  ExportQueue exports_;
};

} // namespace scye
