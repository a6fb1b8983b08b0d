#include "knitting/directions_page.h"

#include "knitting/lines_view.h"
#include "knitting/take_out.h"
#include "values/choice_box.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace scye {
namespace {

std::vector<PieceId> piecesOf(const Directions& directions) {
  std::vector<PieceId> pieces;
  for (const PieceSteps& piece : directions.pieces)
    pieces.push_back(piece.id);
  return pieces;
}

std::optional<PieceRows> rowsOf(const DirectionLine* line) {
  if (!line || !line->piece || (line->kind != LineKind::Step && line->kind != LineKind::Part))
    return std::nullopt;
  return PieceRows{*line->piece, line->section, line->first, line->last};
}

std::vector<DirectionLine> nothing(const Phrases& phrases) {
  DirectionLine line;
  line.text = phrases.say("page.nothing");
  return {line};
}

} // namespace

Wording wordingOf(const Settings& settings) {
  return {settings.phrases(), settings.terms().toStdString(), settings.unit()};
}

DirectionsPage::DirectionsPage(Document& document, Attention& attention, Settings& settings,
                               QWidget* parent)
    : KnitPage(document, settings, parent), attention_(attention), row_(new QHBoxLayout(this)),
      side_(new QVBoxLayout), pieces_(new PieceList(settings.phrases(), true, this)),
      lines_(new LinesView(settings.phrases(), this)), terms_(new ChoiceBox(this)) {
  const int gap = fontMetrics().averageCharWidth();
  row_->setContentsMargins({});
  row_->setSpacing(0);
  side_->setContentsMargins(gap, gap, gap, gap);
  side_->setSpacing(gap);
  side_->addWidget(pieces_, 1);
  terms_->addItem(tr("US terms"), QStringLiteral("us"));
  terms_->addItem(tr("UK terms"), QStringLiteral("uk"));
  terms_->setAccessibleName(tr("Terms"));
  terms_->setToolTip(tr("Bind off, gauge; or cast off, tension"));
  side_->addWidget(terms_, 0, Qt::AlignTop);
  side_->addWidget(
      new TakeOut(
          tr("The directions"),
          [this] {
            return [present = document_.present(), wording = wordingOf(settings_),
                    name = document_.suggestedName()](const QDir& folder, const GoOn&) {
              const auto derived = present();
              return directionsTaken({*derived, wording, {}, {}, today()}, name, folder);
            };
          },
          this),
      0, Qt::AlignLeft);
  row_->addLayout(side_);
  row_->addWidget(lines_, 1);

  connect(pieces_, &PieceList::chosen, this, [this] {
    refreshSoon();
    const auto place = pieces_->place();
    if (place && place->part == PieceList::Part::Piece) Q_EMIT pieceChosen(place->piece);
  });
  connect(terms_, &QComboBox::activated, this,
          [this] { settings_.setTerms(terms_->currentData().toString()); });
  connect(lines_, &LinesView::currentMoved, this,
          [this] { attention_.chooseRows(rowsOf(lines_->current())); });
  connect(lines_, &LinesView::pointedMoved, this,
          [this] { attention_.pointAtRows(rowsOf(lines_->pointed())); });
  connect(&settings_, &Settings::changed, this, &DirectionsPage::refreshTerms);
  setFocusProxy(lines_);
  refreshTerms();
}

void DirectionsPage::refreshTerms() {
  terms_->setCurrentIndex(terms_->findData(settings_.terms()));
}

void DirectionsPage::showPiece(PieceId piece) {
  const auto before = pieces_->place();
  pieces_->showPiece(piece);
  if (pieces_->place() != before) refreshSoon();
}

void DirectionsPage::showRow(const PieceRows& rows) {
  showPiece(rows.piece);
  toShow_ = rows;
  refreshSoon();
}

std::vector<DirectionLine> DirectionsPage::linesOf(const PieceList::Place& place) const {
  const Directions& directions = document_.derived().directions;
  const Wording wording = wordingOf(settings_);
  if (place.part == PieceList::Part::Piece) return pieceLines(directions, place.piece, wording);
  std::vector<DirectionLine> all = directionLines(directions, wording);
  const auto ofPiece = [](const DirectionLine& line) { return line.piece.has_value(); };
  const auto first = std::find_if(all.begin(), all.end(), ofPiece);
  const auto last = std::find_if(all.rbegin(), all.rend(), ofPiece).base();
  return place.part == PieceList::Part::Before ? std::vector(all.begin(), first)
                                               : std::vector(last, all.end());
}

void DirectionsPage::refresh() {
  pieces_->setPieces(piecesOf(document_.derived().directions));
  const auto place = pieces_->place();
  lines_->setLines(place ? linesOf(*place) : nothing(settings_.phrases()), place == shown_);
  shown_ = place;
  if (toShow_) lines_->goToRow(toShow_->section, toShow_->first);
  toShow_.reset();
}

// Beside the text, or above it where the text would become too narrow to read.
void DirectionsPage::resizeEvent(QResizeEvent* event) {
  const bool across = width() < kNarrow * fontMetrics().averageCharWidth();
  row_->setDirection(across ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
  side_->setDirection(across ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
  pieces_->setAcross(across, width() - terms_->sizeHint().width() - 3 * side_->spacing());
  KnitPage::resizeEvent(event);
}

void DirectionsPage::hideEvent(QHideEvent* event) {
  KnitPage::hideEvent(event);
  attention_.pointAtRows(std::nullopt);
}

} // namespace scye
