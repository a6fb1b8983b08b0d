// What the banner tells of files without having been asked: copies that a program which ended badly
// left behind, a file that changed on the disk, a copy or a preference that could not be kept.
#pragma once

#include "document/recovery.h"
#include "shell/file_keeper.h"

namespace scye {

class Banner;

class FileNotices : public QObject {
  Q_OBJECT
public:
  FileNotices(Document& document, FileWatch& watch, FileKeeper& files, Recovery& recovery,
              Settings& settings, Banner& banner, QObject* parent = nullptr);

  // One after the other, until each is opened, thrown away or left for later.
  void offerRecovered();
  // Again, where the offer had to make room for something else.
  void offerAgain();

private:
  void open(const Recovery::Copy& copy);
  void throwAway(const Recovery::Copy& copy);
  [[nodiscard]] QString nameOf(const Recovery::Copy& copy) const;
  void onDisk(FileWatch::State state);

  Document& document_;
  FileWatch& watch_;
  FileKeeper& files_;
  Recovery& recovery_;
  Banner& banner_;
  const Phrases& phrases_;
  bool offering_ = false;
  QString saidOfDisk_;
};

} // namespace scye
