// Phrases with named places, read from text files so that another language needs no C++.
// A file is lines "key = text"; blank lines and lines that begin with # are skipped; a line that
// ends in a backslash goes on in the next. What can stand in the text: model/message.h.
#pragma once

#include "model/message.h"

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace scye {

enum class LengthUnit : std::uint8_t { Centimetre, Inch };

// The phrase of a number with that unit.
[[nodiscard]] std::string_view lengthPhrase(LengthUnit unit);

struct Param {
  enum class Kind : std::uint8_t { Length, Number, Percent, Text, Phrase };
  std::string name;
  Kind kind = Kind::Text;
  double number = 0;
  std::string text; // the words, or the key of the phrase
  bool operator==(const Param&) const = default;
};
using Params = std::vector<Param>;

[[nodiscard]] Param lengthParam(std::string name, double cm);
[[nodiscard]] Param numberParam(std::string name, double value);
[[nodiscard]] Param percentParam(std::string name, double fraction);
[[nodiscard]] Param textParam(std::string name, std::string words);
[[nodiscard]] Param phraseParam(std::string name, std::string key);

// How deep phrases may lie one in the other.
inline constexpr int kPhraseDepth = 8;

class Phrases {
public:
  // `language`: a BCP 47 tag.
  explicit Phrases(const std::string& language = "en") { speak(language); }
  // From here on the numbers, plural forms and lists of that language.
  void speak(const std::string& language);
  [[nodiscard]] const std::string& language() const { return language_; }

  struct Problem {
    int line = 0;
    std::string text;
  };
  // Later files overlay earlier ones. Returns what could not be read; the rest is taken. A phrase
  // that is no valid message is taken as it stands, braces and all. The phrase "language.rules"
  // names the tag whose rules hold, where it is not the language itself.
  std::vector<Problem> add(std::string_view file);

  [[nodiscard]] bool has(std::string_view key) const { return messages_.contains(key); }
  // The phrase filled in. An unknown key gives the key itself in brackets; an unknown place stays
  // as it is: both are visible, and a test looks for them.
  [[nodiscard]] std::string say(std::string_view key, const Params& params = {},
                                LengthUnit unit = LengthUnit::Centimetre) const;
  // Numbers as the language writes them, the unit from the phrases "unit.*": "41.5 cm", or inches
  // to the nearest eighth, "16 1/4 in"; "66 %".
  [[nodiscard]] std::string length(double cm, LengthUnit unit) const;
  [[nodiscard]] std::string lengthNumber(double cm, LengthUnit unit) const; // without its unit
  [[nodiscard]] std::string percent(double fraction, int decimals = 0) const;
  [[nodiscard]] std::string number(double value, int decimals = 2) const {
    return rules_->number(value, decimals);
  }
  // "a, b and c"
  [[nodiscard]] std::string list(std::span<const std::string> items) const {
    return rules_->list(items);
  }
  [[nodiscard]] const LocaleRules& rules() const { return *rules_; }
  // The places that name no phrase: {n, sts} where no "count.sts" is.
  [[nodiscard]] std::vector<std::string> loose() const;

  [[nodiscard]] std::vector<std::string> keys() const;
  [[nodiscard]] std::vector<std::string> keysAfter(std::string_view prefix) const;
  [[nodiscard]] const Message* message(std::string_view key) const;

private:
  struct Filling;
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view key) const {
      return std::hash<std::string_view>()(key);
    }
  };
  void take(std::string_view line, int number, std::vector<Problem>& problems);
  void say(std::string& out, std::string_view key, const Filling& filling) const;
  void fill(std::string& out, const Message& message, const Filling& filling) const;
  void place(std::string& out, const MessagePart& part, const Filling& filling) const;
  [[nodiscard]] std::string paramText(const Param& param, const Filling& filling) const;
  [[nodiscard]] const Message* picked(const MessagePart& part, const Param& param) const;

  std::unordered_map<std::string, Message, Hash, std::equal_to<>> messages_;
  std::string language_;
  std::shared_ptr<const LocaleRules> rules_;
};

// The phrases built into the program: resources/phrases/en.
[[nodiscard]] const Phrases& builtinPhrases();

} // namespace scye
