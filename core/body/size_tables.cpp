#include "body/size_tables.h"

#include "model/units.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace scye {
namespace {

// Midpoints of the printed ranges, inches: bust, waist, hip, cross back, back length, arm to
// underarm, upper arm, armhole depth. 0: not printed, or (men's back length) another measure.
constexpr std::array<TableSize, 9> kWoman{{
    {"XS", 29, 23.5, 33.5, 14.25, 16.5, 16.5, 9.75, 6.25},
    {"S", 33, 25.75, 35.5, 14.75, 17, 17, 10.25, 6.75},
    {"M", 37, 29, 39, 15.75, 17.25, 17, 11, 7.25},
    {"L", 41, 33, 43, 16.75, 17.5, 17.5, 12, 7.75},
    {"XL", 45, 37, 47, 17.5, 17.75, 17.5, 13.5, 8.25},
    {"2X", 49, 41, 52.5, 18, 18, 18, 15.5, 8.75},
    {"3X", 53, 44.5, 54.5, 18, 18, 18, 17, 9.25},
    {"4X", 57, 46.5, 56.5, 18.5, 18.5, 18.5, 18.5, 9.75},
    {"5X", 61, 49.5, 61.5, 18.5, 18.5, 18.5, 19.5, 10.25},
}};
constexpr std::array<TableSize, 8> kMan{{
    {"S", 35, 29, 36, 15.75, 0, 18, 12, 8.75},
    {"M", 39, 33, 40, 16.75, 0, 18.5, 13, 9.25},
    {"L", 43, 37, 44, 17.75, 0, 19.5, 15, 9.75},
    {"XL", 47, 43, 48, 18.25, 0, 20, 15.5, 10.25},
    {"2X", 51, 47, 52, 19.5, 0, 20.5, 16.5, 11},
    {"3X", 55, 51, 55, 20.5, 0, 20.5, 17.5, 11.5},
    {"4X", 59, 55, 57, 21.25, 0, 21, 18.5, 12},
    {"5X", 63, 59, 59, 22.25, 0, 21.5, 20, 12.5},
}};
constexpr std::array<TableSize, 8> kChild{{
    {"2", 21, 21, 22, 9.25, 8.5, 8.5, 7, 4.25},
    {"4", 23, 21.5, 23.5, 9.75, 9.5, 10.5, 7.5, 4.75},
    {"6", 25, 22.5, 25, 10.25, 10.5, 11.5, 8, 5},
    {"8", 26.5, 23.5, 28, 10.75, 12.5, 12.5, 8.5, 5.5},
    {"10", 28, 24.5, 29.5, 11.25, 14, 13.5, 8.75, 6},
    {"12", 30, 25, 31.5, 12, 15, 15, 9, 6.5},
    {"14", 31.5, 26.5, 33, 12.25, 15.5, 16, 9.25, 7},
    {"16", 32.5, 0, 0, 13, 16, 16.5, 9.5, 7.5},
}};
constexpr std::array<TableSize, 5> kBaby{{
    {"3mo", 16, 18, 19, 7.25, 6, 6, 5.5, 3.25},
    {"6mo", 17, 19, 20, 7.75, 7, 6.5, 6, 3.5},
    {"12mo", 18, 20, 20, 8.25, 7.5, 7.5, 6.5, 3.75},
    {"18mo", 19, 20.5, 21, 8.5, 8, 8, 7, 4},
    {"24mo", 20, 21, 22, 8.75, 8.5, 8.5, 7.5, 4.25},
}};

constexpr double TableSize::*kColumns[] = {&TableSize::bust,       &TableSize::waist,
                                           &TableSize::hip,        &TableSize::crossBack,
                                           &TableSize::backLength, &TableSize::armToUnderarm,
                                           &TableSize::upperArm,   &TableSize::armholeDepth};

} // namespace

std::span<const TableSize> publishedSizes(Figure figure) {
  switch (figure) {
  case Figure::Man:
    return kMan;
  case Figure::Child:
    return kChild;
  case Figure::Baby:
    return kBaby;
  case Figure::Woman:
    break;
  }
  return kWoman;
}

TableSize sizeAtBust(Figure figure, double bustCm) {
  const auto sizes = publishedSizes(figure);
  const double bust = bustCm / kCmPerInch;
  TableSize out;
  const auto nearest = std::min_element(sizes.begin(), sizes.end(), [&](auto& a, auto& b) {
    return std::abs(a.bust - bust) < std::abs(b.bust - bust);
  });
  out.name = nearest->name;
  for (const auto column : kColumns) {
    const TableSize *below = nullptr, *above = nullptr; // the two printed sizes to go by
    for (const TableSize& s : sizes) {
      if (s.*column == 0) continue;
      if (below && bust <= above->bust) break;
      below = above;
      above = &s;
    }
    if (!below) continue; // printed for none (no measure is printed for one size only)
    const double share = (bust - below->bust) / (above->bust - below->bust);
    // Beyond the table the last step goes on, but no measure shrinks below half the smallest
    // printed.
    const double value = below->*column + share * (above->*column - below->*column);
    out.*column = kCmPerInch * std::max(value, 0.5 * (sizes.front().*column));
  }
  return out;
}

} // namespace scye
