#include "schematic/guide_figure.h"

namespace scye {
namespace {

// A row for each part of the body.
// clang-format off
const Proportions kWoman{
    .crown = 162.9, .chin = 141.4, .headHalf = 7.2, .hair = 1.08, .neckHalf = 5.0,
    .neckPoint = {6.0, 139.6}, .tip = {18.1, 133.3}, .nape = 140.8,
    .armpit = {123.3, 14.6}, .bust = {117.5, 14.4}, .underBust = {111, 13.0},
    .waist = {105.6, 11.9}, .hip = {85, 17.3}, .cut = {57, 15.2}, .crotch = 76,
    .upperArm = 31.2, .foreArm = 24.4, .hand = 17.6, .tilt = 12, .foreTilt = 15,
    .armHalf = 4.6, .elbowHalf = 3.7, .foreArmHalf = 3.9, .wristHalf = 2.55, .handHalf = 3.5};
const Proportions kMan{
    .crown = 175.8, .chin = 152.8, .headHalf = 7.7, .hair = 1.08, .neckHalf = 6.3,
    .neckPoint = {7.4, 151.1}, .tip = {19.9, 144.4}, .nape = 152.1,
    .armpit = {132.3, 16.9}, .bust = {127.8, 16.8}, .underBust = {121, 15.5},
    .waist = {112.9, 14.6}, .hip = {90, 16.9}, .cut = {61, 16.2}, .crotch = 80,
    .upperArm = 34.1, .foreArm = 27.0, .hand = 19.2, .tilt = 12, .foreTilt = 15,
    .armHalf = 5.5, .elbowHalf = 4.4, .foreArmHalf = 4.8, .wristHalf = 3.0, .handHalf = 4.1};
const Proportions kChild{
    .crown = 128, .chin = 107.2, .headHalf = 7.0, .hair = 1.12, .neckHalf = 4.1,
    .neckPoint = {4.9, 105.2}, .tip = {13.6, 101.6}, .nape = 106.4,
    .armpit = {94.2, 10.7}, .bust = {90.5, 10.6}, .underBust = {85, 10.1},
    .waist = {79.5, 9.6}, .hip = {64, 11.6}, .cut = {43, 10.6}, .crotch = 58,
    .upperArm = 23.6, .foreArm = 18.6, .hand = 13.4, .tilt = 12, .foreTilt = 15,
    .armHalf = 3.3, .elbowHalf = 2.8, .foreArmHalf = 2.9, .wristHalf = 2.05, .handHalf = 2.75};
const Proportions kBaby{
    .crown = 75, .chin = 57.2, .headHalf = 6.7, .hair = 1.01, .neckHalf = 3.9,
    .neckPoint = {4.3, 56.6}, .tip = {8.9, 54.2}, .nape = 57.2,
    .armpit = {49.2, 7.5}, .bust = {47, 7.7}, .underBust = {44, 8.0},
    .waist = {40.5, 8.2}, .hip = {33.5, 8.4}, .cut = {23.5, 7.6}, .crotch = 29.5,
    .upperArm = 12.6, .foreArm = 9.8, .hand = 8.0, .tilt = 17, .foreTilt = 21,
    .armHalf = 2.6, .elbowHalf = 2.25, .foreArmHalf = 2.25, .wristHalf = 1.75, .handHalf = 2.1};
// clang-format on

} // namespace

const Proportions& proportions(Figure figure) {
  switch (figure) {
  case Figure::Woman:
    return kWoman;
  case Figure::Man:
    return kMan;
  case Figure::Child:
    return kChild;
  case Figure::Baby:
    break;
  }
  return kBaby;
}

} // namespace scye
