// What a program with the workbench can do beyond the command line; one built with
// SCYEWRIGHT_UI=OFF has without_workbench.cpp for it.
#pragma once

#include "io/outputs.h"

#include <memory>

namespace scye {

// Draws without a display; null: nothing can be drawn. It has Qt's application from the first
// picture on, so it goes before a window comes.
[[nodiscard]] std::unique_ptr<Drawer> pictureDrawer();
// Opens the window on what the arguments name, and returns the exit code when it has closed.
[[nodiscard]] int openWorkbench(int argc, char** argv);

} // namespace scye
