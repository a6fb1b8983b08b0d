// Paths of the window on the disk. Its texts are Unicode, names on the disk are bytes: a name that
// is no UTF-8 has no text of its own and is refused, never written as another.
#pragma once

#include "io/files.h"

#include <QString>

namespace scye {

// Nothing where the text stands for no name on the disk.
[[nodiscard]] std::optional<std::filesystem::path> diskPath(const QString& path);

// A file of ours read; what is no plain file (a pipe, a device) is refused: the window must not
// wait for it. At most `bytes` of it.
[[nodiscard]] FileText readPlainFile(const QString& path, std::size_t bytes);

// Whether the folder that the file is to lie in is there, or has been made.
bool makeFolderOf(const QString& path);

// Written whole or not at all (io/files.h).
[[nodiscard]] std::optional<DiskProblem> writeFile(const QString& path, std::string_view bytes);

[[nodiscard]] std::optional<DiskProblem> removeFile(const QString& path);

[[nodiscard]] QString reasonText(const DiskProblem& problem, const Phrases& phrases);

} // namespace scye
