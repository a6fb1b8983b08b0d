#include "io/wearer_booklets.h"

#include "io/files.h"

namespace scye {

WearerBooklets::WearerBooklets(std::filesystem::path folder, Wording wording, ExportOptions page,
                               const Drawer* drawer)
    : folder_(std::move(folder)), wording_(std::move(wording)), page_(std::move(page)),
      drawer_(drawer) {}

std::optional<WearerBooklets::Problem> WearerBooklets::begin() const {
  std::error_code error;
  std::filesystem::create_directories(folder_, error);
  if (error) return Problem{folder_, problemText(systemProblem(error.value()), wording_.phrases)};
  return std::nullopt;
}

void WearerBooklets::write(const TableWearer& wearer, const Derived& derived) {
  if (problem_) return;
  const FileFormat format = drawer_ ? FileFormat::Pdf : FileFormat::Html;
  const OutputJob job{derived, wording_, page_, {}, today()};
  const FileBytes made = makeOutput(info(OutputId::Booklet), job, format, drawer_);
  const std::filesystem::path path = folder_ / (wearer.fileName + std::string(info(format).ending));
  if (made.problem)
    problem_ = {path, *made.problem};
  else if (const auto problem = writeWhole(path, made.bytes))
    problem_ = {path, problemText(*problem, wording_.phrases)};
  else
    ++written_;
}

} // namespace scye
