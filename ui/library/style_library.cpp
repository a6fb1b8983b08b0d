#include "library/style_library.h"

#include "document/design_store.h"
#include "draft/complete.h"
#include "schematic/front_view.h"
#include "schematic/schematic.h"

#include <QDir>
#include <QFileInfo>

#include <algorithm>

namespace scye {
namespace {

std::string optionKey(const Design& design, Choice choice) {
  return std::string(info(choice).options.begin()[design.option(choice)]);
}

std::string garmentKey(const Design& design) {
  const std::string garment = optionKey(design, Choice::Garment);
  if (design.as<BodyLength>() == BodyLength::Cropped) return "library.garment.cropped." + garment;
  return "library.garment." + garment + "." + optionKey(design, Choice::Figure);
}

std::string sleeveKey(const Design& design) {
  const Sizes sizes = complete(design);
  const double reach = sizes[Field::SleeveLength] / sizes.finished(Field::SleeveToUnderarm);
  if (reach < 0.12) return "library.sleeve.cap";
  const char* length = reach < 0.42 ? "short." : reach < 0.7 ? "elbow." : "long.";
  return "library.sleeve." + std::string(length) + optionKey(design, Choice::SleeveLine);
}

} // namespace

std::vector<Style> styleLibrary(const Phrases& phrases) {
  const QDir folder(QStringLiteral(":/demos"));
  std::vector<Style> styles;
  for (const QString& name : folder.entryList(QDir::Files)) {
    const QString path = folder.filePath(name);
    const auto read = readDesign(path, phrases);
    if (const auto* design = std::get_if<Design>(&read))
      styles.push_back({path, *design, styleInBrief(phrases, *design)});
  }
  std::stable_sort(styles.begin(), styles.end(), [](const Style& a, const Style& b) {
    const int figures[] = {a.design.option(Choice::Figure), b.design.option(Choice::Figure)};
    return figures[0] != figures[1] ? figures[0] < figures[1] : a.design.title < b.design.title;
  });
  return styles;
}

QString styleInBrief(const Phrases& phrases, const Design& design) {
  const std::string sleeve = phrases.say("library.top." + optionKey(design, Choice::CapTop),
                                         {phraseParam("sleeve", sleeveKey(design))});
  return QString::fromStdString(phrases.say(
      "library.brief", {phraseParam("garment", garmentKey(design)),
                        phraseParam("neck", "library.neck." + optionKey(design, Choice::Neckline)),
                        textParam("sleeve", sleeve)}));
}

QImage wornPhotograph(const QString& path) {
  return QImage(QStringLiteral(":/cards/%1.png").arg(QFileInfo(path).completeBaseName()));
}

StylePictures stylePictures(const Phrases& phrases, const Design& design) {
  SchematicOptions options;
  options.dimensions = false;
  options.perRow = 0;
  options.textHeight = 2.5;
  const GarmentDraft draft = draftGarment(design);
  StylePictures pictures;
  pictures.worn.groups.push_back(frontView(draft));
  pictures.pieces = pieceSchematic(draft, phrases, options);
  for (Group& group : pictures.pieces.groups) {
    group.labels.clear();
    std::erase_if(group.strokes, [](const Stroke& s) { return s.role == Role::Notch; });
  }
  return pictures;
}

} // namespace scye
