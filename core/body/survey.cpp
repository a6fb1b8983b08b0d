#include "body/survey.h"

#include <charconv>
#include <cmath>
#include <map>

namespace scye {
namespace {

constexpr std::array<std::optional<Field>, kMeasureCount> kFields{
    Field::Bust,
    Field::Waist,
    Field::Hip,
    Field::CrossShoulder,
    Field::CrossBack,
    Field::ArmholeDepth,
    Field::UpperArm,
    Field::Elbow,
    Field::Wrist,
    Field::BackWaistLength,
    Field::SleeveToUnderarm,
    Field::SleeveToShoulder,
    Field::ShoulderLength,
    Field::NeckBase,
    Field::ScyeGirth,
    Field::TipToUnderarm,
    std::nullopt, // the shoulder's fall
};

std::vector<std::string_view> cells(std::string_view line) {
  std::vector<std::string_view> out;
  while (true) {
    const auto comma = line.find(',');
    out.push_back(line.substr(0, comma));
    if (comma == std::string_view::npos) return out;
    line.remove_prefix(comma + 1);
  }
}

std::vector<std::string_view> lines(std::string_view text) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    const auto end = text.find('\n');
    std::string_view line = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    if (line.ends_with('\r')) line.remove_suffix(1);
    if (!line.empty()) out.push_back(line);
  }
  return out;
}

// A row seen through the header. A cell that is not there or is no number spoils the whole reading.
class Row {
public:
  Row(const std::map<std::string_view, std::size_t>& columns, std::string_view line)
      : columns_(columns), cells_(cells(line)) {}

  double cm(std::string_view column) {
    const auto at = columns_.find(column);
    double mm = 0;
    if (at == columns_.end() || at->second >= cells_.size()) return sound_ = false;
    const std::string_view cell = cells_[at->second];
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), mm);
    if (error != std::errc{} || end != cell.data() + cell.size() || !(mm > 0)) sound_ = false;
    return mm / 10;
  }
  [[nodiscard]] bool sound() const { return sound_; }

private:
  const std::map<std::string_view, std::size_t>& columns_;
  std::vector<std::string_view> cells_;
  bool sound_ = true;
};

Subject subjectOf(Row& row) {
  Subject s{};
  const auto put = [&](Measure m, double cm) { s[std::size_t(m)] = cm; };
  put(Measure::Bust, row.cm("bust_girth"));
  put(Measure::Waist, row.cm("waist_girth"));
  put(Measure::Hip, row.cm("hip_girth"));
  put(Measure::CrossShoulder, row.cm("biacromial_breadth") + kStraightAcross);
  put(Measure::CrossBack, row.cm("interscye_mid"));
  put(Measure::ArmholeDepth, row.cm("scye_depth"));
  put(Measure::UpperArm, row.cm("upper_arm_girth"));
  put(Measure::Elbow, row.cm("elbow_girth"));
  put(Measure::Wrist, row.cm("wrist_girth"));
  put(Measure::BackWaistLength, row.cm("back_waist_length"));
  const double outseam = row.cm("sleeve_outseam");
  const double acromion = row.cm("acromion_height"), tip = acromion - row.cm("axilla_height");
  put(Measure::SleeveToUnderarm, outseam - tip);
  put(Measure::SleeveToShoulder, outseam);
  put(Measure::ShoulderLength, row.cm("shoulder_length"));
  put(Measure::NeckBase, row.cm("neck_base_girth"));
  put(Measure::ScyeGirth, row.cm("scye_girth"));
  put(Measure::TipToUnderarm, tip);
  put(Measure::ShoulderFall, row.cm("lateral_neck_height") - acromion);
  return s;
}

} // namespace

double dressmakersWaist(Figure figure) {
  return figure == Figure::Man ? 3 : 3.8;
}

std::optional<Measure> measureOf(Field f) {
  for (int m = 0; m < kMeasureCount; ++m)
    if (kFields[m] == f) return Measure(m);
  return std::nullopt;
}

std::optional<Field> fieldOf(Measure m) {
  return kFields[std::size_t(m)];
}

std::optional<std::vector<Subject>> readSurvey(std::string_view csv) {
  const std::vector<std::string_view> all = lines(csv);
  if (all.empty()) return std::nullopt;
  std::map<std::string_view, std::size_t> columns;
  for (std::string_view name : cells(all.front()))
    columns.emplace(name, columns.size());
  std::vector<Subject> subjects;
  for (std::size_t i = 1; i < all.size(); ++i) {
    Row row(columns, all[i]);
    subjects.push_back(subjectOf(row));
    if (!row.sound()) return std::nullopt;
  }
  return subjects;
}

Moments momentsOf(const std::vector<Subject>& subjects) {
  const int n = int(subjects.size());
  Eigen::Matrix<double, Eigen::Dynamic, kMeasureCount> logs(n, kMeasureCount);
  for (int i = 0; i < n; ++i)
    for (int m = 0; m < kMeasureCount; ++m)
      logs(i, m) = std::log(subjects[i][m]);
  Moments out;
  out.mean = logs.colwise().mean().transpose();
  logs.rowwise() -= out.mean.transpose();
  out.covariance = logs.transpose() * logs / (n - 1);
  out.subjects = n;
  return out;
}

} // namespace scye
