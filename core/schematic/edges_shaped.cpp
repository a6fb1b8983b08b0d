#include "schematic/edges_shaped.h"

namespace scye {

bool shapes(Field f, PieceId piece, EdgeKind edge) {
  const bool sleeve = piece == PieceId::Sleeve, back = piece == PieceId::Back;
  const Field m = measurementOf(f).value_or(f);
  switch (m) {
  case Field::Bust:
  case Field::BackShare:
    return !sleeve
               ? edge == EdgeKind::Side || edge == EdgeKind::Armhole || edge == EdgeKind::Underarm
               : edge == EdgeKind::Cap;
  case Field::Waist:
  case Field::Hip:
    return !sleeve && edge == EdgeKind::Side;
  case Field::WaistHeight:
    return !sleeve && edge == EdgeKind::Side;
  case Field::BustDepth:
  case Field::BustReach:
  case Field::FrontWaistLength:
    return !sleeve && !back && edge == EdgeKind::Side;
  case Field::HemToUnderarm:
  case Field::BackWaistLength:
  case Field::HemDepth:
    return !sleeve && (edge == EdgeKind::Side || edge == EdgeKind::CastOn);
  case Field::CrossBack:
  case Field::ScoopBack:
    return (back && edge == EdgeKind::Armhole) || edge == EdgeKind::Cap;
  case Field::CrossFront:
  case Field::ScoopFront:
    return (!back && edge == EdgeKind::Armhole) || edge == EdgeKind::Cap;
  case Field::ArmholeDepth:
  case Field::RiseShare:
    return edge == EdgeKind::Armhole || edge == EdgeKind::Cap;
  case Field::UnderarmBack:
  case Field::UnderarmFront:
    return edge == EdgeKind::Underarm || edge == EdgeKind::Armhole || edge == EdgeKind::Cap;
  case Field::CrossShoulder:
  case Field::ShoulderDrop:
  case Field::ShoulderLength:
    return !sleeve && (edge == EdgeKind::Shoulder || edge == EdgeKind::Armhole);
  case Field::NeckWidth:
  case Field::NeckBand:
    return !sleeve && (edge == EdgeKind::Neck || edge == EdgeKind::Shoulder);
  case Field::FrontNeckDrop:
    return !sleeve && !back && edge == EdgeKind::Neck;
  case Field::BackNeckDrop:
  case Field::BackOpening:
    return back && edge == EdgeKind::Neck;
  case Field::ButtonBand:
  case Field::Buttons:
    return edge == EdgeKind::Opening;
  case Field::UpperArm:
    return sleeve &&
           (edge == EdgeKind::SleeveSeam || edge == EdgeKind::Cap || edge == EdgeKind::Underarm);
  case Field::Wrist:
  case Field::Elbow:
  case Field::CuffGirth:
  case Field::CuffDepth:
  case Field::FlareFrom:
  case Field::FullGirth:
  case Field::SleeveToUnderarm:
  case Field::SleeveToShoulder:
  case Field::SleeveLength:
    return sleeve && (edge == EdgeKind::SleeveSeam || edge == EdgeKind::CastOn);
  case Field::CapEase:
  case Field::CapHeight:
  case Field::LowerFullness:
  case Field::UpperFullness:
    return edge == EdgeKind::Cap;
  case Field::GatherWidth:
  case Field::Pleats:
  case Field::CrownWidth:
    return edge == EdgeKind::Crown || edge == EdgeKind::Cap;
  default:
    return false;
  }
}

} // namespace scye
