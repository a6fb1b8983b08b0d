#include "canvas/handle_hand.h"

#include "knit/on_stitches.h"
#include "values/value_text.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr double kStill = 3; // px: less is a click

QString nameOf(Field field, const Phrases& phrases) {
  return unbroken(phrases, phrases.say("field." + std::string(info(field).key)));
}

} // namespace

HandleHand::HandleHand(Document& document, Attention& attention, Settings& settings,
                       QObject* parent)
    : QObject(parent), document_(document), attention_(attention), settings_(settings) {}

void HandleHand::setOffered(bool offered) {
  offered_ = offered;
}

void HandleHand::setPicture(const Picture& picture) {
  const auto keyOf = [&](int i) {
    const bool there = i >= 0 && i < int(spots_.size());
    return there ? std::optional(std::pair(spots_[i].piece, std::string(spots_[i].handle.key)))
                 : std::nullopt;
  };
  const auto hot = keyOf(hot_), chosen = keyOf(chosen_);
  spots_.clear();
  // On the curves as they are drawn, once what is in hand has come to stitches.
  const Derived& derived = document_.derived();
  const GarmentDraft draft = derived.draft.design == document_.draft().design
                                 ? onStitches(derived.draft, derived.knit)
                                 : document_.draft();
  for (const Group& group : picture.groups)
    if (group.piece && offered_)
      for (Handle& handle : pieceHandles(draft, *group.piece)) {
        const Vec2 at = group.origin + handle.at;
        spots_.push_back({*group.piece, std::move(handle), at});
      }
  hot_ = chosen_ = -1;
  for (int i = 0; i < int(spots_.size()); ++i) {
    if (keyOf(i) == hot) hot_ = i;
    if (keyOf(i) == chosen) chosen_ = i;
  }
}

std::optional<Vec2> HandleHand::place(PieceId piece, std::string_view key) const {
  for (const Spot& spot : spots_)
    if (spot.piece == piece && spot.handle.key == key) return spot.at;
  return std::nullopt;
}

int HandleHand::spotAt(const QPointF& at, const PictureView& view, double reach) const {
  int best = -1;
  double least = reach;
  for (int i = 0; i < int(spots_.size()); ++i) {
    const QPointF d = view.map(spots_[i].at) - at;
    if (const double far = std::hypot(d.x(), d.y()); far <= least) least = far, best = i;
  }
  return best;
}

void HandleHand::hover(const QPointF& at, const PictureView& view, double reach) {
  const int hot = spotAt(at, view, reach);
  if (hot == hot_) return;
  hot_ = hot;
  Q_EMIT changed();
}

void HandleHand::leave() {
  if (hot_ < 0) return;
  hot_ = -1;
  Q_EMIT changed();
}

bool HandleHand::press(const QPointF& at, const PictureView& view, double reach) {
  const int spot = spotAt(at, view, reach);
  if (spot < 0) return false;
  hot_ = spot;
  held_ = {spots_[spot].piece, spots_[spot].handle.key, at, {}, 0};
  return true;
}

void HandleHand::drag(const QPointF& at, const PictureView& view, bool whole) {
  if (!held_) return;
  const QPointF by = at - held_->from;
  if (!held_->axis) {
    if (std::hypot(by.x(), by.y()) < kStill || hot_ < 0) return;
    const Handle& handle = spots_[hot_].handle;
    const bool level = handle.level && (!handle.upright || std::abs(by.x()) >= std::abs(by.y()));
    held_->axis = level ? handle.level : handle.upright;
    held_->value = handleValue(document_.draft(), *held_->axis);
    attention_.light(held_->axis->field);
    document_.beginGesture(nameOf(held_->axis->field, settings_.phrases()));
  }
  const HandleAxis& axis = *held_->axis;
  const Vec2 moved(by.x() / view.scale, -by.y() / view.scale);
  double value = held_->value + axis.gain * moved.dot(axis.way);
  if (whole && axis.snap != HandleSnap::Free)
    value = snapped(document_.draft(), axis, value);
  else
    value = ontoGrid(value, sliderStep(info(axis.field).kind, settings_.unit()));
  write(axis, value, 0);
}

void HandleHand::write(const HandleAxis& axis, double value, int run) {
  // Beyond its range it stays where it is.
  if (const auto next = withHandleValue(document_.design(), document_.draft(), axis, value))
    document_.edit(nameOf(axis.field, settings_.phrases()), *next, run);
}

void HandleHand::release() {
  if (!held_) return;
  const bool moved = held_->axis.has_value();
  held_.reset();
  if (moved) {
    document_.endGesture();
    attention_.light(std::nullopt);
  } else if (hot_ >= 0) {
    goTo(spots_[hot_]);
  }
  Q_EMIT changed();
}

void HandleHand::giveUp() {
  if (!held_) return;
  const bool moved = held_->axis.has_value();
  held_.reset();
  if (moved) {
    document_.cancelGesture();
    attention_.light(std::nullopt);
  }
  Q_EMIT changed();
}

void HandleHand::goTo(const Spot& spot) {
  const HandleAxis& axis = spot.handle.level ? *spot.handle.level : *spot.handle.upright;
  const Derived& derived = document_.derived();
  if (const KnitPiece* piece = derived.knit.piece(spot.piece); piece && !piece->rows.empty()) {
    const int row =
        std::clamp(int(std::lround(spot.handle.at.y() / derived.knit.lattice.size.height)), 1,
                   std::max(1, piece->rows.back().row.value()));
    for (const RowLine& line : piece->rows)
      if (line.row.value() == row) {
        attention_.goToRows({spot.piece, line.section, row, row});
        break;
      }
  }
  attention_.goTo(axis.field, axis.finished);
}

