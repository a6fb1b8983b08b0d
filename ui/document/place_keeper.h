// Keeps the place, and all else that is noted while the needles are going, in the design's file at
// every step: beside the window, whole or not at all. The file then holds the design as it was
// saved last and the work as it is now. A file that somebody else has written since is left alone;
// the work is then unsaved, as the design is, and goes into the recovery copy.
#pragma once

#include "document/document.h"
#include "document/file_watch.h"
#include "document/file_writer.h"

#include <atomic>

namespace scye {

class PlaceKeeper : public QObject {
  Q_OBJECT
public:
  PlaceKeeper(Document& document, FileWatch& watch, const Phrases& phrases,
              QObject* parent = nullptr);
  ~PlaceKeeper() override; // what was noted is written

  void wait() { writer_.wait(); } // until all that was noted is written

Q_SIGNALS:
  void failed(const QString& reason); // the place is only in the recovery copy

private:
  void write();

  Document& document_;
  FileWatch& watch_;
  const Phrases& phrases_;
  std::atomic<quint64> newest_ = 0; // older texts need not be written any more
  QByteArray written_;              // on the writer's thread: what was written last
  FileWriter writer_;               // last: what it still does needs the others
};

} // namespace scye
