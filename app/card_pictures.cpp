// Run while the program is built: the garment of a design worn, for its card on the start page.
//   card_pictures DESIGN.scye OUT.png
#include "image/png.h"
#include "read_design.h"
#include "terminal.h"
#include "worn/worn_picture.h"

namespace scye {
namespace {

int cardPicture(const std::string& design, const std::string& out) {
  Design read;
  if (const auto code = readDesign(design, {}, read)) return *code;
  const auto image = wornPicture(derive(read), shownAlone(480, 440));
  if (!image) return failed(1, design + ": nothing to wear");
  if (const auto problem = writeWhole(out, pngOf(*image))) return unwritten(out, *problem);
  return 0;
}

} // namespace
} // namespace scye

int main(int argc, char** argv) {
  scye::guardTheEnd();
  return scye::guarded([&] { return argc == 3 ? scye::cardPicture(argv[1], argv[2]) : 2; });
}
