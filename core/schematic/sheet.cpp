#include "schematic/sheet.h"

#include "schematic/title_block.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr double kLettersMm = 2.5;
constexpr double kScales[] = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30, 40, 50};
constexpr double kFinely = 1.04, kSmallest = 50; // where the scale need not be a whole number
constexpr double kSquareCm = 10;                 // of the square to check the printer by

// Group ids are what an SVG is edited by.
Group group(const char* id) {
  Group g;
  g.id = id;
  return g;
}

std::string scaleText(double oneTo, const Phrases& phrases) {
  return phrases.say("sheet.oneTo", {numberParam("n", oneTo)});
}

Group cross(const Vec2& at) {
  Group g = group("register");
  constexpr double arm = 0.4;
  g.strokes.push_back({Path::polyline({at - Vec2(arm, 0), at + Vec2(arm, 0)}), Role::Notch, false});
  g.strokes.push_back({Path::polyline({at - Vec2(0, arm), at + Vec2(0, arm)}), Role::Notch, false});
  return g;
}

Path rectangle(const Vec2& low, const Vec2& high) {
  return Path::polyline({low, {high.x(), low.y()}, high, {low.x(), high.y()}, low});
}

void moveAndScale(Group& g, double factor, const Vec2& by) {
  const auto mapped = [&](const Vec2& p) { return Vec2(factor * p + by); };
  for (Stroke& s : g.strokes) {
    Path path(mapped(s.path.start()));
    for (const Cubic& c : s.path.segments()) {
      if (c.isStraight())
        path.lineTo(mapped(c.end()));
      else
        path.cubicTo(mapped(c.p[1]), mapped(c.p[2]), mapped(c.end()));
    }
    s.path = std::move(path);
  }
  for (Label& l : g.labels) {
    l.at = mapped(l.at);
    l.height *= factor;
  }
  g.origin = mapped(g.origin);
  for (PlacedImage& i : g.images)
    i.box.low = mapped(i.box.low), i.box.high = mapped(i.box.high);
  for (HotSpot& h : g.hotSpots)
    h.box.low = mapped(h.box.low), h.box.high = mapped(h.box.high);
}

// Tiles of one drawing at its true size, by columns from the left and rows from the top: "back A1".
class Tiles {
public:
  Tiles(Picture picture, const Vec2& sheet) : picture_(std::move(picture)), box_(picture_.box()) {
    const auto count = [&](const Vec2& paper) {
      const Vec2 step = stepOf(paper);
      return Eigen::Array2i(std::max(1, int(std::ceil((box_.size().x() - 1e-9) / step.x()))),
                            std::max(1, int(std::ceil((box_.size().y() - 1e-9) / step.y()))));
    };
    const Vec2 across(sheet.y(), sheet.x());
    const bool turned = count(across).prod() < count(sheet).prod();
    paper_ = turned ? across : sheet;
    counts_ = count(paper_);
  }

  [[nodiscard]] const Picture& picture() const { return picture_; }
  [[nodiscard]] const Box& box() const { return box_; }
  [[nodiscard]] int columns() const { return counts_.x(); }
  [[nodiscard]] int rows() const { return counts_.y(); }
  // Without what it shares with its neighbours; column from the left, row from the top.
  [[nodiscard]] Box own(int column, int row) const {
    const Vec2 step = stepOf(paper_);
    Box box;
    box.add(Vec2(box_.low.x() + column * step.x(), box_.high.y() - row * step.y()));
    box.add(Vec2(box_.low.x() + (column + 1) * step.x(), box_.high.y() - (row + 1) * step.y()));
    return box;
  }
  [[nodiscard]] static std::string name(int column, int row) {
    return std::string(1, char('A' + std::min(row, 25))) + std::to_string(column + 1);
  }

