// What the design has to say about itself: problems as data. The words are made at the edge from
// the phrase catalogue ("finding.<code>", "remedy.<key>") with the named places filled in.
#pragma once

#include "model/design.h"
#include "model/phrases.h"

#include <string>
#include <vector>

namespace scye {

enum class Severity : std::uint8_t { Note, Warning, Blocking };
[[nodiscard]] std::string_view severityKey(Severity severity); // phrase "severity.<key>"

// One click: the design with these changes. `key` names its phrase.
struct Remedy {
  struct Change {
    Field field;
    double value;
    bool operator==(const Change&) const = default;
  };
  struct Pick {
    Choice choice;
    int option;
    bool operator==(const Pick&) const = default;
  };
  std::string key;
  Params params;
  std::vector<Change> changes;
  std::vector<Pick> picks;
  std::vector<Field> onGarment = {}; // these were measured on a garment; what was typed stays
  bool operator==(const Remedy&) const = default;
};

struct Finding {
  Severity severity = Severity::Note;
  std::string code;
  std::vector<Field> fields; // what it concerns, the first being where it is shown
  Params params;
  std::vector<Remedy> remedies;
  bool operator==(const Finding&) const = default;
};

using Findings = std::vector<Finding>;

[[nodiscard]] Design applied(const Design& design, const Remedy& remedy);
[[nodiscard]] bool anyBlocking(const Findings& findings);
[[nodiscard]] const Finding* findCode(const Findings& findings, std::string_view code);

} // namespace scye
