#include "guide/guide_window.h"

#include "canvas/picture_widget.h"
#include "guide/guide_sheet_file.h"
#include "look/save_dialog.h"
#include "panels/panel_context.h"
#include "values/choice_box.h"

#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QVBoxLayout>

namespace scye {

GuideWindow::GuideWindow(Document& document, Settings& settings, QWidget* parent)
    : QWidget(parent, Qt::Window), document_(document), settings_(settings), where_(new ChoiceBox),
      list_(new QListWidget), title_(new QLabel),
      picture_(new PictureWidget([this](double height, int) { return draw(height); }, {1})),
      text_(new QLabel), previous_(new QPushButton(tr("Previous"))),
      next_(new QPushButton(tr("Next"))) {
  setWindowTitle(tr("Measuring guide"));
  const int em = fontMetrics().averageCharWidth();
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(2 * em, 2 * em, 2 * em, 2 * em);
  row->setSpacing(2 * em);
  row->addWidget(makeSide());
  row->addWidget(makePage(), 1);
  resize(130 * em, 110 * em);

  connect(where_, &QComboBox::currentIndexChanged, this, [this] {
    const auto before = measurement();
    fillList();
    showMeasurement(before, where());
  });
  connect(list_, &QListWidget::currentRowChanged, this, &GuideWindow::refresh);
  connect(previous_, &QAbstractButton::clicked, this, [this] { step(-1); });
  connect(next_, &QAbstractButton::clicked, this, [this] { step(1); });
  // Both have a use of their own for the page keys.
  list_->installEventFilter(this);
  where_->installEventFilter(this);
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.design && isVisible()) refresh(); // another figure
  });
  fillList();
}

QWidget* GuideWindow::makeSide() {
  auto* side = new QWidget;
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins({});
  for (const char* key : {"guide.title.body", "guide.title.garment"})
    where_->addItem(phraseText(settings_.phrases(), key));
  where_->setAccessibleName(tr("Body or garment"));
  list_->setAccessibleName(tr("Measurements"));
  column->addWidget(where_);
  column->addWidget(list_, 1);
  auto* save = new QPushButton(tr("Save a sheet to fill in…"));
  auto* print_ = new QPushButton(tr("Print the sheet…"));
  column->addWidget(save);
  column->addWidget(print_);
  connect(save, &QPushButton::clicked, this, &GuideWindow::askWhereToSave);
  connect(print_, &QPushButton::clicked, this, &GuideWindow::print);
  side->setFixedWidth(
      std::max({where_->sizeHint().width() + column->contentsMargins().left() +
                    column->contentsMargins().right(),
                column->minimumSize().width(), 34 * fontMetrics().averageCharWidth()}));
  return side;
}

QWidget* GuideWindow::makePage() {
  auto* page = new QWidget;
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins({});
  column->setSpacing(fontMetrics().averageCharWidth());
  QFont large = font();
  large.setBold(true);
  large.setPointSizeF(1.3 * large.pointSizeF());
  title_->setFont(large);
  text_->setWordWrap(true);
  text_->setTextFormat(Qt::PlainText);
  text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  column->addWidget(title_);
  column->addWidget(picture_, 1);
  column->addWidget(text_);
  auto* steps = new QHBoxLayout;
  steps->addWidget(previous_);
  steps->addWidget(next_);
  steps->addStretch(1);
  previous_->setToolTip(tr("Page Up"));
  next_->setToolTip(tr("Page Down"));
  column->addLayout(steps);
  return page;
}

Source GuideWindow::where() const {
  return Source(std::max(0, where_->currentIndex()));
}

std::optional<Field> GuideWindow::measurement() const {
  const QListWidgetItem* item = list_->currentItem();
  const QVariant field = item ? item->data(Qt::UserRole) : QVariant();
  return field.isValid() ? std::optional(Field(field.toInt())) : std::nullopt;
}

void GuideWindow::fillList() {
  const QSignalBlocker quiet(list_);
  list_->clear();
  list_->addItem(tr("All of them"));
  for (const Field f : measuredOn(where())) {
    auto* item = new QListWidgetItem(
        QStringLiteral("%L1  %2").arg(list_->count()).arg(fieldName(settings_.phrases(), f)),
        list_);
    item->setData(Qt::UserRole, int(f));
  }
}

