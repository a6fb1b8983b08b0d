// What a language asks for beside its words: the decimal sign, plural and ordinal forms, how a list
// is joined. Source: the Unicode CLDR, as ICU brings it.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>

namespace scye {

// Plural and ordinal forms by the names that CLDR gives them.
enum class PluralForm : std::uint8_t { Zero, One, Two, Few, Many, Other };
[[nodiscard]] PluralForm pluralForm(std::string_view name); // an unknown name is Other

// A number with a decimal point, at most `decimals` places and no trailing zeros: as it stands in
// files. What is shown to a person comes from LocaleRules::number.
[[nodiscard]] std::string numberText(double value, int decimals = 2);

class LocaleRules {
public:
  // A BCP 47 tag, "en-001"; what CLDR does not know follows the nearest that it knows.
  // Cost: about half a millisecond for the first.
  explicit LocaleRules(const std::string& tag);
  ~LocaleRules();
  LocaleRules(const LocaleRules&) = delete;
  LocaleRules& operator=(const LocaleRules&) = delete;

  [[nodiscard]] const std::string& tag() const { return tag_; }
  // As numberText, with the signs of the language, and no signs between thousands.
  [[nodiscard]] std::string number(double value, int decimals = 2) const;
  // Always with that many places, to be compared in a column; signed: "+0.5" too, but "0.0".
  [[nodiscard]] std::string fixedNumber(double value, int decimals, bool isSigned = false) const;
  [[nodiscard]] PluralForm plural(double value) const;
  [[nodiscard]] PluralForm ordinal(int value) const;
  // "a, b and c"
  [[nodiscard]] std::string list(std::span<const std::string> items) const;
  // "a, b, c": names beside each other, without an "and".
  [[nodiscard]] std::string commas(std::span<const std::string> items) const;
  // The order of the language's dictionaries, which puts "k1" before "M1" before "p1".
  [[nodiscard]] bool isBefore(const std::string& a, const std::string& b) const;
  // As it stands at the beginning of a line: "Armhole and neck".
  [[nodiscard]] std::string capitalised(const std::string& words) const;

private:
  struct Icu;

  [[nodiscard]] std::string inItsSigns(const std::string& text) const;

  std::string tag_;
  std::unique_ptr<Icu> icu_;
};

} // namespace scye
