// The command line and its files in a made-up language, and in English with its plurals.
#include "trial_window.h"

#include "document/design_store.h"
#include "support/trial_language.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>

#include <regex>

namespace scye::test {
namespace {

// What the program says without a window, with the language wished for by the environment.
struct Said {
  int code = 0;
  std::string text;
};
Said run(const QString& languages, const QStringList& arguments) {
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  environment.insert(QStringLiteral("SCYEWRIGHT_LANGUAGES"), languages);
  environment.insert(QStringLiteral("LC_ALL"), QString::fromLatin1(kTrialLanguage));
  QProcess process;
  process.setProcessEnvironment(environment);
  process.setProcessChannelMode(QProcess::MergedChannels);
  process.start(QStringLiteral(SCYE_PROGRAM), arguments);
  EXPECT_TRUE(process.waitForFinished(60000));
  return {process.exitCode(), process.readAll().toStdString()};
}

// What is typed is the same in every language: the program's name, its commands and settings.
std::string withoutWhatIsTyped(std::string text) {
  return std::regex_replace(
      text,
      std::regex(
          R"re("[^"]*"|scyewright( (draft|sizes|place|refit|diary|names|--\S+|\[--copy\]))?|--\S+|[|[(]*OUT\S*|\S*\.(scye|json|html|txt|svg|pdf|png|csv)\S*|/\S+|[A-Za-z.]+=\S*|true.( ?)a4.( ?)letter|pullover, jacket|front\|side\|back\|armhole|us\|uk|cm\|in|\bN\b|\bDIR\b|\bTEXT\b|\bDATE\b|PIECE\S*|WHAT|as=\S*|\bbust:)re"),
      "");
}

class LanguageOfTheCommandLine : public testing::Test {
protected:
  LanguageOfTheCommandLine() {
    Design design; // the knitter's own words in no language
    design.set(Field::Bust, 94).choose(Choice::Garment, Garment::Jacket);
    design.title = "\u0416", design.wearer = "\u0429", design.notes = "\u042e";
    EXPECT_FALSE(writeDesign(at("a.scye"), design, language_.phrases()));
  }
  [[nodiscard]] QString at(const char* name) const {
    return folder_.filePath(QString::fromLatin1(name));
  }
  // Words of the command; what begins with "@" is a file of the folder.
  Said say(const char* command) {
    QStringList words = QString::fromUtf8(command).split(u' ');
    for (QString& word : words)
      if (word.startsWith(u'@')) word = folder_.filePath(word.mid(1));
    const Said said = run(language_.folder(), words);
    EXPECT_EQ(firstEnglishWord(withoutWhatIsTyped(said.text)), "") << command << "\n" << said.text;
    return said;
  }
  void write(const char* name, const QByteArray& text) {
    QFile file(at(name));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
  }
  // What a reader sees of it: text between the tags, and what stands for pictures.
  void expectFileTranslated(const char* name) {
    std::string text = contents(at(name)).toStdString();
    ASSERT_FALSE(text.empty()) << name;
    // A picture within the text is no word, and longer than a regular expression bears.
    const std::string picture = "data:image/png;base64,";
    for (std::size_t at = text.find(picture); at != text.npos; at = text.find(picture, at))
      text.erase(at, text.find('"', at) - at);
    text = std::regex_replace(text, std::regex("<style>[^<]*</style>|<!DOCTYPE[^>]*>"), "");
    text = std::regex_replace(text, std::regex("(alt|title|aria-label)=\"([^\"]*)\""), ">$2<");
    if (!QString::fromLatin1(name).endsWith(QLatin1String(".txt")))
      text = std::regex_replace(text, std::regex("<[^>]*>|&\\w+;"), "\n");
    text = std::regex_replace(text, std::regex("Scyewright"), "");
    EXPECT_EQ(firstEnglishWord(text), "") << name;
  }

  // What is said is looked at by say().
  void expectCodes(std::initializer_list<std::pair<const char*, int>> commands) {
    for (const auto& [command, code] : commands)
      EXPECT_EQ(say(command).code, code) << command;
  }

  TrialLanguage language_;
  QTemporaryDir folder_;
};

TEST_F(LanguageOfTheCommandLine, IsThatOfTheEnvironment) {
  expectCodes({{"draft @a.scye --with upperArm=60", 1},
               {"draft @a.scye --with bust=900", 2},
               {"draft @a.scye --with bust", 2},
               {"draft @a.scye --with garment=7", 2},
               {"draft @a.scye --paper 77", 2},
               {"draft @a.scye --report 7", 2},
               {"draft @a.scye --report", 2},
               {"draft " SCYE_SOURCES "/README.md", 3},
               {"--help", 0}});
  const Said names = run(language_.folder(), {QStringLiteral("names")});
  EXPECT_NE(names.text.find(language_.phrases().say("field.bust")), names.text.npos);
  EXPECT_NE(names.text.find(language_.phrases().say("choice.garment")), names.text.npos);
}

TEST_F(LanguageOfTheCommandLine, TellsWhyAFileCannotBeReadOrWritten) {
  ASSERT_TRUE(QFile::link(at("nowhere"), at("dead.json")));
  EXPECT_EQ(say("draft @none.scye").code, 3);
  EXPECT_EQ(say("draft @").code, 3); // the folder
  for (const char* command :
       {"draft @a.scye --report @dead.json", "draft @a.scye --report @none/a.json",
        "draft @a.scye --report @a.scye/a.json", "draft @a.scye --all @a.scye"})
    EXPECT_EQ(say(command).code, 3) << command;
}

TEST_F(LanguageOfTheCommandLine, IsThatOfEveryCommand) {
  write("w.csv", "name,bust\n\u0436,98\n\u0448,seven\n");
  write("x.csv", "name,breast\n");
  expectCodes({{"sizes @a.scye @w.csv --report @s.csv", 1},
               {"sizes @a.scye @x.csv --report @s.csv", 3},
               {"sizes @a.scye", 2},
               {"place @a.scye", 0},
               {"place @a.scye --piece back --row 37", 0},
               {"place @a.scye --piece back --row 9999", 2},
               {"refit @a.scye --with measured.armholeBack=27", 0},
               {"diary @a.scye --decision \u0436 --piece sleeve --on 2026-11-26", 0},
               {"diary @a.scye --on yesterday --decision \u0436", 2},
               {"draft @a.scye --with upperArm=60 --sideways", 2},
               {"drift @a.scye", 2}});
}

TEST_F(LanguageOfTheCommandLine, IsThatOfTheFilesItWrites) {
  EXPECT_EQ(say("diary @a.scye --decision \u0436").code, 0);
  EXPECT_EQ(say("draft @a.scye --directions @d.txt --directions @d.html --schematic @s.svg "
                "--chart @c.svg --template @t.svg --booklet @b.html --diary @diary.txt")
                .code,
            0);
  for (const char* name : {"d.txt", "d.html", "s.svg", "c.svg", "t.svg", "b.html", "diary.txt"})
    expectFileTranslated(name);
}

// Titles and messages are words, wherever they stand; all else is the same in every language.
QJsonValue withoutWords(const QJsonValue& value) {
  if (value.isArray()) {
    QJsonArray out;
    for (const QJsonValue& each : value.toArray())
      out.append(withoutWords(each));
    return out;
  }
  if (!value.isObject()) return value;
  QJsonObject out = value.toObject();
  out.remove(QStringLiteral("title")), out.remove(QStringLiteral("message"));
  for (auto member = out.begin(); member != out.end(); ++member)
    *member = withoutWords(*member);
  return out;
}

TEST_F(LanguageOfTheCommandLine, LeavesTheFilesWithAPoint) {
  const QString demo = QStringLiteral(SCYE_RESOURCES "/demos/jacket.scye");
  const auto written = [&](const QString& languages, const char* name) {
    const auto path = [&](const char* ending) {
      return folder_.filePath(QString::fromLatin1(name) + QString::fromLatin1(ending));
    };
    run(languages, {QStringLiteral("draft"), demo, QStringLiteral("--rows"), path(".csv"),
                    QStringLiteral("--report"), path(".json")});
    return std::pair(contents(path(".csv")), contents(path(".json")));
  };
  const auto [rows, report] = written(language_.folder(), "trial");
  const auto [englishRows, englishReport] = written({}, "english");
  ASSERT_FALSE(rows.isEmpty());
  EXPECT_EQ(rows, englishRows);
  EXPECT_NE(report, englishReport);
  const QJsonValue figures = withoutWords(QJsonDocument::fromJson(report).object());
  EXPECT_FALSE(figures.toObject().isEmpty());
  EXPECT_EQ(figures, withoutWords(QJsonDocument::fromJson(englishReport).object()));
}

} // namespace
} // namespace scye::test
