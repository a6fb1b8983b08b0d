// The start page: its library of styles by pointer, keyboard and screen reader.
#include "window_fixture.h"

#include "document/design_store.h"
#include "library/style_card.h"
#include "library/style_gallery.h"
#include "shell/start_page.h"
#include "values/field_box.h"

#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QDir>
#include <QFile>
#include <QImage>
#include <QLabel>
#include <QPushButton>
#include <QSet>
#include <QTest>

namespace scye::test {
namespace {

class StartPageTest : public WindowFixture {
protected:
  StyleGallery& gallery() { return *window_->startPage().findChild<StyleGallery*>(); }
  void waitForPictures() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return gallery().isPainted(); }));
  }
  QPixmap picture(int at) { return gallery().card(at)->data(Qt::DecorationRole).value<QPixmap>(); }
  int rowOf(const QString& title) {
    for (int i = 0; i < int(gallery().styles().size()); ++i)
      if (gallery().card(i)->text() == title) return i;
    ADD_FAILURE() << "no card is called " << title.toStdString();
    return -1;
  }
  void expectUntitledCopyOf(const Style& style) {
    EXPECT_EQ(document().design(), style.design);
    EXPECT_TRUE(document().path().isEmpty());
    EXPECT_FALSE(window_->startPage().isVisible());
  }
};

TEST_F(StartPageTest, showsEveryDesignOfTheResources) {
  const QStringList files = QDir(QStringLiteral(SCYE_RESOURCES "/demos")).entryList(QDir::Files);
  QSet<QString> expected, shown;
  for (const QString& file : files) {
    const auto read = readDesign(QStringLiteral(SCYE_RESOURCES "/demos/") + file, builtinPhrases());
    ASSERT_TRUE(std::holds_alternative<Design>(read)) << file.toStdString();
    expected.insert(QString::fromStdString(std::get<Design>(read).title));
  }
  for (int i = 0; i < int(gallery().styles().size()); ++i)
    shown.insert(gallery().card(i)->text());
  EXPECT_GE(files.size(), 12);
  EXPECT_EQ(shown, expected);
  EXPECT_EQ(int(gallery().styles().size()), files.size());
}

// Made when the program was built; under sanitizers the cards are drawn.
TEST_F(StartPageTest, aCardShowsTheGarmentWorn) {
  waitForPictures();
  for (int i = 0; i < int(gallery().styles().size()); ++i) {
    const Style& style = gallery().styles()[std::size_t(i)];
    SCOPED_TRACE(style.path.toStdString());
    const QImage photograph = wornPhotograph(style.path);
#ifdef SCYE_NO_CARDS
    EXPECT_TRUE(photograph.isNull());
    EXPECT_FALSE(picture(i).isNull());
#else
    ASSERT_FALSE(photograph.isNull());
    EXPECT_EQ(photograph.pixelColor(2, 2).alpha(), 0);
    const QColor cloth = photograph.pixelColor(photograph.width() / 2, photograph.height() / 2);
    EXPECT_EQ(cloth.alpha(), 255);
    // In the middle of the card's upper part stands the same colour.
    const QImage card = picture(i).toImage();
    const QColor shown = card.pixelColor(card.width() / 2, int(0.34 * card.height()));
    EXPECT_EQ(shown.alpha(), 255);
    EXPECT_LT(std::abs(shown.hsvHue() - cloth.hsvHue()), 25);
    EXPECT_LT(std::abs(shown.lightness() - cloth.lightness()), 60) << "a drawn piece is pale";
#endif
  }
}

TEST_F(StartPageTest, asksItsQuestionsFirst) {
  auto* box = qobject_cast<FieldBox*>(QApplication::focusWidget());
  ASSERT_NE(box, nullptr);
  EXPECT_EQ(box->accessibleName(), QStringLiteral("Bust"));
  // On by Tab: two more boxes, the buttons, then the library; nothing else takes the keyboard.
  QStringList way;
  while (QApplication::focusWidget() != &gallery() && way.size() < 8) {
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    way.append(QApplication::focusWidget()->metaObject()->className());
  }
  EXPECT_EQ(QApplication::focusWidget(), &gallery()) << way.join(u' ').toStdString();
  EXPECT_EQ(gallery().currentItem(), gallery().card(0));
}

TEST_F(StartPageTest, arrowsGoFromCardToCardAndReturnOpensACopy) {
  window_->actions().newFromStyle->trigger();
  ASSERT_TRUE(gallery().hasFocus());
  QTest::keyClick(&gallery(), Qt::Key_Right);
  EXPECT_EQ(gallery().currentItem(), gallery().card(1));
  QTest::keyClick(&gallery(), Qt::Key_Down);
  const QListWidgetItem* below = gallery().currentItem();
  const QRect from = gallery().visualItemRect(gallery().card(1)),
              to = gallery().visualItemRect(below);
  EXPECT_EQ(to.left(), from.left());
  EXPECT_GT(to.top(), from.top() - 1);
  EXPECT_NE(below, gallery().card(1));
  const Style style = gallery().styles()[below->data(StyleRoleAt).toUInt()];
  QTest::keyClick(&gallery(), Qt::Key_Return);
  settle();
  expectUntitledCopyOf(style);
}

