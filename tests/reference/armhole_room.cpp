// Can it be worn? The drafted armhole's edge over the girth that goes round the body's armhole, on
// every body of the 1988 anthropometric survey of U.S. Army personnel (tests/data/README.md), from
// bust, hip, upper arm and cross-shoulder (biacromial breadth + 1 cm) alone. What was not measured
// is filled in from the other half of the survey, both ways round, so no body is drafted from
// itself. The bars, 6-10 cm for a pullover and 8-12 for a jacket, near the same for every size,
// rest on common practice and on a printed men's size 36 whose armhole measures 50.2 cm.
#include "body_survey.h"
#include "draft/complete.h"
#include "seam/garment_draft.h"
#include "support/record.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <map>

namespace scye {
namespace {

using trial::measured;

struct Person {
  Subject body;
  const Moments* others; // of the half that the body is not in
  [[nodiscard]] double operator[](Field f) const { return measured(body, f); }
};

// By bust, smallest first.
std::vector<Person> people(Figure figure) {
  std::vector<Person> all;
  for (const trial::Fold& fold : trial::folds(figure))
    for (const Subject& s : fold.leftOut)
      all.push_back({s, &fold.fitted});
  std::stable_sort(all.begin(), all.end(),
                   [](auto& a, auto& b) { return a[Field::Bust] < b[Field::Bust]; });
  return all;
}

Design with(const Person& p, const std::vector<Field>& fields, Design d = {}) {
  for (const Field f : fields)
    d.set(f, p[f]);
  return d;
}

Design measuredDesign(const Person& p, Figure figure, Garment garment) {
  Design d;
  d.choose(Choice::Figure, figure).choose(Choice::Garment, garment);
  return with(p, {Field::Bust, Field::Hip, Field::UpperArm, Field::CrossShoulder}, d);
}

struct Spread {
  double mean = 0, deviation = 0;
};

Spread spreadOf(const std::vector<double>& values) {
  Spread out;
  for (const double v : values)
    out.mean += v / double(values.size());
  for (const double v : values)
    out.deviation += (v - out.mean) * (v - out.mean) / double(values.size());
  out.deviation = std::sqrt(out.deviation);
  return out;
}

double quantile(std::vector<double> values, double share) {
  std::sort(values.begin(), values.end());
  return values[std::size_t(share * double(values.size() - 1))];
}

// Least squares, per 10 cm of x.
double slopePerTen(const std::vector<double>& x, const std::vector<double>& y) {
  const double mx = spreadOf(x).mean, my = spreadOf(y).mean;
  double xy = 0, xx = 0;
  for (std::size_t i = 0; i < x.size(); ++i)
    xy += (x[i] - mx) * (y[i] - my), xx += (x[i] - mx) * (x[i] - mx);
  return 10 * xy / xx;
}

struct Worn {
  std::vector<double> bust, room, ratio, shoulder, neck;
  std::map<std::string, int> said;
};

Worn wear(Figure figure, Garment garment, const std::vector<Field>& also = {}) {
  Worn out;
  for (const Person& p : people(figure)) {
    const Design d = with(p, also, measuredDesign(p, figure, garment));
    const GarmentDraft g = draftGarment(d, complete(d, p.others));
    out.bust.push_back(p[Field::Bust]);
    out.room.push_back(g.cap.armhole() - p[Field::ScyeGirth]);
    out.ratio.push_back(g.cap.height / g.sizes.finished(Field::ArmholeDepth));
    out.shoulder.push_back(g.sizes.finished(Field::ShoulderLength));
    out.neck.push_back(g.sizes[Field::NeckWidth]);
    for (const Finding& f : g.findings)
      if (f.severity != Severity::Note) ++out.said[f.code];
  }
  return out;
}

Spread fifth(const std::vector<double>& values, int which) {
  const std::size_t n = values.size(), from = n * which / 5, to = n * (which + 1) / 5;
  return spreadOf({values.begin() + long(from), values.begin() + long(to)});
}

const char* nameOf(Figure figure) {
  return figure == Figure::Woman ? "women" : "men";
}

void print(const char* what, const Worn& w) {
  std::printf("%-34s room", what);
  for (int k = 0; k < 5; ++k)
    std::printf(" %5.1f", fifth(w.room, k).mean);
  std::printf(" | all %5.2f (%4.2f) slope %5.2f | cap/depth %.2f %.2f | shoulder %4.1f-%4.1f neck "
              "%4.1f-%4.1f |",
              spreadOf(w.room).mean, spreadOf(w.room).deviation, slopePerTen(w.bust, w.room),
              quantile(w.ratio, 0.025), quantile(w.ratio, 0.975), quantile(w.shoulder, 0),
              quantile(w.shoulder, 1), quantile(w.neck, 0), quantile(w.neck, 1));
  for (const auto& [code, n] : w.said)
    std::printf(" %s %d", code.c_str(), n);
  std::printf("\n");
}

TEST(ArmholeRoom, startsWearableAndNearlyTheSameForEverySize) {
  for (const Figure figure : {Figure::Woman, Figure::Man})
    for (const Garment garment : {Garment::Pullover, Garment::Jacket}) {
      const bool jacket = garment == Garment::Jacket;
      const std::string name = std::string(nameOf(figure)) + (jacket ? ", jacket" : ", pullover");
      SCOPED_TRACE(name);
      const Worn w = wear(figure, garment);
      print(name.c_str(), w);
      for (int k = 0; k < 5; ++k) {
        EXPECT_GT(fifth(w.room, k).mean, jacket ? 8 : 6);
        EXPECT_LT(fifth(w.room, k).mean, jacket ? 12 : 10);
      }
      EXPECT_LT(std::abs(slopePerTen(w.bust, w.room)), 1);
      const auto inside = std::count_if(w.ratio.begin(), w.ratio.end(),
                                        [](double r) { return r >= 0.58 && r <= 0.75; });
      const double share = double(inside) / double(w.ratio.size());
      std::printf("  cap within 0.58-0.75 of the depth: %.1f %%\n", 100 * share);
      EXPECT_GE(share, 0.95);
      EXPECT_TRUE(w.said.empty()) << "no true body is refused or warned";
    }
}

// The guide's three ways of measuring, each worked literally.
TEST(ArmholeRoom, isTheSameByAllThreeWaysOfMeasuring) {
  const std::pair<const char*, std::vector<Field>> ways[] = {
      {"scye depth", {Field::ArmholeDepth}},
      {"tip to underarm", {Field::TipToUnderarm}},
      {"scye girth", {Field::ScyeGirth}},
      {"depth and girth", {Field::ArmholeDepth, Field::ScyeGirth}},
  };
  for (const Figure figure : {Figure::Woman, Figure::Man})
    for (const Garment garment : {Garment::Pullover, Garment::Jacket}) {
      double least = 1e9, most = 0;
      for (const auto& [name, also] : ways) {
        const Worn w = wear(figure, garment, also);
        print((std::string(nameOf(figure)) + ", " + name).c_str(), w);
        least = std::min(least, spreadOf(w.room).mean);
        most = std::max(most, spreadOf(w.room).mean);
      }
      EXPECT_LT(most - least, 0.5);
    }
}

// A body's shoulder runs to the side of the neck: every garment keeps a neck and a shoulder.
TEST(ArmholeRoom, surveyedShoulderLengthsKeepNeckAndShoulder) {
  for (const Figure figure : {Figure::Woman, Figure::Man})
    for (const Garment garment : {Garment::Pullover, Garment::Jacket}) {
      const Worn w = wear(figure, garment, {Field::ShoulderLength});
      print((std::string(nameOf(figure)) + ", shoulder length").c_str(), w);
      EXPECT_EQ(w.said.count("neck.head"), 0u);
      EXPECT_GT(quantile(w.neck, 0), 9.5);
      EXPECT_EQ(w.said.count("neck.base"), 0u);
      EXPECT_GT(quantile(w.shoulder, 0), 5);
    }
}

} // namespace
} // namespace scye
