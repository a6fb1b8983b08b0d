#include "knitting/knit_files.h"

#include "document/disk.h"
#include "io/wearer_table.h"
#include "knitting/directions_page.h"
#include "knitting/knit_print.h"
#include "look/save_dialog.h"
#include "panels/panel_context.h"

#include <QFileDialog>
#include <QPrintDialog>
#include <QPrinter>

namespace scye {

KnitFiles::KnitFiles(Document& document, Settings& settings, QWidget* parent)
    : QObject(parent), document_(document), settings_(settings), parent_(parent) {}

void KnitFiles::ask(OutputId output) {
  const auto words = [&, key = std::string(info(output).key)](const char* what) {
    return phraseText(settings_.phrases(), "output." + key + what);
  };
  const QStringList endings = endingsOf(output);
  const QString path = askWhereToWrite(parent_->window(), words(".export"),
                                       settings_.lastFolder() + u'/' + document_.suggestedName() +
                                           u' ' + words(".name") + endings.front(),
                                       endings);
  if (!path.isEmpty()) exportTo(output, path);
}

void KnitFiles::exportTo(OutputId output, const QString& path) {
  exports_.add(output, path, document_, wordingOf(settings_), settings_.exportOptions());
}

void KnitFiles::askEverything() {
  const QString folder = QFileDialog::getExistingDirectory(
      parent_->window(), tr("A folder for everything"), settings_.lastFolder());
  if (!folder.isEmpty()) exportEverything(folder);
}

void KnitFiles::exportEverything(const QString& folder) {
  exports_.add(folder, [present = document_.present(), wording = wordingOf(settings_),
                        page = settings_.exportOptions(), folder](const GoOn& goOn) {
    const auto derived = present();
    OutputJob job{*derived, wording, page, {}, today()};
    job.page.goOn = goOn;
    return scye::exportEverything(job, folder);
  });
}

void KnitFiles::askSizes() {
  const QString wearers = QFileDialog::getOpenFileName(
      parent_->window(), tr("A table of wearers"), settings_.lastFolder(), tr("Tables (*.csv)"));
  if (wearers.isEmpty()) return;
  const QString path = askWhereToWrite(parent_->window(), tr("The table of their sizes"),
                                       settings_.lastFolder() + u'/' + document_.suggestedName() +
                                           u' ' + tr("sizes") + QStringLiteral(".csv"),
                                       {QStringLiteral(".csv")});
  if (!path.isEmpty()) exportSizes(wearers, path);
}

void KnitFiles::exportSizes(const QString& wearers, const QString& path) {
  exports_.add(path,
               [base = document_.design(), phrases = settings_.phrases(), wearers,
                path](const GoOn& goOn) -> std::optional<QString> {
                 const auto told = [&](const QString& file, const std::string& reason) {
                   return phraseText(
                       phrases, "cli.read",
                       {textParam("file", file.toStdString()), textParam("reason", reason)});
                 };
                 const FileText csv = readPlainFile(wearers, kLargestTable);
                 if (!csv.text) return told(wearers, csv.problem);
                 const WearerTable table = readWearerTable(*csv.text, base, phrases);
                 if (table.problem) return told(wearers, *table.problem);
                 const auto sizes = sizesTable(table, goOn);
                 if (!sizes) return givenUp();
                 if (const auto problem = writeFile(path, sizes->csv))
                   return told(path, problem->toStdString());
                 return std::nullopt;
               });
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
  exports_.add(tr("Printing"), [present = document_.present(), wording = wordingOf(settings_),
                                printer](const GoOn& goOn) {
    const auto derived = present();
    OutputJob job{*derived, wording};
    job.page.goOn = goOn;
    return scye::printChart(job, *printer);
  });
}

void KnitFiles::printBooklet() {
  const auto printer = choose();
  if (!printer) return;
  exports_.add(tr("Printing"), [present = document_.present(), wording = wordingOf(settings_),
                                page = settings_.exportOptions(), printer](const GoOn& goOn) {
    const auto derived = present();
    OutputJob job{*derived, wording, page, {}, today()};
    job.page.goOn = goOn;
    return printOutput(OutputId::Booklet, job, *printer);
  });
}

} // namespace scye
