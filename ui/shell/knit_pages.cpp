#include "shell/knit_pages.h"

#include <QCoreApplication>

namespace scye {
namespace {

struct PageText {
  Q_DECLARE_TR_FUNCTIONS(KnitPages)
};

} // namespace

KnitPages::KnitPages(Document& document, Attention& attention, Settings& settings, WorkArea& area,
                     KnitFiles& files)
    : directions(area, Stage::Knitting, PageText::tr("Directions"),
                 [&, this] {
                   auto* page = new DirectionsPage(document, attention, settings);
                   QObject::connect(page, &DirectionsPage::pieceChosen, page,
                                    [this](PieceId piece) { chart->showPiece(piece); });
                   return page;
                 }),
      chart(area, Stage::Knitting, PageText::tr("Chart"),
            [&, this] {
              auto* page = new ChartPage(document, attention, settings);
              QObject::connect(page, &ChartPage::pieceChosen, page,
                               [this](PieceId piece) { directions->showPiece(piece); });
              return page;
            }),
      needles(area, Stage::Knitting, PageText::tr("Row by row"),
              [&] { return new NeedlePage(document, attention, settings); }),
      cameOut(area, Stage::Knitting, PageText::tr("As it came out"),
              [&] { return new CameOutPage(document, settings); }),
      diary(area, Stage::Knitting, PageText::tr("Diary"),
            [&] { return new DiaryPage(document, settings); }),
      booklet(area, Stage::Knitting, PageText::tr("Booklet"),
              [&] {
                auto* page = new BookletPage(document, settings);
                QObject::connect(page, &BookletPage::printWanted, &files, &KnitFiles::printBooklet);
                QObject::connect(page, &BookletPage::fileWanted, &files,
                                 [&files] { files.ask(OutputId::Booklet); });
                return page;
              }),
      sizes(area, Stage::MakingUp, PageText::tr("Finished sizes and pins"),
            [&] { return new SizesPage(document, settings); }),
      finish(area, Stage::MakingUp, PageText::tr("Blocking and making up"),
             [&] { return new FinishPage(document, settings); }),
      worn(area, Stage::Drafting, PageText::tr("Worn"),
           [&] { return new WornPage(document, attention, settings); }) {
  QObject::connect(&attention, &Attention::rowsAsked, &area,
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
