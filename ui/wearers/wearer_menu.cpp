#include "wearers/wearer_menu.h"

#include <QCoreApplication>
#include <QLocale>
#include <QMenu>

#include <algorithm>

namespace scye {
namespace {

struct WearerText {
  Q_DECLARE_TR_FUNCTIONS(WearerMenu)
};

QString dated(const WearerStore::Kept& kept) {
  QString name = kept.name;
  name.replace(u'&', QStringLiteral("&&"));
  return WearerText::tr("%1, measured %2")
      .arg(name, QLocale().toString(kept.date(), QLocale::ShortFormat));
}

// Those who are ticked are drawn behind the garment.
void fillOthers(QMenu& menu, const WearerStore& store, Attention& attention) {
  for (const WearerStore::Kept& kept : store.wearers()) {
    QAction* action = menu.addAction(dated(kept));
    action->setCheckable(true);
    const auto& others = attention.others();
    action->setChecked(std::find(others.begin(), others.end(), kept.wearer) != others.end());
    QObject::connect(action, &QAction::toggled, &attention, [&attention, kept](bool shown) {
      std::vector<Design> now = attention.others();
      std::erase(now, kept.wearer);
      if (shown) now.push_back(kept.wearer);
      attention.setOthers(std::move(now));
    });
  }
  menu.setEnabled(!store.wearers().isEmpty());
}

void fill(QMenu& menu, Document& document, WearerStore& store, Attention& attention) {
  menu.clear();
  store.reload();
  const QString wearer = QString::fromStdString(document.design().wearer);
  QAction* keep = menu.addAction(WearerText::tr("&Keep these measurements"),
                                 [&] { keepWearer(document, store); });
  keep->setEnabled(!wearer.isEmpty());
  if (wearer.isEmpty())
    keep->setText(WearerText::tr("Keep these measurements: name the wearer first"));
  menu.addSeparator();
  QMenu* use = menu.addMenu(WearerText::tr("&Use the measurements of"));
  fillOthers(*menu.addMenu(WearerText::tr("&Draw it for others too")), store, attention);
  QMenu* remove = menu.addMenu(WearerText::tr("&Remove the kept measurements of"));
  for (const WearerStore::Kept& kept : store.wearers()) {
    use->addAction(dated(kept), [&document, kept] { useWearer(document, kept); });
    remove->addAction(dated(kept), [&store, name = kept.name] { store.remove(name); });
  }
  for (QMenu* sub : {use, remove})
    sub->setEnabled(!store.wearers().isEmpty());
  if (store.unreadable().isEmpty()) return;
  menu.addSeparator();
  for (const WearerStore::Unreadable& file : store.unreadable())
    menu.addAction(WearerText::tr("%1 cannot be read: %2").arg(file.file, file.reason))
        ->setEnabled(false);
}

} // namespace

void fillWearerMenu(QMenu& menu, Document& document, WearerStore& store, Attention& attention) {
  QObject::connect(&menu, &QMenu::aboutToShow, &menu,
                   [&] { fill(menu, document, store, attention); });
}

void useWearer(Document& document, const WearerStore::Kept& kept) {
  document.edit(WearerText::tr("Measurements of %1").arg(kept.name),
                forWearer(document.design(), kept.wearer));
}

void keepWearer(Document& document, WearerStore& store) {
  const QDate today = QDate::currentDate();
  if (!store.keep(document.design(), today)) return;
  // The design remembers when what it is made with was measured.
  Design next = document.design();
  next.measuredOn = today.toString(Qt::ISODate).toStdString();
  document.edit(WearerText::tr("Keep the measurements"), next);
}

} // namespace scye
