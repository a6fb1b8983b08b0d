#include "io/design_reader.h"

#include "io/former_designs.h"
#include "io/refusal_text.h"
#include "model/plain_text.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// Words from a file as they may stand in a message: one line, not long, whole characters.
std::string quoted(std::string words) {
  constexpr std::size_t kLongest = 60;
  if (words.size() > kLongest) {
    std::size_t end = kLongest;
    while (end > 0 && (static_cast<unsigned char>(words[end]) & 0xC0) == 0x80)
      --end;
    words = words.substr(0, end) + "...";
  }
  return plainLine(words);
}

// The plain texts at the top of the file.
std::string Design::*textOf(std::string_view key) {
  if (key == "title") return &Design::title;
  if (key == "wearer") return &Design::wearer;
  if (key == "notes") return &Design::notes;
  if (key == "ribName") return &Design::ribName;
  if (key == "measuredOn") return &Design::measuredOn;
  return nullptr;
}

// Files of version 1 may say so what Choice::CapTop says now: "no" or "yes".
constexpr std::string_view kGathersBefore = "gathers";

std::optional<int> gathersNow(std::string_view text) {
  if (text == "no") return int(CapTop::Smooth);
  if (text == "yes") return int(CapTop::Gathered);
  return std::nullopt;
}

} // namespace

const std::array<SwatchNumber, 5>& swatchNumbers() {
  static constexpr std::array<SwatchNumber, 5> kNumbers{{
      {"stitches", &SwatchReading::stitches, Field::SwatchStitches, true},
      {"width", &SwatchReading::width, Field::SwatchWidth, false},
      {"rows", &SwatchReading::rows, Field::SwatchRows, true},
      {"height", &SwatchReading::height, Field::SwatchHeight, false},
      {"weight", &SwatchReading::weight, Field::SwatchWeight, true},
  }};
  return kNumbers;
}

DesignReader::DesignReader(std::string_view text, const Phrases& phrases)
    : text_(text), memory_(text.data(), text.size()), phrases_(phrases) {}

DesignRead DesignReader::read() {
  using namespace rapidjson;
  if (text_.size() > kLargestDesign) {
    refuseSize();
    return result();
  }
  // The parser takes a zero byte for the end and would not look at what follows.
  if (const auto zero = text_.find('\0'); zero != std::string_view::npos) {
    refuseSyntax(text_.data() + zero, "file.notJson");
    return result();
  }
  Reader parser;
  const ParseResult parsed =
      parser.Parse<kParseIterativeFlag | kParseFullPrecisionFlag | kParseValidateEncodingFlag>(
          stream_, *this);
  if (parsed.IsError() && parsed.Code() != kParseErrorTermination) refuse(parsed);
  return result();
}

void DesignReader::refuse(const rapidjson::ParseResult& problem) {
  const char* at = text_.data() + problem.Offset();
  if (text_.find_first_not_of(" \t\r\n") == std::string_view::npos)
    refuseSyntax(text_.data(), "file.empty");
  else
    refuseSyntax(at, problem.Code() == rapidjson::kParseErrorNumberTooBig ? "file.tooLarge"
                     : problem.Offset() >= text_.size()                   ? "file.truncated"
                                                                          : "file.notJson");
}

int DesignReader::line(const char* at) const {
  return 1 + int(std::count(text_.data(), at, '\n'));
}

void DesignReader::refuseAt(const char* at, std::string_view phrase, const Params& params) {
  if (!problem_) problem_ = {line(at), phrases_.say(phrase, params)};
}

void DesignReader::refuseSyntax(const char* at, std::string_view phrase) {
  syntax_ = !problem_;
  refuseAt(at, phrase);
}

void DesignReader::refuseSize() {
  syntax_ = true;
  refuseAt(text_.data() + kLargestDesign, "file.tooLong",
           {numberParam("size", double(kLargestDesign >> 20))});
}

DesignRead DesignReader::result() {
  const auto refused = [&](int line, std::string_view phrase, const Params& params = {}) {
    return DesignRead{{}, {}, {line, phrases_.say(phrase, params)}};
  };
  if (format_ == kDesignFormat && version_ > kDesignVersion)
    return refused(versionLine_, "file.newer",
                   {numberParam("version", version_), numberParam("known", kDesignVersion)});
  if (format_ != kDesignFormat && !syntax_)
    return refused(problem_ ? problem_->line : 1, "file.notDesign");
  if (problem_) return {{}, {}, *problem_};
  if (version_ == 0) return refused(1, "file.noVersion");
  Work work;
  if (work_.root().kind == JsonNode::Kind::Group) {
    auto read =
        workFromTree(work_.root(), [this](const char* at, std::string_view phrase, Params params) {
          for (Param& param : params)
            if (param.kind == Param::Kind::Text) param.text = quoted(param.text);
          refuseAt(at, phrase, params);
        });
    if (!read) return {{}, {}, *problem_};
    work = std::move(*read);
  }
  Design design = version_ == 1 ? fromVersion1(design_, fillFromSaid_) : std::move(design_);
  if (version_ <= 3)
    design = withCapOfVersion3(std::move(design));
  else if (version_ <= 5)
    design = withCapOfVersion5(std::move(design));
  if (version_ <= 4) design = withArmholeOfVersion4(std::move(design));
  return {std::move(design), std::move(work), {}};
}

