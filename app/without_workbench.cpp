#include "command_line.h"
#include "workbench.h"

namespace scye {

std::unique_ptr<Drawer> pictureDrawer() {
  return nullptr;
}

int openWorkbench(int, char**) {
  return kUsage; // runCommandLine has refused already
}

} // namespace scye
