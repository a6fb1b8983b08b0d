#include "knitting/line_marks.h"

#include "values/value_text.h"

namespace scye {

LineMarks marksOf(const Phrases& phrases, const DirectionLine& line) {
  LineMarks marks{unbroken(phrases, line.text), 0, 0};
  QString& text = marks.text;
  marks.count = text.size();
  const qsizetype colon = text.indexOf(QLatin1String(": "));
  if (line.kind == LineKind::Part && colon > 0) marks.head = colon;
  if (line.kind != LineKind::Step) return marks;
  if (colon > 0) marks.head = colon + 1;
  const qsizetype count = text.lastIndexOf(QLatin1String(" ("));
  if (count < 0 || !text.endsWith(QLatin1String(")."))) return marks;
  marks.count = count + 1;
  for (qsizetype i = marks.count; i < text.size(); ++i)
    if (text[i] == u' ') text[i] = QChar::Nbsp;
  return marks;
}

} // namespace scye
