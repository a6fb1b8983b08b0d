#include "io/measured_setting.h"

#include <charconv>

namespace scye {
namespace {

constexpr std::string_view kPrefix = "measured.";

std::optional<double> numberIn(std::string_view text) {
  double unit = 1;
  if (text.ends_with("cm"))
    text.remove_suffix(2);
  else if (text.ends_with("in"))
    text.remove_suffix(2), unit = kCmPerInch;
  while (text.ends_with(' '))
    text.remove_suffix(1);
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value * unit;
}

// The pieces that a name is about, and what is left of it: "armhole".
struct Named {
  std::vector<PieceId> pieces;
  std::string_view reading;
};

Named named(std::string_view name, const KnitGarment& garment) {
  if (name == "armholeBack") return {{PieceId::Back}, "armhole"};
  if (name == "armholeFront")
    return {garment.piece(PieceId::Front) ? std::vector{PieceId::Front}
                                          : std::vector{PieceId::LeftFront, PieceId::RightFront},
            "armhole"};
  const auto dot = name.find('.');
  if (dot == std::string_view::npos) return {};
  const auto piece = pieceByKey(name.substr(0, dot));
  if (!piece) return {};
  return {{*piece}, name.substr(dot + 1)};
}

} // namespace

bool isMeasuredSetting(std::string_view setting) {
  return setting.starts_with(kPrefix);
}

std::optional<std::string> applyMeasured(Work& work, const Derived& derived,
                                         std::string_view setting, const Phrases& phrases) {
  const auto equals = setting.find('=');
  const std::string name(setting.substr(0, equals));
  if (equals == std::string_view::npos)
    return phrases.say("setting.form", {textParam("setting", std::string(setting))});
  const std::string value(setting.substr(equals + 1));
  const Named what = named(std::string_view(name).substr(kPrefix.size()), designedIn(derived));
  const auto reading = kReadingKeys.find(what.reading);
  const bool as = what.reading == "as";
  if (what.pieces.empty() || (!reading && !as))
    return phrases.say("measured.unknown", {textParam("name", name)});
  const auto fabric = kMeasuredAsKeys.find(value);
  if (as && !fabric)
    return phrases.say("measured.noAs", {textParam("name", name), textParam("value", value)});
  std::optional<double> number;
  if (!as && !value.empty()) {
    number = numberIn(value);
    if (!number)
      return phrases.say("measured.noNumber", {textParam("name", name), textParam("value", value)});
    const ReadingRange range = rangeOf(*reading);
    if (!(*number >= range.low && *number <= range.high))
      return phrases.say("measured.range",
                         {textParam("name", name), textParam("value", value),
                          numberParam("low", range.low), numberParam("high", range.high)});
  }
  for (const PieceId id : what.pieces) {
    PieceWork* piece = workOn(work, derived.knit, designedIn(derived), id);
    if (!piece) return phrases.say("measured.noPiece", {textParam("name", name)});
    if (as)
      piece->measured.as = *fabric;
    else
      piece->measured.set(*reading, number);
  }
  return std::nullopt;
}

} // namespace scye
