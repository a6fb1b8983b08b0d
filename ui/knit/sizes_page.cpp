#include "knit/sizes_page.h"

#include "knit/figure_table.h"
#include "values/value_text.h"

#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include <cmath>

namespace scye {
namespace {

QString say(const std::string& key) {
  return QString::fromStdString(builtinPhrases().say(key));
}

constexpr double kAlike = 0.05; // cm: not worth telling apart

bool sidesAlike(const KnitGarment& knit) {
  return std::abs(knit.left.armhole - knit.right.armhole) < kAlike &&
         std::abs(knit.left.cap - knit.right.cap) < kAlike;
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
  sizes_ = makeBlock(tr("Sizes"), {tr("Size"), tr("Wanted"), tr("Knitted"), tr("Difference")});
  edges_ = makeBlock(tr("Armhole and cap"),
                     {tr("Wearer's"), tr("Armhole"), tr("Cap"), tr("Ease"), tr("Off by")},
                     tr("Off by: so much more or less than the cap ease that is wanted."));
  shaping_ = makeBlock(tr("Shaping"), {tr("Edge"), tr("Lines")});
  const QStringList marks{tr("At"),    tr("Back"), tr("Cap"), tr("Ease"),
                          tr("Front"), tr("Cap"),  tr("Ease")};
  const QString how = tr("Rows of each piece. Pin each to its row of the cap, then let in the ease "
                         "between the pins.");
  marks_[0] = makeBlock(tr("Pin marks, right armhole"), marks);
  marks_[1] = makeBlock(tr("Pin marks, left armhole"), marks, how);
  setFocusProxy(sizes_.table);
}

SizesPage::Block SizesPage::makeBlock(const QString& title, const QStringList& columns,
                                      const QString& note) {
  Block block{new QLabel(title, content_), new FigureTable(title, columns, content_)};
  QFont bold = block.title->font();
  bold.setBold(true);
  bold.setPointSizeF(1.15 * bold.pointSizeF());
  block.title->setFont(bold);
  block.note = new QLabel(note, content_);
  block.note->setForegroundRole(QPalette::PlaceholderText);
  block.note->setWordWrap(true);
  return block;
}

QString SizesPage::length(double cm, bool sign) const {
  if (std::abs(cm) < kAlike) cm = 0; // no sign before nothing
  return valueText(FieldKind::Length, cm, {settings_.unit(), true, sign, true});
}

// Fine enough for what is otherwise hidden in the last figure.
QString SizesPage::fine(double cm) const {
  const bool inches = settings_.unit() == LengthUnit::Inch;
  const double value = inches ? cm / kCmPerInch : 10 * cm;
  const int places = inches ? 2 : 1;
  QString text = QString::number(std::abs(value), 'f', places);
  if (text.toDouble() > 0) text.prepend(value > 0 ? u'+' : u'-');
  return text + QChar(0x202f) + (inches ? unitText(settings_.unit()) : tr("mm"));
}

void SizesPage::fillSizes(const KnitGarment& knit) {
  QList<FigureRow> rows;
  for (const Rounded& r : knit.rounded)
    rows.append({say("knitted." + r.key),
                 {length(r.wanted), length(r.knitted), length(r.knitted - r.wanted, true)}});
  sizes_.table->setRows(rows);
}

void SizesPage::fillEdges(const KnitGarment& knit) {
  QList<FigureRow> edges, lines;
  if (knit.capKnitted) {
    const auto row = [&](const QString& name, const ArmholeFit& fit) {
      edges.append({name,
                    {length(fit.armhole), length(fit.cap), length(fit.cap - fit.armhole, true),
                     fine(fit.mismatch(knit.easeWanted))}});
    };
    if (sidesAlike(knit)) {
      row(tr("Both sides"), knit.right);
    } else {
      row(tr("Left side"), knit.left);
      row(tr("Right side"), knit.right);
    }
  }
  const auto line = [&](const QString& name, const Schedule& schedule) {
    lines.append({name, {QString::number(schedule.lines())}});
  };
  if (!knit.pieces.empty()) {
    line(tr("Back armhole"), knit.backArmhole.schedule);
    line(tr("Front armhole"), knit.frontArmhole.schedule);
    if (knit.capKnitted) line(tr("Sleeve cap"), knit.cap.schedule);
  }
  edges_.table->setRows(edges);
  shaping_.table->setRows(lines);
  shaping_.note->setText(tr("The knitted edges leave the drafted curves by %1 stitches at most.")
                             .arg(QString::number(knit.deviation, 'f', 1)));
}

// Back and front side by side: both begin at the underarm and end at the shoulder, but one of them
// may have a mark more in between.
void SizesPage::fillMarks(const Derived& derived) {
  const std::vector<SeamMarks> sides = seamMarks(derived.draft, derived.knit);
  for (const bool left : {false, true}) {
    const std::vector<SeamMark> none;
    const std::vector<SeamMark>*back = &none, *front = &none;
    for (const SeamMarks& side : sides)
      if (side.wearersLeft == left) (side.side == BodySide::Back ? back : front) = &side.marks;
    QList<FigureRow> rows;
    auto b = back->begin(), f = front->begin();
    while (b != back->end() || f != front->end()) {
      const auto extra = [](const SeamMark& mark) { return mark.kind == NotchKind::Between; };
      const bool onlyBack = f == front->end() || (b != back->end() && extra(*b) && !extra(*f));
      const bool onlyFront = !onlyBack && (b == back->end() || (extra(*f) && !extra(*b)));
      const QString name = say("mark." + std::string(notchKey((onlyFront ? f : b)->kind)));
      QStringList figures = onlyFront ? QStringList{{}, {}, {}} : markFigures(*b);
      figures += onlyBack ? QStringList{{}, {}, {}} : markFigures(*f);
      rows.append({name, figures});
      if (!onlyFront) ++b;
      if (!onlyBack) ++f;
    }
    marks_[left ? 1 : 0].table->setRows(rows);
  }
}

QStringList SizesPage::markFigures(const SeamMark& mark) const {
  return {QString::number(mark.armhole.row), QString::number(mark.cap.row), length(mark.ease)};
}

void SizesPage::refresh() {
  const Derived& derived = document_.derived();
  fillSizes(derived.knit);
  fillEdges(derived.knit);
  fillMarks(derived);
  arrange();
}

// In two columns where there is room, else one below the other.
void SizesPage::arrange() {
  const int gap = fontMetrics().averageCharWidth();
  const int margin = 2 * gap, line = fontMetrics().height();
  const QList<QList<const Block*>> groups{{&sizes_, &shaping_}, {&edges_, &marks_[0], &marks_[1]}};
  int widest[2] = {};
  for (int g = 0; g < 2; ++g)
    for (const Block* block : groups[g])
      widest[g] = std::max(widest[g], block->table->sizeHint().width());
  const bool beside = widest[0] + widest[1] + 6 * gap <= scroll_->viewport()->width();
  int y = margin / 2, bottom = 0;
  for (int g = 0; g < 2; ++g) {
    int x = margin;
    if (g == 1 && beside) x += widest[0] + 4 * gap, bottom = y, y = margin / 2;
    for (const Block* block : groups[g]) {
      const bool any = !block->table->rows().isEmpty();
      block->title->setVisible(any);
      block->table->setVisible(any);
      block->note->setVisible(any && !block->note->text().isEmpty());
      if (!any) continue;
      const auto put = [&](QWidget* widget, const QSize& size) {
        widget->setGeometry(QRect(QPoint(x, y), size));
        y += size.height();
      };
      put(block->title, block->title->sizeHint());
      y += gap / 2;
      put(block->table, block->table->sizeHint());
      if (!block->note->isHidden()) {
        const int wide = std::max(widest[g], 50 * gap);
        y += gap / 2;
        put(block->note, {wide, block->note->heightForWidth(wide)});
      }
      y += line;
    }
  }
  const int wide =
      margin + (beside ? widest[0] + 4 * gap + widest[1] : std::max(widest[0], widest[1]));
  content_->setMinimumSize(wide, std::max(y, bottom));
}

void SizesPage::resizeEvent(QResizeEvent* event) {
  KnitPage::resizeEvent(event);
  arrange();
}

} // namespace scye
