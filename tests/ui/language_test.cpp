// The whole program in a made-up language: nothing stays English, nothing is cut off.
#include "trial_window.h"

#include "document/design_store.h"
#include "guide/guide_window.h"
#include "knitting/chart_view.h"
#include "library/style_library.h"
#include "model/languages.h"
#include "panels/fold.h"
#include "shell/banner.h"
#include "shell/export_strip.h"
#include "shell/start_page.h"
#include "shell/work_area.h"
#include "support/trial_language.h"

#include <QAction>
#include <QApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QMenu>
#include <QProcess>
#include <QRegularExpression>
#include <QSignalSpy>
#include <QTest>
#include <QTimer>

#include <regex>
#include <set>

namespace scye::test {
namespace {

class Language : public WindowFixture {
protected:
  Language() : Language(std::make_unique<TrialLanguage>()) {}
  ~Language() override { window_.reset(); } // before the words that it holds on to

  // What is the knitter's own, or a name, and stays in any language.
  [[nodiscard]] QString withoutNames(QString text) const {
    if (whole_.contains(QString(text).remove(u'&'))) return {};
    text.remove(QRegularExpression(QStringLiteral("</?(b|p|br)>")));
    for (const QString& name : names_)
      text.remove(name, Qt::CaseInsensitive);
    return text;
  }

  void expectTranslated(QWidget& in) {
    for (const SpokenText& spoken : textsOf(in)) {
      const std::string english = firstEnglishWord(withoutNames(spoken.text).toStdString());
      if (!english.empty() && told_.insert(spoken.where + spoken.text).second)
        ADD_FAILURE() << spoken.where.toStdString() << ": \"" << english << "\" in \""
                      << spoken.text.toStdString() << "\"";
    }
  }
  void expectRoom(QWidget& in) {
    QApplication::processEvents();
    for (const SpokenText& clipped : clippedIn(in))
      if (told_.insert(clipped.where + clipped.text).second)
        ADD_FAILURE() << clipped.where.toStdString() << ": " << clipped.text.toStdString();
  }
  void expectAll(QWidget& in) {
    expectTranslated(in);
    expectRoom(in);
  }

  // Her own words in no language at all.
  void openNamelessDemo() {
    openDemo();
    Design design = document().design();
    design.title = "\u0416", design.wearer = "\u0429", design.notes = "\u042e";
    document().replace(design, {});
    settle();
  }

  // What opens a dialog, which is looked at and closed.
  void expectDialog(const std::function<void()>& opens) {
    bool seen = false;
    QTimer::singleShot(0, [&] {
      QWidget* dialog = QApplication::activeModalWidget();
      ASSERT_TRUE(dialog);
      seen = true;
      expectAll(*dialog);
      dialog->close();
    });
    opens();
    EXPECT_TRUE(seen);
  }
  void expectBanner(const std::function<void()>& raises) {
    window_->banner().dismiss();
    raises();
    ASSERT_TRUE(QTest::qWaitFor([&] { return window_->banner().isVisible(); }));
    expectAll(window_->banner());
  }

  [[nodiscard]] const Phrases& phrases() const { return language_->phrases(); }

private:
  explicit Language(std::unique_ptr<TrialLanguage> language)
      : WindowFixture(language->phrases()), language_(std::move(language)) {
    names_ = {folder_.path(), QStringLiteral("Scyewright"), QStringLiteral("demo.scye"),
              QStringLiteral("a.svg")};
    whole_ = {QStringLiteral("demo"), QStringLiteral("SVG"), QStringLiteral("PNG"),
              QStringLiteral("PDF"), QStringLiteral("DXF")};
    // Qt's own, in the language that the made-up one counts by.
    for (const char* text : {"Scroll Left", "Scroll Right"})
      whole_.append(QCoreApplication::translate("QTabBar", text));
    for (const char* text : {"Close", "Cancel", "Save", "Discard", "Close without Saving"})
      whole_.append(QCoreApplication::translate("QPlatformTheme", text).remove(u'&'));
    for (const QAction* action : window_->findChildren<QAction*>())
      whole_.append(QKeySequence::listToString(action->shortcuts(), QKeySequence::NativeText));
    for (const std::string& tag : languagesThere())
      names_.append(QString::fromStdString(phrasesIn(tag).say("language.name")));
    for (const Style& style : styleLibrary(builtinPhrases()))
      for (const std::string& name :
           {style.design.notes, style.design.title, style.design.wearer}) {
        names_.append(QString::fromStdString(name));
        names_.append(QString::fromStdString(name).toHtmlEscaped());
      }
  }

