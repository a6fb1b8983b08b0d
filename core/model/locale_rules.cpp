#include "model/locale_rules.h"

#include "model/enum_keys.h"

#include <unicode/coll.h>
#include <unicode/dcfmtsym.h>
#include <unicode/listformatter.h>
#include <unicode/locid.h>
#include <unicode/plurrule.h>

#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <mutex>
#include <vector>

namespace scye {
namespace {

constexpr EnumKeys<PluralForm, PluralForm::Other> kForms{{
    {PluralForm::Zero, "zero"},
    {PluralForm::One, "one"},
    {PluralForm::Two, "two"},
    {PluralForm::Few, "few"},
    {PluralForm::Many, "many"},
    {PluralForm::Other, "other"},
}};

std::string utf8(const icu::UnicodeString& text) {
  std::string out;
  return text.toUTF8String(out);
}

double rounded(double value, int decimals) {
  const double scale = std::pow(10, decimals);
  return std::round(value * scale) / scale;
}

std::string fixedText(double value, int decimals) {
  char buffer[64];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value == 0 ? 0.0 : value,
                                 std::chars_format::fixed, decimals);
  return {buffer, end.ptr};
}

std::string joined(const icu::ListFormatter* how, std::span<const std::string> items) {
  std::vector<icu::UnicodeString> words;
  for (const std::string& item : items)
    words.push_back(icu::UnicodeString::fromUTF8(item));
  icu::UnicodeString out;
  UErrorCode status = U_ZERO_ERROR;
  if (how) how->format(words.data(), std::int32_t(words.size()), out, status);
  return utf8(out);
}

PluralForm formOf(const icu::UnicodeString& keyword) {
  return pluralForm(utf8(keyword));
}

} // namespace

PluralForm pluralForm(std::string_view name) {
  return kForms.find(name).value_or(PluralForm::Other);
}

std::string numberText(double value, int decimals) {
  std::string text = fixedText(rounded(value, decimals), decimals);
  if (decimals > 0) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text;
}

struct LocaleRules::Icu {
  icu::Locale locale;
  std::unique_ptr<icu::PluralRules> cardinals, ordinals;
  std::unique_ptr<icu::ListFormatter> lists, commas;
  std::unique_ptr<icu::Collator> order; // made when first asked for: it takes longest
  std::once_flag ordered;
  std::array<std::string, 10> digits;
  std::string point = ".", minus = "-", plus = "+";
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
  icu_->commas.reset(icu::ListFormatter::createInstance(locale, ULISTFMT_TYPE_UNITS,
                                                        ULISTFMT_WIDTH_SHORT, status = ok()));
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
  icu_->plus = utf8(symbols.getConstSymbol(Symbols::kPlusSignSymbol));
  icu_->plain &= icu_->point == "." && icu_->minus == "-";
}

LocaleRules::~LocaleRules() = default;

std::string LocaleRules::number(double value, int decimals) const {
  return inItsSigns(numberText(value, decimals));
}

std::string LocaleRules::fixedNumber(double value, int decimals, bool isSigned) const {
  const double told = rounded(value, decimals);
  return (isSigned && told > 0 ? icu_->plus : "") + inItsSigns(fixedText(told, decimals));
}

std::string LocaleRules::inItsSigns(const std::string& text) const {
  if (icu_->plain) return text;
  std::string out;
  for (const char c : text)
    out += c == '.' ? icu_->point : c == '-' ? icu_->minus : icu_->digits[std::size_t(c - '0')];
  return out;
}

PluralForm LocaleRules::plural(double value) const {
  if (!icu_->cardinals) return value == 1 ? PluralForm::One : PluralForm::Other;
  // Of the number as it is told: 1.004 is told as 1.
  const double told = rounded(value, 2);
  const bool whole = told == std::floor(told) && std::abs(told) < std::numeric_limits<int>::max();
  return formOf(whole ? icu_->cardinals->select(std::int32_t(told))
                      : icu_->cardinals->select(told));
}

PluralForm LocaleRules::ordinal(int value) const {
  return icu_->ordinals ? formOf(icu_->ordinals->select(std::int32_t(value))) : PluralForm::Other;
}

std::string LocaleRules::list(std::span<const std::string> items) const {
  return joined(icu_->lists.get(), items);
}

std::string LocaleRules::commas(std::span<const std::string> items) const {
  return joined(icu_->commas.get(), items);
}

bool LocaleRules::isBefore(const std::string& a, const std::string& b) const {
  UErrorCode status = U_ZERO_ERROR;
  std::call_once(icu_->ordered,
                 [&] { icu_->order.reset(icu::Collator::createInstance(icu_->locale, status)); });
  if (!icu_->order) return a < b;
  return icu_->order->compareUTF8(a, b, status) == UCOL_LESS;
}

std::string LocaleRules::capitalised(const std::string& words) const {
  icu::UnicodeString text = icu::UnicodeString::fromUTF8(words);
  text.toTitle(nullptr, icu_->locale, U_TITLECASE_WHOLE_STRING | U_TITLECASE_NO_LOWERCASE);
  return utf8(text);
}

} // namespace scye
