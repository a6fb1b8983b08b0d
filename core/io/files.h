// Files read and written whole; every file that the program makes is written here. Nothing throws;
// a problem is data, told in a few plain words without the path. POSIX.
#pragma once

#include "model/phrases.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace scye {

inline constexpr std::size_t kLargestRead = std::size_t(64) << 20; // bytes

// Why a file cannot be read or written.
struct DiskProblem {
  std::string_view phrase; // of resources/phrases; empty where there is none for it:
  int error = 0;           // errno, told in the system's own words
  bool operator==(const DiskProblem&) const = default;
};
[[nodiscard]] DiskProblem systemProblem(int error); // errno, or of a std::filesystem call
[[nodiscard]] std::string problemText(const DiskProblem& problem, const Phrases& phrases);
// Those that are not the system's.
inline constexpr DiskProblem kNoReader{"file.noReader"}, kDeadLink{"file.deadLink"},
    kNoName{"file.noName"}, kNotPlain{"file.notPlain"};

struct FileText {
  std::optional<std::string> text; // absent: see the problem
  DiskProblem problem;
};
// Refused where it is larger than `most` bytes.
[[nodiscard]] FileText readWhole(const std::filesystem::path& path,
                                 std::size_t most = kLargestRead);
// Its first bytes, at most so many. A reader that names the line where a file grows too large needs
// no more of it.
[[nodiscard]] FileText readFirst(const std::filesystem::path& path, std::size_t bytes);

// What a pipe is that nobody reads from yet: waited for, or refused.
enum class Pipe { Wait, Refuse };

// The file stands there complete, or as it was before, even if the program or the machine stops in
// between: the text goes to another file in the same folder, reaches the disk, and then takes the
// name. Every step is checked. Returns the problem, or nothing.
//  - A link is followed and stays; one that leads nowhere, or to itself, is refused.
//  - A device or a pipe is written into, and never replaced.
//  - A file that must not be written (no permission, or nobody may) is refused.
//  - Permissions stay, and the owner where that is allowed. A second hard link keeps the old text.
[[nodiscard]] std::optional<DiskProblem> writeWhole(const std::filesystem::path& path,
                                                    std::string_view text, Pipe pipe = Pipe::Wait);

} // namespace scye
