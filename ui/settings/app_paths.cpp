#include "settings/app_paths.h"

#include <QStandardPaths>

namespace scye {

AppPaths standardPaths() {
  const QString config = QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation);
  const QString data = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
  return {config + QStringLiteral("/settings.json"), config + QStringLiteral("/window.json"),
          data + QStringLiteral("/recovery"), data + QStringLiteral("/wearers")};
}

} // namespace scye
