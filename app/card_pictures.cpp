// Run while the program is built: the garment of a design worn, for its card on the start page.
//   card_pictures DESIGN.scye OUT.png
#include "image/png.h"
#include "io/design_file.h"
#include "io/files.h"
#include "worn/worn_picture.h"

#include <cstdio>

int main(int argc, char** argv) {
  using namespace scye;
  if (argc != 3) return 2;
  const FileText file = readWhole(argv[1]);
  if (!file.text) return 1;
  const DesignRead read = designFromJson(*file.text, builtinPhrases());
  if (!read.design) return 1;
  WornPictureOptions options;
  options.arm = 20; // the sleeves are seen beside the body
  options.turned.zoom = 1.1;
  options.cutOut = true;
  options.width = 480, options.height = 440;
  const auto image = wornPicture(derive(*read.design), options);
  if (!image || writeWhole(argv[2], pngOf(*image))) {
    std::fprintf(stderr, "card_pictures: %s: no picture\n", argv[1]);
    return 1;
  }
  return 0;
}
