#include "io/files.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <climits>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <memory>
#include <poll.h>
#include <random>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace scye {
namespace {

namespace fs = std::filesystem;
using Problem = std::optional<DiskProblem>;

DiskProblem lastProblem() {
  return systemProblem(errno);
}

// An open file. Whoever must know whether the text has arrived closes it by close().
class Handle {
public:
  explicit Handle(int number) : number_(number) {}
  ~Handle() { (void)close(); }
  Handle(Handle&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Handle& operator=(Handle&&) = delete;

  [[nodiscard]] bool isOpen() const { return number_ >= 0; }
  [[nodiscard]] int number() const { return number_; }
  [[nodiscard]] Problem close() {
    if (number_ < 0) return std::nullopt;
    const int result = ::close(std::exchange(number_, -1));
    // Interrupted, it is closed all the same: the number may be another's already.
    if (result != 0 && errno != EINTR) return lastProblem();
    return std::nullopt;
  }

private:
  int number_;
};

Handle openAt(const fs::path& path, int flags, mode_t mode = 0) {
  int number = -1;
  do
    number = ::open(path.c_str(), flags | O_CLOEXEC | O_NOCTTY, mode);
  while (number < 0 && errno == EINTR);
  return Handle(number);
}

Problem writeAll(const Handle& file, std::string_view text) {
  constexpr int kPatienceMs = 2000; // with a reader who does not read
  while (!text.empty()) {
    const ssize_t written = ::write(file.number(), text.data(), text.size());
    if (written > 0) {
      text.remove_prefix(std::size_t(written));
    } else if (written == 0) {
      return systemProblem(EIO);
    } else if (errno == EAGAIN) {
      pollfd ready{file.number(), POLLOUT, 0};
      if (::poll(&ready, 1, kPatienceMs) == 0) return systemProblem(ETIMEDOUT);
    } else if (errno != EINTR) {
      return lastProblem();
    }
  }
  return std::nullopt;
}

// Until it has reached the disk. What is no disk (a terminal, a pipe) cannot say.
Problem sync(const Handle& file) {
  while (::fsync(file.number()) != 0) {
    if (errno == EINTR) continue;
    if (errno == EINVAL || errno == ENOTSUP || errno == EROFS) break;
    return lastProblem();
  }
  return std::nullopt;
}

Problem syncFolder(const fs::path& folder) {
  const Handle handle = openAt(folder, O_RDONLY | O_DIRECTORY);
  // A folder that may be written in but not be read cannot be synced; its file is there.
  return handle.isOpen() ? sync(handle) : std::nullopt;
}

Problem writeInto(const fs::path& path, std::string_view text, Pipe pipe) {
  Handle file = openAt(path, O_WRONLY | (pipe == Pipe::Refuse ? O_NONBLOCK : 0));
  if (!file.isOpen()) return errno == ENXIO ? kNoReader : lastProblem();
  if (auto problem = writeAll(file, text)) return problem;
  if (auto problem = sync(file)) return problem;
  return file.close();
}

// Where the text is to stand in the end, and what stands there now.
struct Target {
  fs::path path;
  std::optional<struct stat> before;
};

// Follows links; or says why the path cannot be written.
Problem find(const fs::path& path, Target& target) {
  if (path.native().find('\0') != std::string::npos) return kNoName;
  struct stat now {};
  if (::stat(path.c_str(), &now) == 0) {
    const std::unique_ptr<char, decltype(&std::free)> real(::realpath(path.c_str(), nullptr),
                                                           &std::free);
    if (!real) return lastProblem();
    target = {real.get(), now};
    return std::nullopt;
  }
  if (errno != ENOENT) return lastProblem();
  struct stat link {};
  if (::lstat(path.c_str(), &link) == 0) return kDeadLink;
  if (path.filename().empty()) return systemProblem(ENOENT);
  target = {path, std::nullopt};
  return std::nullopt;
}

fs::path folderOf(const fs::path& path) {
  return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

// A file without any permission to write is meant to stay, whoever asks, be it the superuser.
bool mayBeWritten(const Target& target) {
  constexpr mode_t kAnybody = S_IWUSR | S_IWGRP | S_IWOTH;
  return (target.before->st_mode & kAnybody) != 0 && ::access(target.path.c_str(), W_OK) == 0;
}

void takeOver(const Handle& file, const struct stat& before) {
  struct stat now {};
  if (::fstat(file.number(), &now) != 0) return;
  // Only the superuser can give a file away; a group one belongs to can be kept by anybody.
  if ((now.st_uid != before.st_uid || now.st_gid != before.st_gid) &&
      ::fchown(file.number(), before.st_uid, before.st_gid) != 0)
    if (::fchown(file.number(), uid_t(-1), before.st_gid) != 0) errno = 0;
  // After the owner: giving a file away takes its special permissions.
  if (::fchmod(file.number(), before.st_mode & mode_t(07777)) != 0) errno = 0;
}

// A new file in the folder, under a name that nobody else has; `path` tells it.
Handle openBeside(const fs::path& folder, mode_t mode, fs::path& path) {
  constexpr int kTries = 100;
  std::random_device device;
  for (int i = 1;; ++i) {
    char name[40];
    std::snprintf(name, sizeof name, ".scyewright-%08x%08x", unsigned(device()),
                  unsigned(device()));
    path = folder / name;
    Handle made = openAt(path, O_WRONLY | O_CREAT | O_EXCL, mode);
    if (made.isOpen() || errno != EEXIST || i == kTries) return made;
  }
}

// Writes the text beside the target, then puts it in its place.
Problem replace(const Target& target, std::string_view text) {
  const fs::path folder = folderOf(target.path);
  fs::path beside;
  Handle file = openBeside(folder, target.before ? 0600 : 0666, beside);
  if (!file.isOpen()) return lastProblem();
  if (target.before) takeOver(file, *target.before);
  Problem problem = writeAll(file, text);
  if (!problem) problem = sync(file);
  if (auto late = file.close(); !problem) problem = late;
  if (!problem && ::rename(beside.c_str(), target.path.c_str()) != 0) problem = lastProblem();
  if (problem) {
    ::unlink(beside.c_str());
    return problem;
  }
  return syncFolder(folder);
}

// What may be met with any day has words of the catalogue.
constexpr std::array kReasons = std::to_array<std::pair<int, std::string_view>>({
    {ENOENT, "file.none"},
    {EACCES, "file.noAccess"},
    {EPERM, "file.noAccess"},
    {EISDIR, "file.isFolder"},
    {ENOTDIR, "file.noFolder"},
    {EEXIST, "file.noFolder"}, // a folder is to be made
    {ENOSPC, "file.diskFull"},
    {EDQUOT, "file.diskFull"},
    {EFBIG, "file.large"},
    {ENAMETOOLONG, "file.longName"},
    {EROFS, "file.readOnly"},
    {ELOOP, "file.loop"},
    {EIO, "file.device"},
    {ENODEV, "file.device"},
    {EPIPE, "file.noReader"},
    {ETIMEDOUT, "file.slowReader"},
    {ETXTBSY, "file.running"},
    {EBADF, "file.closed"},
});

} // namespace

DiskProblem systemProblem(int error) {
  const int number = error != 0 ? error : EIO;
  const auto* at = std::find_if(kReasons.begin(), kReasons.end(),
                                [=](const auto& reason) { return reason.first == number; });
  return {at == kReasons.end() ? std::string_view() : at->second, number};
}

std::string problemText(const DiskProblem& problem, const Phrases& phrases) {
  if (problem.phrase.empty()) return std::generic_category().message(problem.error);
  return phrases.say(problem.phrase);
}

FileText readFirst(const fs::path& path, std::size_t bytes) {
  if (path.native().find('\0') != std::string::npos) return {{}, kNoName};
  const Handle file = openAt(path, O_RDONLY);
  if (!file.isOpen()) return {{}, lastProblem()};
  std::string text;
  char block[1 << 16];
  while (text.size() < bytes) {
    const ssize_t got = ::read(file.number(), block, std::min(sizeof block, bytes - text.size()));
    if (got == 0) break;
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return {{}, lastProblem()};
    text.append(block, std::size_t(got));
  }
  return {std::move(text), {}};
}

FileText readWhole(const fs::path& path, std::size_t most) {
  FileText file = readFirst(path, most + 1);
  if (file.text && file.text->size() > most) return {{}, systemProblem(EFBIG)};
  return file;
}

Problem writeWhole(const fs::path& path, std::string_view text, Pipe pipe) {
  Target target;
  if (auto problem = find(path, target)) return problem;
  if (!target.before) return replace(target, text);
  if (S_ISDIR(target.before->st_mode)) return systemProblem(EISDIR);
  if (!S_ISREG(target.before->st_mode)) return writeInto(target.path, text, pipe);
  if (!mayBeWritten(target)) return systemProblem(EACCES);
  return replace(target, text);
}

} // namespace scye
