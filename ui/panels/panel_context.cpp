#include "panels/panel_context.h"

#include "body/complete.h"

namespace scye {
namespace {

QString said(const std::string& key, const Params& params = {}) {
  return QString::fromStdString(builtinPhrases().say(key, params));
}

} // namespace

QString fieldName(Field field) {
  return said("field." + std::string(info(field).key));
}
QString choiceName(Choice choice) {
  return said("choice." + std::string(info(choice).key));
}
QString optionName(Choice choice, int option) {
  const ChoiceInfo& i = info(choice);
  return said("choice." + std::string(i.key) + "." + std::string(i.options.begin()[option]));
}

QString originName(const Sizes& sizes, Field field) {
  switch (sizes.origin(field)) {
  case Origin::GivenBody:
    return said("origin.body");
  case Origin::GivenGarment:
    return said("origin.garment");
  case Origin::Set:
    return said("origin.set");
  case Origin::Table:
    return said("origin.table", {textParam("size", sizes.tableSize)});
  case Origin::Estimate:
    return said("origin.estimate");
  case Origin::Rule:
    break;
  }
  return said("origin.rule");
}

double filledIn(const Design& design, Field field) {
  Design without = design;
  return complete(without.clear(field))[field];
}

ValueStyle styleOf(Field field, LengthUnit unit, bool showUnit) {
  const bool ease = info(field).group == FieldGroup::Ease || field == Field::CapEase;
  return {unit, showUnit, ease};
}

QString shownValue(Field field, double value, LengthUnit unit) {
  return valueText(info(field).kind, value, styleOf(field, unit, true));
}

bool isWorkedOut(const Design& design, Field field) {
  return workedField(design.as<WorkedOut>(Choice::WorkedOut)) == field;
}

} // namespace scye
