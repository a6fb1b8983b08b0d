#include "settings/settings.h"

#include <QDir>
#include <QFileInfo>
#include <QSettings>

#include <cmath>

namespace scye {
namespace {

constexpr char kUnit[] = "unit", kLook[] = "look", kTextSize[] = "textSize", kGrid[] = "grid",
               kStitches[] = "stitches", kTerms[] = "directions/terms", kLanguage[] = "language",
               kPaper[] = "export/paper", kDpi[] = "export/dpi", kRecent[] = "files/recent",
               kFolder[] = "files/folder", kRest[] = "knitting/rest",
               kLarge[] = "export/largePrint";
constexpr double kLeastDpi = 30, kUsualDpi = 200, kMostDpi = 600;

QString wordFor(bool yes) {
  return yes ? QStringLiteral("true") : QStringLiteral("false");
}

} // namespace

Settings::Settings(const QString& path, const Phrases& phrases, QObject* parent)
    : QObject(parent), phrases_(phrases), store_(path, phrases) {
  connect(&store_, &PreferenceStore::failed, this, &Settings::failed);
  if (!QFileInfo::exists(path)) takeFormer(path);
}

QString Settings::languageIn(const QString& path) {
  return PreferenceStore::textIn(path, QLatin1String(kLanguage));
}
QString Settings::language() const {
  return store_.text(QLatin1String(kLanguage));
}
void Settings::setLanguage(const QString& tag) {
  put(kLanguage, tag);
}

// They stood in a file of another kind beside it before.
void Settings::takeFormer(const QString& path) {
  const QFileInfo place(path);
  const QString before = place.path() + u'/' + place.completeBaseName() + QLatin1String(".ini");
  if (before == path || !QFileInfo::exists(before)) return;
  const QSettings former(before, QSettings::IniFormat);
  for (const char* key : {kUnit, kGrid, kStitches, kTerms, kPaper, kDpi, kFolder})
    if (const QVariant value = former.value(QLatin1String(key)); value.isValid())
      store_.put(QLatin1String(key), value.toString());
  store_.put(QLatin1String(kRecent), former.value(QLatin1String(kRecent)).toStringList());
}

template <class Value>
void Settings::put(const char* key, const Value& value) {
  if (store_.put(QLatin1String(key), value)) Q_EMIT changed();
}

LengthUnit Settings::unit() const {
  return store_.text(QLatin1String(kUnit)) == QLatin1String("inch") ? LengthUnit::Inch
                                                                    : LengthUnit::Centimetre;
}
void Settings::setUnit(LengthUnit unit) {
  put(kUnit, unit == LengthUnit::Inch ? QStringLiteral("inch") : QStringLiteral("cm"));
}

bool Settings::restReminder() const {
  return store_.text(QLatin1String(kRest)) == wordFor(true);
}
void Settings::setRestReminder(bool on) {
  put(kRest, wordFor(on));
}

bool Settings::gridShown() const {
  return store_.text(QLatin1String(kGrid), wordFor(true)) == wordFor(true);
}
void Settings::setGridShown(bool shown) {
  put(kGrid, wordFor(shown));
}

bool Settings::stitchesShown() const {
  return store_.text(QLatin1String(kStitches)) == wordFor(true);
}
void Settings::setStitchesShown(bool shown) {
  put(kStitches, wordFor(shown));
}

Look Settings::look() const {
  const QString look = store_.text(QLatin1String(kLook));
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
  return std::clamp(store_.text(QLatin1String(kTextSize), QStringLiteral("1")).toDouble(),
                    kLeastTextSize, kMostTextSize);
}
void Settings::setTextSize(double factor) {
  put(kTextSize, QString::number(factor));
}

QString Settings::terms() const {
  const QString uk = QStringLiteral("uk");
  return store_.text(QLatin1String(kTerms)) == uk ? uk : QStringLiteral("us");
}
void Settings::setTerms(const QString& terms) {
  put(kTerms, terms);
}

ExportOptions Settings::exportOptions() const {
  ExportOptions options;
  const int paper = store_.text(QLatin1String(kPaper), QString::number(int(Paper::A4))).toInt();
  options.paper = Paper(std::clamp(paper, int(Paper::TrueSize), int(Paper::Letter)));
  const double dpi = store_.text(QLatin1String(kDpi), QString::number(kUsualDpi)).toDouble();
  options.dpi = std::isfinite(dpi) ? std::clamp(dpi, kLeastDpi, kMostDpi) : kUsualDpi;
  options.largePrint = store_.text(QLatin1String(kLarge)) == wordFor(true);
  return options;
}
void Settings::setLargePrint(bool large) {
  put(kLarge, wordFor(large));
}
void Settings::setExportOptions(const ExportOptions& options) {
  put(kPaper, QString::number(int(options.paper)));
  put(kDpi, QString::number(options.dpi));
}

QString Settings::lastFolder() const {
  return store_.text(QLatin1String(kFolder), QDir::homePath());
}
void Settings::setLastFolder(const QString& folder) {
  put(kFolder, folder);
}

QStringList Settings::recentFiles() const {
  return store_.list(QLatin1String(kRecent));
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
