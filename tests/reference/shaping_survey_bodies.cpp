#include "reference/shaping_survey.h"

#include "model/units.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <sstream>

namespace scye::survey {

namespace {

std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> out;
  std::stringstream stream(line);
  for (std::string cell; std::getline(stream, cell, ',');)
    out.push_back(cell);
  return out;
}

void read(const std::string& file, bool woman, std::vector<Body>& into) {
  std::ifstream in(std::string(SCYE_TEST_DATA) + "/" + file);
  std::string line;
  std::getline(in, line);
  std::map<std::string, std::size_t> column;
  const std::vector<std::string> header = cells(line);
  for (std::size_t i = 0; i < header.size(); ++i)
    column[header[i]] = i;
  while (std::getline(in, line)) {
    const std::vector<std::string> row = cells(line);
    const auto cm = [&](const char* name) { return std::stod(row.at(column.at(name))) / 10; };
    into.push_back({woman, cm("bust_girth"), cm("upper_arm_girth"), cm("biacromial_breadth"),
                    cm("scye_depth")});
  }
}

} // namespace

std::vector<Body> bodies() {
  std::vector<Body> all;
  read("ansur1988-women.csv", true, all);
  read("ansur1988-men.csv", false, all);
  return all;
}

Design designOf(const Body& body, const Case& c) {
  constexpr double kAcrossShoulders = 1; // the tape over the back (common practice)
  Design d;
  d.choose(Choice::Figure, body.woman ? Figure::Woman : Figure::Man);
  d.choose(Choice::Garment, c.garment).choose(Choice::CapLean, c.lean);
  d.choose(Choice::Washed, YesNo::Yes);
  d.set(Field::Bust, body.bust).set(Field::UpperArm, body.upperArm);
  d.set(Field::CrossShoulder, body.crossShoulder + kAcrossShoulders);
  d.set(Field::ArmholeDepth, body.scyeDepth); // from the nape
  d.set(Field::SwatchStitches, c.gauge.stitches).set(Field::SwatchRows, c.gauge.rows);
  if (c.fit == Fit::Close)
    d.set(Field::EaseBust, 2.5).set(Field::EaseUpperArm, 2.5).set(Field::EaseArmholeDepth, 1.5);
  if (c.fit == Fit::Loose)
    d.set(Field::EaseBust, 12).set(Field::EaseUpperArm, 8).set(Field::EaseArmholeDepth, 4);
  if (c.narrow) d.set(Field::EaseCrossBack, -1.5).set(Field::EaseCrossFront, -3);
  return d;
}

std::string commandLine(const Design& design) {
  std::string out = "scyewright draft EMPTY.scye";
  char text[32];
  for (int c = 0; c < kChoiceCount; ++c)
    if (const int option = design.option(Choice(c)); option != 0)
      out += " --with " + std::string(info(Choice(c)).key) + "=" +
             std::string(info(Choice(c)).options.begin()[option]);
  for (int f = 0; f < kFieldCount; ++f)
    if (const auto value = design.given(Field(f))) {
      std::snprintf(text, sizeof text, "%.2f", *value);
      out += " --with " + std::string(info(Field(f)).key) + "=" + text;
    }
  return out;
}

} // namespace scye::survey
