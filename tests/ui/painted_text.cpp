#include "painted_text.h"

#include <QPaintEngine>
#include <QPainter>
#include <QWidget>

#include <algorithm>

namespace scye::test {
namespace {

class TextEngine : public QPaintEngine {
public:
  explicit TextEngine(std::vector<PaintedText>& texts) : QPaintEngine(AllFeatures), texts_(texts) {}
  bool begin(QPaintDevice*) override { return true; }
  bool end() override { return true; }
  void updateState(const QPaintEngineState&) override {}
  void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
  void drawPath(const QPainterPath&) override {}
  void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}
  [[nodiscard]] Type type() const override { return User; }

  void drawTextItem(const QPointF& at, const QTextItem& item) override {
    if (item.text().trimmed().isEmpty()) return;
    const QRectF box = painter()->deviceTransform().mapRect(
        QRectF(at.x(), at.y() - item.ascent(), item.width(), item.ascent() + item.descent()));
    const QRectF seen = systemClip().isEmpty()
                            ? QRectF(0, 0, paintDevice()->width(), paintDevice()->height())
                            : QRectF(systemClip().boundingRect());
    texts_.push_back(
        {item.text(), std::max({seen.left() - box.left(), box.right() - seen.right(), 0.0})});
  }

private:
  std::vector<PaintedText>& texts_;
};

class TextDevice : public QPaintDevice {
public:
  explicit TextDevice(const QWidget& as) : as_(as), engine_(texts) {}
  [[nodiscard]] QPaintEngine* paintEngine() const override { return &engine_; }

  std::vector<PaintedText> texts;

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

std::vector<PaintedText> paintedIn(QWidget& in) {
  TextDevice device(in);
  in.render(&device);
  return std::move(device.texts);
}

} // namespace scye::test
