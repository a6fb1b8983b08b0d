#include "support/disk.h"

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#ifdef __linux__
#include <sched.h>
#include <sys/mount.h>
#include <sys/sysmacros.h>
#endif

namespace scye::test {
namespace {

namespace fs = std::filesystem;

#ifdef __linux__
// A mount namespace in which nothing that is mounted is seen outside.
bool ownMounts() {
  if (unshare(CLONE_NEWNS) != 0) {
    if (unshare(CLONE_NEWUSER | CLONE_NEWNS) != 0) return false;
  }
  return mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0;
}

bool mountSmall(const fs::path& folder, std::size_t bytes) {
  const std::string size = "size=" + std::to_string(bytes);
  return ownMounts() && mount("none", folder.c_str(), "tmpfs", 0, size.c_str()) == 0;
}

bool makeDevice(const fs::path& path, unsigned minor) {
  if (mknod(path.c_str(), S_IFCHR | 0666, makedev(1, minor)) != 0) return false;
  // It may be made and still not be opened, where the folder is mounted without devices.
  const int opened = open(path.c_str(), O_WRONLY);
  if (opened >= 0) close(opened);
  return opened >= 0;
}
#else
bool mountSmall(const fs::path&, std::size_t) {
  return false;
}
bool makeDevice(const fs::path&, unsigned) {
  return false;
}
#endif

void limitFiles(rlim_t bytes) {
  rlimit limit{};
  getrlimit(RLIMIT_FSIZE, &limit);
  limit.rlim_cur = std::min(bytes, limit.rlim_max);
  setrlimit(RLIMIT_FSIZE, &limit);
  std::signal(SIGXFSZ, SIG_IGN);
}

} // namespace

OwnFolder::OwnFolder() {
  std::string name = (fs::temp_directory_path() / "scye-test-XXXXXX").string();
  if (mkdtemp(name.data()) == nullptr) std::abort();
  path_ = name;
}

OwnFolder::~OwnFolder() {
  std::error_code error;
  fs::remove_all(path_, error);
}

int OwnFolder::entries() const {
  return int(std::distance(fs::directory_iterator(path_), fs::directory_iterator()));
}

SmallDisk::SmallDisk(std::size_t bytes) : mounted_(mountSmall(folder_.path(), bytes)) {
  testing::Test::RecordProperty("disk", mounted_ ? "tmpfs" : "limit on the size of files");
  if (!mounted_) std::printf("a limit on the size of files stands in for a full disk\n");
}

SmallDisk::~SmallDisk() {
  empty();
#ifdef __linux__
  if (mounted_) umount2(folder_.path().c_str(), MNT_DETACH);
#endif
}

void SmallDisk::fill() {
  if (!mounted_) return limitFiles(0);
  const int filler = open((folder_ / "filler").c_str(), O_WRONLY | O_CREAT | O_APPEND, 0600);
  const std::string block(4096, 'x');
  for (std::size_t size = block.size(); size > 0; size /= 2)
    while (write(filler, block.data(), size) > 0) {
    }
  close(filler);
}

void SmallDisk::empty() {
  if (!mounted_) return limitFiles(RLIM_INFINITY);
  std::error_code error;
  fs::remove(folder_ / "filler", error);
}

bool makeFullDevice(const fs::path& path) {
  return makeDevice(path, 7);
}

bool makeVoidDevice(const fs::path& path) {
  return makeDevice(path, 3);
}

} // namespace scye::test
