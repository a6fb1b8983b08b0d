// Where a file is to be written. What is there already is replaced only when that was agreed to,
// also when its ending was left out: a file dialog asks about the name as it was typed.
#pragma once

#include <QString>
#include <QStringList>

class QWidget;

namespace scye {

// `path`, or `path` with the ending where it has none of `endings`.
[[nodiscard]] QString withEnding(const QString& path, const QStringList& endings,
                                 const QString& ending);

// Whether the file may be replaced.
[[nodiscard]] bool askToReplace(QWidget* parent, const QString& path);

// A name with one of the endings (".svg"), the one of the chosen kind where none is named.
// Empty: given up.
[[nodiscard]] QString askWhereToWrite(QWidget* parent, const QString& title,
                                      const QString& suggestion, const QStringList& endings);

} // namespace scye
