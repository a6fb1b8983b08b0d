// The drawing table: the pieces to scale, always those of the present design. It shows a display
// list and keeps nothing but where it is looked at from; a figure clicked leads to the value
// behind it. Letters keep their size on the screen: at every zoom the picture is asked for again.
#pragma once

#include "canvas/handle_hand.h"
#include "canvas/picture_fit.h"
#include "document/attention.h"
#include "document/document.h"
#include "paint/picture_painter.h"
#include "settings/settings.h"

#include <QWidget>

namespace scye {

class DrawingTable : public QWidget {
  Q_OBJECT
public:
  DrawingTable(Document& document, Attention& attention, Settings& settings,
               QWidget* parent = nullptr);

  void fit();
  void setHandlesOffered(bool offered); // false: it is only looked at
  void zoomIn();
  void zoomOut();

  [[nodiscard]] const Picture& picture() {
    settle();
    return picture_;
  }
  [[nodiscard]] const PictureView& view() {
    settle();
    return view_;
  }
  [[nodiscard]] bool isFitted() const { return fitted_; }
  [[nodiscard]] const HandleHand& handles() const { return *handles_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
  void redrawn();

protected:
  bool event(QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void enterEvent(QEnterEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void onChanged(const Document::Event& event);
  void redraw(); // asks for the picture at the present scale
  void settle(); // fits what waits for it
  [[nodiscard]] Picture make(double textHeight, int perRow, bool figures = true) const;
  [[nodiscard]] FittedPicture fitWithoutFigures(int perRow, double letters,
                                                const QRectF& room) const;
  [[nodiscard]] const GarmentDraft* ghost();
  void draftOthers();
  void zoomBy(double factor, const QPointF& about);
  void panBy(const QPointF& by);
  [[nodiscard]] bool fitsWell() const;
  [[nodiscard]] const HotSpot* hotSpotAt(const QPointF& at) const;
  void hover(const QPointF& at);
  void describe();
  void pictureChanged();
  [[nodiscard]] double reach() const; // px: how near to a handle takes hold of it
  [[nodiscard]] QRectF mappedBox(const Box& box) const;
  void paintGrid(QPainter& painter) const;

  Document& document_;
  Attention& attention_;
  Settings& settings_;

  Picture picture_;
  PictureView view_;
  double letters_ = 10; // pixels
  int perRow_ = 2;
  bool fitted_ = true; // no other view was chosen
  bool waits_ = false; // for being fitted: once, before it is next looked at or taken hold of

  HandleHand* handles_;
  std::optional<GarmentDraft> previewDraft_;
  std::vector<GarmentDraft> others_; // of the present design
  std::optional<HotSpot> hot_;
  std::optional<QPointF> grabbed_; // where the drawing is held
  QPointF pressedAt_;
  bool ringed_ = false; // the keyboard came here by the keyboard: say so
  bool hand_ = false;   // space is held: a press takes hold of the drawing wherever it falls
};

} // namespace scye
