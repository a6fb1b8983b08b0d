#include "shell/export_strip.h"

#include "knitting/directions_page.h"
#include "look/flow_layout.h"
#include "look/icons.h"
#include "look/save_dialog.h"
#include "panels/panel_context.h"
#include "values/choice_box.h"

#include <QComboBox>
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
    : QFrame(parent), document_(document), settings_(settings), kind_(new ChoiceBox(this)),
      paperName_(new QLabel(tr("Paper"), this)), paper_(new ChoiceBox(this)),
      dots_(new QSpinBox(this)) {
  const int gap = fontMetrics().averageCharWidth();
  auto* row = new FlowLayout(this);
  row->setContentsMargins(2 * gap, gap, gap, gap);
  row->setSpacing(2 * gap);
  auto* asName = new QLabel(tr("Export as"), this);
  for (const FileFormat format : info(OutputId::Schematic).formats)
    kind_->addItem(QString::fromUtf8(info(format).ending).mid(1).toUpper(), int(format));
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
  row->addTogether({asName, kind_});
  row->addTogether({paperName_, paper_});
  row->addWidget(dots_);
  row->addTogether({go, close});
  connect(kind_, &QComboBox::currentIndexChanged, this, &ExportStrip::adapt);
  connect(go, &QPushButton::clicked, this, &ExportStrip::ask);
  connect(close, &QToolButton::clicked, this, &QWidget::hide);
  const ExportOptions start = settings_.exportOptions();
  paper_->setCurrentIndex(int(start.paper));
  dots_->setValue(int(start.dpi));
  adapt();
  hide();
}

void ExportStrip::open(FileFormat format) {
  kind_->setCurrentIndex(kind_->findData(int(format)));
  adapt();
  show();
  kind_->setFocus();
}

FileFormat ExportStrip::format() const {
  return FileFormat(kind_->currentData().toInt());
}

void ExportStrip::adapt() {
  for (QWidget* w : {static_cast<QWidget*>(paperName_), static_cast<QWidget*>(paper_)})
    w->setVisible(format() != FileFormat::Dxf);
  dots_->setVisible(format() == FileFormat::Png);
}

ExportOptions ExportStrip::options() const {
  return {Paper(paper_->currentIndex()), double(dots_->value())};
}

void ExportStrip::exportTo(const QString& path) {
  settings_.setExportOptions(options());
  exports_.add(OutputId::Schematic, path, document_, wordingOf(settings_), options());
  hide();
}

void ExportStrip::ask() {
  const QString ending = QString::fromUtf8(info(format()).ending);
  const QString path =
      askWhereToWrite(window(), phraseText(settings_.phrases(), "output.schematic.export"),
                      settings_.lastFolder() + u'/' + document_.suggestedName() + ending, {ending});
  if (!path.isEmpty()) exportTo(path);
}

void ExportStrip::print() {
  const auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
  printer->setDocName(document_.displayName());
  QPrintDialog dialog(printer.get(), window());
  if (dialog.exec() != QDialog::Accepted) return;
  exports_.add(tr("Printing"), [present = document_.present(), wording = wordingOf(settings_),
                                printer](const GoOn& goOn) {
    const auto derived = present(); // pages refer to it
    OutputJob job{*derived, wording};
    job.page.goOn = goOn;
    job.date = today();
    return printOutput(OutputId::Schematic, job, *printer);
  });
}

void ExportStrip::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape)
    hide();
  else
    QFrame::keyPressEvent(event);
}

} // namespace scye
