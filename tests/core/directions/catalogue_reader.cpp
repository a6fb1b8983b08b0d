#include "core/directions/catalogue_reader.h"

#include <algorithm>
#include <charconv>

namespace scye::reader {
namespace {

using Kind = MessagePart::Kind;

// Every way in which the forms of a message can be taken together. `number`: what # stands for.
std::vector<Form> formsOf(const Phrases& phrases, const Message& message,
                          const std::string& number) {
  std::vector<Form> out{{}};
  const auto append = [&](const std::vector<Form>& endings) {
    std::vector<Form> longer;
    for (const Form& start : out)
      for (const Form& end : endings) {
        longer.push_back(start);
        longer.back().insert(longer.back().end(), end.begin(), end.end());
      }
    out = std::move(longer);
  };
  const auto ofCases = [&](const MessagePart& part, const std::string& name) {
    std::vector<Form> cases;
    for (const MessageCase& c : part.cases)
      for (Form& form : formsOf(phrases, c.message, name)) {
        if (c.exactly) form.push_back({{}, name, c.exactly});
        cases.push_back(std::move(form));
      }
    return cases;
  };
  for (const MessagePart& part : message)
    switch (part.kind) {
    case Kind::Text:
      append({{{part.text, {}, {}}}});
      break;
    case Kind::Number:
      append({{{{}, number, {}}}});
      break;
    case Kind::Place:
      append({{{{}, part.text, {}}}});
      break;
    case Kind::Counted:
      if (const Message* inner = phrases.message(part.phrase))
        append(ofCases(inner->front(), part.text));
      break;
    default:
      append(ofCases(part, part.text));
    }
  return out;
}

} // namespace

CatalogueReader::CatalogueReader(const Phrases& from, const Phrases& to, std::string terms)
    : from_(from), to_(to), terms_(std::move(terms)) {
  const std::string three[] = {"\1", "\1", "\1"};
  const std::string two = from.list(std::span(three).first(2)), all = from.list(three);
  and_ = two.substr(1, two.size() - 2);
  comma_ = all.substr(1, all.find('\1', 1) - 1);
  point_ = from.number(0.5).substr(1, from.number(0.5).size() - 2);
  for (const char* start :
       {"piece.", "knitted.", "side.", "mark.", "unit.length.", "finding.child"})
    for (const std::string& rest : from.keysAfter(start))
      addForms(start + rest);
  for (const std::string& rest : from.keysAfter("dir.us."))
    addForms(from.has("dir." + terms_ + "." + rest) ? "dir." + terms_ + "." + rest
                                                    : "dir.us." + rest);
}

void CatalogueReader::addForms(const std::string& key) {
  for (const Form& form : formsOf(from_, *from_.message(key), {})) {
    Pattern pattern{key, {}, 0};
    for (const FormPart& part : form) { // neighbouring words are one
      pattern.leastLength += part.words.size();
      if (part.place.empty() && !pattern.form.empty() && pattern.form.back().place.empty())
        pattern.form.back().words += part.words;
      else
        pattern.form.push_back(part);
    }
    patterns_.push_back(std::move(pattern));
  }
  std::stable_sort(patterns_.begin(), patterns_.end(), [](const Pattern& a, const Pattern& b) {
    return a.leastLength > b.leastLength; // the one that says most words itself
  });
}

std::optional<std::string> CatalogueReader::read(const std::string& text) {
  if (const auto at = known_.find(text); at != known_.end()) return at->second;
  known_[text] = std::nullopt; // nothing lies within itself
  std::optional<std::string> out = phrase(text);
  if (!out) out = list(text);
  return known_[text] = out;
}

std::optional<std::string> CatalogueReader::phrase(const std::string& text) {
  for (const Pattern& pattern : patterns_) {
    if (pattern.leastLength == 0 || pattern.leastLength > text.size()) continue;
    Places places;
    if (!match(pattern, 0, text, places)) continue;
    if (auto said = checked(pattern, text, places)) return said;
  }
  return std::nullopt;
}

bool CatalogueReader::match(const Pattern& pattern, std::size_t part, std::string_view text,
                            Places& places) {
  if (part == pattern.form.size()) return text.empty();
  const FormPart& p = pattern.form[part];
  if (p.place.empty())
    return text.starts_with(p.words) &&
           match(pattern, part + 1, text.substr(p.words.size()), places);
  if (p.number) {
    const std::string figures = from_.number(*p.number);
    return fill(p.place, figures, places) && match(pattern, part + 1, text, places);
  }
  // Up to where the words behind it stand; from the last on, as what is joined grows on the left.
  const bool last = part + 1 == pattern.form.size();
  const std::string_view behind = last ? std::string_view{} : pattern.form[part + 1].words;
  for (std::size_t at = last ? text.size() : text.rfind(behind); at != text.npos;
       at = last || at == 0 ? text.npos : text.rfind(behind, at - 1)) {
    Places tried = places;
    if (!fill(p.place, text.substr(0, at), tried)) continue;
    if (!match(pattern, part + 1, text.substr(at), tried)) continue;
    places = std::move(tried);
    return true;
  }
  return false;
}

bool CatalogueReader::fill(const std::string& name, std::string_view text, Places& places) {
  if (const auto at = places.find(name); at != places.end()) return at->second.text == text;
  const auto what = filled(std::string(text));
  if (what) places[name] = *what;
  return what.has_value();
}

std::optional<CatalogueReader::Filled> CatalogueReader::filled(const std::string& text) {
  if (text.empty()) return Filled{};
  if (const auto n = number(text)) return Filled{text, numberText(*n), n};
  // The fraction of an inch: 16 1/4.
  if (text.find_first_not_of("0123456789 /-") == text.npos) return Filled{text, text, {}};
  if (const auto words = read(text)) return Filled{text, *words, {}};
  return std::nullopt;
}

std::optional<double> CatalogueReader::number(std::string_view text) const {
  std::string plain(text);
  if (const auto at = plain.find(point_); at != plain.npos) plain.replace(at, point_.size(), ".");
  double value = 0;
  const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
  if (error != std::errc() || end != plain.data() + plain.size()) return std::nullopt;
  return from_.number(value) == text ? std::optional(value) : std::nullopt;
}

// "a, b and c", also where it begins with a capital.
std::optional<std::string> CatalogueReader::list(const std::string& text) {
  const auto cut = text.rfind(and_);
  std::vector<std::string> items;
  std::string_view rest = std::string_view(text).substr(0, cut);
  if (cut != text.npos)
    for (std::size_t at; (at = rest.find(comma_)) != rest.npos;
         rest = rest.substr(at + comma_.size()))
      items.emplace_back(rest.substr(0, at));
  items.emplace_back(rest);
  if (cut != text.npos) items.push_back(text.substr(cut + and_.size()));
  bool capital = false;
  for (std::string& item : items) {
    auto read = items.size() > 1 ? this->read(item) : std::nullopt;
    if (!read && &item == &items.front())
      for (const Pattern& pattern : patterns_) // a shape's name, capitalised
        if (pattern.form.size() == 1 && from_.rules().capitalised(pattern.form[0].words) == item)
          read = to_.say(pattern.key), capital = true;
    if (!read) return std::nullopt;
    item = *read;
  }
  const std::string said = to_.list(items);
  return capital ? to_.rules().capitalised(said) : said;
}

std::optional<std::string> CatalogueReader::checked(const Pattern& pattern, const std::string& text,
                                                    const Places& places) const {
  Params before, after;
  for (const auto& [name, what] : places) {
    before.push_back(what.number ? numberParam(name, *what.number) : textParam(name, what.text));
    after.push_back(what.number ? numberParam(name, *what.number) : textParam(name, what.read));
  }
  if (from_.say(pattern.key, before) != text) return std::nullopt;
  return to_.say(pattern.key, after);
}

} // namespace scye::reader
