#include "knitting/sizes_page.h"

#include "knitting/directions_page.h"
#include "knitting/ease_between.h"
#include "knitting/figure_table.h"
#include "knitting/uneven_seam_box.h"
#include "values/value_text.h"

#include <QEvent>
#include <QLabel>
#include <QLocale>
#include <QScrollArea>
#include <QVBoxLayout>

#include <cmath>

namespace scye {
namespace {

constexpr double kAlike = 0.05; // cm: not worth telling apart

bool sidesAlike(const KnitGarment& knit) {
  return std::abs((knit.left.armhole - knit.right.armhole).mean()) < kAlike &&
         std::abs((knit.left.cap - knit.right.cap).mean()) < kAlike;
}

} // namespace

SizesPage::SizesPage(Document& document, Settings& settings, QWidget* parent)
    : KnitPage(document, settings, parent), scroll_(new QScrollArea(this)), content_(new QWidget) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins({});
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setWidgetResizable(true);
  scroll_->setFocusPolicy(Qt::NoFocus);
  scroll_->setWidget(content_);
  content_->setBackgroundRole(QPalette::Base);
  content_->setAutoFillBackground(true);
  column->addWidget(scroll_);
  sizes_ =
      makeTable(tr("Finished sizes"), {tr("Size"), tr("Wanted"), tr("Knitted"), tr("Difference")});
  edges_ = makeTable(tr("Armhole and cap"),
                     {tr("Wearer's"), tr("Armhole"), tr("Cap"), tr("Ease"), tr("Off by")},
                     tr("Off by: so much more or less than the cap ease that is wanted."));
  shaping_ = makeTable(tr("Shaping"), {tr("Edge"), tr("Lines to knit by")});
  const QStringList marks{tr("Pin"), tr("Armhole"), tr("Cap"), tr("Ease")};
  const QString how =
      tr("Rows from the underarm up, in brackets those of the whole piece; on the crown "
         "stitches from its end on that side. Ease: let in since the pin before. The "
         "numbers are those of the drawing.");
  marks_[0] = makeTable(tr("Pin marks, right armhole"), marks);
  marks_[1] = makeTable(tr("Pin marks, left armhole"), marks, how);
  ease_ = new EaseBetween(settings.phrases(), content_);
  between_ = makeBlock(tr("Ease between marks"), ease_);
  seam_ = new UnevenSeamBox(content_);
  uneven_ = makeBlock(tr("Seam of unequal rows"), seam_,
                      tr("For any straight seam: the rows too many are spread over all of it."));
  setFocusProxy(sizes_.table);
  // Room that changes (a scroll bar takes some too), and answers that grow with the questions.
  for (QObject* watched : {static_cast<QObject*>(scroll_->viewport()), static_cast<QObject*>(ease_),
                           static_cast<QObject*>(seam_)})
    watched->installEventFilter(this);
}

SizesPage::Block SizesPage::makeBlock(const QString& title, QWidget* body, const QString& note) {
  Block block{new QLabel(title, content_), body, new QLabel(note, content_)};
  QFont bold = block.title->font();
  bold.setBold(true);
  bold.setPointSizeF(1.15 * bold.pointSizeF());
  block.title->setFont(bold);
  block.note->setForegroundRole(QPalette::PlaceholderText);
  block.note->setWordWrap(true);
  return block;
}

SizesPage::Block SizesPage::makeTable(const QString& title, const QStringList& columns,
                                      const QString& note) {
  auto* table = new FigureTable(title, columns, content_);
  Block block = makeBlock(title, table, note);
  block.table = table;
  return block;
}

bool SizesPage::Block::any() const {
  return !table || !table->rows().isEmpty();
}

QString SizesPage::phraseOf(const std::string& key) const {
  return QString::fromStdString(settings_.phrases().say(key));
}

QString SizesPage::length(double cm, bool sign) const {
  if (std::abs(cm) < kAlike) cm = 0; // no sign before nothing
  return valueText(settings_.phrases(), FieldKind::Length, cm,
                   {settings_.unit(), true, sign, true});
}

// Fine enough for what is otherwise hidden in the last figure.
QString SizesPage::fine(double cm) const {
  const bool inches = settings_.unit() == LengthUnit::Inch;
  const double value = inches ? cm / kCmPerInch : 10 * cm;
  const int places = inches ? 2 : 1;
  const std::string text = settings_.phrases().rules().fixedNumber(value, places, true);
  return withUnit(settings_.phrases(), inches ? "unit.length.inch" : "unit.length.mm",
                  QString::fromStdString(text));
}

void SizesPage::fillSizes(const KnitGarment& knit) {
  QList<FigureRow> rows;
  for (const Rounded& r : knit.rounded)
    rows.append({phraseOf("knitted." + r.key),
                 {length(r.wanted), length(r.knitted), length(r.knitted - r.wanted, true)}});
  sizes_.table->setRows(rows);
}

