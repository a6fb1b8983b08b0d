#include "panels/panel_context.h"

#include "draft/complete.h"

namespace scye {
QString phraseText(const Phrases& phrases, const std::string& key, const Params& params,
                   LengthUnit unit) {
  return unbroken(phrases, phrases.say(key, params, unit));
}

QString fieldName(const Phrases& phrases, Field field) {
  return phraseText(phrases, "field." + std::string(info(field).key));
}
QString choiceName(const Phrases& phrases, Choice choice) {
  return phraseText(phrases, "choice." + std::string(info(choice).key));
}
QString optionName(const Phrases& phrases, Choice choice, int option) {
  const ChoiceInfo& i = info(choice);
  return phraseText(phrases,
                    "choice." + std::string(i.key) + "." + std::string(i.options.begin()[option]));
}

QString originName(const Phrases& phrases, const Sizes& sizes, Field field) {
  switch (sizes.origin(field)) {
  case Origin::GivenBody:
    return phraseText(phrases, "origin.body");
  case Origin::GivenGarment:
    return phraseText(phrases, "origin.garment");
  case Origin::Set:
    return phraseText(phrases, "origin.set");
  case Origin::Table:
    return phraseText(phrases, "origin.table", {textParam("size", sizes.tableSize)});
  case Origin::Estimate:
    return phraseText(phrases, "origin.estimate");
  case Origin::Rule:
    break;
  }
  return phraseText(phrases, "origin.rule");
}

QString originSign(const Sizes& sizes, Field field) {
  switch (sizes.origin(field)) {
  case Origin::GivenBody:
  case Origin::Set:
    return QStringLiteral("\u25CF"); // black circle
  case Origin::GivenGarment:
    return QStringLiteral("\u25A0"); // black square
  case Origin::Table:
    return QStringLiteral("\u25A4"); // square with lines
  case Origin::Estimate:
    return QStringLiteral("\u2248"); // almost equal
  case Origin::Rule:
    break;
  }
  return QStringLiteral("\u25CB"); // white circle
}

bool isChild(const Design& design) {
  const auto figure = design.as<Figure>();
  return figure == Figure::Child || figure == Figure::Baby;
}

QString estimateText(const Phrases& phrases, const Design& design, const Sizes& sizes,
                     Field measurement, LengthUnit unit) {
  const Origin origin = sizes.origin(measurement);
  if (!isMeasurement(measurement) || design.has(measurement)) return {};
  const auto& likely = sizes.likely[std::size_t(measurement)];
  Params params{textParam("size", sizes.tableSize)};
  if (likely) {
    params.push_back(lengthParam("low", likely->low));
    params.push_back(lengthParam("high", likely->high));
  }
  QString text;
  if (isChild(design))
    text = origin == Origin::Table ? phraseText(phrases, "estimate.child", params) : QString();
  else if (origin == Origin::Estimate && likely)
    text = phraseText(phrases, "estimate.source", params, unit);
  else if (origin == Origin::Table)
    text = phraseText(phrases, likely ? "estimate.table" : "estimate.tableAlone", params, unit);
  if (likely && sizes.beyondSurvey) text += u' ' + phraseText(phrases, "estimate.beyond");
  return text;
}

double shownIn(const Design& design, const Sizes& sizes, Field field) {
  if (!isMeasurement(field) || design.has(field)) return sizes[field];
  return asTaken(sizes, field, whereTaken(design, field));
}

double filledIn(const Design& design, Field field) {
  Design without = design;
  without.clear(field);
  return shownIn(without, complete(without), field);
}

ValueStyle styleOf(Field field, LengthUnit unit, bool showUnit) {
  const bool ease = info(field).group == FieldGroup::Ease || field == Field::CapEase;
  return {unit, showUnit, ease};
}

QString shownValue(const Phrases& phrases, Field field, double value, LengthUnit unit) {
  return valueText(phrases, info(field).kind, value, styleOf(field, unit, true));
}

bool isWorkedOut(const Design& design, Field field) {
  return workedField(design.as<WorkedOut>()) == field;
}

QString workedOutText(const Phrases& phrases) {
  return phraseText(phrases, "field.workedOut",
                    {textParam("choice", choiceName(phrases, Choice::WorkedOut).toStdString())});
}

} // namespace scye
