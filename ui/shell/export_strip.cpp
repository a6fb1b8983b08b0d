#include "shell/export_strip.h"

#include "look/icons.h"
#include "look/save_dialog.h"
#include "schematic/schematic.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QSpinBox>
#include <QToolButton>

#include <memory>

namespace scye {

ExportStrip::ExportStrip(Document& document, Settings& settings, QWidget* parent)
    : QFrame(parent), document_(document), settings_(settings), kind_(new QComboBox(this)),
      paperName_(new QLabel(tr("Paper"), this)), paper_(new QComboBox(this)),
      dots_(new QSpinBox(this)) {
  const int gap = fontMetrics().averageCharWidth();
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(2 * gap, gap, gap, gap);
  row->setSpacing(gap);
  row->addWidget(new QLabel(tr("Export as"), this));
  kind_->addItems({tr("SVG"), tr("PNG"), tr("PDF")});
  kind_->setAccessibleName(tr("Kind of file"));
  paper_->addItems({tr("True size"), tr("A4"), tr("Letter")});
  paper_->setAccessibleName(paperName_->text());
  dots_->setRange(30, 600);
  dots_->setSuffix(tr(" dpi"));
  dots_->setAccessibleName(tr("Dots per inch"));
  auto* go = new QPushButton(tr("Export…"), this);
  auto* close = new QToolButton(this);
  close->setAutoRaise(true);
  close->setIcon(icon("close"));
  close->setToolTip(tr("Close"));
  close->setAccessibleName(close->toolTip());
  row->addWidget(kind_);
  row->addSpacing(gap);
  row->addWidget(paperName_);
  row->addWidget(paper_);
  row->addSpacing(gap);
  row->addWidget(dots_);
  row->addStretch(1);
  row->addWidget(go);
  row->addWidget(close);
  connect(kind_, &QComboBox::currentIndexChanged, this, &ExportStrip::adapt);
  connect(go, &QPushButton::clicked, this, &ExportStrip::ask);
  connect(close, &QToolButton::clicked, this, &QWidget::hide);
  const ExportOptions start = settings_.exportOptions();
  paper_->setCurrentIndex(int(start.paper));
  dots_->setValue(int(start.dpi));
  adapt();
  hide();
}

void ExportStrip::open(Kind kind) {
  kind_->setCurrentIndex(int(kind));
  adapt();
  show();
  kind_->setFocus();
}

void ExportStrip::adapt() {
  const Kind kind = Kind(kind_->currentIndex());
  for (QWidget* w : {static_cast<QWidget*>(paperName_), static_cast<QWidget*>(paper_)})
    w->setVisible(kind != Kind::Svg);
  dots_->setVisible(kind == Kind::Png);
}

ExportOptions ExportStrip::options() const {
  return {Paper(paper_->currentIndex()), double(dots_->value())};
}

ExportStrip::Maker ExportStrip::maker() {
  return [present = document_.present(), unit = settings_.unit(), &phrases = settings_.phrases()] {
    return [derived = present(), unit, &phrases](double textHeight) {
      SchematicOptions options;
      options.unit = unit;
      options.textHeight = textHeight;
      return pieceSchematic(derived->draft, phrases, options);
    };
  };
}

void ExportStrip::exportTo(const QString& path) {
  settings_.setExportOptions(options());
  exports_.add(path, [make = maker(), path, options = options()](const GoOn& goOn) {
    ExportOptions watched = options;
    watched.goOn = goOn;
    return exportPicture(make(), path, watched);
  });
  hide();
}

void ExportStrip::ask() {
  static const QLatin1String kEndings[] = {QLatin1String(".svg"), QLatin1String(".png"),
                                           QLatin1String(".pdf")};
  const QLatin1String ending = kEndings[kind_->currentIndex()];
  const QString path =
      askWhereToWrite(window(), tr("Export the schematic"),
                      settings_.lastFolder() + u'/' + document_.suggestedName() + ending, {ending});
  if (!path.isEmpty()) exportTo(path);
}

void ExportStrip::print() {
  const auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
  printer->setDocName(document_.displayName());
  QPrintDialog dialog(printer.get(), window());
  if (dialog.exec() != QDialog::Accepted) return;
  exports_.add(tr("Printing"), [make = maker(), printer](const GoOn& goOn) {
    return printPicture(make(), *printer, goOn);
  });
}

void ExportStrip::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape)
    hide();
  else
    QFrame::keyPressEvent(event);
}

} // namespace scye
