#include "fit/severity.h"

#include "look/icons.h"
#include "paint/picture_colours.h"
#include "values/value_text.h"

#include <QCoreApplication>
#include <QGuiApplication>

namespace scye {

QIcon severityIcon(Severity severity) {
  const bool dark = isDark(QGuiApplication::palette());
  switch (severity) {
  case Severity::Blocking:
    return icon("blocking", blockingColour(dark));
  case Severity::Warning:
    return icon("warning", warningColour(dark));
  case Severity::Note:
    break;
  }
  return icon("note", accent(dark));
}

QString severityName(Severity severity) {
  switch (severity) {
  case Severity::Blocking:
    return QCoreApplication::translate("Severity", "Cannot be made");
  case Severity::Warning:
    return QCoreApplication::translate("Severity", "Look at this");
  case Severity::Note:
    break;
  }
  return QCoreApplication::translate("Severity", "Good to know");
}

QString findingText(const Phrases& phrases, const Finding& finding, LengthUnit unit) {
  return unbroken(phrases, phrases.say("finding." + finding.code, finding.params, unit));
}

QString remedyText(const Phrases& phrases, const Remedy& remedy, LengthUnit unit) {
  return unbroken(phrases, phrases.say("remedy." + remedy.key, remedy.params, unit));
}

} // namespace scye
