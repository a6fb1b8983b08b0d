// What every row of the panels works on, and the words all of them use.
#pragma once

#include "document/attention.h"
#include "document/document.h"
#include "settings/settings.h"
#include "values/value_text.h"
#include "wearers/wearer_store.h"

namespace scye {

struct PanelContext {
  Document& document;
  Attention& attention;
  Settings& settings;
  WearerStore& wearers;
  [[nodiscard]] const Phrases& phrases() const { return settings.phrases(); }
};

// A phrase of the catalogue, figures kept with their units.
[[nodiscard]] QString phraseText(const Phrases& phrases, const std::string& key,
                                 const Params& params = {},
                                 LengthUnit unit = LengthUnit::Centimetre);
[[nodiscard]] QString fieldName(const Phrases& phrases, Field field);
[[nodiscard]] QString choiceName(const Phrases& phrases, Choice choice);
[[nodiscard]] QString optionName(const Phrases& phrases, Choice choice, int option);
[[nodiscard]] QString originName(const Phrases& phrases, const Sizes& sizes, Field field);
// The same as one sign: filled where it was given.
[[nodiscard]] QString originSign(const Sizes& sizes, Field field);

// Where a filled-in measurement came from and where it likely lies; empty for one that was taken.
[[nodiscard]] QString estimateText(const Phrases& phrases, const Design& design, const Sizes& sizes,
                                   Field measurement, LengthUnit unit);
[[nodiscard]] bool isChild(const Design& design);
// What a row shows of a field: a measurement that is filled in is told as it would be taken.
[[nodiscard]] double shownIn(const Design& design, const Sizes& sizes, Field field);
// What it would show if nothing had been said.
[[nodiscard]] double filledIn(const Design& design, Field field);
[[nodiscard]] QString shownValue(const Phrases& phrases, Field field, double value,
                                 LengthUnit unit);
[[nodiscard]] ValueStyle styleOf(Field field, LengthUnit unit, bool showUnit);
[[nodiscard]] bool isWorkedOut(const Design& design, Field field);
// Why such a value cannot be set, and which choice lets it be.
[[nodiscard]] QString workedOutText(const Phrases& phrases);

} // namespace scye
