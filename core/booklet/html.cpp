#include "booklet/booklet.h"
#include "booklet/reading_width.h"

#include "model/markup.h"
#include "schematic/svg.h"

#include <algorithm>

namespace scye {
namespace {

constexpr std::string_view kStyle = R"(
  body { line-height: 1.4; font-family: sans-serif; color: #000; background: #fff;
         max-width: 48em; margin: 2em auto; padding: 0 1em; }
  h1 { font-size: 2.2em; margin: 0 0 .2em; }
  h2 { font-size: 1.4em; margin: 1.6em 0 .4em; border-bottom: 1px solid #000; }
  h3 { font-size: 1em; margin: 1.1em 0 .3em; }
  p { margin: .3em 0; }
  .cover { text-align: center; }
  .cover .unmet { text-align: left; }
  .unmet { border: 2px solid #000; padding: .3em .8em; margin: 1em 0; font-weight: 600; }
  .unmet p + p { font-weight: 400; }
  p.line { padding-left: 1.7em; text-indent: -1.7em; break-inside: avoid; }
  p.line::before { content: ""; display: inline-block; width: .7em; height: .7em;
                   border: 1px solid #000; margin-right: .9em; vertical-align: -0.05em; }
  figure { margin: 1em 0; break-inside: avoid; }
  figure svg { max-width: 100%; height: auto; max-height: 60em; }
  figcaption { font-weight: 600; }
  .parts { display: none; }
  @media print {
    body { max-width: none; margin: 0; padding: 0; }
    section + section { break-before: page; }
    h2, h3, figcaption { break-after: avoid; }
    p { orphans: 2; widows: 2; }
    figure svg { max-height: 22cm; }
    .whole { display: none; }
    .parts { display: block; }
    .parts figure { break-before: page; margin: 0; }
    .parts svg { max-width: none; max-height: none; }
  }
)";

std::string lineBreaks(const std::string& text) {
  std::string out;
  for (const char c : escaped(text))
    out += c == '\n' ? std::string("<br>") : std::string(1, c);
  return out;
}

// Without the declaration that stands before an SVG in a file of its own.
std::string inlineSvg(const Picture& picture) {
  const std::string svg = pictureAsSvg(picture);
  const std::size_t at = svg.find("<svg");
  return at == svg.npos ? std::string() : svg.substr(at);
}

// Group ids are those of one document.
std::string figure(Picture picture, const std::string& caption, const std::string& ids,
                   std::string_view kind) {
  int n = 0;
  for (Group& group : picture.groups)
    group.id = ids + group.id + (n++ > 0 ? "-" + std::to_string(n) : "");
  const std::string words = caption.empty() ? "" : "<figcaption>" + caption + "</figcaption>";
  return "<figure" + std::string(kind) + ">" + words + "\n" + inlineSvg(picture) + "</figure>\n";
}

// What is shown whole is too fine to print so: on paper its parts stand instead, at their size.
std::string inParts(const BookletBlock& block, const std::string& ids) {
  if (!block.parts) return {};
  const Vec2 room(16, 21); // cm: with a margin, on A4 and on Letter within what browsers leave free
  constexpr double kLetters = 0.25;
  std::string out;
  int n = 0;
  for (Picture& part : block.parts(room, kLetters))
    out += figure(std::move(part), {}, ids + "part-" + std::to_string(++n) + "-", {});
  return out.empty() ? out : "<div class=\"parts\">\n" + out + "</div>\n";
}

std::string drawing(const BookletBlock& block, const std::string& ids) {
  constexpr double kLetters = 0.8; // cm of the drawing, which is shown smaller than it is
  Picture picture = block.picture(kLetters);
  if (picture.box().empty()) return {};
  const std::string parts = inParts(block, ids);
  return figure(std::move(picture), lineBreaks(block.text), ids,
                parts.empty() ? "" : " class=\"whole\"") +
         parts;
}

std::string blockHtml(const BookletBlock& block, const std::string& ids) {
  switch (block.kind) {
  case BlockKind::Title:
    return "<h1>" + lineBreaks(block.text) + "</h1>\n";
  case BlockKind::Heading:
    return "<h2>" + lineBreaks(block.text) + "</h2>\n";
  case BlockKind::Part:
    return "<h3>" + lineBreaks(block.text) + "</h3>\n";
  case BlockKind::Warning:
  case BlockKind::Text:
    return "<p>" + lineBreaks(block.text) + "</p>\n";
  case BlockKind::Check:
    return "<p class=\"line\">" + lineBreaks(tied(block.text)) + "</p>\n";
  case BlockKind::Drawing:
    return drawing(block, ids);
  }
  return {};
}

} // namespace

std::string bookletHtml(const Booklet& booklet, double points, const Phrases& phrases) {
  std::string out = "<!DOCTYPE html>\n<html lang=\"" + phrases.language() +
                    "\">\n<head>\n<meta charset=\"utf-8\">\n<title>" + lineBreaks(booklet.title) +
                    "</title>\n<style>\n  html { font-size: " + std::to_string(int(points)) +
                    "pt; }" + std::string(kStyle) + "</style>\n</head>\n<body>\n";
  for (const BookletChapter& chapter : booklet.chapters) {
    out += "<section id=\"" + chapter.id + "\"" + (chapter.cover ? " class=\"cover\"" : "") + ">\n";
    bool boxed = false;
    int n = 0;
    for (const BookletBlock& block : chapter.blocks) {
      const bool warning = block.kind == BlockKind::Warning;
      if (warning != boxed) out += warning ? "<div class=\"unmet\">\n" : "</div>\n";
      boxed = warning;
      out += blockHtml(block, chapter.id + "-" + std::to_string(++n) + "-");
    }
    if (boxed) out += "</div>\n";
    out += "</section>\n";
  }
  return out + "</body>\n</html>\n";
}

} // namespace scye
