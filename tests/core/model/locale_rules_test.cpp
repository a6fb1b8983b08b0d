#include "model/locale_rules.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

TEST(NumberText, roundsAndDropsTrailingZeros) {
  EXPECT_EQ(numberText(3), "3");
  EXPECT_EQ(numberText(3.10), "3.1");
  EXPECT_EQ(numberText(3.146), "3.15");
  EXPECT_EQ(numberText(2.96, 1), "3");
  EXPECT_EQ(numberText(120, 0), "120");
  EXPECT_EQ(numberText(-0.001), "0") << "no minus before nothing";
  EXPECT_EQ(numberText(-1.5), "-1.5");
}

// Forms and signs as in the CLDR's own tables (unicode.org/cldr/charts, plural rules and number
// symbols).
TEST(LocaleRules, knowPluralForms) {
  const LocaleRules en("en"), hr("hr"), ar("ar");
  EXPECT_EQ(en.plural(1), PluralForm::One);
  EXPECT_EQ(en.plural(1.5), PluralForm::Other);
  EXPECT_EQ(en.plural(1.004), PluralForm::One) << "it is told as 1";
  EXPECT_EQ(hr.plural(21), PluralForm::One);
  EXPECT_EQ(hr.plural(22), PluralForm::Few);
  EXPECT_EQ(hr.plural(12), PluralForm::Other);
  EXPECT_EQ(ar.plural(0), PluralForm::Zero);
  EXPECT_EQ(ar.plural(2), PluralForm::Two);
  EXPECT_EQ(ar.plural(11), PluralForm::Many);
}

TEST(LocaleRules, knowOrdinalForms) {
  const LocaleRules en("en");
  EXPECT_EQ(en.ordinal(1), PluralForm::One);
  EXPECT_EQ(en.ordinal(22), PluralForm::Two);
  EXPECT_EQ(en.ordinal(3), PluralForm::Few);
  for (const int n : {4, 11, 12, 13, 111})
    EXPECT_EQ(en.ordinal(n), PluralForm::Other) << n;
}

TEST(LocaleRules, writeNumbersAsTheLanguageDoes) {
  EXPECT_EQ(LocaleRules("en").number(1234.5), "1234.5");
  EXPECT_EQ(LocaleRules("de").number(1234.5), "1234,5");
  EXPECT_EQ(LocaleRules("sv").number(-1.5), "\u22121,5") << "a true minus";
  EXPECT_EQ(LocaleRules("hr-x-made").number(0.25), "0,25") << "what it is nearest to";
}

TEST(LocaleRules, serveEvenWhenTheLanguageIsUnknown) {
  const LocaleRules none("no such tag");
  EXPECT_EQ(none.number(2.5), "2.5");
  EXPECT_EQ(none.plural(7), PluralForm::Other);
}

TEST(LocaleRules, capitaliseTheFirstLetterOnly) {
  EXPECT_EQ(LocaleRules("en").capitalised("armhole and V neck"), "Armhole and V neck");
  EXPECT_EQ(LocaleRules("fr").capitalised("\u00e9paule"), "\u00c9paule");
  EXPECT_EQ(LocaleRules("en").capitalised(""), "");
}

} // namespace
} // namespace scye
