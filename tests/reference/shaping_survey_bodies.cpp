#include "reference/shaping_survey.h"

#include <algorithm>
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

Frame frame(const Body& body, double upperArmEase) {
  constexpr double kBustEase = 5, kDepthEase = 2, kShoulderDrop = 2.5, kBackNeckDrop = 2;
  Frame f;
  f.bust = (body.bust + kBustEase) / 4;
  f.cross = body.crossShoulder / 2;
  f.depth = body.scyeDepth + kBackNeckDrop - kShoulderDrop + kDepthEase;
  const double away = f.bust - f.cross;
  f.underarm = std::clamp(0.45 * away, std::min(1.0, 0.6 * away), 5.0);
  f.rise = std::clamp(1.4 * (away - f.underarm) / f.depth, 0.35, 0.65);
  f.upperArm = body.upperArm + upperArmEase;
  f.crown = std::clamp(0.20 * f.upperArm, 4.0, 10.0);
  return f;
}

Path Frame::armhole() const {
  const double span = bust - underarm - cross, rising = rise * depth;
  Path path(Vec2(bust - underarm, 0));
  path.cubicTo(Vec2(bust - underarm - scoop * span, 0), Vec2(cross, rising * (1 - scoop)),
               Vec2(cross, rising));
  path.lineTo(Vec2(cross, depth));
  return path;
}

} // namespace scye::survey