void SizesPage::fillEdges(const KnitGarment& knit) {
  QList<FigureRow> edges, lines;
  if (knit.capKnitted) {
    const auto row = [&](const QString& name, const ArmholeFit& fit) {
      edges.append(
          {name,
           {length(fit.armhole.mean()), length(fit.cap.mean()),
            length((fit.cap - fit.armhole).mean(), true), fine(fit.mismatch(knit.easeWanted))}});
    };
    if (sidesAlike(knit)) {
      row(tr("Both sides"), knit.right);
    } else {
      row(tr("Left side"), knit.left);
      row(tr("Right side"), knit.right);
    }
  }
  const auto line = [&](const QString& name, const Schedule& schedule) {
    lines.append({name, {QLocale().toString(schedule.lines())}});
  };
  if (!knit.pieces.empty()) {
    line(tr("Back armhole"), knit.backArmhole.schedule);
    line(tr("Front armhole"), knit.frontArmhole.schedule);
    if (knit.capKnitted)
      line(tr("Sleeve cap"),
           knit.cap.front.lines() > knit.cap.back.lines() ? knit.cap.front : knit.cap.back);
  }
  edges_.table->setRows(edges);
  shaping_.table->setRows(lines);
  shaping_.note->setText(
      tr("The knitted edges leave the drafted curves by %1 stitches at most.")
          .arg(QString::fromStdString(settings_.phrases().rules().fixedNumber(knit.deviation, 1))));
}

// First the back's, then the front's, as the directions tell them; none of a cap that cannot fit.
void SizesPage::fillMarks(const Derived& derived) {
  const Finishing& finishing = derived.directions.finishing;
  const std::vector<SeamMarks> marks =
      derived.draft.cap.found ? finishing.makingUp.marks : std::vector<SeamMarks>();
  QList<FigureRow> rows[2];
  for (const SeamMarks& side : marks) {
    const QString name = side.half == ArmholeHalf::Back ? tr("Back") : tr("Front");
    int number = 0;
    for (const SeamMark& mark : side.marks) {
      const QString what = phraseOf("mark." + std::string(notchKey(mark.kind)));
      const QString pin = tr("%1 %L2").arg(name).arg(++number);
      rows[side.wearersLeft].append(
          {mark.kind == NotchKind::Between ? pin : tr("%1, %2").arg(pin, what), markFigures(mark)});
    }
  }
  for (int left = 0; left < 2; ++left)
    marks_[left].table->setRows(rows[left]);
  ease_->setMarks(marks, settings_.unit());
  ease_->setEnabled(!marks.empty());
  seam_->setWording(wordingOf(settings_));
  seam_->suggest(std::max(1, finishing.sideBack), std::max(1, finishing.sideFront));
}

QStringList SizesPage::markFigures(const SeamMark& mark) const {
  const auto place = [&](const PinPlace& p) {
    switch (p.flat) {
    case Flat::Underarm:
      return tr("underarm, %n sts", nullptr, p.stitches);
    case Flat::Crown:
      return tr("crown, %n sts", nullptr, p.stitches);
    case Flat::None:
      break;
    }
    return tr("%L1 (%L2)").arg(p.up).arg(p.row);
  };
  return {place(mark.armhole), place(mark.cap), length(mark.ease)};
}

void SizesPage::refresh() {
  const Derived& derived = document_.derived();
  fillSizes(derived.knit);
  fillEdges(derived.knit);
  fillMarks(derived);
  arrange();
}

// In two columns where there is room, else one below the other. Tables may ask for more than the
// room there is; notes wrap within it.
void SizesPage::arrange() {
  const int gap = fontMetrics().averageCharWidth();
  const int margin = 2 * gap, line = fontMetrics().height(), between = 4 * gap;
  const int room = scroll_->viewport()->width() - 2 * margin;
  const QList<QList<const Block*>> groups{{&sizes_, &shaping_, &uneven_},
                                          {&edges_, &marks_[0], &marks_[1], &between_}};
  int wide[2] = {};
  for (int g = 0; g < 2; ++g) {
    wide[g] = std::min(50 * gap, room);
    for (const Block* block : groups[g])
      if (block->any()) wide[g] = std::max(wide[g], block->body->sizeHint().width());
  }
  const bool beside = wide[0] + between + wide[1] <= room;
  int y = margin / 2, bottom = 0;
  for (int g = 0; g < 2; ++g) {
    int x = margin;
    if (g == 1 && beside) x += wide[0] + between, bottom = y, y = margin / 2;
    for (const Block* block : groups[g]) {
      const bool any = block->any();
      block->title->setVisible(any);
      block->body->setVisible(any);
      block->note->setVisible(any && !block->note->text().isEmpty());
      if (!any) continue;
      const auto put = [&](QWidget* widget, const QSize& size) {
        widget->setGeometry(QRect(QPoint(x, y), size));
        y += size.height();
      };
      put(block->title, block->title->sizeHint());
      y += gap / 2;
      put(block->body, block->body->sizeHint());
      if (!block->note->isHidden()) {
        const int noteWide = std::min(wide[g], room);
        y += gap / 2;
        put(block->note, {noteWide, block->note->heightForWidth(noteWide)});
      }
      y += line;
    }
  }
  const int used = beside ? wide[0] + between + wide[1] : std::max(wide[0], wide[1]);
  content_->setMinimumSize(margin + used, std::max(y, bottom));
}

bool SizesPage::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == (watched == scroll_->viewport() ? QEvent::Resize : QEvent::LayoutRequest))
    arrange();
  return KnitPage::eventFilter(watched, event);
}

} // namespace scye
