#include "values/value_text.h"

#include "model/units.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <cmath>

namespace scye {
namespace {

constexpr QChar kNarrowGap(0x202f); // does not break

bool isLength(FieldKind kind) {
  return kind == FieldKind::Girth || kind == FieldKind::Length;
}

// What is neither length nor share: g, mm, m.
struct AmountUnit {
  std::string_view phrase;
  const char* sign; // as anybody may type it
  int decimals;
};
const AmountUnit* amountUnit(FieldKind kind) {
  static constexpr AmountUnit kGram{"unit.weight", "g", 1}, kNeedle{"unit.length.mm", "mm", 2},
      kRun{"unit.run", "m", 1};
  return kind == FieldKind::Weight   ? &kGram
         : kind == FieldKind::Needle ? &kNeedle
         : kind == FieldKind::Run    ? &kRun
                                     : nullptr;
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

// Without the unit beside it, in the words of the language.
QString withoutUnit(const Phrases& phrases, const QString& text, std::string_view phrase) {
  const UnitWords unit = unitWords(phrases, phrase);
  const QString before = unit.before.trimmed(), after = unit.after.trimmed();
  QString number = text.trimmed();
  if (!before.isEmpty() && number.startsWith(before, Qt::CaseInsensitive))
    number = number.mid(before.size()).trimmed();
  if (!after.isEmpty() && number.endsWith(after, Qt::CaseInsensitive))
    number = number.chopped(after.size()).trimmed();
  return number;
}

std::optional<double> readLength(const Phrases& phrases, const QString& text, LengthUnit unit) {
  for (const auto& [named, cm] :
       {std::pair(LengthUnit::Centimetre, 1.0), std::pair(LengthUnit::Inch, kCmPerInch)})
    if (const QString number = withoutUnit(phrases, text, lengthPhrase(named));
        number != text.trimmed()) {
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

UnitWords unitWords(const Phrases& phrases, std::string_view phrase) {
  const QLatin1String number("%1"); // stands for it
  QString words = QString::fromStdString(phrases.say(phrase, {textParam("n", number.data())}));
  words.replace(u' ', kNarrowGap);
  const qsizetype at = words.indexOf(number);
  return at < 0 ? UnitWords{{}, words}
                : UnitWords{words.first(at), words.sliced(at + number.size())};
}

QString withUnit(const Phrases& phrases, std::string_view phrase, const QString& number) {
  const UnitWords unit = unitWords(phrases, phrase);
  return unit.before + number + unit.after;
}

QString valueText(const Phrases& phrases, FieldKind kind, double value, const ValueStyle& style) {
  const auto plain = [&](double number, int decimals) {
    return QString::fromStdString(phrases.number(number, decimals));
  };
  QString text;
  std::string_view unit;
  if (isLength(kind)) {
    const bool isFixed = style.fixed && style.unit == LengthUnit::Centimetre;
    text = QString::fromStdString(isFixed ? phrases.rules().fixedNumber(value, 1)
                                          : phrases.lengthNumber(value, style.unit));
    unit = lengthPhrase(style.unit);
  } else if (kind == FieldKind::Share) {
    text = plain(100 * value, 0);
    unit = "unit.percent";
  } else if (const AmountUnit* amount = amountUnit(kind)) {
    text = plain(value, amount->decimals);
    unit = amount->phrase;
  } else {
    text = plain(value, 2);
  }
  if (style.showSign && value > 0 && text != plain(0, 0)) text.prepend(u'+');
  text.replace(u'-', QChar(0x2212)); // a minus, not a hyphen
  return style.showUnit && !unit.empty() ? withUnit(phrases, unit, text) : text;
}

QString unbroken(const Phrases& phrases, const std::string& sentence) {
  static const QRegularExpression fraction(QStringLiteral(R"((?<=\d) (?=\d+/\d))"));
  QString text = QString::fromStdString(sentence);
  text.replace(fraction, QString(QChar(QChar::Nbsp)));
  for (const LengthUnit unit : {LengthUnit::Centimetre, LengthUnit::Inch}) {
    const QString after = unitWords(phrases, lengthPhrase(unit)).after.replace(kNarrowGap, u' ');
    if (!after.startsWith(u' ')) continue;
    for (qsizetype at = 0; (at = text.indexOf(after, at)) >= 0; ++at) {
      const qsizetype end = at + after.size();
      if (at > 0 && text[at - 1].isDigit() && (end == text.size() || !text[end].isLetter()))
        text[at] = QChar::Nbsp;
    }
  }
  return text;
}

std::optional<double> readValue(const Phrases& phrases, FieldKind kind, const QString& typed,
                                LengthUnit unit) {
  QString text = typed;
  text.replace(kNarrowGap, u' ').replace(QChar(0x2212), u'-');
  if (isLength(kind)) return readLength(phrases, text, unit);
  if (kind == FieldKind::Count) return readNumber(text);
  if (const AmountUnit* amount = amountUnit(kind)) {
    text = withoutUnit(phrases, text, amount->phrase);
    const QString sign = QString::fromLatin1(amount->sign);
    if (text.endsWith(sign, Qt::CaseInsensitive)) text.chop(sign.size());
    return readNumber(text);
  }
  const auto percent = readNumber(withoutUnit(phrases, text, "unit.percent").remove(u'%'));
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
