#include "knitting/diary_page.h"

#include "io/outputs.h"
#include "knitting/said.h"
#include "look/scrolled_column.h"
#include "progress/diary.h"
#include "values/choice_box.h"

#include <QComboBox>
#include <QDate>
#include <QDateEdit>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace scye {
namespace {

using Kind = DiaryEntry::Kind;

} // namespace

DiaryPage::DiaryPage(Document& document, Settings& settings, QWidget* parent)
    : KnitPage(document, settings, parent), list_(new QListWidget), kind_(new ChoiceBox),
      piece_(new ChoiceBox), day_(new QDateEdit(QDate::currentDate())), text_(new QLineEdit),
      write_(new QPushButton(tr("&Write it down"))),
      strike_(new QPushButton(tr("Take the chosen line &out"))) {
  QVBoxLayout* column = scrolledColumn(*this);
  auto* about = new QLabel(tr("What is begun, measured, planned anew and ripped is written down by "
                              "itself. Whatever else you want to remember goes in here."));
  about->setWordWrap(true);
  column->addWidget(about);
  list_->setWordWrap(true);
  list_->setResizeMode(QListView::Adjust);
  list_->setMinimumHeight(8 * fontMetrics().height());
  list_->setAccessibleName(tr("Diary"));
  column->addWidget(list_, 1);
  column->addWidget(strike_, 0, Qt::AlignLeft);

  kind_->addItem(tr("Decided"), int(Kind::Decision));
  kind_->addItem(tr("Measured"), int(Kind::Measured));
  kind_->addItem(tr("Swatch"), int(Kind::Swatch));
  kind_->addItem(tr("Seam"), int(Kind::Seam));
  kind_->setAccessibleName(tr("What kind of entry"));
  piece_->setAccessibleName(tr("Of which piece"));
  day_->setAccessibleName(tr("On which day"));
  day_->setCalendarPopup(true);
  text_->setPlaceholderText(tr("What is to be remembered"));
  text_->setAccessibleName(text_->placeholderText());
  text_->setMaxLength(2000);
  auto* grid = new QGridLayout;
  grid->addWidget(kind_, 0, 0);
  grid->addWidget(piece_, 0, 1);
  grid->addWidget(day_, 0, 2);
  grid->setColumnStretch(3, 1);
  grid->addWidget(text_, 1, 0, 1, 4);
  column->addLayout(grid);
  column->addWidget(write_, 0, Qt::AlignLeft);
  setFocusProxy(text_);

  const auto enable = [this] { write_->setEnabled(!text_->text().trimmed().isEmpty()); };
  enable();
  strike_->setEnabled(false);
  connect(text_, &QLineEdit::textChanged, this, enable);
  connect(text_, &QLineEdit::returnPressed, this, &DiaryPage::add);
  connect(write_, &QPushButton::clicked, this, &DiaryPage::add);
  connect(strike_, &QPushButton::clicked, this, &DiaryPage::takeOut);
  connect(list_, &QListWidget::currentRowChanged, this, [this](int) {
    const QListWidgetItem* item = list_->currentItem();
    strike_->setEnabled(item && item->data(Qt::UserRole).toInt() >= 0);
  });
  refreshWithWork();
}

void DiaryPage::add() {
  const std::string text = text_->text().trimmed().toStdString();
  if (text.empty()) return;
  Work work = document_.work();
  const int piece = piece_->currentData().toInt();
  writeDown(work, {.on = day_->date().toString(Qt::ISODate).toStdString(),
                   .kind = Kind(kind_->currentData().toInt()),
                   .piece = piece < 0 ? std::nullopt : std::optional(PieceId(piece)),
                   .text = text});
  text_->clear();
  document_.setWork(work);
}

void DiaryPage::takeOut() {
  const QListWidgetItem* item = list_->currentItem();
  const int at = item ? item->data(Qt::UserRole).toInt() : -1;
  Work work = document_.work();
  if (at < 0 || at >= int(work.diary.size())) return;
  work.diary.erase(work.diary.begin() + at);
  document_.setWork(work);
}

void DiaryPage::fillPieces() {
  const QVariant before = piece_->currentData();
  const QSignalBlocker quiet(piece_);
  piece_->clear();
  piece_->addItem(tr("Whole garment"), -1);
  for (const PieceId id : piecesToKnit(document_.derived().knit))
    piece_->addItem(said(workPieceName(settings_.phrases(), id)), int(id));
  piece_->setCurrentIndex(std::max(0, piece_->findData(before)));
}

void DiaryPage::refresh() {
  fillPieces();
  const Work& work = document_.work();
  const QSignalBlocker quiet(list_);
  const int at = list_->currentRow();
  list_->clear();
  for (const DiaryLine& line :
       diaryLines(document_.design(), work, settings_.phrases(), settings_.unit())) {
    const QDate day = QDate::fromString(said(line.on), Qt::ISODate);
    const QString on = day.isValid() ? locale().toString(day, QLocale::ShortFormat) : said(line.on);
    auto* item = new QListWidgetItem(
        line.on.empty() ? said(line.text) : tr("%1: %2").arg(on, said(line.text)), list_);
    item->setData(Qt::UserRole, line.entry);
  }
  if (list_->count() == 0) {
    auto* none = new QListWidgetItem(said(settings_.phrases().say("diary.none")), list_);
    none->setData(Qt::UserRole, -1);
  }
  list_->setCurrentRow(std::clamp(at, -1, list_->count() - 1));
  const QListWidgetItem* item = list_->currentItem();
  strike_->setEnabled(item && item->data(Qt::UserRole).toInt() >= 0);
}

} // namespace scye
