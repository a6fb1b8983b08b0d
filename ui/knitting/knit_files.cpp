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

bool KnitFiles::tell(const QString& path, const std::optional<QString>& problem) {
  if (problem)
    Q_EMIT failed(*problem);
  else
    Q_EMIT exported(path);
  return !problem;
}

bool KnitFiles::exportDirectionsTo(const QString& path) {
  return tell(path, exportDirections(document_.derived().directions, wordingOf(settings_), path));
}
bool KnitFiles::exportChartTo(const QString& path) {
  return tell(path, exportChart(document_.derived().knit, document_.design().title, path,
                                settings_.exportOptions()));
}
bool KnitFiles::exportRowsTo(const QString& path) {
  return tell(path, exportRows(document_.derived().knit, path));
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

bool KnitFiles::choose(QPrinter& printer) {
  printer.setDocName(document_.displayName());
  return QPrintDialog(&printer, parent_->window()).exec() == QDialog::Accepted;
}

void KnitFiles::printDirections() {
  QPrinter printer(QPrinter::HighResolution);
  if (choose(printer))
    scye::printDirections(document_.derived().directions, wordingOf(settings_), printer);
}

void KnitFiles::printChart() {
  QPrinter printer(QPrinter::HighResolution);
  if (!choose(printer)) return;
  if (const auto problem =
          scye::printChart(document_.derived().knit, document_.design().title, printer))
    Q_EMIT failed(*problem);
}

} // namespace scye
