// A booklet for every wearer of a table, in a folder, each a file called after the wearer.
#pragma once

#include "io/outputs.h"
#include "io/wearer_table.h"

#include <filesystem>

namespace scye {

class WearerBooklets {
public:
  // `page.goOn` may give up a booklet that is being made: its file is not written then. Without a
  // drawer they are HTML, else PDF; it must outlive this.
  WearerBooklets(std::filesystem::path folder, Wording wording, ExportOptions page,
                 const Drawer* drawer);

  // What went wrong: of which path, and why.
  struct Problem {
    std::filesystem::path path;
    std::string reason;
  };
  // Makes the folder where it is missing.
  [[nodiscard]] std::optional<Problem> begin() const;
  // After one that could not be written none is.
  void write(const TableWearer& wearer, const Derived& derived);
  [[nodiscard]] const std::optional<Problem>& problem() const { return problem_; }
  [[nodiscard]] int written() const { return written_; }

private:
  std::filesystem::path folder_;
  Wording wording_;
  ExportOptions page_;
  const Drawer* drawer_;
  std::optional<Problem> problem_;
  int written_ = 0;
};

} // namespace scye
