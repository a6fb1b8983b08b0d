#include "shell/knit_pages.h"

#include "shell/work_area.h"

#include <QCoreApplication>

namespace scye {
namespace {

struct PageText {
  Q_DECLARE_TR_FUNCTIONS(KnitPages)
};

} // namespace

KnitPages::KnitPages(Document& document, Attention& attention, Settings& settings, WorkArea& area)
    : directions(new DirectionsPage(document, attention, settings)),
      chart(new ChartPage(document, attention, settings)), sizes(new SizesPage(document, settings)),
      worn(new WornPage(document, settings)),
      needles(new NeedlePage(document, attention, settings)),
      cameOut(new CameOutPage(document, settings)), finish(new FinishPage(document, settings)) {
  area.addPage(Stage::Knitting, PageText::tr("Directions"), directions);
  area.addPage(Stage::Knitting, PageText::tr("Chart"), chart);
  area.addPage(Stage::Knitting, PageText::tr("Row by row"), needles);
  area.addPage(Stage::Knitting, PageText::tr("As it came out"), cameOut);
  area.addPage(Stage::MakingUp, PageText::tr("Finished sizes and pins"), sizes);
  area.addPage(Stage::MakingUp, PageText::tr("Blocking and making up"), finish);
  area.addPage(Stage::Drafting, PageText::tr("Worn"), worn);
  QObject::connect(directions, &DirectionsPage::pieceChosen, chart, &ChartPage::showPiece);
  QObject::connect(chart, &ChartPage::pieceChosen, directions, &DirectionsPage::showPiece);
  QObject::connect(&attention, &Attention::rowsAsked, directions,
                   [this, &attention](const PieceRows& rows) {
                     directions->showRow(rows);
                     chart->showPiece(rows.piece);
                     attention.chooseRows(rows);
                   });
  QObject::connect(&document, &Document::changed, &attention,
                   [&attention](const Document::Event& event) {
                     if (!event.replaced) return;
                     attention.chooseRows(std::nullopt);
                     attention.pointAtRows(std::nullopt);
                   });
}

} // namespace scye