  [[nodiscard]] Sheet sheet(int column, int row, const ExportOptions& options,
                            const Phrases& phrases) const {
    Sheet s;
    s.picture = picture_;
    s.size = paper_;
    s.clipped = true;
    s.seen = own(column, row);
    const Vec2 mine = s.seen.size();
    constexpr double shared = kOverlapMm / 20; // half on each side of a joint, cm
    s.seen.low -= Vec2::Constant(shared);
    s.seen.high += Vec2::Constant(shared);
    s.corner = {kMarginMm, kMarginMm};
    const Vec2 low(kMarginMm / 10 + shared, paper_.y() / 10 - kMarginMm / 10 - shared - mine.y());
    const Vec2 high = low + mine;
    Group edges = group("joints");
    edges.strokes.push_back({rectangle(low, high), Role::Guide, false});
    s.marks.groups.push_back(std::move(edges));
    for (const Vec2& at : {low, Vec2(high.x(), low.y()), high, Vec2(low.x(), high.y())})
      s.marks.groups.push_back(cross(at));
    const std::string here =
        phrases.say("sheet.tile", {textParam("picture", picture_.groups.front().title),
                                   textParam("tile", name(column, row))});
    const std::string title =
        options.block.title.empty()
            ? here
            : phrases.say("chart.titled",
                          {textParam("design", options.block.title), textParam("picture", here)});
    s.marks.groups.push_back(
        titleBlock(paper_, options.block, title, scaleText(1, phrases), phrases));
    return s;
  }

private:
  // cm from joint to joint.
  [[nodiscard]] static Vec2 stepOf(const Vec2& paper) {
    return (paper -
            Vec2(2 * kMarginMm + kOverlapMm, 2 * kMarginMm + kOverlapMm + kTitleBlockMm + 2)) /
           10;
  }

  Picture picture_;
  Box box_;
  Vec2 paper_;
  Eigen::Array2i counts_;
};

// How high it is with the room above it, cm.
double testSquare(Sheet& s, const Vec2& at, double letters, const Phrases& phrases) {
  Group square = group("square");
  square.strokes.push_back({rectangle(at, at + Vec2::Constant(kSquareCm)), Role::Outline, false});
  const double beside = at.x() + kSquareCm + 0.5, room = (s.size.x() - kMarginMm) / 10 - beside;
  std::vector<std::string> words;
  for (int line = 1; line <= 3; ++line) {
    words.push_back(phrases.say("sheet.square" + std::to_string(line)));
    letters = std::min(letters, letters * room / textWidth(words.back(), letters));
  }
  double y = at.y() + kSquareCm - 0.6;
  for (const std::string& line : words) {
    square.labels.push_back({{beside, y}, line, Role::Caption, letters, Anchor::Start, 0});
    y -= 0.55;
  }
  s.marks.groups.push_back(std::move(square));
  return kSquareCm + 1.5;
}

// The square, and above it every drawing with its tiles and their names.
Sheet mapOf(const std::vector<Tiles>& all, const Vec2& paper, const ExportOptions& options,
            const Phrases& phrases) {
  Sheet s;
  s.size = paper;
  const double left = kMarginMm / 10, low = (kMarginMm + kTitleBlockMm) / 10 + 0.8;
  const double letters = 0.3;
  const double base = low + testSquare(s, {left, low}, letters, phrases);
  // As high as the room above, and all together as wide as the sheet.
  const double high = paper.y() / 10 - left - 0.8;
  double wide = 1e-3, tall = 1e-3;
  for (const Tiles& t : all) {
    const Box last = t.own(t.columns() - 1, t.rows() - 1), first = t.own(0, 0);
    wide += last.high.x() - first.low.x();
    tall = std::max(tall, first.high.y() - last.low.y());
  }
  const double gap = 0.6, room = paper.x() / 10 - 2 * left - gap * double(all.size() - 1);
  const double factor = std::min(room / wide, (high - base) / tall);
  double x = left;
  for (const Tiles& t : all) {
    const Box first = t.own(0, 0), last = t.own(t.columns() - 1, t.rows() - 1);
    const Vec2 by(x - factor * first.low.x(), base - factor * last.low.y());
    for (Group g : t.picture().groups) {
      g.labels.clear();
      moveAndScale(g, factor, by);
      s.marks.groups.push_back(std::move(g));
    }
    Group tiles = group("tiles");
    for (int row = 0; row < t.rows(); ++row)
      for (int column = 0; column < t.columns(); ++column) {
        const Box own = t.own(column, row);
        const Vec2 a = factor * own.low + by, b = factor * own.high + by;
        tiles.strokes.push_back({rectangle(a, b), Role::Guide, false});
        tiles.labels.push_back({0.5 * (a + b) - Vec2(0, 0.1), Tiles::name(column, row),
                                Role::Caption, letters, Anchor::Middle, 0});
      }
    tiles.labels.push_back({{x, factor * first.high.y() + by.y() + 0.2},
                            t.picture().groups.front().title,
                            Role::Caption,
                            letters,
                            Anchor::Start,
                            0});
    s.marks.groups.push_back(std::move(tiles));
    x += factor * (last.high.x() - first.low.x()) + gap;
  }
  s.marks.groups.push_back(titleBlock(
      paper, options.block,
      options.block.title.empty() ? phrases.say("sheet.map") : options.block.title, {}, phrases));
  return s;
}

