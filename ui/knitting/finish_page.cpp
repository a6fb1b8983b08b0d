#include "knitting/finish_page.h"

#include "io/outputs.h"
#include "knitting/big_text.h"
#include "knitting/directions_page.h"
#include "knitting/figure_table.h"
#include "knitting/said.h"
#include "look/scrolled_column.h"
#include "progress/blocking.h"
#include "progress/diary.h"
#include "values/value_text.h"

#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace scye {

FinishPage::FinishPage(Document& document, Settings& settings, QWidget* parent)
    : KnitPage(document, settings, parent), now_(new BigText(nullptr)),
      sizes_(new FigureTable(
          tr("Sizes to block to"),
          {tr("Piece"), tr("Wanted"), tr("Knitted"), tr("Measured"), tr("Pin out to")}, nullptr)),
      list_(new QListWidget), seam_(new QDoubleSpinBox) {
  QVBoxLayout* column = scrolledColumn(*this);
  auto* note = new QLabel(tr("Wool can be blocked by about 3 % either way (common practice). * is "
                             "farther off than that: it will not stay."));
  note->setWordWrap(true);
  auto* seamRow = new QHBoxLayout;
  auto* seamName = new QLabel(tr("The last armhole &seam came out too long (+) by"));
  seamName->setWordWrap(true);
  seamName->setBuddy(seam_);
  seam_->setRange(-20, 20);
  seam_->setDecimals(1);
  seam_->setSingleStep(0.1);
  seam_->setKeyboardTracking(false);
  seam_->setFocusPolicy(Qt::StrongFocus);
  seam_->setAccessibleName(tr("How far the last seam came out"));
  seamRow->addWidget(seamName, 1);
  seamRow->addWidget(seam_);
  column->addWidget(now_);
  list_->setAccessibleName(tr("Making up, to tick off"));
  list_->setWordWrap(true);
  list_->setResizeMode(QListView::Adjust);
  list_->setMinimumHeight(12 * fontMetrics().height());
  column->addWidget(list_, 1);
  column->addWidget(sizes_);
  column->addWidget(note);
  column->addLayout(seamRow);
  setFocusProxy(list_);

  connect(list_, &QListWidget::currentRowChanged, this, &FinishPage::tellChosen);
  connect(list_, &QListWidget::itemChanged, this, [this](const QListWidgetItem* item) {
    Work work = document_.work();
    const std::string key = item->data(Qt::UserRole).toString().toStdString();
    std::erase(work.done, key);
    if (item->checkState() == Qt::Checked) work.done.push_back(key);
    document_.setWork(work);
  });
  connect(seam_, &QDoubleSpinBox::valueChanged, this, [this](double value) {
    Work work = document_.work();
    writeDownLastSeam(work, value * (settings_.unit() == LengthUnit::Inch ? kCmPerInch : 1),
                      today(), settings_.phrases(), settings_.unit());
    document_.setWork(work);
  });
  refreshWithWork();
}

void FinishPage::refresh() {
  fillSizes();
  fillList();
  const double unit = settings_.unit() == LengthUnit::Inch ? kCmPerInch : 1;
  const QSignalBlocker quiet(seam_);
  const UnitWords words = unitWords(settings_.phrases(), lengthPhrase(settings_.unit()));
  seam_->setPrefix(words.before);
  seam_->setSuffix(words.after);
  seam_->setValue(document_.work().lastSeam.value_or(0) / unit);
}

void FinishPage::fillSizes() {
  const Derived& derived = document_.derived();
  const auto length = [&](double cm) {
    return said(settings_.phrases().length(cm, settings_.unit()));
  };
  QList<FigureRow> rows;
  for (const PieceSize& s :
       pieceSizes(derived.draft, designedIn(derived), derived.knit, document_.work()))
    rows.append({tr("%1: %2").arg(
                     said(workPieceName(settings_.phrases(), s.piece)),
                     said(settings_.phrases().say("size." + std::string(kPieceSizeKeys[s.what])))),
                 {length(s.wanted), length(s.knitted),
                  s.measured ? length(*s.measured) : QStringLiteral("–"),
                  s.canBlock ? length(s.pinOut) : tr("%1 *").arg(length(s.pinOut))}});
  sizes_->setRows(rows);
}

void FinishPage::fillList() {
  const auto items = makingUpList(document_.derived().directions, wordingOf(settings_));
  const QSignalBlocker quiet(list_);
  const int at = list_->currentRow();
  const std::vector<std::string>& done = document_.work().done;
  while (list_->count() > int(items.size()))
    delete list_->takeItem(list_->count() - 1);
  for (int i = 0; i < int(items.size()); ++i) {
    const MakingUpItem& item = items[std::size_t(i)];
    if (i >= list_->count()) list_->addItem(QString());
    QListWidgetItem* row = list_->item(i);
    row->setText(said(item.text));
    row->setData(Qt::UserRole, said(item.key));
    row->setFlags(row->flags() | Qt::ItemIsUserCheckable);
    row->setCheckState(std::find(done.begin(), done.end(), item.key) != done.end() ? Qt::Checked
                                                                                   : Qt::Unchecked);
  }
  list_->setCurrentRow(std::clamp(at, 0, std::max(0, list_->count() - 1)));
  tellChosen();
}

void FinishPage::tellChosen() {
  const QListWidgetItem* item = list_->currentItem();
  now_->setText(item ? item->text() : QString());
}

} // namespace scye
