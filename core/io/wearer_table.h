// The same design for many wearers: a table of them in, a table of finished sizes out. Both are
// CSV as RFC 4180 describes it: fields by commas, quotes where they hold any, the first line names
// the columns.
//   in:  "name" and the names that settings have (io/setting.h: bust, upperArm, figure, ease.bust);
//        an empty cell is a measurement that was not taken, and is filled in as everywhere
//   out: one line a wearer, in the order of the table; see sizesTable()
#pragma once

#include "garment/derived.h"
#include "model/phrases.h"
#include "schematic/paper.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace scye {

inline constexpr std::size_t kLargestTable = std::size_t(4) << 20; // bytes

struct TableWearer {
  int line = 0; // of the file, from 1
  std::string name;
  std::optional<Design> design; // absent: see the problem
  std::string problem;
  // The name as that of a file, without an ending: nothing in it means anything to a disk, and no
  // two of a table are the same, in capitals or not.
  std::string fileName{};
};

struct WearerTable {
  std::vector<TableWearer> wearers;
  std::optional<std::string> problem; // of the table as a whole: nothing of it is read
};

// `base`: the design that is to be made for them; of it remain style, ease, swatch and what was
// taken on a garment.
[[nodiscard]] WearerTable readWearerTable(std::string_view csv, const Design& base,
                                          const Phrases& phrases);

// The table of sizes. Who could not be read, or whose garment cannot be made, has a line that says
// so. Given up between two wearers where `goOn` says so: nothing.
struct SizesTable {
  std::string csv;
  int made = 0; // without a finding that blocks
};
// `each` is handed every garment that can be made.
using EachGarment = std::function<void(const TableWearer& wearer, const Derived& derived)>;
[[nodiscard]] std::optional<SizesTable> sizesTable(const WearerTable& table, const GoOn& goOn = {},
                                                   const EachGarment& each = {});

} // namespace scye