TEST_F(StartPageTest, aClickOpensACopyWhichIsSavedUnderANameOfItsOwn) {
  const int row = rowOf(QStringLiteral("Harbour jacket"));
  gallery().scrollToItem(gallery().card(row));
  const Style style = gallery().styles()[std::size_t(row)];
  const QByteArray before = contents(style.path);
  QTest::mouseClick(gallery().viewport(), Qt::LeftButton, {},
                    gallery().visualItemRect(gallery().card(row)).center());
  settle();
  expectUntitledCopyOf(style);
  const QString mine = file("mine.scye");
  window_->files().setAsking({[] { return QString(); }, [mine](const QString&) { return mine; },
                              [](const QString&) { return FileKeeper::Answer::Discard; }});
  Design changed = document().design();
  changed.set(Field::EaseBust, 12);
  document().edit(QStringLiteral("wider"), changed);
  EXPECT_TRUE(window_->files().save());
  EXPECT_EQ(document().path(), mine);
  EXPECT_EQ(std::get<Design>(readDesign(mine, builtinPhrases())), changed);
  EXPECT_EQ(contents(style.path), before);
}

TEST_F(StartPageTest, leadsBackToTheLibraryFromADesignAndAsksAboutUnsavedWork) {
  openDemo();
  Design changed = document().design();
  changed.set(Field::EaseBust, 12);
  document().edit(QStringLiteral("wider"), changed);
  auto answer = FileKeeper::Answer::Stay;
  window_->files().setAsking({[] { return QString(); }, [](const QString&) { return QString(); },
                              [&answer](const QString&) { return answer; }});
  window_->actions().newFromStyle->trigger();
  EXPECT_FALSE(window_->startPage().isVisible());
  EXPECT_EQ(document().design(), changed);
  answer = FileKeeper::Answer::Discard;
  window_->actions().newFromStyle->trigger();
  EXPECT_TRUE(window_->startPage().isVisible());
  EXPECT_TRUE(gallery().hasFocus());
}

TEST_F(StartPageTest, cardsAreReadOutWithTitleKindAndWearer) {
  QAccessibleInterface* list = QAccessible::queryAccessibleInterface(&gallery());
  ASSERT_NE(list, nullptr);
  EXPECT_EQ(list->text(QAccessible::Name), QStringLiteral("Styles"));
  ASSERT_EQ(list->childCount(), gallery().QListWidget::count());
  for (int i = 0; i < int(gallery().styles().size()); ++i) {
    const Style& style = gallery().styles()[std::size_t(i)];
    const QString name = list->child(gallery().row(gallery().card(i)))->text(QAccessible::Name);
    EXPECT_TRUE(name.contains(QString::fromStdString(style.design.title))) << name.toStdString();
    EXPECT_TRUE(name.contains(style.brief)) << name.toStdString();
    EXPECT_TRUE(name.contains(QString::fromStdString(style.design.wearer))) << name.toStdString();
  }
}

TEST_F(StartPageTest, cardsAreGroupedForWomenMenAndChildren) {
  QStringList heads;
  int group = -1;
  for (int i = 0; i < gallery().count(); ++i) {
    const QListWidgetItem* item = gallery().item(i);
    if (item->data(HeadRole).toBool()) {
      heads.append(item->text());
      ++group;
      continue;
    }
    const auto& design = gallery().styles()[item->data(StyleRoleAt).toUInt()].design;
    EXPECT_EQ(std::min(2, design.option(Choice::Figure)), group) << item->text().toStdString();
  }
  EXPECT_EQ(heads.size(), 3);
}

