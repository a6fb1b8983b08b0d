// The tests' own reader of directions: it must stand whatever is printed, for a test that falls
// over tells nothing.
#include "core/directions/reader.h"
#include "fuzz/target.h"

#include <algorithm>

namespace scye::test {
namespace {

std::optional<std::string> wrongDirections(std::string_view text) {
  const auto lines = 1 + std::count(text.begin(), text.end(), '\n');
  for (const auto terms : {reader::Terms::Us, reader::Terms::Uk}) {
    const reader::Reading reading = reader::read(text, terms);
    for (const auto* complaints : {&reading.complaints, &reading.awkward})
      for (const reader::Complaint& complaint : *complaints)
        if (complaint.line < 0 || complaint.line > lines)
          return "complains of line " + std::to_string(complaint.line);
    if (reading.steps < 0 || reading.steps > lines)
      return "knitted " + std::to_string(reading.steps) + " lines";
  }
  return std::nullopt;
}

} // namespace
} // namespace scye::test

SCYE_FUZZ_TARGET(scye::test::wrongDirections)
