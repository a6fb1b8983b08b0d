#include "look/icons.h"

#include <QFile>
#include <QGuiApplication>
#include <QIconEngine>
#include <QPainter>
#include <QPalette>
#include <QPixmapCache>
#include <QSvgRenderer>

namespace scye {
namespace {

class TintedIcon : public QIconEngine {
public:
  TintedIcon(QString name, QColor colour) : name_(std::move(name)), colour_(colour) {}

  void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override {
    QFile file(QStringLiteral(":/icons/%1.svg").arg(name_));
    if (!file.open(QIODevice::ReadOnly)) return;
    QByteArray svg = file.readAll();
    svg.replace("currentColor", tint(mode).name().toLatin1());
    QSvgRenderer(svg).render(painter, QRectF(rect));
  }

  QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
    const QString key = QStringLiteral("scye-%1-%2-%3x%4")
                            .arg(name_, tint(mode).name())
                            .arg(size.width())
                            .arg(size.height());
    QPixmap found;
    if (QPixmapCache::find(key, &found)) return found;
    QPixmap pixmap(size);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paint(&painter, QRect(QPoint(), size), mode, state);
    painter.end();
    QPixmapCache::insert(key, pixmap);
    return pixmap;
  }

  [[nodiscard]] QIconEngine* clone() const override { return new TintedIcon(*this); }
  bool isNull() override { return false; }

private:
  [[nodiscard]] QColor tint(QIcon::Mode mode) const {
    const QPalette palette = QGuiApplication::palette();
    if (mode == QIcon::Disabled) return palette.color(QPalette::Disabled, QPalette::ButtonText);
    if (mode == QIcon::Selected) return palette.color(QPalette::HighlightedText);
    return colour_.isValid() ? colour_ : palette.color(QPalette::ButtonText);
  }

  QString name_;
  QColor colour_;
};

} // namespace

QIcon icon(const char* name) {
  return icon(name, QColor());
}
QIcon icon(const char* name, const QColor& colour) {
  return QIcon(new TintedIcon(QString::fromLatin1(name), colour));
}
QIcon appIcon() {
  return QIcon(QStringLiteral(":/icons/scyewright.svg"));
}

} // namespace scye
