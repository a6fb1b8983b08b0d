// The chart of one piece to look at: zoom, pan, and the row that is pointed at, by mouse or by
// keyboard. Letters keep their size on the screen; the legend stands below whatever part is shown.
#pragma once

#include "paint/picture_painter.h"
#include "schematic/chart.h"

#include <QWidget>

namespace scye {

class ChartView : public QWidget {
  Q_OBJECT
public:
  ChartView(const Phrases& phrases, QWidget* parent);

  // `another`: not the same piece at another moment, so it is looked at from its beginning.
  void setPiece(const KnitPiece& piece, const StitchSize& size, bool another);
  void setNothing();
  void setLit(std::optional<Span> rows);
  void showRow(int row); // brings it into view
  void setLegendShown(bool shown);

  void fit();   // the whole chart
  void begin(); // the first row, cells large enough to read where they would not be when fitted
  void zoomBy(double factor, const QPointF& about);

  [[nodiscard]] const Chart& chart() const { return chart_; }
  [[nodiscard]] const PictureView& view() const { return view_; }
  [[nodiscard]] const std::optional<ChartPlace>& place() const { return place_; }

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
  void placeMoved();

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  enum class Stand { Beginning, Whole, Chosen };

  [[nodiscard]] double letters() const; // pixels
  [[nodiscard]] Chart make(double textHeight) const;
  void redraw();
  void stand();
  void fillRoom();
  void place(std::optional<ChartPlace> place, bool byKey);
  void pointAt(const QPointF& at);
  [[nodiscard]] std::optional<ChartPlace> placeOf(int row, SectionId section) const;
  void step(int rows);
  void otherSide();
  void layLegend();
  [[nodiscard]] QRectF room() const; // without the legend
  [[nodiscard]] QRectF rowsRect(int first, int last) const;
  void paintPlace(QPainter& painter, const PictureColours& colours) const;

  const Phrases& phrases_;
  KnitPiece piece_;
  StitchSize size_;
  std::optional<Span> lit_;
  Chart chart_;
  PictureView view_;
  Stand stand_ = Stand::Beginning;
  bool legendShown_ = true;
  Picture legend_;
  PictureView legendView_;

  std::optional<ChartPlace> place_;
  bool byKey_ = false; // it stays when the pointer leaves
  std::optional<QPointF> grabbed_;
  bool ringed_ = false;
};

} // namespace scye
