// A phrase taken apart, in the syntax of ICU's MessageFormat, which ICU parses:
//   {name}                                       a number, a length, words
//   {n, plural, one {# stitch} other {# stitches}}   by the plural forms of the language; # is n
//   {n, selectordinal, one {#st} ... other {#th}}    by its ordinal forms
//   {side, select, RS {an RS} other {a WS}}      by a key
//   {n, sts}                                     the phrase "count.sts" with n: "1 st", "12 sts"
// An apostrophe is itself; one before a brace quotes it: '{.
#pragma once

#include "model/locale_rules.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace scye {

struct MessageCase;

struct MessagePart {
  enum class Kind : std::uint8_t { Text, Place, Counted, Plural, Ordinal, Select, Number };
  Kind kind = Kind::Text;
  std::string text;   // the words, or the name of the place
  std::string phrase; // of Counted: its key
  std::vector<MessageCase> cases;
};
using Message = std::vector<MessagePart>;

struct MessageCase {
  std::string selector;          // of a select
  std::optional<double> exactly; // "=0" of a plural
  PluralForm form = PluralForm::Other;
  Message message;
};

struct ParsedMessage {
  Message message;
  std::string problem; // empty: none. Else the message is the pattern as it stands
};
// Cost: about 2 us for a phrase with places.
[[nodiscard]] ParsedMessage parseMessage(std::string_view pattern);

inline constexpr std::string_view kCountPrefix = "count.";

} // namespace scye
