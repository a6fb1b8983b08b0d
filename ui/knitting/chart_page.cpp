#include "knitting/chart_page.h"

#include "knitting/chart_view.h"
#include "knitting/directions_page.h"
#include "knitting/piece_list.h"
#include "knitting/take_out.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace scye {

ChartPage::ChartPage(Document& document, Attention& attention, Settings& settings, QWidget* parent)
    : KnitPage(document, settings, parent), attention_(attention), beside_(new QHBoxLayout(this)),
      pieces_(new PieceList(settings.phrases(), false, this)),
      view_(new ChartView(settings.phrases(), this)), row_(new QLabel(this)) {
  const int gap = fontMetrics().averageCharWidth();
  beside_->setContentsMargins({});
  beside_->setSpacing(0);
  auto* side = new QVBoxLayout;
  side->setContentsMargins(gap, gap, gap, gap);
  side->addWidget(pieces_, 1);
  side->addWidget(
      new TakeOut(
          tr("The chart"),
          [this] {
            return [present = document_.present(), wording = wordingOf(settings_),
                    page = settings_.exportOptions(), piece = shown_,
                    name = document_.suggestedName()](const QDir& folder, const GoOn& goOn) {
              const auto derived = present();
              OutputJob job{*derived, wording, page, {}, today(), piece};
              job.page.goOn = goOn;
              const QString of = piece ? QString::fromStdString(wording.phrases.say(
                                             "piece." + std::string(pieceKey(*piece))))
                                       : QString();
              return pictureTaken(OutputId::Chart, job, (name + u' ' + of).trimmed(), folder);
            };
          },
          this),
      0, Qt::AlignLeft);
  beside_->addLayout(side);
  auto* column = new QVBoxLayout;
  column->setSpacing(0);
  column->addWidget(view_, 1);
  row_->setContentsMargins(gap, gap / 2, gap, gap / 2);
  row_->setAccessibleName(tr("Row"));
  row_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  row_->setWordWrap(true);
  column->addWidget(row_);
  beside_->addLayout(column, 1);

  connect(pieces_, &PieceList::chosen, this, [this] {
    refreshSoon();
    if (const auto place = pieces_->place()) Q_EMIT pieceChosen(place->piece);
  });
  connect(view_, &ChartView::placeMoved, this, [this] {
    name();
    const auto& place = view_->place();
    attention_.pointAtRows(place && shown_ ? std::optional(PieceRows{*shown_, place->section,
                                                                     place->row, place->lastRow})
                                           : std::nullopt);
  });
  connect(&attention_, &Attention::rowsChanged, this, [this] {
    if (isVisible()) light();
  });
  setFocusProxy(view_);
  name();
}

void ChartPage::showPiece(PieceId piece) {
  const auto before = pieces_->place();
  pieces_->showPiece(piece);
  if (pieces_->place() != before) refreshSoon();
}

void ChartPage::light() {
  const auto& rows = attention_.chosenRows();
  const bool here = rows && rows->piece == shown_ && rows->last > 0;
  view_->setLit(here ? std::optional(Span{std::max(1, rows->first), rows->last + 1})
                     : std::nullopt);
}

void ChartPage::name() {
  const auto& place = view_->place();
  QString text = tr("Point at a row, or use the up and down keys.");
  if (place) {
    const Phrases& phrases = settings_.phrases();
    text = QString::fromStdString(phrases.rules().capitalised(placeText(*place, phrases)));
    if (place->stitch > 0) text += tr("; stitch %L1").arg(place->stitch);
  }
  row_->setText(text);
  makeRoomForRow();
  view_->setAccessibleDescription(text);
  row_->setForegroundRole(place ? QPalette::WindowText : QPalette::PlaceholderText);
}

// What needed more lines once keeps them, so that the chart stays still under the pointer.
void ChartPage::makeRoomForRow() {
  row_->setMinimumHeight(
      std::max(row_->minimumHeight(), row_->heightForWidth(std::max(1, view_->width()))));
}

void ChartPage::refresh() {
  const KnitGarment& knit = document_.derived().knit;
  std::vector<PieceId> pieces;
  for (const KnitPiece& piece : knit.pieces)
    pieces.push_back(piece.id);
  pieces_->setPieces(pieces);
  const auto chosen = pieces_->place();
  const KnitPiece* piece = chosen ? knit.piece(chosen->piece) : nullptr;
  const auto before = shown_;
  shown_ = piece ? std::optional(piece->id) : std::nullopt;
  if (!piece) {
    view_->setNothing();
    return;
  }
  view_->setPiece(*piece, piece->fabric(knit.lattice.size), shown_ != before);
  light();
  const auto& rows = attention_.chosenRows();
  if (shown_ != before && rows && rows->piece == shown_) view_->showRow(std::max(1, rows->first));
  name();
}

void ChartPage::showEvent(QShowEvent* event) {
  KnitPage::showEvent(event);
  light();
}

void ChartPage::resizeEvent(QResizeEvent* event) {
  const int em = fontMetrics().averageCharWidth();
  const bool across = width() < kNarrow * em;
  beside_->setDirection(across ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
  pieces_->setAcross(across, width() - 2 * em);
  KnitPage::resizeEvent(event);
  row_->setMinimumHeight(0);
  makeRoomForRow();
}

void ChartPage::hideEvent(QHideEvent* event) {
  KnitPage::hideEvent(event);
  attention_.pointAtRows(std::nullopt);
}

} // namespace scye