void append(std::vector<Sheet>& sheets, const Tiles& tiles, const ExportOptions& options,
            const Phrases& phrases) {
  for (int row = 0; row < tiles.rows(); ++row)
    for (int column = 0; column < tiles.columns(); ++column)
      sheets.push_back(tiles.sheet(column, row, options, phrases));
}

// 1 : n at which its details are as small as they may be.
double leastScale(const Picture& picture) {
  return 10 * picture.detail / kLeastDetailMm;
}

std::string scaleOf(const Sheet& sheet, const ExportOptions& options, const Phrases& phrases) {
  return options.toScale ? scaleText(sheet.oneTo, phrases) : std::string();
}

// A picture on a sheet, at the largest of the usual scales at which there is room for it.
class Fitting {
public:
  Fitting(const PictureMaker& make, const Vec2& size, bool mayTurn, const ExportOptions& options,
          const Phrases& phrases)
      : make_(make), size_(size), mayTurn_(mayTurn), options_(options), phrases_(phrases) {}

  // Where there is none at the smallest either, so it is. `legibly`: nothing, where its details
  // would come out too small before there is room.
  std::optional<Sheet> run(bool legibly) {
    for (const double n : scales()) {
      const bool there = fits(n);
      if (legibly && sheet_.picture.detail > 0 && n > leastScale(sheet_.picture)) {
        if (!fits(leastScale(sheet_.picture))) return std::nullopt;
        break;
      }
      if (there) break;
    }
    sheet_.marks.groups.push_back(titleBlock(sheet_.size, options_.block, sheet_.picture.title,
                                             scaleOf(sheet_, options_, phrases_), phrases_));
    return std::move(sheet_);
  }

private:
  [[nodiscard]] std::vector<double> scales() const {
    if (options_.toScale) return {std::begin(kScales), std::end(kScales)};
    std::vector<double> fine;
    for (double n = 1; n < kSmallest; n *= kFinely)
      fine.push_back(n);
    return fine;
  }

  bool fits(double n) {
    sheet_.picture = make_(kLettersMm / 10 * n);
    sheet_.oneTo = n;
    sheet_.seen = sheet_.picture.box();
    const Vec2 box = 10 / n * sheet_.seen.size();
    for (const bool turned : {false, true}) {
      if (turned && !mayTurn_) break;
      sheet_.size = turned ? Vec2(size_.y(), size_.x()) : size_;
      const Vec2 room = sheet_.size - Vec2(2 * kMarginMm, 2 * kMarginMm + kTitleBlockMm);
      sheet_.corner = {(sheet_.size.x() - box.x()) / 2, kMarginMm + (room.y() - box.y()) / 2};
      if ((box.array() <= room.array()).all()) return true;
    }
    sheet_.size = size_;
    return false;
  }

  const PictureMaker& make_;
  Vec2 size_;
  bool mayTurn_;
  const ExportOptions& options_;
  const Phrases& phrases_;
  Sheet sheet_;
};

} // namespace

Vec2 sheetSize(Paper paper) {
  return paper == Paper::Letter ? Vec2(215.9, 279.4) : Vec2(210, 297);
}

Sheet trueSheet(const PictureMaker& make) {
  Sheet s;
  s.picture = make(kTrueLettersMm / 10);
  s.seen = s.picture.box();
  s.size = 10 * s.seen.size() + Vec2::Constant(2 * kMarginMm);
  s.corner = {kMarginMm, kMarginMm};
  return s;
}

Sheet fittedSheet(const PictureMaker& make, const Vec2& size, bool mayTurn,
                  const ExportOptions& options, const Phrases& phrases) {
  return *Fitting(make, size, mayTurn, options, phrases).run(false);
}

