// Comma-separated tables of tests/data: a header line naming the columns, then a line a row. A
// field may stand in double quotes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace scye::test {

class CsvTable {
public:
  // tests/data/<name>; a file that is missing or ragged fails the running test and gives an empty
  // table.
  [[nodiscard]] static CsvTable data(const std::string& name);

  [[nodiscard]] std::size_t rows() const { return cells_.size(); }
  [[nodiscard]] const std::string& text(std::size_t row, std::string_view column) const;
  // 0 where the cell is empty.
  [[nodiscard]] double number(std::size_t row, std::string_view column) const;
  [[nodiscard]] std::vector<double> numbers(std::string_view column) const;

private:
  std::vector<std::string> header_;
  std::vector<std::vector<std::string>> cells_;
};

} // namespace scye::test
