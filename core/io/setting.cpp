#include "io/setting.h"

#include "io/refusal_text.h"
#include "model/units.h"

#include <charconv>

namespace scye {
namespace {

bool isLength(Field field) {
  const FieldKind kind = info(field).kind;
  return kind == FieldKind::Girth || kind == FieldKind::Length;
}

// Cuts `tail` off the end of `text`; whether it was there.
bool cut(std::string_view& text, std::string_view tail) {
  if (!text.ends_with(tail)) return false;
  text.remove_suffix(tail.size());
  while (text.ends_with(' '))
    text.remove_suffix(1);
  return true;
}

std::optional<double> readNumber(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

} // namespace

std::optional<std::string> applySetting(Design& design, std::string_view setting,
                                        const Phrases& phrases) {
  const auto equals = setting.find('=');
  const std::string_view name = setting.substr(0, equals);
  if (equals == std::string_view::npos || name.empty())
    return phrases.say("setting.form", {textParam("setting", std::string(setting))});
  std::string_view value = setting.substr(equals + 1);

  if (const auto choice = choiceByKey(name)) {
    if (const auto option = optionByKey(*choice, value)) {
      design.choose(*choice, *option);
      return std::nullopt;
    }
    return noOptionText(*choice, std::string(value), phrases);
  }

  const auto field = fieldByKey(name);
  if (!field) return phrases.say("setting.unknown", {textParam("name", std::string(name))});
  Source source = whereTaken(design, *field);
  if (isMeasurement(*field)) {
    if (cut(value, "@body"))
      source = Source::Body;
    else if (cut(value, "@garment"))
      source = Source::Garment;
  }
  double unit = 1;
  if (isLength(*field)) {
    if (cut(value, "in"))
      unit = kCmPerInch;
    else
      cut(value, "cm");
  } else if (info(*field).kind == FieldKind::Needle) {
    cut(value, "mm");
  } else if (info(*field).kind == FieldKind::Run) {
    cut(value, "m");
  } else if (info(*field).kind == FieldKind::Weight) {
    cut(value, "g");
  }
  const auto number = readNumber(value);
  if (!number)
    return phrases.say("setting.noNumber",
                       {textParam("name", std::string(name)),
                        textParam("value", std::string(setting.substr(equals + 1)))});
  if (const auto refusal = check(*field, *number * unit, source))
    return refusalText(*field, *refusal, phrases, LengthUnit::Centimetre, source);
  design.set(*field, *number * unit, source);
  return std::nullopt;
}

} // namespace scye
