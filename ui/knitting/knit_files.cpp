#include "knitting/knit_files.h"

#include "knitting/directions_page.h"
#include "knitting/knit_export.h"
#include "look/save_dialog.h"

#include <QPrintDialog>
#include <QPrinter>

namespace scye {

KnitFiles::KnitFiles(Document& document, Settings& settings, QWidget* parent)
    : QObject(parent), document_(document), settings_(settings), parent_(parent) {}

QString KnitFiles::ask(const QString& title, const QString& suffix, const QStringList& endings) {
  return askWhereToWrite(parent_->window(), title,
                         settings_.lastFolder() + u'/' + document_.suggestedName() + suffix +
                             endings.front(),
                         endings);
}

void KnitFiles::exportDirectionsTo(const QString& path) {
  exports_.add(path,
               [present = document_.present(), wording = wordingOf(settings_), path](const GoOn&) {
                 return exportDirections(present()->directions, wording, path);
               });
}
void KnitFiles::exportChartTo(const QString& path) {
  exports_.add(path, [present = document_.present(), options = settings_.exportOptions(),
                      &phrases = settings_.phrases(), path](const GoOn& goOn) {
    ExportOptions watched = options;
    watched.goOn = goOn;
    const auto derived = present();
    return exportChart(phrases, derived->knit, derived->draft.design.title, path, watched);
  });
}
void KnitFiles::exportRowsTo(const QString& path) {
  exports_.add(path, [present = document_.present(), path](const GoOn&) {
    return exportRows(present()->knit, path);
  });
}

void KnitFiles::askDirections() {
  const QString path = ask(tr("Export the directions"), tr(" directions"),
                           {QStringLiteral(".html"), QStringLiteral(".txt")});
  if (!path.isEmpty()) exportDirectionsTo(path);
}

void KnitFiles::askChart() {
  const QString path =
      ask(tr("Export the chart"), tr(" chart"),
          {QStringLiteral(".pdf"), QStringLiteral(".svg"), QStringLiteral(".png")});
  if (!path.isEmpty()) exportChartTo(path);
}

void KnitFiles::askRows() {
  const QString path = ask(tr("Export the row table"), tr(" rows"), {QStringLiteral(".csv")});
  if (!path.isEmpty()) exportRowsTo(path);
}

std::shared_ptr<QPrinter> KnitFiles::choose() {
  auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
  printer->setDocName(document_.displayName());
  if (QPrintDialog(printer.get(), parent_->window()).exec() != QDialog::Accepted) return nullptr;
  return printer;
}

void KnitFiles::printDirections() {
  const auto printer = choose();
  if (!printer) return;
  exports_.add(tr("Printing"), [present = document_.present(), wording = wordingOf(settings_),
                                printer](const GoOn& goOn) {
    return scye::printDirections(present()->directions, wording, *printer, goOn);
  });
}

void KnitFiles::printChart() {
  const auto printer = choose();
  if (!printer) return;
  exports_.add(tr("Printing"), [present = document_.present(), &phrases = settings_.phrases(),
                                printer](const GoOn& goOn) {
    const auto derived = present();
    return scye::printChart(phrases, derived->knit, derived->draft.design.title, *printer, goOn);
  });
}

} // namespace scye
