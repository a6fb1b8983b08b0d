// Disks and devices that a test makes for itself, in a folder of its own; the system's are never
// touched.
#pragma once

#include <filesystem>
#include <string>

namespace scye::test {

// A folder that goes with the test.
class OwnFolder {
public:
  OwnFolder();
  ~OwnFolder();
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  [[nodiscard]] std::filesystem::path operator/(const std::string& name) const {
    return path_ / name;
  }
  // How many things lie in it.
  [[nodiscard]] int entries() const;

private:
  std::filesystem::path path_;
};

// A disk of so many bytes, seen only by this thread and those it starts: a tmpfs in a mount
// namespace of its own. Where that is not permitted it is a plain folder, and "full" is a limit of
// this process on the size of files; the test's record says which of the two it was.
class SmallDisk {
public:
  explicit SmallDisk(std::size_t bytes);
  ~SmallDisk();
  [[nodiscard]] const std::filesystem::path& path() const { return folder_.path(); }
  [[nodiscard]] std::filesystem::path operator/(const std::string& name) const {
    return folder_ / name;
  }
  [[nodiscard]] bool mounted() const { return mounted_; }
  void fill(); // to the last byte
  void empty();

private:
  OwnFolder folder_;
  bool mounted_ = false;
};

// A device that takes nothing: "no space left" at every write. Whether it could be made.
[[nodiscard]] bool makeFullDevice(const std::filesystem::path& path);
// A device that takes everything.
[[nodiscard]] bool makeVoidDevice(const std::filesystem::path& path);

} // namespace scye::test
