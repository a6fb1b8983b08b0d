#include "model/phrases.h"

#include "model/units.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace scye {
namespace {

std::string_view trimmed(std::string_view s) {
  const auto first = s.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return s.substr(first, s.find_last_not_of(" \t\r") - first + 1);
}

std::string paramText(const Phrases& phrases, const Param& p, LengthUnit unit) {
  switch (p.kind) {
  case Param::Kind::Length:
    return lengthText(p.number, unit);
  case Param::Kind::Number:
    return numberText(p.number);
  case Param::Kind::Percent:
    return numberText(100 * p.number, 0) + " %";
  case Param::Kind::Phrase:
    return phrases.say(p.text, {}, unit);
  case Param::Kind::Text:
    break;
  }
  return p.text;
}

} // namespace

Param lengthParam(std::string name, double cm) {
  return {std::move(name), Param::Kind::Length, cm, {}};
}
Param numberParam(std::string name, double value) {
  return {std::move(name), Param::Kind::Number, value, {}};
}
Param percentParam(std::string name, double fraction) {
  return {std::move(name), Param::Kind::Percent, fraction, {}};
}
Param textParam(std::string name, std::string words) {
  return {std::move(name), Param::Kind::Text, 0, std::move(words)};
}
Param phraseParam(std::string name, std::string key) {
  return {std::move(name), Param::Kind::Phrase, 0, std::move(key)};
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

std::string lengthText(double cm, LengthUnit unit) {
  if (unit == LengthUnit::Centimetre) return numberText(cm, 1) + " cm";
  const long quarters = std::lround(std::abs(cm) / kCmPerInch * 4);
  const long whole = quarters / 4, part = quarters % 4;
  static constexpr std::string_view kParts[] = {"", "1/4", "1/2", "3/4"};
  std::string text = cm < 0 && quarters > 0 ? "-" : "";
  if (whole > 0 || part == 0) text += std::to_string(whole);
  if (part > 0) text += (whole > 0 ? " " : "") + std::string(kParts[part]);
  return text + " in";
}

std::vector<Phrases::Problem> Phrases::add(std::string_view file) {
  std::vector<Problem> problems;
  std::string pending;
  int number = 0, first = 1;
  while (!file.empty()) {
    const auto end = file.find('\n');
    const std::string_view line = trimmed(file.substr(0, end));
    file = end == std::string_view::npos ? std::string_view{} : file.substr(end + 1);
    ++number;
    if (pending.empty()) {
      first = number;
      if (line.empty() || line.front() == '#') continue;
    }
    if (!line.empty() && line.back() == '\\') {
      pending += std::string(trimmed(line.substr(0, line.size() - 1))) + " ";
      continue;
    }
    take(pending + std::string(line), first, problems);
    pending.clear();
  }
  if (!pending.empty()) take(pending, first, problems);
  return problems;
}

void Phrases::take(std::string_view line, int number, std::vector<Problem>& problems) {
  const auto equals = line.find(" =");
  if (equals == std::string_view::npos)
    problems.push_back({number, "expected \"key = text\", found \"" + std::string(line) + "\""});
  else
    text_[std::string(trimmed(line.substr(0, equals)))] =
        std::string(trimmed(line.substr(equals + 2)));
}

bool Phrases::has(std::string_view key) const {
  return text_.contains(std::string(key));
}

std::vector<std::string> Phrases::keys() const {
  std::vector<std::string> out;
  for (const auto& [key, text] : text_)
    out.push_back(key);
  std::sort(out.begin(), out.end());
  return out;
}

std::string Phrases::say(std::string_view key, const Params& params, LengthUnit unit) const {
  return sayWithin(key, params, unit, kPhraseDepth);
}

std::string Phrases::sayWithin(std::string_view key, const Params& params, LengthUnit unit,
                               int depth) const {
  const auto at = text_.find(std::string(key));
  if (at == text_.end() || depth == 0) return "[" + std::string(key) + "]";
  std::string out;
  std::string_view rest = at->second;
  while (!rest.empty()) {
    const auto open = rest.find('{');
    out += rest.substr(0, open);
    if (open == std::string_view::npos) break;
    const auto close = rest.find('}', open);
    if (close == std::string_view::npos) return out + std::string(rest.substr(open));
    const std::string_view place = rest.substr(open + 1, close - open - 1);
    rest = rest.substr(close + 1);
    if (!place.empty() && place.front() == '@') {
      out += sayWithin(place.substr(1), params, unit, depth - 1);
      continue;
    }
    const auto bar = place.find('|');
    const auto p = std::find_if(params.begin(), params.end(),
                                [&](const Param& q) { return q.name == place.substr(0, bar); });
    if (p == params.end()) {
      out += "{" + std::string(place) + "}";
    } else if (bar == std::string_view::npos) {
      out += paramText(*this, *p, unit);
    } else {
      const auto second = place.find('|', bar + 1);
      out += p->number == 1 || second == std::string_view::npos
                 ? place.substr(bar + 1, second - bar - 1)
                 : place.substr(second + 1);
    }
  }
  return out;
}

} // namespace scye
