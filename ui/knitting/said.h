// Words of the core as the window shows them.
#pragma once

#include <QString>

#include <string>

namespace scye {

[[nodiscard]] inline QString said(const std::string& text) {
  return QString::fromStdString(text);
}

} // namespace scye
