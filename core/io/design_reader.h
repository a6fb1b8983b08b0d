// The reader of design files: takes the parser's events one by one, so that every refusal knows its
// line. After the first problem it only looks for "format" and "version" any more: a file from a
// newer version is called that, whatever else is strange in it.
#pragma once

#include "io/design_file.h"

#include <array>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>
#include <vector>

namespace scye {

inline constexpr std::string_view kDesignFormat = "scyewright-design";
inline constexpr int kDesignVersion = 2; // 1 is read too, see design_v1.h
inline constexpr std::array<std::string_view, 2> kSourceKeys{"body", "garment"};
inline constexpr std::array<std::string_view, 3> kSwatchUseKeys{"same", "beforeWashing",
                                                                "otherPattern"};

// A number of a further swatch: its key, where it stands, and the field by whose rules it is
// checked.
struct SwatchNumber {
  std::string_view key;
  double SwatchReading::*value;
  Field like;
  bool mayBeMissing; // 0: not counted, not weighed
};
[[nodiscard]] const std::array<SwatchNumber, 5>& swatchNumbers();

// Reads characters and leaves its place behind for the handler of events.
class TracedIterator {
public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  TracedIterator(const char* at, const char** trace) : at_(at), trace_(trace) {}
  reference operator*() const { return *at_; }
  TracedIterator& operator++() { return *trace_ = ++at_, *this; }
  bool operator==(const TracedIterator& other) const { return at_ == other.at_; }

private:
  const char* at_;
  const char** trace_;
};

class DesignReader : public nlohmann::json_sax<nlohmann::json> {
public:
  DesignReader(std::string_view text, const Phrases& phrases);

  [[nodiscard]] TracedIterator begin() { return {text_.data(), &at_}; }
  [[nodiscard]] TracedIterator end() { return {text_.data() + text_.size(), &at_}; }
  // What stands at `at` is not JSON.
  void refuseSyntax(const char* at, std::string_view phrase);
  // The text is larger than any design.
  void refuseSize();
  [[nodiscard]] DesignRead result();

  bool null() override;
  bool boolean(bool) override;
  bool number_integer(number_integer_t n) override { return number(double(n)); }
  bool number_unsigned(number_unsigned_t n) override { return number(double(n)); }
  bool number_float(number_float_t n, const string_t&) override { return number(n); }
  bool string(string_t& text) override;
  bool binary(binary_t&) override { return false; } // not in JSON
  bool start_object(std::size_t) override;
  bool key(string_t& key) override;
  bool end_object() override;
  bool start_array(std::size_t) override;
  bool end_array() override;
  bool parse_error(std::size_t position, const std::string&,
                   const nlohmann::detail::exception& e) override;

private:
  enum class Place : std::uint8_t {
    Root,
    Choices,
    Measurements,
    Measurement,
    Values,
    Swatches,
    Swatch,
    Unknown
  };

  bool number(double n);
  [[nodiscard]] bool at(Place p) const { return !places_.empty() && places_.back() == p; }
  [[nodiscard]] bool known(Place p, const std::string& key) const;
  [[nodiscard]] Place placeOf(const std::string& key) const;
  bool open(Place next);
  bool wrongType();
  bool accepted(Field field, double value);
  bool accepted(Field field, double value, Source where);
  [[nodiscard]] int line(const char* at) const;
  void refuseAt(const char* at, std::string_view phrase, const Params& params = {});
  void refuse(std::string_view phrase, const Params& params = {}) { refuseAt(at_, phrase, params); }

  std::string_view text_;
  const char* at_;
  const Phrases& phrases_;

  std::vector<Place> places_;
  std::vector<std::set<std::string>> seen_; // keys of the open objects
  std::string key_;                         // the last key of the place
  std::string measurement_;                 // the key of the open measurement
  std::optional<double> measured_;
  Source source_ = Source::Body;

  Design design_;
  std::optional<std::string> format_;
  double version_ = 0;
  int versionLine_ = 0;
  bool fillFromSaid_ = false;
  bool syntax_ = false; // the problem is one of JSON or of size, not of designs
  std::optional<FileProblem> problem_;
};

} // namespace scye
