#include "io/wearer_table.h"

#include "io/setting.h"
#include "model/locale_rules.h"
#include "model/plain_text.h"
#include "model/wearer.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace scye {
namespace {

constexpr std::string_view kName = "name";

// Of the finished garment, as knitted: keys of Rounded.
constexpr std::string_view kSizes[] = {"backWidth",    "crossBack", "shoulder", "hemToUnderarm",
                                       "armholeDepth", "upperArm",  "cuff",     "sleeveLength",
                                       "capHeight",    "crown"};

struct Record {
  int line = 0;
  std::vector<std::string> cells;
};

struct Records {
  std::vector<Record> all;
  int openQuote = 0; // line of a quote that is never closed
};

Records recordsOf(std::string_view csv) {
  Records out;
  if (csv.starts_with("\xEF\xBB\xBF")) csv.remove_prefix(3);
  int line = 1;
  for (std::size_t at = 0; at < csv.size();) {
    Record record{line, {}};
    std::string cell;
    bool ended = false;
    while (!ended) {
      if (at < csv.size() && csv[at] == '"' && cell.empty()) {
        const int opened = line;
        bool closed = false;
        for (++at; at < csv.size() && !closed; ++at) {
          if (csv[at] == '\n') ++line;
          if (csv[at] != '"') {
            cell += csv[at];
          } else if (at + 1 < csv.size() && csv[at + 1] == '"') {
            cell += csv[at++];
          } else {
            closed = true;
          }
        }
        if (!closed) {
          out.openQuote = opened;
          return out;
        }
        continue;
      }
      const char c = at < csv.size() ? csv[at] : '\n';
      ++at;
      if (c == ',' || c == '\n') {
        if (c == '\n' && !cell.empty() && cell.back() == '\r') cell.pop_back();
        record.cells.push_back(std::move(cell));
        cell.clear();
        ended = c == '\n';
        line += ended;
      } else {
        cell += c;
      }
    }
    const bool empty = record.cells.size() == 1 && record.cells.front().empty();
    if (!empty) out.all.push_back(std::move(record));
  }
  return out;
}

std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t"), last = text.find_last_not_of(" \t");
  return first == text.npos ? std::string() : std::string(text.substr(first, last - first + 1));
}

std::string quoted(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == text.npos) return text;
  std::string out = "\"";
  for (const char c : text)
    out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}

// A text that a spreadsheet would take for a formula is kept a text.
std::string asText(const std::string& text) {
  const std::string plain = plainLine(text);
  const bool formula = !plain.empty() && std::string_view("=+-@").find(plain.front()) != plain.npos;
  return quoted(formula ? "'" + plain : plain);
}

class Reader {
public:
  Reader(const Design& base, const Phrases& phrases) : base_(base), phrases_(phrases) {}

  // The heads; returns why they make no sense.
  std::optional<std::string> heads(const Record& record) {
    std::set<std::string> seen;
    for (const std::string& cell : record.cells) {
      std::string head = trimmed(cell);
      if (!seen.insert(head).second) return phrases_.say("table.twice", {textParam("name", head)});
      const bool known = head == kName || fieldOf(head) || choiceOf(head);
      if (!known) return phrases_.say("table.unknown", {textParam("name", plainLine(head))});
      heads_.push_back(std::move(head));
    }
    if (!seen.contains(std::string(kName))) return phrases_.say("table.noName");
    return std::nullopt;
  }

  [[nodiscard]] TableWearer wearer(const Record& record) const {
    TableWearer out{record.line, {}, {}, {}, {}};
    if (record.cells.size() != heads_.size()) {
      out.problem = phrases_.say("table.cells", {numberParam("cells", double(record.cells.size())),
                                                 numberParam("heads", double(heads_.size()))});
      return out;
    }
    Design person, style = base_;
    person.choose(Choice::Figure, base_.option(Choice::Figure));
    for (std::size_t i = 0; i < heads_.size(); ++i) {
      const std::string cell = trimmed(record.cells[i]);
      if (heads_[i] == kName) {
        out.name = cell;
        continue;
      }
      if (cell.empty()) continue;
      const auto field = fieldOf(heads_[i]);
      const bool ofPerson =
          (field && isMeasurement(*field)) || choiceOf(heads_[i]) == Choice::Figure;
      if (const auto problem =
              applySetting(ofPerson ? person : style, heads_[i] + "=" + cell, phrases_)) {
        out.problem = *problem;
        return out;
      }
    }
    person.wearer = out.name;
    out.design = forWearer(style, person);
    return out;
  }

private:
  static std::optional<Field> fieldOf(std::string_view key) {
    for (int i = 0; i < kFieldCount; ++i)
      if (info(Field(i)).key == key) return Field(i);
    return std::nullopt;
  }
  static std::optional<Choice> choiceOf(std::string_view key) {
    for (int i = 0; i < kChoiceCount; ++i)
      if (info(Choice(i)).key == key) return Choice(i);
    return std::nullopt;
  }

