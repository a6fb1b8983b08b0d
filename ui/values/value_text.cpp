#include "values/value_text.h"

#include "model/units.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <cmath>

namespace scye {
namespace {

bool isLength(FieldKind kind) {
  return kind == FieldKind::Girth || kind == FieldKind::Length;
}

// What is neither length nor share: g, mm, m.
struct AmountUnit {
  const char* phrase;
  const char* sign; // as anybody may type it
  int decimals;
};
const AmountUnit* amountUnit(FieldKind kind) {
  static constexpr AmountUnit kGram{"unit.gram", "g", 1}, kNeedle{"unit.needle", "mm", 2},
      kRun{"unit.run", "m", 1};
  return kind == FieldKind::Weight   ? &kGram
         : kind == FieldKind::Needle ? &kNeedle
         : kind == FieldKind::Run    ? &kRun
                                     : nullptr;
}

QString inches(double cm) {
  const double in = std::abs(cm) / kCmPerInch;
  int parts = int(std::lround(in * 8)); // a tape shows eighths
  const QString sign = cm < 0 && parts > 0 ? QStringLiteral("-") : QString();
  const int whole = parts / 8;
  parts %= 8;
  if (parts == 0) return sign + QString::number(whole);
  int below = 8;
  while (parts % 2 == 0)
    parts /= 2, below /= 2;
  const QString fraction = QStringLiteral("%1/%2").arg(parts).arg(below);
  return sign + (whole ? QStringLiteral("%1 %2").arg(whole).arg(fraction) : fraction);
}

// "16 1/4", "1/4", "41.5", "41,5", "-3".
std::optional<double> readNumber(const QString& text) {
  static const QRegularExpression pattern(QStringLiteral(
      R"(^([+-]?)\s*(?:(\d+)\s*/\s*(\d+)|(\d+)[\s-]+(\d+)\s*/\s*(\d+)|(\d*[.,]\d+|\d+[.,]?))$)"));
  const auto match = pattern.match(text.trimmed());
  if (!match.hasMatch()) return std::nullopt;
  const auto at = [&](int i) { return match.captured(i).toDouble(); };
  double value = 0;
  if (match.hasCaptured(2)) {
    value = at(2) / at(3);
  } else if (match.hasCaptured(4)) {
    value = at(4) + at(5) / at(6);
  } else {
    value = match.captured(7).replace(u',', u'.').toDouble();
  }
  if (!std::isfinite(value)) return std::nullopt;
  return match.captured(1) == QLatin1String("-") ? -value : value;
}

// Without the unit at its end, in the words of the language.
QString withoutUnit(const Phrases& phrases, const QString& text, const char* key) {
  const QString number = text.trimmed(), unit = QString::fromStdString(phrases.say(key));
  return !unit.isEmpty() && number.endsWith(unit, Qt::CaseInsensitive)
             ? number.chopped(unit.size()).trimmed()
             : number;
}

std::optional<double> readLength(const Phrases& phrases, const QString& text, LengthUnit unit) {
  for (const auto& [key, cm] : {std::pair("unit.cm", 1.0), std::pair("unit.inch", kCmPerInch)})
    if (const QString number = withoutUnit(phrases, text, key); number != text.trimmed()) {
      const auto value = readNumber(number);
      return value ? std::optional(*value * cm) : std::nullopt;
    }
  static const QRegularExpression ending(QStringLiteral(R"(\s*(cm|mm|in|inch|inches|"|''|″)\s*$)"),
                                         QRegularExpression::CaseInsensitiveOption);
  double factor = unit == LengthUnit::Inch ? kCmPerInch : 1;
  QString number = text;
  if (const auto match = ending.match(text); match.hasMatch()) {
    const QString name = match.captured(1).toLower();
    factor = name == QLatin1String("cm") ? 1 : name == QLatin1String("mm") ? 0.1 : kCmPerInch;
    number.truncate(match.capturedStart());
  }
  const auto value = readNumber(number);
  if (!value) return std::nullopt;
  return *value * factor;
}

} // namespace

