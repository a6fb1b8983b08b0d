#include "command_line.h"
#include "terminal.h"
#include "workbench.h"

int main(int argc, char** argv) {
  scye::guardTheEnd();
  return scye::guarded([&] {
    const auto drawer = scye::pictureDrawer();
    if (const auto code = scye::runCommandLine(argc, argv, drawer.get()))
      return scye::finished(*code);
    return scye::openWorkbench(argc, argv);
  });
}
