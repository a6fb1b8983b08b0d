// The handles on the drawing: taken with the mouse or gone through with the keyboard, each writes
// the value it stands for. From press to release is one undo step; Shift keeps to whole stitches
// and rows. A click without a move goes to the value's box and to the row in directions and chart.
#pragma once

#include "document/attention.h"
#include "document/document.h"
#include "paint/picture_painter.h"
#include "schematic/handles.h"
#include "settings/settings.h"

#include <QObject>

class QKeyEvent;

namespace scye {

class HandleHand : public QObject {
  Q_OBJECT
public:
  HandleHand(Document& document, Attention& attention, Settings& settings, QObject* parent);

  void setPicture(const Picture& picture); // where the pieces lie now
  void setOffered(bool offered);           // with the next picture
  // Pixels; `reach` how far from a handle the pointer may be.
  void hover(const QPointF& at, const PictureView& view, double reach);
  void leave();
  [[nodiscard]] bool press(const QPointF& at, const PictureView& view, double reach);
  void drag(const QPointF& at, const PictureView& view, bool whole);
  void release();
  void giveUp();
  [[nodiscard]] bool holds() const { return held_.has_value(); }
  [[nodiscard]] bool isHot() const { return hot_ >= 0; }

  // H and Shift+H go through the handles, arrows move the one in hand, Return goes to its box.
  [[nodiscard]] bool key(QKeyEvent* event);
  void setShown(bool shown); // while the pointer or the keyboard is on the drawing
  void paint(QPainter& painter, const PictureColours& colours, const PictureView& view,
             double letters) const;
  [[nodiscard]] QString tip() const; // of the one that is hot or in hand
  // "shoulderTip" on a piece: where it is, in the picture; for tests and readers of the screen.
  [[nodiscard]] std::optional<Vec2> place(PieceId piece, std::string_view key) const;

Q_SIGNALS:
  void changed();

private:
  struct Spot {
    PieceId piece;
    Handle handle;
    Vec2 at; // in the picture
  };
  struct Held {
    PieceId piece;
    std::string_view key;
    QPointF from;
    std::optional<HandleAxis> axis; // once it is clear which way it goes
    double value = 0;               // when it was taken
  };
  [[nodiscard]] int spotAt(const QPointF& at, const PictureView& view, double reach) const;
  [[nodiscard]] const Spot* shownSpot() const;
  [[nodiscard]] QString axisText(const HandleAxis& axis) const;
  void write(const HandleAxis& axis, double value, int run);
  void step(const Spot& spot, int key, bool whole);
  void goTo(const Spot& spot);

  Document& document_;
  Attention& attention_;
  Settings& settings_;
  std::vector<Spot> spots_;
  int hot_ = -1, chosen_ = -1; // under the pointer; by the keyboard
  std::optional<Held> held_;
  bool shown_ = false, offered_ = true;
  int run_ = 0;
};

} // namespace scye
