#include "io/files.h"

#include <cerrno>
#include <fstream>
#include <random>
#include <system_error>

namespace scye {
namespace {

namespace fs = std::filesystem;

std::string lastProblem() {
  return std::generic_category().message(errno != 0 ? errno : EIO);
}

// A name in the same folder that nobody else uses.
fs::path besideName(const fs::path& path) {
  std::random_device device;
  const std::string token = std::to_string(device());
  return path.parent_path() /
         ("." + path.stem().string() + "-" + token + path.extension().string());
}

std::optional<std::string> write(const fs::path& path, std::string_view text) {
  errno = 0;
  std::ofstream out(path, std::ios::binary);
  out.write(text.data(), std::streamsize(text.size()));
  out.close();
  if (!out) return lastProblem();
  return std::nullopt;
}

} // namespace

FileText readWhole(const fs::path& path) {
  constexpr std::size_t kLargest = std::size_t(64) << 20;
  std::error_code error;
  if (fs::is_directory(path, error)) return {{}, std::generic_category().message(EISDIR)};
  errno = 0;
  std::ifstream in(path, std::ios::binary);
  if (!in) return {{}, lastProblem()};
  std::string text;
  char block[1 << 16];
  while (in.read(block, sizeof block), in.gcount() > 0) {
    text.append(block, std::size_t(in.gcount()));
    if (text.size() > kLargest) return {{}, std::generic_category().message(EFBIG)};
  }
  if (in.bad()) return {{}, lastProblem()};
  return {std::move(text), {}};
}

std::optional<std::string> writeWhole(const fs::path& path, std::string_view text) {
  std::error_code error;
  // A link stays a link, and a terminal or a pipe is written to as it is.
  const fs::path followed = fs::weakly_canonical(path, error);
  const fs::path& target = error ? path : followed;
  const fs::file_status status = fs::status(target, error);
  if (fs::is_directory(status)) return std::generic_category().message(EISDIR);
  if (fs::exists(status) && !fs::is_regular_file(status)) return write(target, text);

  const fs::path beside = besideName(target);
  auto problem = write(beside, text);
  if (!problem) {
    if (fs::exists(status)) fs::permissions(beside, status.permissions(), error);
    fs::rename(beside, target, error);
    if (error) problem = error.message();
  }
  if (problem) fs::remove(beside, error);
  return problem;
}

} // namespace scye
