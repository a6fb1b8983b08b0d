// What the commands share in reading their arguments.
#pragma once

#include "model/enum_keys.h"
#include "model/phrases.h"
#include "schematic/paper.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace CLI {
class App;
}

namespace scye {

// Tells on stderr what makes no sense; returns the exit code for it.
int usage(std::string_view phrase, const Params& params = {});

// Into what `app` describes. Returns an exit code where a value is missing, or an option or a file
// is left that none was described for, which has been told.
[[nodiscard]] std::optional<int> parseArguments(CLI::App& app,
                                                std::span<const std::string> arguments);

// What the values of options are called, on what is made.
inline constexpr EnumKeys<Paper, Paper::Letter> kPapers{
    {{Paper::TrueSize, "true"}, {Paper::A4, "a4"}, {Paper::Letter, "letter"}}};
inline constexpr EnumKeys<LengthUnit, LengthUnit::Inch> kUnits{
    {{LengthUnit::Centimetre, "cm"}, {LengthUnit::Inch, "in"}}};
enum class Terms { Us, Uk };
inline constexpr EnumKeys<Terms, Terms::Uk> kTerms{{{Terms::Us, "us"}, {Terms::Uk, "uk"}}};

// "true|a4|letter"
template <class E, E last>
std::string joined(const EnumKeys<E, last>& keys, const std::string& by) {
  std::string list;
  for (int i = 0; i <= int(last); ++i)
    list += (i == 0 ? "" : by) + std::string(keys[E(i)]);
  return list;
}

// The value of an option, where one is given. Returns an exit code where it is none of them.
template <class E, E last>
[[nodiscard]] std::optional<int> pick(const std::string& name,
                                      const std::optional<std::string>& value,
                                      const EnumKeys<E, last>& keys, E& picked) {
  if (!value) return std::nullopt;
  if (const auto found = keys.find(*value)) return picked = *found, std::nullopt;
  return usage("cli.option", {textParam("option", name), textParam("value", *value),
                              textParam("options", joined(keys, ", "))});
}

} // namespace scye