  std::unique_ptr<TrialLanguage> language_;
  QStringList names_, whole_; // in a text; a text by itself
  std::set<QString> told_;
};

TEST_F(Language, TheStartPageSpeaksIt) {
  expectAll(*window_);
}

TEST_F(Language, MenusAndToolsSpeakIt) {
  openNamelessDemo();
  for (QMenu* menu : window_->findChildren<QMenu*>()) {
    Q_EMIT menu->aboutToShow();
    expectTranslated(*menu);
  }
}

TEST_F(Language, TheWorkbenchSpeaksIt) {
  openNamelessDemo();
  for (int i = 0; i < 3; ++i) // what a fold holds is made when it opens, and may hold folds
    for (Fold* fold : window_->findChildren<Fold*>())
      fold->setOpen(true);
  settle();
  expectAll(*window_);
}

TEST_F(Language, ThePagesSpeakIt) {
  openNamelessDemo();
  for (QAction* page :
       {window_->actions().directions, window_->actions().chart, window_->actions().sizes}) {
    page->trigger();
    settle();
    expectAll(*window_);
  }
}

TEST_F(Language, TheChartsRowsSpeakIt) {
  openNamelessDemo();
  window_->actions().chart->trigger();
  settle();
  auto* view = window_->findChild<ChartView*>();
  ASSERT_TRUE(view);
  view->setFocus();
  for (int i = 0; i < 60; ++i) {
    QTest::keyClick(view, Qt::Key_Up);
    expectAll(*view->parentWidget());
  }
}

TEST_F(Language, DialogsSpeakIt) {
  openNamelessDemo();
  expectDialog([&] { window_->actions().keys->trigger(); });
  Settings settings(file("settings of dialogs.json"), phrases());
  const FileKeeper::Asking ask = askingWithDialogs(window_.get(), settings);
  expectDialog([&] { EXPECT_FALSE(ask.mayReplace(file("demo.scye"))); });
  expectDialog([&] { EXPECT_FALSE(ask.mayThrowAway(QStringLiteral("demo.scye"))); });
  expectDialog([&] {
    EXPECT_EQ(ask.aboutConflict(QStringLiteral("demo.scye")), FileKeeper::Conflict::Stay);
  });
  expectDialog(
      [&] { EXPECT_EQ(ask.aboutUnsaved(QStringLiteral("demo.scye")), FileKeeper::Answer::Stay); });
}

TEST_F(Language, BannersSpeakIt) {
  openNamelessDemo();
  expectBanner([&] { window_->actions().about->trigger(); });
  expectBanner([&] {
    Q_EMIT window_->actions().language->aboutToShow();
    window_->actions().language->actions().front()->trigger();
  });
  expectBanner([&] {
    QFile nonsense(file("a.svg"));
    ASSERT_TRUE(nonsense.open(QIODevice::WriteOnly) && nonsense.write("{\"bust\": 9") > 0);
    nonsense.close();
    window_->openFile(file("a.svg"));
  });
}

TEST_F(Language, FindingsSpeakIt) {
  openNamelessDemo();
  Design design = document().design();
  design.set(Field::UpperArm, 47).set(Field::EaseUpperArm, -6).set(Field::CapEase, 6);
  document().edit({}, design);
  settle();
  ASSERT_FALSE(document().derived().findings.empty());
  expectAll(*window_);
}

TEST_F(Language, TheMeasuringGuideSpeaksIt) {
  openNamelessDemo();
  window_->actions().guide->trigger();
  QApplication::processEvents();
  expectAll(window_->guide());
}

TEST_F(Language, TheExportStripAndTheBannerSpeakIt) {
  openNamelessDemo();
  for (const auto kind : {FileFormat::Svg, FileFormat::Png, FileFormat::Pdf}) {
    window_->workbench().exports().open(kind);
    expectAll(*window_);
  }
  ExportStrip& strip = window_->workbench().exports();
  strip.exportTo(file("a.svg"));
  ASSERT_TRUE(isMade(strip.exports()));
  expectAll(*window_);
  const std::string svg = contents(file("a.svg")).toStdString();
  for (std::size_t at = 0; (at = svg.find('>', at)) != svg.npos; ++at) { // what stands in elements
    const std::string text = svg.substr(at + 1, svg.find('<', at) - at - 1);
    EXPECT_EQ(firstEnglishWord(text), "") << text;
  }
}

TEST_F(Language, NumbersAreWrittenAndReadWithAComma) {
  openNamelessDemo();
  Design design = document().design();
  document().edit({}, design.set(Field::Bust, 94.5));
  settle();
  const QString name = QString::fromStdString(phrases().say("field.bust"));
  auto* box = named<QAbstractSpinBox>(name);
  ASSERT_TRUE(box);
  EXPECT_TRUE(box->text().startsWith(QStringLiteral("94,5"))) << box->text().toStdString();
  for (const auto& [typed, value] : {std::pair("95,5", 95.5), {"96.25", 96.25}}) {
    QTest::mouseDClick(box->findChild<QWidget*>(), Qt::LeftButton);
    box->selectAll();
    QTest::keyClicks(box, QString::fromLatin1(typed));
    QTest::keyClick(box, Qt::Key_Return);
    settle();
    EXPECT_EQ(document().design().given(Field::Bust), value) << typed;
  }
}

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
          R"re("[^"]*"|scyewright( (draft|sizes|place|refit|diary|names|--\S+|\[--copy\]))?|--\S+|[|[(]*OUT\S*|\S*\.(scye|json|html|txt|svg|pdf|png|csv)\S*|/\S+|[A-Za-z.]+=\S*|true.( ?)a4.( ?)letter|pullover, jacket|front\|side\|back\|armhole|us\|uk|cm\|in|\bN\b|\bDIR\b|\bTEXT\b|\bDATE\b|PIECE\S*|WHAT|as=\S*)re"),
      "");
}

TEST(LanguageOfTheCommandLine, IsThatOfTheEnvironment) {
  const TrialLanguage language;
  QTemporaryDir folder;
  Design design;
  design.set(Field::UpperArm, 60);
  const QString file = folder.filePath(QStringLiteral("a.scye"));
  ASSERT_FALSE(writeDesign(file, design));
  const auto draft = [&](const QStringList& more) {
    return run(language.folder(), QStringList{QStringLiteral("draft"), file} + more);
  };
  const std::vector<std::pair<Said, int>> all{
      {draft({}), 1},
      {draft({QStringLiteral("--with"), QStringLiteral("bust=900")}), 2},
      {draft({QStringLiteral("--with"), QStringLiteral("bust")}), 2},
      {draft({QStringLiteral("--with"), QStringLiteral("garment=7")}), 2},
      {draft({QStringLiteral("--paper"), QStringLiteral("77")}), 2},
      {draft({QStringLiteral("--report"), QStringLiteral("7")}), 2},
      {draft({QStringLiteral("--report")}), 2},
      {run(language.folder(), {QStringLiteral("draft"), QStringLiteral(SCYE_SOURCES "/README.md")}),
       3},
      {run(language.folder(), {QStringLiteral("--help")}), 0},
  };
  for (const auto& [said, code] : all) {
    EXPECT_EQ(said.code, code) << said.text;
    EXPECT_EQ(firstEnglishWord(withoutWhatIsTyped(said.text)), "") << said.text;
  }
  const Said names = run(language.folder(), {QStringLiteral("names")});
  EXPECT_NE(names.text.find(language.phrases().say("field.bust")), names.text.npos);
  EXPECT_NE(names.text.find(language.phrases().say("choice.garment")), names.text.npos);
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

TEST(LanguageOfTheCommandLine, LeavesTheFilesWithAPoint) {
  const TrialLanguage language;
  QTemporaryDir folder;
  const QString demo = QStringLiteral(SCYE_RESOURCES "/demos/jacket.scye");
  const auto written = [&](const QString& languages, const char* name) {
    const auto path = [&](const char* ending) {
      return folder.filePath(QString::fromLatin1(name) + QString::fromLatin1(ending));
    };
    run(languages, {QStringLiteral("draft"), demo, QStringLiteral("--rows"), path(".csv"),
                    QStringLiteral("--report"), path(".json")});
    return std::pair(contents(path(".csv")), contents(path(".json")));
  };
  const auto [rows, report] = written(language.folder(), "trial");
  const auto [englishRows, englishReport] = written({}, "english");
  ASSERT_FALSE(rows.isEmpty());
  EXPECT_EQ(rows, englishRows);
  EXPECT_NE(report, englishReport);
  const QJsonValue figures = withoutWords(QJsonDocument::fromJson(report).object());
  EXPECT_FALSE(figures.toObject().isEmpty());
  EXPECT_EQ(figures, withoutWords(QJsonDocument::fromJson(englishReport).object()));
}

// English has forms of its own for one and for several.
TEST(LanguageEnglish, HasItsPlurals) {
  const auto more = [](int n) {
    return QCoreApplication::translate("scye::WearerRow", "%1 and %n more", nullptr, n);
  };
  EXPECT_NE(more(2), QString());
  EXPECT_FALSE(more(2).contains(QStringLiteral("%n")));
  const auto so = [](int n) {
    return QCoreApplication::translate("scye::FileNotices", " So were %n more.", nullptr, n);
  };
  EXPECT_EQ(so(1), QStringLiteral(" So was 1 more."));
  EXPECT_EQ(so(2), QStringLiteral(" So were 2 more."));
}

} // namespace
} // namespace scye::test
