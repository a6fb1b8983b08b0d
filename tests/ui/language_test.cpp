// The whole program in a made-up language: nothing stays English, nothing is cut off.
#include "trial_window.h"

#include "document/design_store.h"
#include "guide/guide_window.h"
#include "library/style_library.h"
#include "panels/fold.h"
#include "shell/banner.h"
#include "shell/export_strip.h"
#include "shell/start_page.h"
#include "shell/work_area.h"
#include "support/trial_language.h"

#include <QAction>
#include <QApplication>
#include <QJsonDocument>
#include <QJsonObject>
#include <QMenu>
#include <QProcess>
#include <QTest>

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

  [[nodiscard]] const Phrases& phrases() const { return language_->phrases(); }

private:
  explicit Language(std::unique_ptr<TrialLanguage> language)
      : WindowFixture(language->phrases()), language_(std::move(language)) {
    names_ = {QStringLiteral("Scyewright"), QStringLiteral("demo.scye"), folder_.path()};
    for (const Style& style : styleLibrary(builtinPhrases()))
      for (const std::string& name :
           {style.design.notes, style.design.title, style.design.wearer}) {
        names_.append(QString::fromStdString(name));
        names_.append(QString::fromStdString(name).toHtmlEscaped());
      }
  }

  std::unique_ptr<TrialLanguage> language_;
  QStringList names_;
  std::set<QString> told_;
};

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