void GuideWindow::showMeasurement(std::optional<Field> measurement, Source where) {
  if (where_->currentIndex() != int(where)) {
    const QSignalBlocker quiet(where_);
    where_->setCurrentIndex(int(where));
    fillList();
  }
  int at = 0;
  for (int i = 1; measurement && i < list_->count(); ++i)
    if (list_->item(i)->data(Qt::UserRole).toInt() == int(*measurement)) at = i;
  list_->setCurrentRow(at);
  refresh();
}

void GuideWindow::showPresent() {
  if (list_->currentRow() < 0) list_->setCurrentRow(0);
  refresh();
}

Figure GuideWindow::figure() const {
  return document_.design().as<Figure>();
}

Picture GuideWindow::draw(double wanted) const {
  // Far below any letters on a screen; letters next to nothing would take the layout for ever.
  constexpr double kLeastLetters = 0.3; // cm of the figure
  const double textHeight = std::max(wanted, kLeastLetters);
  if (const auto field = measurement(); field && canTakeOn(*field, where()))
    return measuringPicture(*field, where(), figure(), settings_.phrases(), textHeight);
  Picture overview = measuringOverview(where(), figure(), settings_.phrases(), textHeight);
  // The names of the numbers stand in the list beside it.
  std::erase_if(overview.groups, [](const Group& g) { return g.id == "list"; });
  return overview;
}

void GuideWindow::refresh() {
  const bool body = where() == Source::Body;
  const auto field = measurement();
  QStringList text;
  if (field) {
    const std::string key = "guide." + std::string(info(*field).key);
    text.append(phraseText(settings_.phrases(), key + (body ? ".body" : ".garment")));
    // Without a helper, and what spoils it: of a garment these are the same for all.
    if (body) {
      text.append(tr("Without a helper: %1").arg(phraseText(settings_.phrases(), key + ".alone")));
      text.append(tr("What spoils it: %1").arg(phraseText(settings_.phrases(), key + ".spoils")));
    }
  } else {
    text.append(phraseText(settings_.phrases(), body ? "guide.start.body" : "guide.start.garment"));
    if (body && isChild(document_.design()))
      text.append(phraseText(settings_.phrases(), "guide.child"));
    text.append(phraseText(settings_.phrases(), "guide.hands"));
  }
  title_->setText(
      field ? fieldName(settings_.phrases(), *field)
            : phraseText(settings_.phrases(), body ? "guide.title.body" : "guide.title.garment"));
  text_->setText(text.join(QStringLiteral("\n\n")));
  picture_->setAccessibleName(title_->text());
  picture_->setAccessibleDescription(text.front());
  previous_->setEnabled(list_->currentRow() > 0);
  next_->setEnabled(list_->currentRow() < list_->count() - 1);
  picture_->refresh();
}

void GuideWindow::step(int by) {
  list_->setCurrentRow(std::clamp(list_->currentRow() + by, 0, list_->count() - 1));
}

void GuideWindow::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
  case Qt::Key_PageDown:
    step(1);
    return;
  case Qt::Key_PageUp:
    step(-1);
    return;
  case Qt::Key_Escape:
    close();
    return;
  default:
    QWidget::keyPressEvent(event);
  }
}

bool GuideWindow::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress) {
    auto* key = static_cast<QKeyEvent*>(event);
    if (key->key() == Qt::Key_PageDown || key->key() == Qt::Key_PageUp) {
      keyPressEvent(key);
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

std::vector<Picture> GuideWindow::sheet() const {
  return measuringSheet(settings_.phrases(), where(), figure(), settings_.unit());
}

void GuideWindow::saveSheet(const QString& path) {
  exports_.add(path, [pages = sheet(), phrases = settings_.phrases(), path](const GoOn& goOn) {
    return writeSheet(pages, phrases, path, goOn);
  });
}

void GuideWindow::askWhereToSave() {
  const QString suggestion =
      settings_.lastFolder() + u'/' + tr("Measuring sheet") + QStringLiteral(".pdf");
  const QString path =
      askWhereToWrite(this, tr("Save the measuring sheet"), suggestion, {QStringLiteral(".pdf")});
  if (path.isEmpty()) return;
  saveSheet(path);
}

void GuideWindow::print() {
  const auto printer = std::make_shared<QPrinter>();
  QPrintDialog dialog(printer.get(), this);
  if (dialog.exec() != QDialog::Accepted) return;
  exports_.add(tr("Printing"), [pages = sheet(), printer](const GoOn& goOn) {
    return printSheet(pages, *printer, goOn);
  });
}

} // namespace scye