TEST_F(StartPageTest, saysInALineWhatEachIs) {
  QSet<QString> briefs;
  for (const Style& style : gallery().styles()) {
    EXPECT_FALSE(style.brief.contains(u'[') || style.brief.contains(u'{'))
        << style.brief.toStdString();
    briefs.insert(style.brief);
  }
  EXPECT_EQ(briefs.size(), int(gallery().styles().size())) << "no two are told alike";
  EXPECT_EQ(styleInBrief(builtinPhrases(), Design()),
            QStringLiteral("Pullover, round neck, tapered sleeves"));
  // Any choice of style has its words.
  for (int neck = 0; neck < int(info(Choice::Neckline).options.size()); ++neck)
    for (int line = 0; line < int(info(Choice::SleeveLine).options.size()); ++line)
      for (int top = 0; top < int(info(Choice::CapTop).options.size()); ++top)
        for (const double length : {3.0, 14.0, 25.0, 44.0})
          for (int i = 0; i < 16; ++i) {
            const QString brief =
                styleInBrief(builtinPhrases(), Design()
                                                   .choose(Choice::Neckline, neck)
                                                   .choose(Choice::SleeveLine, line)
                                                   .choose(Choice::CapTop, top)
                                                   .choose(Choice::Figure, i % 4)
                                                   .choose(Choice::Garment, i / 4 % 2)
                                                   .choose(Choice::BodyLength, i / 8)
                                                   .set(Field::SleeveLength, length));
            ASSERT_FALSE(brief.contains(u'[') || brief.contains(u'{')) << brief.toStdString();
          }
}

TEST_F(StartPageTest, paintsAPictureOnEveryCardOnceItIsShown) {
  waitForPictures();
  for (int i = 0; i < int(gallery().styles().size()); ++i) {
    const QImage image = picture(i).toImage();
    const QSize room =
        StyleCard::pictureSize(gallery().fontMetrics(), gallery().cardSize().width());
    EXPECT_EQ(picture(i).deviceIndependentSize().toSize(), room);
    int marked = 0;
    QRect used;
    for (int y = 0; y < image.height(); ++y)
      for (int x = 0; x < image.width(); ++x)
        if (image.pixelColor(x, y).alpha() > 200) ++marked, used |= QRect(x, y, 1, 1);
    EXPECT_GT(marked, image.width() * image.height() / 10) << i;
    // It fills its room one way, and touches its edge nowhere.
    EXPECT_TRUE(used.width() > 0.9 * image.width() || used.height() > 0.9 * image.height()) << i;
    EXPECT_TRUE(image.rect().contains(used)) << i;
  }
}

TEST_F(StartPageTest, paintsThemAfreshInADarkPalette) {
  waitForPictures();
  const QImage light = picture(0).toImage();
  QPalette dark;
  dark.setColor(QPalette::Window, Qt::black);
  dark.setColor(QPalette::Base, Qt::black);
  dark.setColor(QPalette::WindowText, Qt::white);
  dark.setColor(QPalette::Text, Qt::white);
  QApplication::setPalette(dark);
  EXPECT_TRUE(QTest::qWaitFor([&] { return picture(0).toImage() != light; }));
  QApplication::setPalette(QPalette());
}

// Every word of every card has room, and cards neither leave the page nor lie on one another.
TEST_F(StartPageTest, cardsHaveRoomInWindowsOfAnySize) {
  for (const QSize size : {QSize(1000, 700), QSize(1280, 800), QSize(1920, 1080)}) {
    window_->resize(size);
    QApplication::processEvents();
    EXPECT_EQ(window_->size(), size);
    const QFontMetrics metrics = gallery().fontMetrics();
    QFont boldFont = gallery().font();
    boldFont.setBold(true);
    const QFontMetrics bold(boldFont);
    const int room = StyleCard::wordsWidth(metrics, gallery().cardSize().width());
    // A row holds as many as there is room for.
    const QRect first = gallery().visualItemRect(gallery().card(0));
    int inRow = 0;
    while (gallery().visualItemRect(gallery().card(inRow)).top() == first.top())
      ++inRow;
    EXPECT_EQ(inRow, gallery().viewport()->width() / first.width());
    QRect before;
    for (int i = 0; i < int(gallery().styles().size()); ++i) {
      const Style& style = gallery().styles()[std::size_t(i)];
      const QListWidgetItem* item = gallery().card(i);
      EXPECT_LE(bold.horizontalAdvance(item->text()), room) << item->text().toStdString();
      EXPECT_LE(metrics.horizontalAdvance(item->data(WearerRole).toString()), room)
          << item->data(WearerRole).toString().toStdString();
      const QRect words = metrics.boundingRect({0, 0, room, 10000}, Qt::TextWordWrap, style.brief);
      EXPECT_LE(words.height(), StyleCard::kBriefLines * metrics.lineSpacing())
          << style.brief.toStdString();
      EXPECT_LE(words.width(), room) << style.brief.toStdString();
      const QRect card = gallery().visualItemRect(item);
      EXPECT_GE(card.left(), 0);
      EXPECT_LE(card.right(), gallery().viewport()->width());
      EXPECT_FALSE(card.intersects(before));
      before = card;
    }
    // The last can be scrolled to.
    gallery().scrollToItem(gallery().card(int(gallery().styles().size()) - 1));
    EXPECT_TRUE(gallery().viewport()->rect().contains(
        gallery().visualItemRect(gallery().card(int(gallery().styles().size()) - 1))));
    gallery().scrollToTop();
  }
}

} // namespace
} // namespace scye::test
