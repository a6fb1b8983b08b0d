#include "directions/words.h"
#include "model/markup.h"

#include <algorithm>

namespace scye {
namespace {

constexpr std::size_t kWidth = 96; // of a line of plain text

// Broken at spaces, but not within the stitch count at the end; what goes on is set in.
std::string wrapped(const std::string& text, std::size_t width, const std::string& indent) {
  std::string out;
  const std::size_t count = text.ends_with(").") ? text.rfind(" (") : text.size();
  std::size_t at = 0;
  while (text.size() - at > width) {
    std::size_t cut = text.rfind(' ', std::min(at + width, count));
    if (cut == std::string::npos || cut <= at) cut = text.find(' ', at + width);
    if (cut == std::string::npos) break;
    out += text.substr(at, cut - at) + "\n" + indent;
    at = cut + 1;
  }
  return out + text.substr(at);
}

std::string underlined(const std::string& text, char with) {
  const auto letters =
      std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; });
  return text + "\n" + std::string(std::size_t(letters), with) + "\n";
}

// Lines stay lines.
std::string asHtml(std::string_view text) {
  std::string out;
  for (const char c : escaped(text))
    out += c == '\n' ? std::string("<br>") : std::string(1, c);
  return out;
}

constexpr std::string_view kStyle = R"(
  body { font: 11pt/1.45 Georgia, serif; color: #1a1a1a; max-width: 44em; margin: 2em auto; }
  h1 { font-size: 1.7em; font-weight: 600; margin: 0 0 .2em; }
  h2 { font-size: 1.25em; font-weight: 600; margin: 1.8em 0 .4em; border-bottom: 1px solid #999; }
  h3 { font-size: 1em; font-weight: 600; margin: 1.2em 0 .3em; }
  p { margin: .25em 0; }
  p.unmet { margin: 0; padding: .2em .6em; border: solid #1a1a1a; border-width: 0 2px; }
  p.unmet:first-of-type, h1 + p.unmet { border-top-width: 2px; font-weight: 600; }
  p.unmet:has(+ section) { border-bottom-width: 2px; }
  ol { list-style: none; margin: 0; padding: 0; }
  li { margin: .2em 0; padding-left: 1.4em; text-indent: -1.4em; break-inside: avoid; }
  @media print {
    body { margin: 0; max-width: none; }
    section.piece { break-before: page; }
    h2, h3 { break-after: avoid; }
  }
)";

// Opens and closes what a line stands in: a section for each heading, a list for steps that follow
// each other.
class Html {
public:
  std::string document(const std::vector<DirectionLine>& lines, const std::string& language) {
    const std::string title = lines.empty() ? "" : asHtml(lines.front().text);
    out_ = "<!DOCTYPE html>\n<html lang=\"" + language +
           "\">\n<head>\n<meta charset=\"utf-8\">\n<title>" + title + "</title>\n<style>" +
           std::string(kStyle) + "</style>\n</head>\n<body>\n";
    for (const DirectionLine& line : lines)
      add(line);
    close();
    return out_ + "</body>\n</html>\n";
  }

private:
  void add(const DirectionLine& line) {
    if (line.kind != LineKind::Step) endList();
    const std::string text = asHtml(line.text);
    switch (line.kind) {
    case LineKind::Warning:
      out_ += "<p class=\"unmet\">" + text + "</p>\n";
      break;
    case LineKind::Title:
      out_ += "<h1>" + text + "</h1>\n";
      break;
    case LineKind::Heading:
      close();
      out_ += line.piece
                  ? "<section class=\"piece\" id=\"" + std::string(pieceKey(*line.piece)) + "\">\n"
                  : "<section>\n";
      out_ += "<h2>" + text + "</h2>\n";
      inSection_ = true;
      break;
    case LineKind::Part:
      out_ += "<h3>" + text + "</h3>\n";
      break;
    case LineKind::Note:
      out_ += "<p>" + text + "</p>\n";
      break;
    case LineKind::Step:
      if (!inList_) out_ += "<ol>\n";
      inList_ = true;
      out_ += "<li data-rows=\"" + std::to_string(line.first) + "-" + std::to_string(line.last) +
              "\">" + text + "</li>\n";
      break;
    }
  }

  void endList() {
    if (inList_) out_ += "</ol>\n";
    inList_ = false;
  }
  void close() {
    endList();
    if (inSection_) out_ += "</section>\n";
    inSection_ = false;
  }

  std::string out_;
  bool inSection_ = false, inList_ = false;
};

} // namespace

std::string directionsText(const Directions& directions, const Wording& wording) {
  std::string out;
  for (const DirectionLine& line : directionLines(directions, wording))
    switch (line.kind) {
    case LineKind::Title:
      out += underlined(line.text, '=');
      break;
    case LineKind::Heading:
      out += "\n\n" + underlined(line.text, '-');
      break;
    case LineKind::Part:
      out += "\n" + line.text + "\n";
      break;
    case LineKind::Warning:
      out += "| " + wrapped(line.text, kWidth - 2, "| ") + "\n";
      break;
    case LineKind::Note:
      out += wrapped(line.text, kWidth, "  ") + "\n";
      break;
    case LineKind::Step:
      out += "  " + wrapped(line.text, kWidth - 2, "    ") + "\n";
      break;
    }
  return out;
}

std::string directionsHtml(const Directions& directions, const Wording& wording) {
  return Html().document(directionLines(directions, wording), wording.phrases.language());
}

} // namespace scye
