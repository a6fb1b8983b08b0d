// The program killed while somebody knits by it.
#include "document/design_store.h"
#include "window_fixture.h"

#include <QProcess>
#include <QRandomGenerator>
#include <QTest>

namespace scye::test {
namespace {

// Whatever ends it, the design's file is whole, and has the place but for the last row at most.
TEST(PlaceKilled, NothingButTheLastRowIsLost) {
  constexpr int kRounds = 12;
  constexpr int kStart = 60000; // ms, on a machine at work
  const QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("knitted.scye"));
  ASSERT_TRUE(QFile::copy(demoFile(), file));
  QFile(file).setPermissions(QFile::ReadOwner | QFile::WriteOwner);
  QRandomGenerator random(20261127);
  int reached = 0;
  for (int round = 0; round < kRounds; ++round) {
    QProcess knitter;
    knitter.start(QStringLiteral(SCYE_KNITS_ON), {file});
    ASSERT_TRUE(knitter.waitForReadyRead(kStart)) << knitter.errorString().toStdString();
    QTest::qWait(random.bounded(900));
    knitter.kill();
    ASSERT_TRUE(knitter.waitForFinished());
    const QList<QByteArray> told = knitter.readAllStandardOutput().trimmed().split('\n');
    const int last = told.last().toInt();
    ASSERT_GT(last, reached);
    Work work;
    const auto read = designOf(readDesignText(file), builtinPhrases(), &work);
    ASSERT_TRUE(std::holds_alternative<Design>(read)) << "round " << round;
    const PieceWork* back = work.find(PieceId::Back);
    ASSERT_TRUE(back) << "round " << round;
    EXPECT_GE(back->worked, last - 1) << "round " << round;
    EXPECT_LE(back->worked, last + 1) << "round " << round;
    reached = std::max(0, back->worked - 1);
  }
  EXPECT_GT(reached, kRounds);
}

} // namespace
} // namespace scye::test
