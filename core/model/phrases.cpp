#include "model/phrases.h"

#include "model/plain_text.h"
#include "model/units.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace scye {
namespace {

std::string_view trimmed(std::string_view s) {
  const auto first = s.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return s.substr(first, s.find_last_not_of(" \t\r") - first + 1);
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

std::string_view lengthPhrase(LengthUnit unit) {
  return unit == LengthUnit::Inch ? "unit.length.inch" : "unit.length.cm";
}

void Phrases::speak(const std::string& language) {
  language_ = language;
  rules_ = std::make_shared<LocaleRules>(language);
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
  if (equals == std::string_view::npos) {
    problems.push_back({number, "expected \"key = text\", found \"" + std::string(line) + "\""});
    return;
  }
  std::string key(trimmed(line.substr(0, equals)));
  const std::string_view text = trimmed(line.substr(equals + 2));
  if (key == "language.rules") rules_ = std::make_shared<LocaleRules>(std::string(text));
  ParsedMessage parsed = parseMessage(text);
  if (!parsed.problem.empty()) problems.push_back({number, key + ": " + parsed.problem});
  messages_.insert_or_assign(std::move(key), std::move(parsed.message));
}

std::vector<std::string> Phrases::keys() const {
  return keysAfter({});
}

std::vector<std::string> Phrases::keysAfter(std::string_view prefix) const {
  std::vector<std::string> out;
  for (const auto& [key, message] : messages_)
    if (key.starts_with(prefix)) out.push_back(key.substr(prefix.size()));
  std::sort(out.begin(), out.end());
  return out;
}

std::vector<std::string> Phrases::loose() const {
  std::vector<std::string> out;
  const auto look = [&](const auto& self, const std::string& key, const Message& message) -> void {
    for (const MessagePart& part : message) {
      if (part.kind == MessagePart::Kind::Counted && !has(part.phrase))
        out.push_back(key + ": " + part.phrase);
      for (const MessageCase& c : part.cases)
        self(self, key, c.message);
    }
  };
  for (const auto& [key, message] : messages_)
    look(look, key, message);
  return out;
}

const Message* Phrases::message(std::string_view key) const {
  const auto at = messages_.find(key);
  return at == messages_.end() ? nullptr : &at->second;
}

std::string Phrases::length(double cm, LengthUnit unit) const {
  return say(lengthPhrase(unit), {textParam("n", lengthNumber(cm, unit))});
}

std::string Phrases::lengthNumber(double cm, LengthUnit unit) const {
  if (unit == LengthUnit::Centimetre) return number(cm, 1);
  const long eighths = std::lround(std::abs(cm) / kCmPerInch * 8);
  const long whole = eighths / 8, part = eighths % 8;
  const long shared = std::gcd(part, 8L), top = part / shared;
  const double sign = cm < 0 && eighths > 0 ? -1 : 1;
  const std::string over = number(double(top)), under = number(double(8 / shared));
  if (part == 0) return number(sign * double(whole));
  if (whole == 0) return number(sign * double(top)) + "/" + under;
  return number(sign * double(whole)) + " " + over + "/" + under;
}

std::string Phrases::percent(double fraction, int decimals) const {
  return say("unit.percent", {textParam("n", number(100 * fraction, decimals))});
}

// What the places of a message are filled with.
struct Phrases::Filling {
  const Params& params;
  LengthUnit unit;
  int depth;                     // how many phrases may still lie within
  const Param* number = nullptr; // what # stands for

  [[nodiscard]] const Param* find(std::string_view name) const {
    for (const Param& p : params)
      if (p.name == name) return &p;
    return nullptr;
  }
};

std::string Phrases::say(std::string_view key, const Params& params, LengthUnit unit) const {
  std::string out;
  say(out, key, {params, unit, kPhraseDepth});
  return out;
}

void Phrases::say(std::string& out, std::string_view key, const Filling& filling) const {
  const auto at = messages_.find(key);
  if (at == messages_.end() || filling.depth == 0)
    out.append("[").append(key).append("]");
  else
    fill(out, at->second, filling);
}

void Phrases::fill(std::string& out, const Message& message, const Filling& filling) const {
  for (const MessagePart& part : message)
    if (part.kind == MessagePart::Kind::Text)
      out += part.text;
    else if (part.kind == MessagePart::Kind::Number)
      out += filling.number ? paramText(*filling.number, filling) : "#";
    else
      place(out, part, filling);
}

void Phrases::place(std::string& out, const MessagePart& part, const Filling& filling) const {
  const Param* param = filling.find(part.text);
  if (!param) {
    out.append("{").append(part.text).append("}");
    return;
  }
  if (part.kind == MessagePart::Kind::Place) {
    out += paramText(*param, filling);
  } else if (part.kind == MessagePart::Kind::Counted) {
    Params counted{*param};
    counted[0].name = "n";
    say(out, part.phrase, {counted, filling.unit, filling.depth - 1});
  } else if (const Message* message = picked(part, *param)) {
    fill(out, *message, {filling.params, filling.unit, filling.depth, param});
  }
}

const Message* Phrases::picked(const MessagePart& part, const Param& param) const {
  const bool select = part.kind == MessagePart::Kind::Select;
  for (const MessageCase& c : part.cases)
    if (select ? c.selector == param.text : c.exactly == param.number) return &c.message;
  const PluralForm form = select ? PluralForm::Other
                          : part.kind == MessagePart::Kind::Plural
                              ? rules_->plural(param.number)
                              : rules_->ordinal(int(param.number));
  const Message* other = nullptr;
  for (const MessageCase& c : part.cases) {
    if (c.exactly) continue;
    if (select ? c.selector == "other" : c.form == form) return &c.message;
    if (c.form == PluralForm::Other) other = &c.message;
  }
  return other; // ICU accepts no plural without it
}

std::string Phrases::paramText(const Param& param, const Filling& filling) const {
  switch (param.kind) {
  case Param::Kind::Length:
    return length(param.number, filling.unit);
  case Param::Kind::Number:
    return number(param.number);
  case Param::Kind::Percent:
    return percent(param.number);
  case Param::Kind::Phrase: {
    std::string out;
    say(out, param.text, {{}, filling.unit, filling.depth - 1});
    return out;
  }
  case Param::Kind::Text:
    break;
  }
  return plainLines(param.text); // it may come from a file
}

} // namespace scye
