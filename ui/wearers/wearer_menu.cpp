#include "wearers/wearer_menu.h"

#include <QCoreApplication>
#include <QLocale>
#include <QMenu>

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

void fill(QMenu& menu, Document& document, WearerStore& store) {
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

void fillWearerMenu(QMenu& menu, Document& document, WearerStore& store) {
  QObject::connect(&menu, &QMenu::aboutToShow, &menu, [&] { fill(menu, document, store); });
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
