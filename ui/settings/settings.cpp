#include "settings/settings.h"

#include <QDir>
#include <QFileInfo>

namespace scye {
namespace {

constexpr char kUnit[] = "unit", kLook[] = "look", kTextSize[] = "textSize", kGrid[] = "grid",
               kStitches[] = "stitches", kTerms[] = "directions/terms", kPaper[] = "export/paper",
               kDpi[] = "export/dpi", kRecent[] = "files/recent", kFolder[] = "files/folder";
constexpr double kLeastDpi = 30, kMostDpi = 600;

} // namespace

Settings::Settings(const QString& path, QObject* parent)
    : QObject(parent), store_(path, QSettings::IniFormat) {}

void Settings::put(const char* key, const QVariant& value) {
  const QString name = QString::fromLatin1(key);
  if (store_.value(name) == value) return;
  store_.setValue(name, value);
  Q_EMIT changed();
}

LengthUnit Settings::unit() const {
  return store_.value(QLatin1String(kUnit)).toString() == QLatin1String("inch")
             ? LengthUnit::Inch
             : LengthUnit::Centimetre;
}
void Settings::setUnit(LengthUnit unit) {
  put(kUnit, unit == LengthUnit::Inch ? QStringLiteral("inch") : QStringLiteral("cm"));
}

bool Settings::gridShown() const {
  return store_.value(QLatin1String(kGrid), true).toBool();
}
void Settings::setGridShown(bool shown) {
  put(kGrid, shown);
}

bool Settings::stitchesShown() const {
  return store_.value(QLatin1String(kStitches), false).toBool();
}
void Settings::setStitchesShown(bool shown) {
  put(kStitches, shown);
}

Look Settings::look() const {
  const QString look = store_.value(QLatin1String(kLook)).toString();
  return look == QLatin1String("dark")    ? Look::Dark
         : look == QLatin1String("light") ? Look::Light
                                          : Look::Desktop;
}
void Settings::setLook(Look look) {
  put(kLook, look == Look::Dark    ? QStringLiteral("dark")
             : look == Look::Light ? QStringLiteral("light")
                                   : QStringLiteral("desktop"));
}

double Settings::textSize() const {
  return std::clamp(store_.value(QLatin1String(kTextSize), 1.0).toDouble(), kLeastTextSize,
                    kMostTextSize);
}
void Settings::setTextSize(double factor) {
  put(kTextSize, factor);
}

QString Settings::terms() const {
  const QString uk = QStringLiteral("uk");
  return store_.value(QLatin1String(kTerms)).toString() == uk ? uk : QStringLiteral("us");
}
void Settings::setTerms(const QString& terms) {
  put(kTerms, terms);
}

ExportOptions Settings::exportOptions() const {
  ExportOptions options;
  const int paper = store_.value(QLatin1String(kPaper), int(Paper::A4)).toInt();
  options.paper = Paper(std::clamp(paper, int(Paper::TrueSize), int(Paper::Letter)));
  options.dpi = std::clamp(store_.value(QLatin1String(kDpi), 200).toDouble(), kLeastDpi, kMostDpi);
  return options;
}
void Settings::setExportOptions(const ExportOptions& options) {
  put(kPaper, int(options.paper));
  put(kDpi, options.dpi);
}

QString Settings::lastFolder() const {
  return store_.value(QLatin1String(kFolder), QDir::homePath()).toString();
}
void Settings::setLastFolder(const QString& folder) {
  put(kFolder, folder);
}

QStringList Settings::recentFiles() const {
  return store_.value(QLatin1String(kRecent)).toStringList();
}
void Settings::addRecentFile(const QString& path) {
  QStringList files = recentFiles();
  const QString whole = QFileInfo(path).absoluteFilePath();
  files.removeAll(whole);
  files.prepend(whole);
  while (files.size() > kMostRecent)
    files.removeLast();
  put(kRecent, files);
}
void Settings::removeRecentFile(const QString& path) {
  QStringList files = recentFiles();
  files.removeAll(QFileInfo(path).absoluteFilePath());
  put(kRecent, files);
}

} // namespace scye
