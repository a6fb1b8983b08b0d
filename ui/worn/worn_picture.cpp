#include "worn/worn_picture.h"

#include "io/files.h"
#include "worn/body_surface.h"

#include <QBuffer>
#include <QFile>

namespace scye {

QImage toImage(const Image& picture) {
  const QImage seen(picture.rgb.data(), picture.width, picture.height, 3 * picture.width,
                    QImage::Format_RGB888);
  return seen.convertToFormat(QImage::Format_RGB32); // owns its pixels
}

std::optional<QString> saveWorn(const Image& picture, const Phrases& phrases, const QString& path) {
  QByteArray png;
  QBuffer buffer(&png);
  buffer.open(QIODevice::WriteOnly);
  toImage(picture).save(&buffer, "PNG");
  const std::string file = QFile::encodeName(path).toStdString();
  const auto problem = writeWhole(file, std::string_view(png.constData(), std::size_t(png.size())));
  if (!problem) return std::nullopt;
  return QString::fromStdString(phrases.say(
      "cli.write", {textParam("path", path.toStdString()), textParam("reason", *problem)}));
}

std::optional<QString> exportWorn(const Derived& derived, const Phrases& phrases,
                                  const QString& path, const WornPictureOptions& options) {
  const auto worn = wornBy(derived, options.arm);
  if (!worn) return QString::fromStdString(phrases.say("worn.none"));
  SceneOptions what;
  what.pulls = options.pulls;
  WornScene scene = sceneOf(*worn, trunkSurface(worn->body), what);
  lightUp(scene);
  Drawing drawing;
  drawing.width = options.width, drawing.height = options.height;
  drawing.samples = 2;
  View view = viewOf(options.view, worn->body, scene.extent);
  view.turn += options.turned.turn, view.lift += options.turned.lift;
  view.zoom *= options.turned.zoom;
  return saveWorn(drawn(scene, view, drawing), phrases, path);
}

} // namespace scye
