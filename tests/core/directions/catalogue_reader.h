// Reads what was said in one language by the phrases of that language, and says it in another. Only
// the two catalogues are known to it: every text must be a phrase of the first, its places filled
// with numbers, lengths, phrases and lists; said again in the first language with what was read it
// must come out the same, plural forms and all. What is no such text is handed back as nothing.
#pragma once

#include "directions/directions.h"

#include <map>
#include <optional>
#include <string>

namespace scye::reader {

// One of the forms that a phrase can take: words, places, and numbers that the form alone tells
// ("the last st" is one).
struct FormPart {
  std::string words, place;
  std::optional<double> number; // of the place
};
using Form = std::vector<FormPart>;

class CatalogueReader {
public:
  CatalogueReader(const Phrases& from, const Phrases& to, std::string terms);

  [[nodiscard]] std::optional<std::string> read(const std::string& text);

private:
  // What fills a place: as it stands in the text and, read, in the other language.
  struct Filled {
    std::string text, read;
    std::optional<double> number;
  };
  using Places = std::map<std::string, Filled>;
  struct Pattern {
    std::string key;
    Form form;
    std::size_t leastLength = 0;
  };

  void addForms(const std::string& key);
  [[nodiscard]] bool match(const Pattern& pattern, std::size_t part, std::string_view text,
                           Places& places);
  [[nodiscard]] bool fill(const std::string& name, std::string_view text, Places& places);
  [[nodiscard]] std::optional<Filled> filled(const std::string& text);
  [[nodiscard]] std::optional<double> number(std::string_view text) const;
  [[nodiscard]] std::optional<std::string> phrase(const std::string& text);
  [[nodiscard]] std::optional<std::string> list(const std::string& text);
  [[nodiscard]] std::optional<std::string> checked(const Pattern& pattern, const std::string& text,
                                                   const Places& places) const;

  const Phrases& from_;
  const Phrases& to_;
  std::string terms_;
  std::string and_, comma_, point_;
  std::vector<Pattern> patterns_;
  std::map<std::string, std::optional<std::string>> known_;
};

} // namespace scye::reader
