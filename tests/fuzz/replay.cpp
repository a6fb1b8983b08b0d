// Gives every file of the named folders to the target; one that is found wrong ends the program.
// Usage: replay FOLDER...
#include "fuzz/target.h"

#include <filesystem>
#include <fstream>
#include <iterator>

int main(int argc, char** argv) {
  int read = 0;
  for (int i = 1; i < argc; ++i)
    for (const auto& entry : std::filesystem::directory_iterator(argv[i])) {
      if (!entry.is_regular_file()) continue;
      std::ifstream in(entry.path(), std::ios::binary);
      const std::string text{std::istreambuf_iterator<char>(in), {}};
      std::printf("%s\n", entry.path().c_str());
      std::fflush(stdout);
      LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
      ++read;
    }
  return read > 0 ? 0 : 1;
}
