#include "knitting/knit_files.h"

#include "knitting/directions_page.h"
#include "knitting/knit_print.h"
#include "look/save_dialog.h"
#include "panels/panel_context.h"

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

} // namespace scye