QString unitText(const Phrases& phrases, LengthUnit unit) {
  return QString::fromStdString(phrases.say(unit == LengthUnit::Inch ? "unit.inch" : "unit.cm"));
}

QString valueText(const Phrases& phrases, FieldKind kind, double value, const ValueStyle& style) {
  const auto plain = [&](double number, int decimals) {
    return QString::fromStdString(phrases.number(number, decimals));
  };
  QString text, unit;
  if (isLength(kind)) {
    text = style.unit == LengthUnit::Inch ? inches(value)
           : style.fixed ? QString::fromStdString(phrases.rules().fixedNumber(value, 1))
                         : plain(value, 1);
    unit = unitText(phrases, style.unit);
  } else if (kind == FieldKind::Share) {
    text = plain(100 * value, 0);
    unit = QString::fromStdString(phrases.say("unit.share"));
  } else if (const AmountUnit* amount = amountUnit(kind)) {
    text = plain(value, amount->decimals);
    unit = QString::fromStdString(phrases.say(amount->phrase));
  } else {
    text = plain(value, 2);
  }
  if (style.showSign && value > 0 && text != QLatin1String("0")) text.prepend(u'+');
  text.replace(u'-', QChar(0x2212));                                   // a minus, not a hyphen
  if (style.showUnit && !unit.isEmpty()) text += QChar(0x202f) + unit; // narrow no-break space
  return text;
}

QString unbroken(const std::string& sentence) {
  static const QRegularExpression gap(QStringLiteral(R"((?<=\d) (?=\d+/\d|cm\b|in\b))"));
  return QString::fromStdString(sentence).replace(gap, QString(QChar(QChar::Nbsp)));
}

std::optional<double> readValue(const Phrases& phrases, FieldKind kind, const QString& typed,
                                LengthUnit unit) {
  QString text = typed;
  text.replace(QChar(0x202f), u' ').replace(QChar(0x2212), u'-');
  if (isLength(kind)) return readLength(phrases, text, unit);
  if (kind == FieldKind::Count) return readNumber(text);
  if (const AmountUnit* amount = amountUnit(kind)) {
    text = withoutUnit(phrases, text, amount->phrase);
    const QString sign = QString::fromLatin1(amount->sign);
    if (text.endsWith(sign, Qt::CaseInsensitive)) text.chop(sign.size());
    return readNumber(text);
  }
  const auto percent = readNumber(withoutUnit(phrases, text, "unit.share").remove(u'%'));
  if (!percent) return std::nullopt;
  return *percent / 100;
}

double keyStep(FieldKind kind, LengthUnit unit) {
  switch (kind) {
  case FieldKind::Share:
    return 0.01;
  case FieldKind::Count:
    return 1;
  case FieldKind::Weight:
    return 0.5;
  case FieldKind::Needle:
    return 0.25;
  case FieldKind::Run:
    return 5;
  case FieldKind::Girth:
  case FieldKind::Length:
    break;
  }
  return unit == LengthUnit::Inch ? kCmPerInch / 4 : 0.5;
}

double sliderStep(FieldKind kind, LengthUnit unit) {
  switch (kind) {
  case FieldKind::Share:
    return 0.01;
  case FieldKind::Count:
    return 1;
  case FieldKind::Weight:
    return 0.1;
  case FieldKind::Needle:
    return 0.25;
  case FieldKind::Run:
    return 1;
  case FieldKind::Girth:
  case FieldKind::Length:
    break;
  }
  return unit == LengthUnit::Inch ? kCmPerInch / 8 : 0.1;
}

double ontoGrid(double value, double step) {
  // Dividing by the whole number of steps in a unit keeps 0.1 x 3 from becoming
  // 0.30000000000000004.
  const double perUnit = std::round(1 / step);
  if (std::abs(perUnit * step - 1) < 1e-12) return std::round(value * perUnit) / perUnit;
  return std::round(value / step) * step;
}

} // namespace scye
