#include "model/locale_rules.h"

#include <unicode/dcfmtsym.h>
#include <unicode/listformatter.h>
#include <unicode/locid.h>
#include <unicode/plurrule.h>

#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <vector>

namespace scye {
namespace {

constexpr std::array<std::string_view, 6> kForms{"zero", "one", "two", "few", "many", "other"};

std::string utf8(const icu::UnicodeString& text) {
  std::string out;
  return text.toUTF8String(out);
}

PluralForm formOf(const icu::UnicodeString& keyword) {
  return pluralForm(utf8(keyword));
}

} // namespace

PluralForm pluralForm(std::string_view name) {
  for (std::size_t i = 0; i < kForms.size(); ++i)
    if (kForms[i] == name) return PluralForm(i);
  return PluralForm::Other;
}

std::string numberText(double value, int decimals) {
  const double scale = std::pow(10, decimals);
  const double rounded = std::round(value * scale) / scale;
  char buffer[64];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, rounded == 0 ? 0.0 : rounded,
                                 std::chars_format::fixed, decimals);
  std::string text(buffer, end.ptr);
  if (decimals > 0) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text;
}

struct LocaleRules::Icu {
  icu::Locale locale;
  std::unique_ptr<icu::PluralRules> cardinals, ordinals;
  std::unique_ptr<icu::ListFormatter> lists;
  std::array<std::string, 10> digits;
  std::string point = ".", minus = "-";
  bool plain = true; // digits, point and minus are those of numberText
};

LocaleRules::LocaleRules(const std::string& tag) : tag_(tag), icu_(std::make_unique<Icu>()) {
  // Each step stands alone: where ICU has no data at all, English rules remain.
  const auto ok = [] { return UErrorCode(U_ZERO_ERROR); };
  UErrorCode status = ok();
  icu::Locale& locale = icu_->locale;
  locale = icu::Locale::forLanguageTag(tag, status);
  if (U_FAILURE(status)) locale = icu::Locale::getRoot();
  icu_->cardinals.reset(icu::PluralRules::forLocale(locale, status = ok()));
  icu_->ordinals.reset(icu::PluralRules::forLocale(locale, UPLURAL_TYPE_ORDINAL, status = ok()));
  icu_->lists.reset(icu::ListFormatter::createInstance(locale, status = ok()));
  using Symbols = icu::DecimalFormatSymbols;
  const Symbols symbols(locale, status = ok());
  for (int i = 0; i < 10; ++i) {
    icu_->digits[std::size_t(i)] =
        U_SUCCESS(status) ? utf8(symbols.getConstDigitSymbol(i)) : std::to_string(i);
    icu_->plain &= icu_->digits[std::size_t(i)] == std::to_string(i);
  }
  if (U_FAILURE(status)) return;
  icu_->point = utf8(symbols.getConstSymbol(Symbols::kDecimalSeparatorSymbol));
  icu_->minus = utf8(symbols.getConstSymbol(Symbols::kMinusSignSymbol));
  icu_->plain &= icu_->point == "." && icu_->minus == "-";
}

LocaleRules::~LocaleRules() = default;

std::string LocaleRules::number(double value, int decimals) const {
  std::string text = numberText(value, decimals);
  if (icu_->plain) return text;
  std::string out;
  for (const char c : text)
    out += c == '.' ? icu_->point : c == '-' ? icu_->minus : icu_->digits[std::size_t(c - '0')];
  return out;
}

PluralForm LocaleRules::plural(double value) const {
  if (!icu_->cardinals) return value == 1 ? PluralForm::One : PluralForm::Other;
  // Of the number as it is told: 1.004 is told as 1.
  const double told = std::round(value * 100) / 100;
  const bool whole = told == std::floor(told) && std::abs(told) < std::numeric_limits<int>::max();
  return formOf(whole ? icu_->cardinals->select(std::int32_t(told))
                      : icu_->cardinals->select(told));
}

PluralForm LocaleRules::ordinal(int value) const {
  return icu_->ordinals ? formOf(icu_->ordinals->select(std::int32_t(value))) : PluralForm::Other;
}

std::string LocaleRules::list(std::span<const std::string> items) const {
  std::vector<icu::UnicodeString> words;
  for (const std::string& item : items)
    words.push_back(icu::UnicodeString::fromUTF8(item));
  icu::UnicodeString joined;
  UErrorCode status = U_ZERO_ERROR;
  if (icu_->lists) icu_->lists->format(words.data(), std::int32_t(words.size()), joined, status);
  return utf8(joined);
}

std::string LocaleRules::capitalised(const std::string& words) const {
  icu::UnicodeString text = icu::UnicodeString::fromUTF8(words);
  text.toTitle(nullptr, icu_->locale, U_TITLECASE_WHOLE_STRING | U_TITLECASE_NO_LOWERCASE);
  return utf8(text);
}

} // namespace scye
