// One value of some kind for each value of an enum: a table that cannot be incomplete. What is
// forgotten, doubled or out of order does not compile. `last` is the enum's last value.
//   inline constexpr EnumKeys<Source, Source::Garment> kSourceKeys{
//       {{Source::Body, "body"}, {Source::Garment, "garment"}}};
//   kSourceKeys[Source::Body]       "body"
//   kSourceKeys.find("garment")     Source::Garment
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace scye {

template <class E, E last, class Value>
class EnumTable {
public:
  struct Entry {
    E value;
    Value of;
  };
  static constexpr std::size_t kCount = std::size_t(last) + 1;

  consteval EnumTable(const Entry (&entries)[kCount]) {
    for (std::size_t i = 0; i < kCount; ++i) {
      if (std::size_t(entries[i].value) != i) throw "the table must have the order of the enum";
      values_[i] = entries[i].of;
    }
  }

  [[nodiscard]] constexpr const Value& operator[](E value) const {
    return values_[std::size_t(value)];
  }
  [[nodiscard]] constexpr std::optional<E> find(const Value& value) const {
    for (std::size_t i = 0; i < kCount; ++i)
      if (values_[i] == value) return E(i);
    return std::nullopt;
  }

private:
  std::array<Value, kCount> values_{};
};

// The keys of an enum's values in files and phrases.
template <class E, E last>
using EnumKeys = EnumTable<E, last, std::string_view>;

} // namespace scye
