// The keys of an enum's values in files and phrases: one table an enum, read both ways.
//   inline constexpr EnumKeys<Source, Source::Garment> kSourceKeys{
//       {{Source::Body, "body"}, {Source::Garment, "garment"}}};
//   kSourceKeys[Source::Body]       "body"
//   kSourceKeys.find("garment")     Source::Garment
// `last` is the enum's last value. A value that is forgotten, doubled or out of order does not
// compile.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace scye {

template <class E, E last>
class EnumKeys {
public:
  struct Entry {
    E value;
    std::string_view key;
  };
  static constexpr std::size_t kCount = std::size_t(last) + 1;

  consteval EnumKeys(const Entry (&entries)[kCount]) {
    for (std::size_t i = 0; i < kCount; ++i) {
      if (std::size_t(entries[i].value) != i) throw "the keys must stand in the order of the enum";
      keys_[i] = entries[i].key;
    }
  }

  [[nodiscard]] constexpr std::string_view operator[](E value) const {
    return keys_[std::size_t(value)];
  }
  [[nodiscard]] constexpr std::optional<E> find(std::string_view key) const {
    for (std::size_t i = 0; i < kCount; ++i)
      if (keys_[i] == key) return E(i);
    return std::nullopt;
  }

private:
  std::array<std::string_view, kCount> keys_{};
};

} // namespace scye
