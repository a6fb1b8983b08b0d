// Phrases with named places, read from text files so that another language needs no C++.
// A file is lines "key = text"; blank lines and lines that begin with # are skipped; a line that
// ends in a backslash goes on in the next. In the text:
//   {name}            the parameter, a length in the reader's unit, a number, or words
//   {name|one|many}   "one" when the number is 1, else "many"
//   {@key}            another phrase, at most kPhraseDepth of them one in the other
#pragma once

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace scye {

enum class LengthUnit : std::uint8_t { Centimetre, Inch };

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

// A length as a person reads it: "41.5 cm", or inches to the nearest quarter, "16 1/4 in".
[[nodiscard]] std::string lengthText(double cm, LengthUnit unit);
// A number with at most `decimals` places and no trailing zeros.
[[nodiscard]] std::string numberText(double value, int decimals = 2);

inline constexpr int kPhraseDepth = 8;

class Phrases {
public:
  struct Problem {
    int line = 0;
    std::string text;
  };
  // Later files overlay earlier ones. Returns what could not be read; the rest is taken.
  std::vector<Problem> add(std::string_view file);

  [[nodiscard]] bool has(std::string_view key) const;
  // The phrase filled in. An unknown key gives the key itself in brackets; an unknown place stays
  // as it is: both are visible, and a test looks for them.
  [[nodiscard]] std::string say(std::string_view key, const Params& params = {},
                                LengthUnit unit = LengthUnit::Centimetre) const;
  [[nodiscard]] std::vector<std::string> keys() const;

private:
  [[nodiscard]] std::string sayWithin(std::string_view key, const Params& params, LengthUnit unit,
                                      int depth) const;
  void take(std::string_view line, int number, std::vector<Problem>& problems);

  std::unordered_map<std::string, std::string> text_;
};

// The phrases built into the program: resources/phrases/en.txt.
[[nodiscard]] const Phrases& builtinPhrases();

} // namespace scye
