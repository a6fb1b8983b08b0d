#include "progress/diary.h"

#include "model/plain_text.h"

namespace scye {

std::string entryText(const DiaryEntry& entry, const Phrases& phrases, LengthUnit unit) {
  const std::string piece = entry.piece ? workPieceName(phrases, *entry.piece) : std::string();
  return phrases.say("diary." + std::string(kDiaryKeys[entry.kind]),
                     {textParam("piece", piece), numberParam("row", entry.row),
                      numberParam("to", entry.to), textParam("text", plainLine(entry.text))},
                     unit);
}

std::vector<std::string> diaryEntries(const Work& work, const Phrases& phrases, LengthUnit unit) {
  std::vector<std::string> lines;
  for (const DiaryEntry& entry : work.diary)
    lines.push_back(plainLine(entry.on) + "  " + entryText(entry, phrases, unit));
  return lines;
}

std::vector<std::string> rowNotes(const Work& work, const Phrases& phrases) {
  std::vector<std::string> lines;
  for (const PieceWork& piece : work.pieces)
    for (const RowNote& note : piece.notes)
      lines.push_back(phrases.say(
          "diary.note", {textParam("piece", workPieceName(phrases, piece.piece)),
                         numberParam("row", note.row), textParam("text", plainLine(note.text))}));
  return lines;
}

std::string diaryText(const std::string& title, const Work& work, const Phrases& phrases,
                      LengthUnit unit) {
  std::string text = phrases.say("diary.title", {textParam("title", plainLine(title))}) + "\n\n";
  const auto add = [&](const std::vector<std::string>& lines) {
    for (const std::string& line : lines)
      text += line + "\n";
  };
  add(diaryEntries(work, phrases, unit));
  if (work.diary.empty()) text += phrases.say("diary.none") + "\n";
  const std::vector<std::string> notes = rowNotes(work, phrases);
  if (!notes.empty()) text += "\n" + phrases.say("diary.notes") + "\n";
  add(notes);
  return text;
}

} // namespace scye
