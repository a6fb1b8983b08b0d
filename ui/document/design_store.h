// Designs on disk: read whole or refused, written whole or not at all.
#pragma once

#include "model/design.h"

#include <QString>

#include <variant>

namespace scye {

struct ReadRefusal {
  QString reason; // a sentence, with the line where there is one
};

[[nodiscard]] std::variant<Design, ReadRefusal> readDesign(const QString& path);
// What went wrong, as a sentence, or nothing.
[[nodiscard]] std::optional<QString> writeDesign(const QString& path, const Design& design);

} // namespace scye
