// The numbers of the report, each worked out once more from something else: lengths from the
// outlines' points, finished sizes from measurement and ease, counts from the row tables, the seam
// from what stands beside it. Nothing of what made the report is asked.
#include "directions/row_table_csv.h"
#include "io/report.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <sstream>

namespace scye::report_numbers {
namespace {

using nlohmann::json;

struct Case {
  Derived derived;
  json report;
};

Case caseOf(const Design& design) {
  Derived derived = derive(design);
  json report = json::parse(reportToJson(derived, builtinPhrases()));
  return {std::move(derived), std::move(report)};
}

double lengthOf(const json& points) {
  double sum = 0;
  for (std::size_t i = 1; i < points.size(); ++i)
    sum += std::hypot(points[i][0].get<double>() - points[i - 1][0].get<double>(),
                      points[i][1].get<double>() - points[i - 1][1].get<double>());
  return sum;
}

// 64 chords a curve are shorter than it by 1 in 10,000 at most.
double near(double length) {
  return 2e-4 * length + 1e-6;
}

const json& pieceOf(const json& report, const std::string& id) {
  for (const json& piece : report["pieces"])
    if (piece["piece"] == id) return piece;
  throw std::runtime_error("no piece " + id);
}

struct SleeveEdges {
  double left = 0, right = 0; // underarm and cap, from the seam to the crown
  double crown = 0, crownLeft = 0, crownRight = 0;
  double underarmY = 0, crownY = 0;
};

SleeveEdges sleeveEdges(const json& report) {
  SleeveEdges out;
  for (const json& edge : pieceOf(report, "sleeve")["edges"]) {
    const std::string kind = edge["edge"];
    const json& points = edge["points"];
    double x = 0;
    for (const json& p : points)
      x += p[0].get<double>() / double(points.size());
    if (kind == "underarm") out.underarmY = points[0][1];
    if (kind == "crown") {
      out.crown = lengthOf(points), out.crownY = points[0][1];
      out.crownLeft = std::min(points.front()[0].get<double>(), points.back()[0].get<double>());
      out.crownRight = std::max(points.front()[0].get<double>(), points.back()[0].get<double>());
    }
    if (kind == "underarm" || kind == "cap") (x < 0 ? out.left : out.right) += lengthOf(points);
  }
  return out;
}

// Half a whole piece's, or all of half a front's.
double armholeEdges(const json& piece) {
  double sum = 0;
  int underarms = 0;
  for (const json& edge : piece["edges"]) {
    const std::string kind = edge["edge"];
    if (kind == "underarm" || kind == "armhole") sum += lengthOf(edge["points"]);
    underarms += kind == "underarm";
  }
  return underarms > 0 ? sum / underarms : sum;
}

TEST(ReportNumbers, theSleeveIsThatOfTheOutlines) {
  test::RandomDesigns random(test::propertySeed(3401));
  int leaning = 0, uneven = 0;
  for (int i = 0; i < 120; ++i) {
    const Case c = caseOf(random.plausible());
    if (!c.derived.draft.cap.found) continue;
    const json& s = c.report["sleeve"];
    const bool jacket = c.report["choices"]["garment"] == "jacket";
    const double back = armholeEdges(pieceOf(c.report, "back")),
                 front = armholeEdges(pieceOf(c.report, jacket ? "leftFront" : "front"));
    EXPECT_NEAR(s["armholeBack"].get<double>(), back, near(back)) << i;
    EXPECT_NEAR(s["armholeFront"].get<double>(), front, near(front)) << i;
    EXPECT_NEAR(s["armhole"].get<double>(), back + front, near(back + front)) << i;
    const SleeveEdges e = sleeveEdges(c.report);
    // The right sleeve: the back's half of the cap lies at its left.
    const double mark = s["crownMark"];
    const double capBack = e.left + mark - e.crownLeft, capFront = e.right + e.crownRight - mark;
    EXPECT_NEAR(s["capBack"].get<double>(), capBack, near(capBack)) << i;
    EXPECT_NEAR(s["capFront"].get<double>(), capFront, near(capFront)) << i;
    EXPECT_NEAR(s["cap"].get<double>(), capBack + capFront, near(capBack + capFront)) << i;
    EXPECT_NEAR(s["ease"].get<double>(), s["cap"].get<double>() - s["armhole"].get<double>(), 1e-9);
    EXPECT_NEAR(s["capHeight"].get<double>(), e.crownY - e.underarmY, 1e-9) << i;
    EXPECT_NEAR(s["crownWidth"].get<double>(), e.crown, 1e-9) << i;
    // What was worked out stands among the values too, and within its reach.
    const std::string unknown = s["workedOut"];
    const double value = s["value"];
    EXPECT_GE(value, s["reach"][0].get<double>() - 1e-6) << i << ' ' << unknown;
    EXPECT_LE(value, s["reach"][1].get<double>() + 1e-6) << i << ' ' << unknown;
    if (unknown == "capHeight") {
      EXPECT_NEAR(value, e.crownY - e.underarmY, 1e-9) << i;
    }
    leaning += s["lean"].get<double>() != 0;
    uneven += std::abs(capBack - capFront) > 0.05;
  }
  EXPECT_GT(leaning, 10);
  EXPECT_GT(uneven, 20) << "else the two halves could stand for one another";
}

// A body's measurement with its ease; a depth hangs from the garment's shoulder.
TEST(ReportNumbers, finishedSizesAreMeasurementAndEase) {
  test::RandomDesigns random(test::propertySeed(3402));
  int compared = 0;
  for (int i = 0; i < 100; ++i) {
    const Case c = caseOf(random.plausible());
    const json& values = c.report["values"];
    for (const auto& [key, entry] : values.items()) {
      if (!entry.contains("finished") || entry["origin"] == "garment") continue;
      if (!values.contains("ease." + key)) continue;
      const double value = entry["value"], ease = values["ease." + key]["value"];
      const double hangs = key != "armholeDepth"
                               ? 0
                               : values["backNeckDrop"]["value"].get<double>() -
                                     values["shoulderDrop"]["value"].get<double>();
      double finished = value + ease + hangs;
      // No garment is wider across between its armholes than from tip to tip.
      if (key == "crossBack" || key == "crossFront")
        finished = std::min(finished, values["crossShoulder"]["finished"].get<double>());
      EXPECT_NEAR(entry["finished"].get<double>(), finished, 1e-9) << i << ' ' << key;
      ++compared;
    }
  }
  EXPECT_GT(compared, 500);
}

TEST(ReportNumbers, theRoomIsTheEdgeLessTheGirth) {
  test::RandomDesigns random(test::propertySeed(3403));
  for (int i = 0; i < 60; ++i) {
    const Case c = caseOf(random.plausible());
    const json& room = c.report["sleeve"]["room"];
    const json& girth = c.report["values"]["scyeGirth"];
    EXPECT_NEAR(room["edge"].get<double>(), c.report["sleeve"]["armhole"].get<double>(), 1e-9);
    EXPECT_NEAR(room["room"].get<double>(),
                room["edge"].get<double>() - room["girth"].get<double>(), 1e-9);
    if (girth["origin"] != "garment") {
      EXPECT_NEAR(room["girth"].get<double>(), girth["value"].get<double>(), 1e-9) << i;
    }
    if (girth.contains("likely")) {
      EXPECT_NEAR(room["likely"][0].get<double>(),
                  room["edge"].get<double>() - girth["likely"][1].get<double>(), 1e-9);
      EXPECT_NEAR(room["likely"][1].get<double>(),
                  room["edge"].get<double>() - girth["likely"][0].get<double>(), 1e-9);
    }
  }
}

// One line a row of a section, as the file for other programs has it.
struct CsvRow {
  std::string piece, section;
  int row = 0, stitches = 0;
  double left = 0, right = 0;
  std::string action;
};

std::vector<CsvRow> csvRows(const KnitGarment& knit) {
  std::istringstream in(rowTableCsv(knit));
  std::string line;
  std::getline(in, line);
  std::vector<std::string> head;
  const auto cells = [](const std::string& text) {
    std::vector<std::string> out;
    std::string cell;
    bool quoted = false;
    for (const char ch : text) {
      if (ch == '"')
        quoted = !quoted;
      else if (ch == ',' && !quoted)
        out.push_back(std::exchange(cell, {}));
      else if (ch != '\r')
        cell += ch;
    }
    out.push_back(cell);
    return out;
  };
  head = cells(line);
  const auto column = [&](const std::string& name) {
    const auto at = std::find(head.begin(), head.end(), name);
    EXPECT_NE(at, head.end()) << name;
    return std::size_t(at - head.begin());
  };
  const std::size_t piece = column("piece"), section = column("section"), row = column("row"),
                    stitches = column("stitches"), left = column("left_edge"),
                    right = column("right_edge"), action = column("action");
  std::vector<CsvRow> rows;
  while (std::getline(in, line)) {
    if (line.empty() || line == "\r") continue;
    const auto c = cells(line);
    rows.push_back({c[piece], c[section], std::stoi(c[row]), std::stoi(c[stitches]),
                    std::stod(c[left]), std::stod(c[right]), c[action]});
  }
  return rows;
}

TEST(ReportNumbers, piecesAreCountedAsTheirRowTables) {
  test::RandomDesigns random(test::propertySeed(3404));
  for (int i = 0; i < 60; ++i) {
    const Case c = caseOf(random.plausible());
    const auto rows = csvRows(c.derived.knit);
    for (const json& piece : c.report["knitted"]["pieces"]) {
      const std::string id = piece["piece"];
      int castOn = 0, last = 0, underarm = -1;
      for (const CsvRow& r : rows) {
        if (r.piece != id) continue;
        if (r.row == 0) castOn = r.stitches;
        last = std::max(last, r.row);
        // The right edge's underarm bind-off, in the row after which the edge has moved in.
        if (underarm < 0 && r.row == piece["underarmRow"].get<int>()) underarm = r.row;
      }
      EXPECT_EQ(piece["castOn"].get<int>(), castOn) << i << ' ' << id;
      EXPECT_EQ(piece["lastRow"].get<int>(), last) << i << ' ' << id;
      if (piece["underarmRow"].get<int>() >= 0) {
        EXPECT_GT(underarm, 0) << i << ' ' << id;
        EXPECT_EQ(underarm % 2, 1) << "a right-side row";
      }
    }
  }
}

// The cap's rows and its crown, by the sleeve's row table; the knitted edges by chords through it.
TEST(ReportNumbers, theKnittedSeamIsThatOfTheRowTables) {
  test::RandomDesigns random(test::propertySeed(3405));
  int compared = 0;
  for (int i = 0; i < 60; ++i) {
    const Case c = caseOf(random.plausible());
    const json& k = c.report["knitted"];
    if (!k["cap"].get<bool>()) continue;
    const double w = k["stitchWidth"], h = k["rowHeight"];
    EXPECT_NEAR(w, c.derived.draft.sizes.stitch.width, 1e-12);
    EXPECT_NEAR(h, c.derived.draft.sizes.stitch.height, 1e-12);
    const auto rows = csvRows(c.derived.knit);
    int first = -1, last = -1, crown = 0;
    for (const json& piece : k["pieces"])
      if (piece["piece"] == "sleeve") first = piece["underarmRow"].get<int>();
    for (const CsvRow& r : rows)
      if (r.piece == "sleeve") {
        last = std::max(last, r.row);
        if (r.stitches > 0) crown = r.stitches;
      }
    EXPECT_EQ(k["crownStitches"].get<int>(), crown) << i;
    EXPECT_NEAR(k["capRows"].get<int>(), last - first, 1.01) << i; // the crown's own row
    for (const char* side : {"left", "right"})
      for (const char* measure : {"chord", "corner", "middle"}) {
        const json& m = k[side][measure];
        EXPECT_NEAR(m["mismatch"].get<double>(),
                    m["cap"].get<double>() - m["armhole"].get<double>() -
                        k["easeWanted"].get<double>(),
                    1e-9);
      }
    const double worse = std::max(std::abs(k["left"]["mismatch"].get<double>()),
                                  std::abs(k["right"]["mismatch"].get<double>()));
    EXPECT_NEAR(std::abs(k["mismatch"].get<double>()), worse, 1e-9);
    ++compared;
  }
  EXPECT_GT(compared, 40);
}

} // namespace
} // namespace scye::report_numbers
