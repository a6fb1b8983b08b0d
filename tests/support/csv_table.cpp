#include "support/csv_table.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>

namespace scye::test {
namespace {

std::vector<std::string> cellsOf(const std::string& line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (char c : line) {
    if (c == '"')
      quoted = !quoted;
    else if (c == ',' && !quoted)
      cells.emplace_back();
    else if (c != '\r')
      cells.back() += c;
  }
  return cells;
}

} // namespace

CsvTable CsvTable::data(const std::string& name) {
  CsvTable table;
  std::ifstream in(std::string(SCYE_TEST_DATA) + "/" + name);
  std::string line;
  if (!std::getline(in, line)) {
    ADD_FAILURE() << "cannot read tests/data/" << name;
    return table;
  }
  table.header_ = cellsOf(line);
  while (std::getline(in, line)) {
    table.cells_.push_back(cellsOf(line));
    EXPECT_EQ(table.cells_.back().size(), table.header_.size()) << name << ": " << line;
  }
  return table;
}

const std::string& CsvTable::text(std::size_t row, std::string_view column) const {
  static const std::string nothing;
  const auto at = std::find(header_.begin(), header_.end(), column);
  if (at == header_.end()) {
    ADD_FAILURE() << "no column " << column;
    return nothing;
  }
  return cells_[row][std::size_t(at - header_.begin())];
}

double CsvTable::number(std::size_t row, std::string_view column) const {
  const std::string& cell = text(row, column);
  return cell.empty() ? 0 : std::stod(cell);
}

std::vector<double> CsvTable::numbers(std::string_view column) const {
  std::vector<double> out;
  for (std::size_t row = 0; row < rows(); ++row)
    out.push_back(number(row, column));
  return out;
}

} // namespace scye::test
