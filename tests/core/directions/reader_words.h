// What the reader sees on the page before it understands anything: lines made whole again, and a
// finger that follows a sentence.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace scye::reader {

// A printed line with its continuations.
struct PageLine {
  int number = 0;    // of its beginning, from 1
  bool deep = false; // indented: a line of rows
  bool underlined = false;
  bool blank = false;
  std::string text;
};

// Continuations are two spaces deeper than their beginning. A line of rows can follow a note at the
// depth of that note's continuation; it is known by its first words.
// What stands before the figure with which a line of rows begins.
inline const std::vector<std::string> kRowWords{"Row ", "Rows ", "Cast on "};

[[nodiscard]] std::vector<PageLine> pageLines(std::string_view text,
                                              const std::vector<std::string>& rowWords = kRowWords);

// A finger on a sentence: words are taken from its front if they are what was asked for.
class Finger {
public:
  explicit Finger(std::string_view sentence) : rest_(sentence) {}

  // `form` is taken word for word, but for
  //   #  a whole number
  //   @  stitches: "1 st", "12 sts"
  //   ~  rows: "1 row", "12 rows"
  // whose figures go to `figures` in their order. All of it is taken or nothing.
  bool take(std::string_view form, std::initializer_list<int*> figures = {});
  // "12 cm", "12.5 cm" in cm, "3/4 in", "2 1/4 in" in inches; the unit is the page's.
  bool takeLength(double& value, bool& inches);
  bool takeMillimetres(double& value); // "3.75 mm"
  [[nodiscard]] bool done() const { return rest_.empty(); }

private:
  bool takeNumber(int& value);
  bool takeDecimal(double& value);
  std::string_view rest_;
};

} // namespace scye::reader
