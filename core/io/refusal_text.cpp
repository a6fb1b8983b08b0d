#include "io/refusal_text.h"

#include "model/enum_keys.h"

namespace scye {
namespace {

Param bound(Field field, std::string name, double value) {
  const FieldKind kind = info(field).kind;
  return kind == FieldKind::Girth || kind == FieldKind::Length
             ? lengthParam(std::move(name), value)
             : numberParam(std::move(name), value);
}

} // namespace

std::string refusalText(Field field, Refusal refusal, const Phrases& phrases, LengthUnit unit,
                        Source where) {
  static constexpr EnumKeys<Refusal, Refusal::NotWhole> kPhrases{{
      {Refusal::NotANumber, "refusal.notANumber"},
      {Refusal::TooSmall, "refusal.tooSmall"},
      {Refusal::TooLarge, "refusal.tooLarge"},
      {Refusal::NotWhole, "refusal.notWhole"},
  }};
  const FieldInfo& i = info(field);
  const ValueRange range = rangeOf(field, where);
  return phrases.say(kPhrases[refusal],
                     {phraseParam("what", "field." + std::string(i.key)),
                      bound(field, "low", range.low), bound(field, "high", range.high)},
                     unit);
}

std::string noOptionText(Choice choice, std::string option, const Phrases& phrases) {
  std::string options;
  for (std::string_view o : info(choice).options)
    options += (options.empty() ? "" : ", ") + std::string(o);
  return phrases.say("refusal.noOption", {textParam("key", std::string(info(choice).key)),
                                          textParam("option", std::move(option)),
                                          textParam("options", std::move(options))});
}

} // namespace scye
