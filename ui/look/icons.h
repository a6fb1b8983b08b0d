// Our own icons: one-colour SVGs, tinted from the palette at the moment they are painted, so that
// they follow the desktop from light to dark without being told.
#pragma once

#include <QIcon>
#include <QString>

namespace scye {

[[nodiscard]] QIcon icon(const char* name);
// In a colour of its own instead of the text's.
[[nodiscard]] QIcon icon(const char* name, const QColor& colour);
[[nodiscard]] QIcon appIcon();

} // namespace scye