Sheet sheetFor(const PictureMaker& make, const ExportOptions& options, const Phrases& phrases) {
  if (options.paper == Paper::TrueSize) return trueSheet(make);
  auto fitted = Fitting(make, sheetSize(options.paper), true, options, phrases).run(true);
  if (fitted) return *std::move(fitted);
  Sheet s;
  s.oneTo = leastScale(make(kLettersMm / 10));
  s.picture = make(kLettersMm / 10 * s.oneTo);
  s.seen = s.picture.box();
  s.size = 10 / s.oneTo * s.seen.size() + Vec2(2 * kMarginMm, 2 * kMarginMm + kTitleBlockMm);
  s.corner = {kMarginMm, kMarginMm};
  s.marks.groups.push_back(
      titleBlock(s.size, options.block, s.picture.title, scaleOf(s, options, phrases), phrases));
  return s;
}

PartsOnSheets partsFor(const PartsMaker& make, const Vec2& size, bool mayTurn,
                       const SheetEdges& edges, double lettersCm) {
  const auto partsOn = [&](const Vec2& paper) {
    const Vec2 room = (paper - Vec2(2 * edges.beside, edges.above + edges.below)) / 10;
    return PartsOnSheets{paper, make(room, lettersCm)};
  };
  PartsOnSheets upright = partsOn(size);
  if (!mayTurn || upright.parts.size() == 1) return upright;
  PartsOnSheets across = partsOn({size.y(), size.x()});
  const bool fewer = across.parts.size() < upright.parts.size() || upright.parts.empty();
  return fewer && !across.parts.empty() ? across : upright;
}

std::vector<Sheet> legibleSheets(const std::vector<PictureMaker>& drawings,
                                 const std::vector<PartsMaker>& parts, const Vec2& size,
                                 bool mayTurn, const ExportOptions& options,
                                 const Phrases& phrases) {
  std::vector<Sheet> sheets;
  for (std::size_t i = 0; i < drawings.size(); ++i) {
    if (auto sheet = Fitting(drawings[i], size, mayTurn, options, phrases).run(i < parts.size())) {
      sheets.push_back(*std::move(sheet));
      continue;
    }
    PartsOnSheets in =
        partsFor(parts[i], size, mayTurn, {kMarginMm, kMarginMm, kMarginMm + kTitleBlockMm + 2},
                 kLettersMm / 10);
    const std::string title = drawings[i](kLettersMm / 10).title;
    for (std::size_t k = 0; k < in.parts.size(); ++k) {
      Sheet s;
      s.picture = std::move(in.parts[k]);
      s.size = in.size;
      s.seen = s.picture.box();
      s.corner = {0.5 * (s.size.x() - 10 * s.seen.size().x()), kMarginMm};
      const std::string tile =
          in.parts.size() == 1
              ? title
              : phrases.say("sheet.part",
                            {textParam("picture", title), numberParam("part", double(k) + 1),
                             numberParam("parts", double(in.parts.size()))});
      s.picture.title = tile;
      s.marks.groups.push_back(titleBlock(s.size, options.block, tile, {}, phrases));
      sheets.push_back(std::move(s));
    }
  }
  return sheets;
}

std::vector<Sheet> tiledSheets(const std::vector<PictureMaker>& drawings,
                               const ExportOptions& options, const Phrases& phrases) {
  std::vector<Sheet> sheets;
  if (options.paper == Paper::TrueSize) {
    for (const PictureMaker& make : drawings)
      sheets.push_back(trueSheet(make));
    return sheets;
  }
  const Vec2 paper = sheetSize(options.paper);
  std::vector<Tiles> all;
  for (const PictureMaker& make : drawings)
    if (Picture picture = make(kTrueLettersMm / 10); !picture.groups.empty())
      all.emplace_back(std::move(picture), paper);
  sheets.push_back(mapOf(all, paper, options, phrases));
  for (const Tiles& t : all)
    append(sheets, t, options, phrases);
  return sheets;
}

Picture onPaper(const Sheet& sheet) {
  Picture picture = sheet.picture;
  const double factor = 1 / sheet.oneTo;
  const Vec2 by(sheet.corner.x() / 10 - factor * sheet.seen.low.x(),
                (sheet.size.y() - sheet.corner.y()) / 10 - factor * sheet.seen.high.y());
  for (Group& g : picture.groups)
    moveAndScale(g, factor, by);
  picture.textHeight *= factor;
  picture.groups.insert(picture.groups.end(), sheet.marks.groups.begin(), sheet.marks.groups.end());
  return picture;
}

} // namespace scye
