#include "knitting/knit_files.h"

#include "document/disk.h"
#include "io/wearer_booklets.h"
#include "knitting/directions_page.h"
#include "knitting/knit_print.h"
#include "look/save_dialog.h"
#include "panels/panel_context.h"

#include <QFileDialog>
#include <QPrintDialog>
#include <QPrinter>

namespace scye {
namespace {

// Returns what went wrong.
std::optional<QString> readWearers(const QString& path, const Design& base, const Phrases& phrases,
                                   WearerTable& table) {
  const auto told = [&](const std::string& reason) {
    return phraseText(phrases, "cli.read",
                      {textParam("file", path.toStdString()), textParam("reason", reason)});
  };
  const FileText csv = readPlainFile(path, kLargestTable);
  if (!csv.text) return told(problemText(csv.problem, phrases));
  table = readWearerTable(*csv.text, base, phrases);
  if (table.problem) return told(*table.problem);
  return std::nullopt;
}

QString unwritten(const Phrases& phrases, const QString& path, const std::string& reason) {
  return phraseText(phrases, "cli.write",
                    {textParam("path", path.toStdString()), textParam("reason", reason)});
}
std::optional<QString> unwritten(const Phrases& phrases, const QString& path,
                                 const std::optional<DiskProblem>& problem) {
  if (!problem) return std::nullopt;
  return unwritten(phrases, path, problemText(*problem, phrases));
}

} // namespace

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

QString KnitFiles::askForWearers() {
  return QFileDialog::getOpenFileName(parent_->window(), tr("A table of wearers"),
                                      settings_.lastFolder(), tr("Tables (*.csv)"));
}

void KnitFiles::askSizes() {
  const QString wearers = askForWearers();
  if (wearers.isEmpty()) return;
  const QString path = askWhereToWrite(parent_->window(), tr("The table of their sizes"),
                                       settings_.lastFolder() + u'/' + document_.suggestedName() +
                                           u' ' + tr("sizes") + QStringLiteral(".csv"),
                                       {QStringLiteral(".csv")});
  if (!path.isEmpty()) exportSizes(wearers, path);
}

void KnitFiles::askBooklets() {
  const QString wearers = askForWearers();
  if (wearers.isEmpty()) return;
  const QString folder = QFileDialog::getExistingDirectory(
      parent_->window(), tr("A folder for their booklets"), settings_.lastFolder());
  if (!folder.isEmpty()) exportBooklets(wearers, folder);
}

void KnitFiles::exportSizes(const QString& wearers, const QString& path) {
  exports_.add(path,
               [base = document_.design(), phrases = settings_.phrases(), wearers,
                path](const GoOn& goOn) -> std::optional<QString> {
                 WearerTable table;
                 if (auto problem = readWearers(wearers, base, phrases, table)) return problem;
                 const auto sizes = sizesTable(table, goOn);
                 if (!sizes) return givenUp();
                 return unwritten(phrases, path, writeFile(path, sizes->csv));
               });
}

void KnitFiles::exportBooklets(const QString& wearers, const QString& folder) {
  exports_.add(
      folder,
      [base = document_.design(), wording = wordingOf(settings_), page = settings_.exportOptions(),
       wearers, folder](const GoOn& goOn) -> std::optional<QString> {
        WearerTable table;
        if (auto problem = readWearers(wearers, base, wording.phrases, table)) return problem;
        const auto disk = diskPath(folder);
        const QString report = folder + QStringLiteral("/sizes.csv");
        if (!disk) return unwritten(wording.phrases, folder, kNoName);
        double done = 0; // of the table, while one booklet is made
        ExportOptions each = page;
        if (goOn) each.goOn = [&](double) { return goOn(done); };
        const PageDrawer drawer;
        WearerBooklets booklets(*disk, wording, each, &drawer);
        bool given = false;
        const auto further = [&](double share) {
          done = share;
          given = goOn && !goOn(share);
          return !given && !booklets.problem();
        };
        if (const auto problem = booklets.begin())
          return unwritten(wording.phrases, folder, problem->reason);
        const auto sizes =
            sizesTable(table, further, [&](const TableWearer& wearer, const Derived& derived) {
              booklets.write(wearer, derived);
            });
        if (given || (goOn && !goOn(done))) return givenUp();
        if (const auto& problem = booklets.problem())
          return unwritten(wording.phrases, QString::fromStdString(problem->path.string()),
                           problem->reason);
        return unwritten(wording.phrases, report, writeFile(report, sizes->csv));
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
