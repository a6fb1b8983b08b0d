// Measurements kept for other designs: kept, used, taken over when they have changed, removed.
#include "window_fixture.h"

#include "document/design_store.h"
#include "values/field_box.h"

#include <QAction>
#include <QDate>
#include <QDir>
#include <QFile>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QTest>

namespace scye::test {
namespace {

class MeasureWearer : public WindowFixture {
protected:
  void SetUp() override { openDemo(); }

  // Opens the menu as the keyboard does and presses the action whose text begins so.
  void choose(const char* text, const char* under = nullptr) {
    QMenu* menu = window_->actions().wearer;
    menu->popup(window_->mapToGlobal(QPoint(10, 10)));
    QAction* found = nullptr;
    QMenu* in = menu;
    const auto plain = [](const QAction* a) { return a->text().remove(u'&'); };
    if (under)
      for (QAction* a : menu->actions())
        if (a->menu() && plain(a).startsWith(QLatin1String(under))) {
          in = a->menu();
          menu->setActiveAction(a);
        }
    for (QAction* a : in->actions())
      if (plain(a).startsWith(QLatin1String(text))) found = a;
    ASSERT_TRUE(found && found->isEnabled()) << text;
    in->setActiveAction(found);
    QTest::keyClick(in, Qt::Key_Return);
    menu->hide();
    settle();
  }
  [[nodiscard]] QPushButton* takeOver() {
    for (QPushButton* b : window_->findChildren<QPushButton*>())
      if (b->isVisible() && b->text() == QStringLiteral("Use the kept ones")) return b;
    return nullptr;
  }
  [[nodiscard]] QString folder() const { return paths().wearers; }
};

TEST_F(MeasureWearer, keptWithTheDateAndUsedInAnotherDesignInOneStep) {
  const Design jacket = document().design();
  choose("Keep these");
  ASSERT_EQ(window_->wearers().wearers().size(), 1);
  EXPECT_EQ(window_->wearers().wearers()[0].date(), QDate::currentDate());
  EXPECT_EQ(document().design().measuredOn,
            QDate::currentDate().toString(Qt::ISODate).toStdString());

  Design other;
  other.title = "Another";
  other.set(Field::EaseBust, 12).set(Field::Bust, 80);
  document().replace(other, {});
  settle();
  choose(jacket.wearer.c_str(), "Use the");
  EXPECT_EQ(document().history().count(), 1);
  EXPECT_EQ(document().design().wearer, jacket.wearer);
  EXPECT_EQ(document().design().given(Field::Bust), jacket.given(Field::Bust));
  EXPECT_EQ(document().design().given(Field::EaseBust), 12); // the design's own
  document().undo();
  settle();
  EXPECT_EQ(document().design(), other);
}

TEST_F(MeasureWearer, theGarmentIsDrawnForOthersTooWithTheirNames) {
  const std::string first = document().design().wearer;
  choose("Keep these");
  Design other = document().design();
  other.wearer = "Nell";
  other.set(Field::Bust, 118).set(Field::Hip, 124);
  document().replace(other, {});
  settle();
  const auto behind = [this] {
    int count = 0;
    for (const Group& g : table().picture().groups)
      for (const Stroke& s : g.strokes)
        count += s.role == Role::Ghost;
    return count;
  };
  EXPECT_EQ(behind(), 0);
  choose(first.c_str(), "Draw it");
  EXPECT_EQ(behind(), int(table().picture().groups.size())) << "a piece each";
  int named = 0;
  for (const Group& g : table().picture().groups)
    for (const Label& l : g.labels)
      named += l.text == first;
  EXPECT_GT(named, 0);
  EXPECT_EQ(document().design(), other) << "only looked at";
  // It follows the design.
  const auto widthOf = [this] {
    Box box;
    for (const Stroke& s : table().picture().groups.front().strokes)
      if (s.role == Role::Ghost) box.add(s.path);
    return box.size().x();
  };
  const double before = widthOf();
  document().edit(QStringLiteral("ease"), Design(other).set(Field::EaseBust, 20));
  settle();
  EXPECT_GT(widthOf(), before + 3);
  choose(first.c_str(), "Draw it");
  EXPECT_EQ(behind(), 0);
}

// The survey has no such measure, so there is no likely range for it.
TEST_F(MeasureWearer, aFrontWaistLengthIsTypedWithoutALikelyRangeAndKept) {
  EXPECT_FALSE(document().derived().draft.sizes.likely[std::size_t(Field::FrontWaistLength)]);
  window_->workbench().panel().focusField(Field::FrontWaistLength, true);
  settle();
  auto* box = named<FieldBox>(QStringLiteral("Front waist length"));
  box->setFocus();
  box->selectAll();
  QTest::keyClicks(box, QStringLiteral("46.5"));
  QTest::keyClick(box, Qt::Key_Return);
  settle();
  EXPECT_EQ(document().design().given(Field::FrontWaistLength), 46.5);
  for (const QLabel* label : window_->findChildren<QLabel*>())
    EXPECT_FALSE(label->text().contains(u'[') || label->text().contains(u'{'))
        << label->text().toStdString();
  choose("Keep these");
  ASSERT_EQ(window_->wearers().wearers().size(), 1);
  WearerStore again(paths().wearers, builtinPhrases());
  ASSERT_EQ(again.wearers().size(), 1);
  EXPECT_EQ(again.wearers()[0].wearer.given(Field::FrontWaistLength), 46.5);
}

TEST_F(MeasureWearer, aChangeOfWhatIsKeptIsSaidBesideTheNameAndTakenOverByAClick) {
  EXPECT_FALSE(takeOver());
  const Design old = document().design();
  Design newer = old;
  newer.set(Field::Bust, 97);
  ASSERT_TRUE(window_->wearers().keep(newer, QDate(2026, 5, 1)));
  settle();
  ASSERT_TRUE(takeOver());
  bool told = false;
  for (const QLabel* label : window_->findChildren<QLabel*>())
    told = told || (label->isVisible() &&
                    label->text().endsWith(QStringLiteral("differ from this design's: Bust.")));
  EXPECT_TRUE(told);
  takeOver()->setFocus();
  QTest::keyClick(takeOver(), Qt::Key_Space);
  settle();
  EXPECT_EQ(document().design().given(Field::Bust), 97);
  EXPECT_EQ(document().design().measuredOn, "2026-05-01");
  EXPECT_FALSE(takeOver());
  document().undo();
  settle();
  EXPECT_EQ(document().design(), old);
}

TEST_F(MeasureWearer, removedFromTheListTheFileIsGone) {
  choose("Keep these");
  const QString name = QString::fromStdString(document().design().wearer);
  choose(name.toLatin1().constData(), "Remove");
  EXPECT_TRUE(window_->wearers().wearers().isEmpty());
  EXPECT_TRUE(QDir(folder()).entryList(QDir::Files).isEmpty());
}

TEST_F(MeasureWearer, anUnreadableFileIsNamedAndLeftAlone) {
  ASSERT_TRUE(QDir().mkpath(folder()));
  // The very file that this wearer's measurements would be kept in.
  const QString path = folder() + u'/' + QString::fromStdString(document().design().wearer) +
                       QStringLiteral(".scye");
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("not a design");
  file.close();
  choose("Keep these");
  EXPECT_EQ(contents(path), QByteArray("not a design"));
  ASSERT_EQ(window_->wearers().unreadable().size(), 1);
  QMenu* menu = window_->actions().wearer;
  menu->popup({});
  bool named = false;
  for (const QAction* a : menu->actions())
    named = named || a->text().contains(QStringLiteral("cannot be read"));
  menu->hide();
  EXPECT_TRUE(named);
  EXPECT_TRUE(document().design().measuredOn.empty());
}

TEST_F(MeasureWearer, oddNamesDoNotCollideOrLeaveTheFolder) {
  Design design = document().design();
  for (const char* name : {"../up", "..%2Fup", "Åsa & co", "a/b"}) {
    design.wearer = name;
    EXPECT_TRUE(window_->wearers().keep(design, QDate(2026, 5, 1))) << name;
  }
  EXPECT_EQ(window_->wearers().wearers().size(), 4);
  EXPECT_EQ(QDir(folder()).entryList(QDir::Files).size(), 4);
  EXPECT_TRUE(window_->wearers().find(QString::fromUtf8("Åsa & co")));
}

} // namespace
} // namespace scye::test
