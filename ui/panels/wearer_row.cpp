#include "panels/wearer_row.h"

#include "panels/person_rows.h"
#include "wearers/wearer_menu.h"

#include <QGridLayout>
#include <QLabel>
#include <QLocale>
#include <QMenu>
#include <QPushButton>
#include <QToolButton>

namespace scye {
namespace {

QString namesOf(const Phrases& phrases, const std::vector<Field>& fields) {
  constexpr std::size_t kMostNamed = 4;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < std::min(fields.size(), kMostNamed); ++i)
    names.push_back(fieldName(phrases, fields[i]).toStdString());
  QString text = QString::fromStdString(phrases.rules().commas(names));
  if (fields.size() <= kMostNamed) return text;
  return WearerRow::tr("%1 and %n more", nullptr, int(fields.size() - kMostNamed)).arg(text);
}

} // namespace

WearerRow::WearerRow(const PanelContext& context, QWidget* parent)
    : QWidget(parent), context_(context), note_(new QLabel), takeOver_(new QPushButton) {
  const int gap = fontMetrics().averageCharWidth();
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins({});
  grid->setSpacing(gap / 2);
  QWidget* name = makeTextBox(context_, tr("Wearer"), &Design::wearer);
  auto* kept = new QToolButton;
  kept->setText(tr("Kept"));
  kept->setAccessibleName(tr("Kept measurements"));
  kept->setToolTip(tr("Keep these measurements for other designs, or use kept ones"));
  kept->setFocusPolicy(Qt::StrongFocus);
  kept->setPopupMode(QToolButton::InstantPopup);
  auto* menu = new QMenu(kept);
  fillWearerMenu(*menu, context_.document, context_.wearers, context_.attention);
  kept->setMenu(menu);
  grid->addWidget(name, 0, 0);
  grid->addWidget(kept, 0, 1);
  grid->addWidget(note_, 1, 0, 1, 2);
  grid->addWidget(takeOver_, 2, 0, 1, 2, Qt::AlignLeft);
  grid->setColumnStretch(0, 1);
  setFocusProxy(name);
  note_->setWordWrap(true);
  takeOver_->setText(tr("Use the kept ones"));

  connect(takeOver_, &QPushButton::clicked, this, [this] {
    const QString wearer = QString::fromStdString(context_.document.design().wearer);
    if (const WearerStore::Kept* k = context_.wearers.find(wearer))
      useWearer(context_.document, WearerStore::Kept(*k));
  });
  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.design) refresh();
  });
  connect(&context_.wearers, &WearerStore::changed, this, &WearerRow::refresh);
  refresh();
}

void WearerRow::refresh() {
  const Design& design = context_.document.design();
  const WearerStore::Kept* kept = context_.wearers.find(QString::fromStdString(design.wearer));
  const std::vector<Field> differ =
      kept ? changedSince(design, kept->wearer) : std::vector<Field>();
  const bool told = !design.wearer.empty() && !differ.empty();
  if (told)
    note_->setText(tr("%1's measurements, kept on %2, differ from this design's: %3.")
                       .arg(kept->name, QLocale().toString(kept->date(), QLocale::ShortFormat),
                            namesOf(context_.phrases(), differ)));
  note_->setVisible(told);
  takeOver_->setVisible(told);
}

} // namespace scye