bool DesignReader::wrongType() {
  if (places_.empty() || at(Place::Unknown)) return true;
  const bool text = at(Place::Choices) || (at(Place::Root) && (key_ == "format" || textOf(key_))) ||
                    (at(Place::Measurement) && key_ == "source") ||
                    (at(Place::Swatch) && (key_ == "label" || key_ == "use"));
  const bool list = at(Place::Root) && placeOf(key_) == Place::Swatches;
  const bool group = at(Place::Measurements) || at(Place::Swatches) ||
                     (at(Place::Root) && placeOf(key_) != Place::Unknown);
  refuse("file.wrongType",
         {textParam("key", quoted(key_)), phraseParam("kind", text    ? "file.kind.text"
                                                              : list  ? "file.kind.list"
                                                              : group ? "file.kind.group"
                                                                      : "file.kind.number")});
  return true;
}

bool DesignReader::accepted(Field field, double value) {
  // A flat girth is half of a girth; which of the two it is may stand after its value.
  if (isMeasurement(field) && !check(field, value, Source::Garment)) return true;
  return accepted(field, value, Source::Body);
}

bool DesignReader::accepted(Field field, double value, Source where) {
  const auto refusal = check(field, value, where);
  if (refusal)
    refuse("file.refused", {textParam("reason", refusalText(field, *refusal, phrases_,
                                                            LengthUnit::Centimetre, where))});
  return !refusal;
}

bool DesignReader::whole(std::string_view words) {
  // The parser takes half of a surrogate pair ("\\ude00" alone) for a character.
  for (std::size_t at = words.find('\xED'); at != std::string_view::npos;
       at = words.find('\xED', at + 1))
    if (at + 1 < words.size() && static_cast<unsigned char>(words[at + 1]) >= 0xA0) {
      refuseSyntax(here(), "file.notJson");
      return false;
    }
  return true;
}

bool DesignReader::number(double n) {
  // A number at the very end may be cut off, and the parser is about to say that the file is.
  if (stream_.Tell() >= text_.size()) return true;
  if (at(Place::Root) && key_ == "version") {
    constexpr double kLargestVersion = 1e9;
    if (n >= 1 && n <= kLargestVersion && n == std::floor(n))
      version_ = n, versionLine_ = line(here());
    else
      refuse("file.noVersion");
  } else if (at(Place::Values)) {
    const auto field = fieldByKey(key_);
    if (field && accepted(*field, n)) design_.set(*field, n);
  } else if (at(Place::Measurement) && key_ == "value") {
    measured_ = n;
    accepted(*fieldByKey(measurement_), n);
  } else if (at(Place::Work)) {
    return worked({.kind = JsonNode::Kind::Number, .number = n});
  } else if (at(Place::Swatch)) {
    for (const SwatchNumber& number : swatchNumbers())
      if (number.key == key_) {
        if ((n == 0 && number.mayBeMissing) || accepted(number.like, n))
          design_.swatches.back().*number.value = n;
        return true;
      }
    return wrongType();
  } else {
    return wrongType();
  }
  return true;
}

bool DesignReader::worked(JsonNode value) {
  if (problem_ || work_.value(std::move(value), here())) return true;
  syntax_ = true;
  refuse("file.workTooLarge");
  return false;
}

bool DesignReader::openWork(JsonNode::Kind kind) {
  if (problem_ || work_.open(kind, here())) return open(Place::Work);
  syntax_ = true;
  refuse("file.workTooLarge");
  return false;
}

