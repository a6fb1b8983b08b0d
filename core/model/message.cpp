#include "model/message.h"

#include <unicode/messagepattern.h>

namespace scye {
namespace {

std::string utf8(const icu::UnicodeString& text) {
  std::string out;
  return text.toUTF8String(out);
}

// Walks the parts that ICU found; the same walk as in its MessageFormat.
class Reader {
public:
  explicit Reader(const icu::MessagePattern& pattern) : pattern_(pattern) {}

  // From the part that begins a message; leaves `at` on the part that ends it.
  Message message(int& at) {
    Message out;
    int from = pattern_.getPart(at).getLimit();
    for (++at;; ++at) {
      const icu::MessagePattern::Part& part = pattern_.getPart(at);
      words(out, from, part.getIndex());
      from = part.getLimit();
      if (part.getType() == UMSGPAT_PART_TYPE_MSG_LIMIT) return out;
      if (part.getType() == UMSGPAT_PART_TYPE_REPLACE_NUMBER)
        out.push_back({MessagePart::Kind::Number, {}, {}, {}});
      if (part.getType() != UMSGPAT_PART_TYPE_ARG_START) continue;
      const int limit = pattern_.getLimitPartIndex(at);
      out.push_back(place(part.getArgType(), at + 1, limit));
      at = limit;
      from = pattern_.getPart(limit).getLimit();
    }
  }

  [[nodiscard]] const std::string& problem() const { return problem_; }

private:
  void words(Message& out, int from, int to) {
    if (to <= from) return;
    std::string text = utf8(pattern_.getPatternString().tempSubStringBetween(from, to));
    if (!out.empty() && out.back().kind == MessagePart::Kind::Text)
      out.back().text += text;
    else
      out.push_back({MessagePart::Kind::Text, std::move(text), {}, {}});
  }

  [[nodiscard]] std::string part(int at) const {
    return utf8(pattern_.getSubstring(pattern_.getPart(at)));
  }

  MessagePart place(UMessagePatternArgType type, int at, int limit) {
    MessagePart out;
    out.text = part(at++);
    switch (type) {
    case UMSGPAT_ARG_TYPE_NONE:
      out.kind = MessagePart::Kind::Place;
      return out;
    case UMSGPAT_ARG_TYPE_SIMPLE:
      out.kind = MessagePart::Kind::Counted;
      out.phrase = std::string(kCountPrefix) + part(at);
      if (at + 1 < limit) problem_ = "{" + out.text + ", " + part(at) + "} takes no style";
      return out;
    case UMSGPAT_ARG_TYPE_PLURAL:
      out.kind = MessagePart::Kind::Plural;
      break;
    case UMSGPAT_ARG_TYPE_SELECTORDINAL:
      out.kind = MessagePart::Kind::Ordinal;
      break;
    case UMSGPAT_ARG_TYPE_SELECT:
      out.kind = MessagePart::Kind::Select;
      break;
    case UMSGPAT_ARG_TYPE_CHOICE:
      problem_ = "\"choice\" is not used here; take plural or select";
      return out;
    }
    if (icu::MessagePattern::Part::hasNumericValue(pattern_.getPartType(at))) {
      problem_ = "\"offset\" is not used here";
      ++at;
    }
    while (at < limit)
      out.cases.push_back(oneCase(at, out.kind));
    return out;
  }

  MessageCase oneCase(int& at, MessagePart::Kind kind) {
    MessageCase out;
    out.selector = part(at++);
    if (icu::MessagePattern::Part::hasNumericValue(pattern_.getPartType(at)))
      out.exactly = pattern_.getNumericValue(pattern_.getPart(at++));
    else if (kind != MessagePart::Kind::Select) {
      out.form = pluralForm(out.selector);
      if (out.form == PluralForm::Other && out.selector != "other")
        problem_ = "\"" + out.selector + "\" is no plural form";
    }
    out.message = message(at);
    ++at;
    return out;
  }

  const icu::MessagePattern& pattern_;
  std::string problem_;
};

} // namespace

ParsedMessage parseMessage(std::string_view pattern) {
  Message asItIs{{MessagePart::Kind::Text, std::string(pattern), {}, {}}};
  if (pattern.find_first_of("{}") == pattern.npos && pattern.find("''") == pattern.npos)
    return {std::move(asItIs), {}};
  UErrorCode status = U_ZERO_ERROR;
  UParseError where{};
  const icu::MessagePattern parsed(
      icu::UnicodeString::fromUTF8(icu::StringPiece(pattern.data(), std::int32_t(pattern.size()))),
      &where, status);
  if (U_FAILURE(status))
    return {std::move(asItIs), "not a message pattern at \"" +
                                   utf8(icu::UnicodeString(where.preContext)) + "\" before \"" +
                                   utf8(icu::UnicodeString(where.postContext)) + "\" (" +
                                   u_errorName(status) + ")"};
  Reader reader(parsed);
  int at = 0;
  Message message = reader.message(at);
  if (!reader.problem().empty()) return {std::move(asItIs), reader.problem()};
  return {std::move(message), {}};
}

} // namespace scye