bool HandleHand::key(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    if (held_) {
      giveUp();
      return true;
    }
    if (chosen_ < 0) return false;
    chosen_ = -1;
    attention_.light(std::nullopt);
    Q_EMIT changed();
    return true;
  }
  if (event->key() == Qt::Key_H && !spots_.empty()) {
    const int count = int(spots_.size()), by = event->modifiers() & Qt::ShiftModifier ? -1 : 1;
    chosen_ = chosen_ < 0 ? (by > 0 ? 0 : count - 1) : (chosen_ + by + count) % count;
    run_ = document_.newRun();
    Q_EMIT changed();
    return true;
  }
  if (chosen_ < 0) return false;
  switch (event->key()) {
  case Qt::Key_Return:
  case Qt::Key_Enter:
    goTo(spots_[chosen_]);
    return true;
  case Qt::Key_Left:
  case Qt::Key_Right:
  case Qt::Key_Up:
  case Qt::Key_Down:
    step(spots_[chosen_], event->key(), event->modifiers() & Qt::ShiftModifier);
    return true;
  default:
    return false;
  }
}

void HandleHand::step(const Spot& spot, int key, bool whole) {
  const Vec2 to = key == Qt::Key_Left    ? Vec2(-1, 0)
                  : key == Qt::Key_Right ? Vec2(1, 0)
                  : key == Qt::Key_Up    ? Vec2(0, 1)
                                         : Vec2(0, -1);
  const auto& axis = to.x() != 0 ? spot.handle.level : spot.handle.upright;
  if (!axis) return;
  const GarmentDraft& draft = document_.draft();
  const double sign = to.dot(axis->way) * axis->gain > 0 ? 1 : -1, now = handleValue(draft, *axis);
  const StitchSize& size = draft.sizes.stitch;
  const double unit = axis->snap == HandleSnap::WholeStitches ? size.width : size.height;
  const double grain = keyStep(info(axis->field).kind, settings_.unit());
  attention_.light(axis->field);
  write(*axis,
        whole && axis->snap != HandleSnap::Free
            ? snapped(draft, *axis, now + sign * unit * std::abs(axis->gain))
            : ontoGrid(now + sign * grain, grain),
        run_);
}

void HandleHand::setShown(bool shown) {
  if (shown_ == shown) return;
  shown_ = shown;
  Q_EMIT changed();
}

const HandleHand::Spot* HandleHand::shownSpot() const {
  const int i = hot_ >= 0 ? hot_ : chosen_;
  return i >= 0 && i < int(spots_.size()) ? &spots_[i] : nullptr;
}

QString HandleHand::axisText(const HandleAxis& axis) const {
  const FieldKind kind = info(axis.field).kind;
  return nameOf(axis.field, settings_.phrases()) + u' ' +
         valueText(settings_.phrases(), kind, handleValue(document_.draft(), axis),
                   {settings_.unit()});
}

QString HandleHand::tip() const {
  const Spot* spot = shownSpot();
  if (!spot) return {};
  QString text = unbroken(settings_.phrases(),
                          settings_.phrases().say("handle." + std::string(spot->handle.key)));
  if (spot->handle.level) text += tr(". Across: %1").arg(axisText(*spot->handle.level));
  if (spot->handle.upright) text += tr(". Up and down: %1").arg(axisText(*spot->handle.upright));
  return text + tr(". Drag it, with Shift by whole stitches and rows; click to go to its box.");
}

void HandleHand::paint(QPainter& painter, const PictureColours& colours, const PictureView& view,
                       double letters) const {
  if (!shown_ && !held_ && chosen_ < 0) return;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const Spot* in = shownSpot();
  for (const Spot& spot : spots_) {
    const bool hot = &spot == in;
    const double r = (hot ? 0.5 : 0.34) * letters;
    painter.setPen(QPen(colours[Role::Lit], hot ? 2 : 1.4));
    painter.setBrush(hot ? colours[Role::Lit] : colours.ground);
    painter.drawEllipse(view.map(spot.at), r, r);
  }
  if (in && (held_ || hot_ < 0)) {
    // What it says while it is in hand, on a plate beside it.
    const auto& axis = held_ && held_->axis ? held_->axis
                       : in->handle.level   ? in->handle.level
                                            : in->handle.upright;
    const QString text = axisText(*axis);
    const QFontMetricsF metrics(painter.font());
    const QPointF at = view.map(in->at);
    QRectF plate(at.x() + letters, at.y() - 2.4 * letters,
                 metrics.horizontalAdvance(text) + letters, metrics.height() + 0.3 * letters);
    if (plate.right() > painter.window().right()) plate.moveRight(at.x() - letters);
    if (plate.top() < 0) plate.moveTop(at.y() + letters);
    painter.setPen(QPen(colours[Role::Lit], 1));
    painter.setBrush(colours.ground);
    painter.drawRoundedRect(plate, 3, 3);
    painter.setPen(colours[Role::Outline]);
    painter.drawText(plate, Qt::AlignCenter, text);
  }
  painter.restore();
}

} // namespace scye