bool DesignReader::string(const std::string& text) {
  if (at(Place::Work)) return worked({.kind = JsonNode::Kind::Text, .text = text});
  if (at(Place::Root)) {
    if (key_ == "format") return format_ = text, true;
    if (const auto member = textOf(key_)) return design_.*member = text, true;
  } else if (at(Place::Choices)) {
    const bool before = key_ == kGathersBefore;
    const auto choice = before ? Choice::CapTop : choiceByKey(key_);
    if (!choice) return true; // refused as a key already
    if (choice == Choice::FillFrom) fillFromSaid_ = true;
    if (const auto option = before ? gathersNow(text) : optionByKey(*choice, text))
      design_.choose(*choice, *option);
    else
      refuse("file.refused", {textParam("reason", noOptionText(*choice, quoted(text), phrases_))});
    return true;
  } else if (at(Place::Measurement) && key_ == "source") {
    if (const auto source = kSourceKeys.find(text))
      source_ = *source;
    else
      refuse("file.noSource", {textParam("source", quoted(text))});
    return true;
  }
  if (at(Place::Swatch) && key_ == "label") return design_.swatches.back().label = text, true;
  if (at(Place::Swatch) && key_ == "use") {
    if (const auto use = kSwatchUseKeys.find(text))
      design_.swatches.back().use = *use;
    else
      refuse("file.noSwatchUse", {textParam("use", quoted(text))});
    return true;
  }
  return wrongType();
}

bool DesignReader::known(Place place, const std::string& key) const {
  const auto field = fieldByKey(key);
  switch (place) {
  case Place::Root:
    return key == "format" || key == "version" || textOf(key) || placeOf(key) != Place::Unknown;
  case Place::Choices:
    return key == kGathersBefore || choiceByKey(key).has_value();
  case Place::Measurements:
    return field && isMeasurement(*field);
  case Place::Values:
    return field && !isMeasurement(*field);
  case Place::Measurement:
    return key == "value" || key == "source";
  case Place::Swatch:
    return key == "label" || key == "use" ||
           std::any_of(swatchNumbers().begin(), swatchNumbers().end(),
                       [&](const SwatchNumber& n) { return n.key == key; });
  case Place::Swatches:
  case Place::Work:
    break;
  case Place::Unknown:
    break;
  }
  return true;
}

DesignReader::Place DesignReader::placeOf(const std::string& key) const {
  if (key == "choices") return Place::Choices;
  if (key == "measurements") return Place::Measurements;
  if (key == "values") return Place::Values;
  if (key == "swatches") return Place::Swatches;
  if (key == "work") return Place::Work;
  return Place::Unknown;
}

// Goes a bracket deeper; false ends the reading.
bool DesignReader::open(Place next) {
  // More than a design has: a newer one may go a little deeper and be called newer.
  constexpr std::size_t kDeepest = 12;
  if (places_.size() == kDeepest) {
    refuseSyntax(here(), "file.tooDeep");
    return false;
  }
  places_.push_back(next);
  seen_.emplace_back();
  return true;
}

bool DesignReader::StartObject() {
  if (at(Place::Work) || (at(Place::Root) && placeOf(key_) == Place::Work))
    return openWork(JsonNode::Kind::Group);
  Place next = Place::Unknown;
  if (places_.empty()) {
    next = Place::Root;
  } else if (at(Place::Root) && placeOf(key_) != Place::Swatches) {
    next = placeOf(key_);
  } else if (at(Place::Swatches)) {
    next = Place::Swatch;
    if (design_.swatches.size() == kMostSwatches) {
      syntax_ = !problem_;
      refuse("file.tooMany", {numberParam("most", double(kMostSwatches))});
      return false;
    }
    design_.swatches.emplace_back();
  } else if (at(Place::Measurements) && known(Place::Measurements, key_)) {
    next = Place::Measurement;
    measurement_ = key_;
    measured_.reset();
    source_ = Source::Body;
  }
  if (next == Place::Unknown) wrongType();
  return open(next);
}

bool DesignReader::key(const std::string& key) {
  key_ = key;
  if (at(Place::Work)) work_.key(key);
  if (!known(places_.back(), key_))
    refuse("file.unknownKey", {textParam("key", quoted(key_))});
  else if (!problem_ && !seen_.back().insert(key_).second)
    refuse("file.twice", {textParam("key", quoted(key_))});
  return true;
}

bool DesignReader::EndObject(rapidjson::SizeType) {
  if (at(Place::Work) && !problem_) work_.close();
  if (at(Place::Measurement)) {
    if (!measured_)
      refuse("file.noValue", {textParam("key", measurement_)});
    else if (!problem_ && accepted(*fieldByKey(measurement_), *measured_, source_))
      design_.set(*fieldByKey(measurement_), *measured_, source_);
  }
  places_.pop_back();
  seen_.pop_back();
  return true;
}

bool DesignReader::StartArray() {
  if (at(Place::Work)) return openWork(JsonNode::Kind::List);
  const bool swatches = at(Place::Root) && placeOf(key_) == Place::Swatches;
  if (!swatches) wrongType();
  return open(swatches ? Place::Swatches : Place::Unknown);
}

bool DesignReader::EndArray(rapidjson::SizeType) {
  if (at(Place::Work) && !problem_) work_.close();
  places_.pop_back();
  seen_.pop_back();
  return true;
}

} // namespace scye
