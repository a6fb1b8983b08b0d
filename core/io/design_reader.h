// The reader of design files: takes the parser's events one by one and asks the parser where it is,
// so that every refusal knows its line. After the first problem it only looks for "format" and
// "version" any more: a file from a newer version is called that, whatever else is strange in it.
#pragma once

#include "io/design_file.h"
#include "io/json_tree.h"
#include "io/work_file.h"
#include "model/enum_keys.h"

#include <array>
#include <rapidjson/encodedstream.h>
#include <rapidjson/memorystream.h>
#include <rapidjson/reader.h>
#include <set>
#include <vector>

namespace scye {

inline constexpr std::string_view kDesignFormat = "scyewright-design";
inline constexpr int kDesignVersion = 6; // 1 to 5 are read too, see former_designs.h
inline constexpr EnumKeys<Source, Source::Garment> kSourceKeys{
    {{Source::Body, "body"}, {Source::Garment, "garment"}}};
inline constexpr EnumKeys<SwatchReading::Use, SwatchReading::Use::OtherPattern> kSwatchUseKeys{{
    {SwatchReading::Use::Same, "same"},
    {SwatchReading::Use::BeforeWashing, "beforeWashing"},
    {SwatchReading::Use::OtherPattern, "otherPattern"},
}};

// A number of a further swatch: its key, where it stands, and the field by whose rules it is
// checked.
struct SwatchNumber {
  std::string_view key;
  double SwatchReading::*value;
  Field like;
  bool mayBeMissing; // 0: not counted, not weighed
};
[[nodiscard]] const std::array<SwatchNumber, 5>& swatchNumbers();

class DesignReader {
public:
  DesignReader(std::string_view text, const Phrases& phrases);

  [[nodiscard]] DesignRead read();

  // The parser's events; false ends the reading.
  bool Null() { return at(Place::Work) ? worked({}) : wrongType(); }
  bool Bool(bool) {
    return at(Place::Work) ? worked({.kind = JsonNode::Kind::Truth}) : wrongType();
  }
  bool Int(int n) { return number(n); }
  bool Uint(unsigned n) { return number(n); }
  bool Int64(std::int64_t n) { return number(double(n)); }
  bool Uint64(std::uint64_t n) { return number(double(n)); }
  bool Double(double n) { return number(n); }
  bool RawNumber(const char*, rapidjson::SizeType, bool) { return false; } // not asked for
  bool String(const char* text, rapidjson::SizeType length, bool) {
    return whole({text, length}) && string(std::string(text, length));
  }
  bool StartObject();
  bool Key(const char* text, rapidjson::SizeType length, bool) {
    return whole({text, length}) && key(std::string(text, length));
  }
  bool EndObject(rapidjson::SizeType);
  bool StartArray();
  bool EndArray(rapidjson::SizeType);

private:
  enum class Place : std::uint8_t {
    Root,
    Choices,
    Measurements,
    Measurement,
    Values,
    Swatches,
    Swatch,
    Work, // and all within it
    Unknown
  };

  // What stands at `at` is not JSON.
  void refuseSyntax(const char* at, std::string_view phrase);
  // The text is larger than any design.
  void refuseSize();
  void refuse(const rapidjson::ParseResult& problem);
  [[nodiscard]] DesignRead result();
  // Whether it is UTF-8 to the end; what is not ends the reading.
  bool whole(std::string_view words);
  bool number(double n);
  bool string(const std::string& text);
  bool key(const std::string& key);
  [[nodiscard]] bool at(Place p) const { return !places_.empty() && places_.back() == p; }
  [[nodiscard]] bool known(Place p, const std::string& key) const;
  [[nodiscard]] Place placeOf(const std::string& key) const;
  bool open(Place next);
  bool worked(JsonNode value); // a value within the work
  bool openWork(JsonNode::Kind kind);
  bool wrongType();
  bool accepted(Field field, double value);
  bool accepted(Field field, double value, Source where);
  [[nodiscard]] int line(const char* at) const;
  void refuseAt(const char* at, std::string_view phrase, const Params& params = {});
  void refuse(std::string_view phrase, const Params& params = {}) {
    refuseAt(here(), phrase, params);
  }
  [[nodiscard]] const char* here() const { return text_.data() + stream_.Tell(); }

  std::string_view text_;
  rapidjson::MemoryStream memory_;
  rapidjson::EncodedInputStream<rapidjson::UTF8<>, rapidjson::MemoryStream> stream_{memory_};
  const Phrases& phrases_;

  std::vector<Place> places_;
  std::vector<std::set<std::string>> seen_; // keys of the open objects
  std::string key_;                         // the last key of the place
  std::string measurement_;                 // the key of the open measurement
  std::optional<double> measured_;
  Source source_ = Source::Body;

  Design design_;
  JsonTree work_{kMostWorkValues};
  std::optional<std::string> format_;
  double version_ = 0;
  int versionLine_ = 0;
  bool fillFromSaid_ = false;
  bool syntax_ = false; // the problem is one of JSON or of size, not of designs
  std::optional<FileProblem> problem_;
};

} // namespace scye
