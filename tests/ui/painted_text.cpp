#include "painted_text.h"

#include <QPaintEngine>
#include <QWidget>

namespace scye::test {
namespace {

class TextEngine : public QPaintEngine {
public:
  explicit TextEngine(QStringList& texts) : QPaintEngine(AllFeatures), texts_(texts) {}
  bool begin(QPaintDevice*) override { return true; }
  bool end() override { return true; }
  void updateState(const QPaintEngineState&) override {}
  void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
  void drawPath(const QPainterPath&) override {}
  void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}
  [[nodiscard]] Type type() const override { return User; }

  void drawTextItem(const QPointF&, const QTextItem& item) override {
    if (!item.text().trimmed().isEmpty()) texts_.append(item.text());
  }

private:
  QStringList& texts_;
};

class TextDevice : public QPaintDevice {
public:
  explicit TextDevice(const QWidget& as) : as_(as), engine_(texts) {}
  [[nodiscard]] QPaintEngine* paintEngine() const override { return &engine_; }

  QStringList texts;

protected:
  [[nodiscard]] int metric(PaintDeviceMetric metric) const override {
    switch (metric) {
    case PdmWidth:
      return as_.width();
    case PdmHeight:
      return as_.height();
    case PdmWidthMM:
      return as_.widthMM();
    case PdmHeightMM:
      return as_.heightMM();
    case PdmDpiX:
    case PdmPhysicalDpiX:
      return as_.logicalDpiX();
    case PdmDpiY:
    case PdmPhysicalDpiY:
      return as_.logicalDpiY();
    case PdmDevicePixelRatio:
      return 1;
    case PdmDevicePixelRatioScaled:
      return int(devicePixelRatioFScale());
    default:
      return QPaintDevice::metric(metric);
    }
  }

private:
  const QWidget& as_;
  mutable TextEngine engine_;
};

} // namespace

QStringList paintedIn(QWidget& in) {
  TextDevice device(in);
  in.render(&device);
  return device.texts;
}

} // namespace scye::test