  const Design& base_;
  const Phrases& phrases_;
  std::vector<std::string> heads_;
};

std::string asFileName(const std::string& name) {
  std::string out;
  for (const char c : plainLine(name))
    out += std::string_view("/\\:*?\"<>|").find(c) != std::string_view::npos ? '-' : c;
  out = trimmed(out);
  constexpr std::size_t kLongest = 100; // bytes
  if (out.size() > kLongest) {
    std::size_t end = kLongest;
    while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0) == 0x80)
      --end;
    out.resize(end);
  }
  if (out.starts_with(".")) out.front() = '-';
  return out;
}

std::string inSmallLetters(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = char(c + 32);
  return text;
}

// Whoever has no name, or one that stands above already, is told by the line.
void nameFiles(std::vector<TableWearer>& wearers) {
  std::set<std::string> taken;
  for (TableWearer& wearer : wearers) {
    wearer.fileName = asFileName(wearer.name);
    const auto isNew = [&] {
      return !wearer.fileName.empty() && taken.insert(inSmallLetters(wearer.fileName)).second;
    };
    while (!isNew())
      wearer.fileName += (wearer.fileName.empty() ? "" : " ") + std::to_string(wearer.line);
  }
}

std::string findingsText(const Findings& findings) {
  std::string text;
  for (const Finding& f : findings)
    text += (text.empty() ? "" : "; ") + std::string(severityKey(f.severity)) + " " + f.code;
  return text;
}

std::string sizesHead() {
  std::string head = "line,name,status";
  for (const std::string_view size : kSizes)
    head += "," + std::string(size);
  return head + ",armhole,cap,capEase,seamOff,castOnBack,castOnSleeve,findings\n";
}

std::string sizesLine(const TableWearer& wearer, const Derived* derived) {
  std::string line = std::to_string(wearer.line) + "," + asText(wearer.name) + ",";
  if (!derived) {
    line += "notRead";
    line.append(std::size(kSizes) + 6, ',');
    return line + "," + asText(wearer.problem) + "\n";
  }
  const auto number = [&](std::optional<double> cm) {
    line += "," + (cm && std::isfinite(*cm) ? numberText(*cm, 2) : std::string());
  };
  line += anyBlocking(derived->findings) ? "blocked"
          : derived->knit.pieces.empty() ? "notKnitted"
          : std::any_of(derived->findings.begin(), derived->findings.end(),
                        [](const Finding& f) { return f.severity == Severity::Warning; })
              ? "warned"
              : "made";
  for (const std::string_view size : kSizes) {
    const auto& all = derived->knit.rounded;
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const Rounded& r) { return r.key == size; });
    number(at == all.end() ? std::nullopt : std::optional(at->knitted));
  }
  // Of the worse side.
  const KnitGarment& knit = derived->knit;
  const ArmholeFit& side =
      knit.mismatch() == knit.left.mismatch(knit.easeWanted) ? knit.left : knit.right;
  const auto knitted = [&](double cm) {
    number(knit.capKnitted ? std::optional(cm) : std::nullopt);
  };
  knitted(side.armhole.mean());
  knitted(side.cap.mean());
  knitted((side.cap - side.armhole).mean());
  knitted(knit.mismatch());
  const auto castOn = [&](PieceId id) {
    const KnitPiece* piece = derived->knit.piece(id);
    line += "," + (piece ? std::to_string(piece->castOn().value()) : std::string());
  };
  castOn(PieceId::Back);
  castOn(PieceId::Sleeve);
  return line + "," + asText(findingsText(derived->findings)) + "\n";
}

} // namespace

WearerTable readWearerTable(std::string_view csv, const Design& base, const Phrases& phrases) {
  WearerTable table;
  const Records records = recordsOf(csv);
  if (records.openQuote > 0)
    table.problem = phrases.say("table.quote", {numberParam("line", records.openQuote)});
  else if (records.all.empty())
    table.problem = phrases.say("table.empty");
  if (table.problem) return table;
  Reader reader(base, phrases);
  if ((table.problem = reader.heads(records.all.front()))) return table;
  for (std::size_t i = 1; i < records.all.size(); ++i)
    table.wearers.push_back(reader.wearer(records.all[i]));
  nameFiles(table.wearers);
  return table;
}

std::optional<SizesTable> sizesTable(const WearerTable& table, const GoOn& goOn,
                                     const EachGarment& each) {
  SizesTable out{sizesHead(), 0};
  for (std::size_t i = 0; i < table.wearers.size(); ++i) {
    if (goOn && !goOn(double(i) / double(table.wearers.size()))) return std::nullopt;
    const TableWearer& wearer = table.wearers[i];
    std::optional<Derived> derived;
    if (wearer.design) derived = derive(*wearer.design);
    out.made += derived && !anyBlocking(derived->findings);
    if (each && derived && !anyBlocking(derived->findings) && !derived->knit.pieces.empty())
      each(wearer, *derived);
    out.csv += sizesLine(wearer, derived ? &*derived : nullptr);
  }
  return out;
}

} // namespace scye
