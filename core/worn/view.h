// From where the garment is looked at.
#pragma once

#include "model/enum_keys.h"
#include "worn/body_form.h"

namespace scye {

struct View {
  double turn = 0; // degrees: 0 from the front, 90 from the wearer's left, 180 from behind
  double lift = 4; // degrees: how far from above
  double zoom = 1;
  Vec3 toward = Vec3::Zero(); // what lies in the middle, cm
  bool operator==(const View&) const = default;
};

enum class NamedView : std::uint8_t { Front, Side, Back, Armhole };
inline constexpr EnumKeys<NamedView, NamedView::Armhole> kViewKeys{{
    {NamedView::Front, "front"},
    {NamedView::Side, "side"},
    {NamedView::Back, "back"},
    {NamedView::Armhole, "armhole"},
}};

// What the whole of a form with its arms takes.
struct Extent {
  Vec3 middle = Vec3::Zero();
  double half = 40; // cm up, down and to the sides of the middle
};
[[nodiscard]] Extent extentOf(const BodyForm& body, double hemY);
[[nodiscard]] View viewOf(NamedView view, const BodyForm& body, const Extent& extent);

// The eye: a perspective with a small angle, so that girths look as they are.
class Eye {
public:
  Eye(const View& view, const Extent& extent, int width, int height);
  struct Place {
    float x = 0, y = 0, depth = 0; // pixels from the upper left corner; cm from the eye
  };
  [[nodiscard]] Place project(const Eigen::Vector3f& p) const {
    const Eigen::Vector3f d = p - at_;
    const float depth = d.dot(forward_), k = scale_ / depth;
    return {half_.x() + k * d.dot(right_), half_.y() - k * d.dot(up_), depth};
  }
  [[nodiscard]] const Eigen::Vector3f& at() const { return at_; }
  [[nodiscard]] const Eigen::Vector3f& forward() const { return forward_; }
  [[nodiscard]] const Eigen::Vector3f& right() const { return right_; }
  [[nodiscard]] const Eigen::Vector3f& up() const { return up_; }
  [[nodiscard]] float pixelsPerCm() const { return scale_ / distance_; } // in the middle
  [[nodiscard]] float distance() const { return distance_; }

private:
  Eigen::Vector3f at_, forward_, right_, up_;
  Eigen::Vector2f half_;
  float scale_ = 1, distance_ = 1;
};

} // namespace scye
