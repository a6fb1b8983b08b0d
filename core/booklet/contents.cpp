#include "booklet/booklet.h"

#include "progress/blocking.h"
#include "progress/diary.h"
#include "schematic/blocking.h"
#include "schematic/chart.h"
#include "schematic/chart_tiles.h"
#include "schematic/front_view.h"
#include "schematic/schematic.h"

#include <algorithm>
#include <utility>

namespace scye {
namespace {

// Near the top of a cap pins lie closer than their numbers are high: these go further down.
void partNumbers(Group& group) {
  std::vector<Box> taken;
  for (Label& label : group.labels) {
    if (label.role != Role::Notch) continue;
    const auto isTaken = [&](const Box& box) {
      return std::any_of(taken.begin(), taken.end(), [&](const Box& other) {
        return (box.low.array() < other.high.array()).all() &&
               (other.low.array() < box.high.array()).all();
      });
    };
    while (isTaken(labelBox(label)))
      label.at.y() -= 0.3 * label.height;
    taken.push_back(labelBox(label));
  }
}

// What is told apart by colour on a screen is told apart without it here.
void inkOnly(Picture& picture) {
  const auto ink = [](Role role) {
    switch (role) {
    case Role::Knitted:
    case Role::Cap:
    case Role::Armhole:
      return Role::Outline;
    case Role::Ease:
      return Role::Pair;
    case Role::Short:
      return Role::Notch;
    default:
      return role;
    }
  };
  for (Group& group : picture.groups) {
    for (Stroke& stroke : group.strokes)
      stroke.role = ink(stroke.role);
    for (Label& label : group.labels)
      label.role = ink(label.role);
  }
}

// As large as its frame allows: the layout makes it smaller.
Group photograph(const std::shared_ptr<const Image>& image) {
  constexpr double kWidth = 30; // cm
  Group group;
  group.id = "worn";
  const double high = kWidth * image->height / image->width;
  group.images.push_back({{{0, 0}, {kWidth, high}}, image});
  return group;
}

class Contents {
public:
  Contents(const Derived& derived, const Wording& wording, const std::string& date,
           std::shared_ptr<const Image> worn)
      : d_(derived), wording_(wording), phrases_(wording.phrases), date_(date),
        worn_(std::move(worn)), lines_(directionLines(derived.directions, wording)) {}

  Booklet all() {
    cover();
    constexpr int kMaterialsAndSizes = 2;
    front(kMaterialsAndSizes);
    schematic();
    front(0);
    pieces();
    makingUp();
    diary();
    return std::move(out_);
  }

private:
  BookletChapter& chapter(std::string id, std::string title) {
    out_.chapters.push_back({std::move(id), std::move(title), false, {}});
    return out_.chapters.back();
  }
  static void put(BookletChapter& to, BlockKind kind, std::string text) {
    to.blocks.push_back({kind, std::move(text), {}, 1});
  }
  static void draw(BookletChapter& to, std::string what, PictureMaker picture, double mostHigh) {
    to.blocks.push_back({BlockKind::Drawing, std::move(what), std::move(picture), mostHigh});
  }

  void cover() {
    BookletChapter& c = chapter("cover", phrases_.say("booklet.cover"));
    c.cover = true;
    std::size_t i = 0;
    out_.title = lines_.front().text;
    put(c, BlockKind::Title, out_.title);
    for (i = 1; i < lines_.size() && lines_[i].kind == LineKind::Note; ++i)
      put(c, BlockKind::Text, lines_[i].text);
    constexpr double kHalfAPage = 0.55;
    draw(
        c, phrases_.say("booklet.together"),
        [&draft = d_.draft, worn = worn_](double) {
          Picture picture;
          picture.groups.push_back(worn ? photograph(worn) : frontView(draft));
          return picture;
        },
        kHalfAPage);
    if (!date_.empty())
      put(c, BlockKind::Text, phrases_.say("booklet.date", {textParam("date", date_)}));
    for (; i < lines_.size() && lines_[i].kind == LineKind::Warning; ++i)
      put(c, BlockKind::Warning, lines_[i].text);
    next_ = i;
  }

