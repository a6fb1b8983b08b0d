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

std::string diaryText(const std::string& title, const Work& work, const Phrases& phrases,
                      LengthUnit unit) {
  std::string text = phrases.say("diary.title", {textParam("title", plainLine(title))}) + "\n\n";
  for (const DiaryEntry& entry : work.diary)
    text += plainLine(entry.on) + "  " + entryText(entry, phrases, unit) + "\n";
  if (work.diary.empty()) text += phrases.say("diary.none") + "\n";
  bool any = false;
  for (const PieceWork& piece : work.pieces)
    for (const RowNote& note : piece.notes) {
      if (!std::exchange(any, true)) text += "\n" + phrases.say("diary.notes") + "\n";
      text += phrases.say("diary.note",
                          {textParam("piece", workPieceName(phrases, piece.piece)),
                           numberParam("row", note.row), textParam("text", plainLine(note.text))}) +
              "\n";
    }
  return text;
}

} // namespace scye
