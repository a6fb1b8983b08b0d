#include "export/svg_writer.h"

#include "export/page.h"
#include "paint/picture_colours.h"

#include <QXmlStreamWriter>

namespace scye {
namespace {

QString number(double value) {
  QString text = QString::number(value, 'f', 3);
  while (text.endsWith(u'0'))
    text.chop(1);
  if (text.endsWith(u'.')) text.chop(1);
  return text == QLatin1String("-0") ? QStringLiteral("0") : text;
}

class SvgWriter {
public:
  explicit SvgWriter(const Picture& picture) : picture_(picture), box_(picture.box()) {
    if (box_.empty()) box_.add(Vec2(0, 0));
  }

  QByteArray run() {
    const double width = 10 * box_.size().x() + 2 * kMarginMm;
    const double height = 10 * box_.size().y() + 2 * kMarginMm;
    xml_.setAutoFormatting(true);
    xml_.setAutoFormattingIndent(1);
    xml_.writeStartDocument();
    xml_.writeStartElement(QStringLiteral("svg"));
    xml_.writeDefaultNamespace(QStringLiteral("http://www.w3.org/2000/svg"));
    attribute("version", QStringLiteral("1.1"));
    attribute("width", number(width) + QStringLiteral("mm"));
    attribute("height", number(height) + QStringLiteral("mm"));
    attribute("viewBox", QStringLiteral("0 0 %1 %2").arg(number(width), number(height)));
    attribute("font-family", QStringLiteral("DejaVu Sans, Verdana, sans-serif"));
    xml_.writeTextElement(QStringLiteral("title"), QString::fromStdString(picture_.title));
    for (const Group& group : picture_.groups)
      write(group);
    xml_.writeEndElement();
    xml_.writeEndDocument();
    return bytes_;
  }

private:
  void attribute(const char* name, const QString& value) {
    xml_.writeAttribute(QString::fromLatin1(name), value);
  }
  [[nodiscard]] double x(double cm) const { return 10 * (cm - box_.low.x()) + kMarginMm; }
  [[nodiscard]] double y(double cm) const { return 10 * (box_.high.y() - cm) + kMarginMm; }
  [[nodiscard]] QString point(const Vec2& p) const {
    return number(x(p.x())) + u' ' + number(y(p.y()));
  }

  [[nodiscard]] QString outline(const Path& path) const {
    QString d = u'M' + point(path.start());
    for (const Cubic& c : path.segments()) {
      if (c.isStraight())
        d += QStringLiteral(" L") + point(c.end());
      else
        d += QStringLiteral(" C") + point(c.p[1]) + u' ' + point(c.p[2]) + u' ' + point(c.end());
    }
    if ((path.end() - path.start()).norm() < 1e-9 && !path.empty()) d += QStringLiteral(" Z");
    return d;
  }

  void write(const Group& group) {
    xml_.writeStartElement(QStringLiteral("g"));
    attribute("id", QString::fromStdString(group.id));
    xml_.writeTextElement(QStringLiteral("title"), QString::fromStdString(group.title));
    for (const Stroke& stroke : group.strokes)
      write(stroke);
    for (const Label& label : group.labels)
      write(label);
    xml_.writeEndElement();
  }

  void write(const Stroke& stroke) {
    xml_.writeEmptyElement(QStringLiteral("path"));
    attribute("d", outline(stroke.path));
    const QString colour = colours_[stroke.role].name();
    if (stroke.filled) {
      attribute("fill", colour);
      return;
    }
    const Pen pen = penOf(stroke.role);
    attribute("fill", QStringLiteral("none"));
    attribute("stroke", colour);
    attribute("stroke-width", number(pen.width * kPenMm));
    attribute("stroke-linejoin", QStringLiteral("round"));
    if (pen.dashes.isEmpty()) return;
    QStringList dashes;
    for (const qreal d : pen.dashes)
      dashes.append(number(d * kPenMm));
    attribute("stroke-dasharray", dashes.join(u' '));
  }

  void write(const Label& label) {
    xml_.writeStartElement(QStringLiteral("text"));
    attribute("x", number(x(label.at.x())));
    attribute("y", number(y(label.at.y())));
    attribute("font-size", number(10 * label.height));
    attribute("fill", colours_[label.role].name());
    if (isBold(label.role)) attribute("font-weight", QStringLiteral("bold"));
    if (label.anchor != Anchor::Start)
      attribute("text-anchor",
                label.anchor == Anchor::Middle ? QStringLiteral("middle") : QStringLiteral("end"));
    if (label.angle != 0)
      attribute("transform",
                QStringLiteral("rotate(%1 %2)").arg(number(-label.angle), point(label.at)));
    xml_.writeCharacters(QString::fromStdString(label.text));
    xml_.writeEndElement();
  }

  const Picture& picture_;
  Box box_;
  const PictureColours colours_ = paperColours();
  QByteArray bytes_;
  QXmlStreamWriter xml_{&bytes_};
};

} // namespace

QByteArray pictureAsSvg(const Picture& picture) {
  return SvgWriter(picture).run();
}

} // namespace scye