  // The first two headings are of materials and sizes, what comes after them tells how to read.
  void front(int headings) {
    const bool reading = headings == 0;
    BookletChapter& c = chapter(reading ? "reading" : "materials",
                                phrases_.say(reading ? "booklet.reading" : "booklet.materials"));
    for (; next_ < lines_.size() && !lines_[next_].piece; ++next_) {
      if (lines_[next_].kind == LineKind::Heading && headings-- == 0 && !reading) return;
      add(c, lines_[next_]);
    }
  }

  void schematic() {
    BookletChapter& c = chapter("schematic", phrases_.say("booklet.schematic"));
    put(c, BlockKind::Heading, c.title);
    draw(
        c, c.title,
        [&derived = d_, &phrases = phrases_, unit = wording_.unit](double textHeight) {
          SchematicOptions options;
          options.unit = unit;
          options.textHeight = textHeight;
          options.curves = &derived.knit;
          return pieceSchematic(derived.draft, phrases, options);
        },
        1);
  }

  void pieces() {
    while (next_ < lines_.size() && lines_[next_].piece) {
      const PieceId id = *lines_[next_].piece;
      BookletChapter& c = chapter(std::string(pieceKey(id)), lines_[next_].text);
      for (; next_ < lines_.size() && lines_[next_].piece == id; ++next_)
        add(c, lines_[next_]);
      if (const KnitPiece* piece = d_.knit.piece(id)) chart(c, *piece);
    }
  }

  void chart(BookletChapter& to, const KnitPiece& piece) {
    const StitchSize size = piece.fabric(d_.knit.lattice.size);
    draw(
        to, phrases_.say("booklet.chart", {textParam("piece", to.title)}),
        [&piece, size, &phrases = phrases_](double textHeight) {
          ChartOptions options;
          options.textHeight = textHeight;
          Picture picture = chartPicture(piece, size, phrases, options);
          // Which piece it is stands above it.
          for (Group& group : picture.groups)
            std::erase_if(group.labels,
                          [](const Label& label) { return label.role == Role::Caption; });
          return picture;
        },
        1);
    to.blocks.back().parts = chartPartsOf(piece, size, phrases_);
  }

  // Of everything after the last piece the first is how to block.
  void makingUp() {
    if (next_ >= lines_.size()) return;
    BookletChapter& c = chapter("making-up", lines_[next_].text);
    add(c, lines_[next_++]);
    const std::string safety = phrases_.say("finding.child.safety");
    bool child = false, blocked = false;
    for (; next_ < lines_.size(); ++next_) {
      const std::string& text = lines_[next_].text;
      if (text == safety) {
        child = true; // it goes with the other cautions
        continue;
      }
      if (!blocked) put(c, BlockKind::Part, phrases_.say("booklet.blocking"));
      put(c, BlockKind::Check, text);
      if (!std::exchange(blocked, true)) {
        blocking(c);
        put(c, BlockKind::Part, phrases_.say("booklet.sewing"));
      }
    }
    if (d_.knit.capKnitted) {
      constexpr double kThird = 0.35;
      draw(
          c, phrases_.say("booklet.pins"),
          [&derived = d_, &phrases = phrases_, unit = wording_.unit](double textHeight) {
            SchematicOptions options;
            options.unit = unit;
            options.textHeight = textHeight;
            options.curves = &derived.knit;
            Picture picture = straightComparison(derived.draft, phrases, options);
            inkOnly(picture);
            return picture;
          },
          kThird);
    }
    put(c, BlockKind::Heading, phrases_.say("booklet.care"));
    put(c, BlockKind::Text, phrases_.say("booklet.care.wash"));
    put(c, BlockKind::Text, phrases_.say("booklet.care.dry"));
    put(c, BlockKind::Text, phrases_.say("booklet.care.pins"));
    if (child) put(c, BlockKind::Text, safety);
  }

