// Designs on disk: read whole or refused, written whole or not at all.
#pragma once

#include "io/files.h"
#include "model/design.h"
#include "model/phrases.h"
#include "progress/work.h"

#include <QString>

#include <variant>

namespace scye {

struct ReadRefusal {
  QString reason; // a sentence, with the line where there is one
};

[[nodiscard]] std::variant<Design, ReadRefusal> readDesign(const QString& path,
                                                           const Phrases& phrases);
// What went wrong, as a sentence, or nothing.
[[nodiscard]] std::optional<QString> writeDesign(const QString& path, const Design& design,
                                                 const Phrases& phrases);

// The same in two steps, for whoever needs the file's very bytes.
[[nodiscard]] FileText readDesignText(const QString& path);
[[nodiscard]] std::variant<Design, ReadRefusal> designOf(const FileText& file,
                                                         const Phrases& phrases,
                                                         Work* work = nullptr); // what is knitted
[[nodiscard]] std::optional<QString> writeDesignText(const QString& path, const std::string& text,
                                                     const Phrases& phrases);

} // namespace scye