  // A line a piece: what it is pinned out to; and a drawing of them all.
  void blocking(BookletChapter& to) {
    const bool alike = !d_.knit.piece(PieceId::LeftSleeve);
    const std::vector<PieceSize> sizes = pieceSizes(d_.draft, designedIn(d_), d_.knit, d_.work);
    for (std::size_t i = 0; i < sizes.size();) {
      const PieceId id = sizes[i].piece;
      std::vector<std::string> measures;
      for (; i < sizes.size() && sizes[i].piece == id; ++i)
        measures.push_back(
            phrases_.say("booklet.block." + std::string(kPieceSizeKeys[sizes[i].what]),
                         {lengthParam("length", sizes[i].pinOut)}, wording_.unit));
      if (alike && id == PieceId::LeftSleeve) continue;
      const std::string name = alike && id == PieceId::Sleeve ? phrases_.say("booklet.bothSleeves")
                                                              : workPieceName(phrases_, id);
      put(to, BlockKind::Check,
          phrases_.say("booklet.block",
                       {textParam("piece", name),
                        textParam("measures", phrases_.rules().commas(measures))}));
    }
    constexpr double kHalf = 0.5;
    draw(
        to, phrases_.say("booklet.pinned"),
        [&derived = d_, &phrases = phrases_, unit = wording_.unit](double textHeight) {
          return pinnedOut(derived, textHeight, phrases, unit);
        },
        kHalf);
  }

  // Two beside one another; what its lines mean stands in the caption.
  static Picture pinnedOut(const Derived& derived, double textHeight, const Phrases& phrases,
                           LengthUnit unit) {
    Picture all;
    all.textHeight = textHeight;
    Box row;
    double top = 0;
    for (const KnitPiece& piece : derived.knit.pieces) {
      Picture one =
          blockingTemplate(derived.draft, derived.knit, piece.id, textHeight, phrases, unit);
      if (one.groups.empty()) continue;
      Group& group = one.groups.front();
      std::erase_if(group.labels, [](const Label& label) {
        return label.role == Role::Note || label.role == Role::Measure;
      });
      for (Label& label : group.labels)
        if (label.role == Role::Caption) label.height = 1.2 * textHeight;
      for (Stroke& stroke : group.strokes)
        if (stroke.role == Role::Outline) stroke.role = Role::Guide; // the seam
      partNumbers(group);
      const Box box = group.box();
      const bool second = !row.empty();
      moveGroup(group, {second ? row.high.x() + 3 * textHeight - box.low.x() : -box.low.x(),
                        top - box.high.y()});
      row.add(group.box().low), row.add(group.box().high);
      all.groups.push_back(std::move(group));
      if (second) top = row.low.y() - 2 * textHeight, row = {};
    }
    inkOnly(all);
    return all;
  }

  void diary() {
    const auto noted = [](const PieceWork& piece) { return !piece.notes.empty(); };
    const std::vector<PieceWork>& pieces = d_.work.pieces;
    if (d_.work.diary.empty() && std::none_of(pieces.begin(), pieces.end(), noted)) return;
    BookletChapter& c = chapter("diary", phrases_.say("booklet.diary"));
    put(c, BlockKind::Heading, c.title);
    for (const DiaryLine& line : diaryLines(d_.draft.design, d_.work, phrases_, wording_.unit))
      put(c, BlockKind::Text, lineText(line));
  }

  static void add(BookletChapter& to, const DirectionLine& line) {
    switch (line.kind) {
    case LineKind::Title:
    case LineKind::Warning:
    case LineKind::Heading:
      return put(to, BlockKind::Heading, line.text);
    case LineKind::Part:
      return put(to, BlockKind::Part, line.text);
    case LineKind::Note:
      return put(to, BlockKind::Text, line.text);
    case LineKind::Step:
      return put(to, BlockKind::Check, line.text);
    }
  }

  const Derived& d_;
  const Wording& wording_;
  const Phrases& phrases_;
  std::string date_;
  std::shared_ptr<const Image> worn_;
  std::vector<DirectionLine> lines_;
  std::size_t next_ = 0;
  Booklet out_;
};

} // namespace

Booklet bookletOf(const Derived& derived, const Wording& wording, const std::string& date,
                  std::shared_ptr<const Image> worn) {
  return Contents(derived, wording, date, std::move(worn)).all();
}

} // namespace scye
