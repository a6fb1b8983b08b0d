#include "shell/file_notices.h"

#include "document/design_store.h"
#include "shell/banner.h"

#include <QFileInfo>
#include <QLocale>

namespace scye {

FileNotices::FileNotices(Document& document, FileWatch& watch, FileKeeper& files,
                         Recovery& recovery, Settings& settings, Banner& banner, QObject* parent)
    : QObject(parent), document_(document), watch_(watch), files_(files), recovery_(recovery),
      banner_(banner), phrases_(settings.phrases()) {
  connect(&watch_, &FileWatch::changed, this, &FileNotices::onDisk);
  connect(&recovery_, &Recovery::failed, this, [this](const QString& reason) {
    banner_.say(Severity::Warning, tr("No copy of your unsaved work can be kept."),
                tr("Save it soon, perhaps in another place. Reason: %1").arg(reason));
  });
  connect(&settings, &Settings::failed, this, [this](const QString& reason) {
    banner_.say(Severity::Note, tr("Your settings could not be kept."), reason);
  });
}

QString FileNotices::nameOf(const Recovery::Copy& copy) const {
  if (!copy.original.isEmpty()) return QFileInfo(copy.original).fileName();
  const auto read = readDesign(copy.file, phrases_);
  const auto* design = std::get_if<Design>(&read);
  return design && !design->title.empty() ? QString::fromStdString(design->title)
                                          : tr("a design that was never saved");
}

void FileNotices::offerAgain() {
  if (offering_) offerRecovered();
}

void FileNotices::offerRecovered() {
  const QList<Recovery::Copy> copies = recovery_.leftBehind();
  offering_ = !copies.isEmpty();
  if (!offering_) return;
  const Recovery::Copy& copy = copies.front();
  const QString when = QLocale().toString(copy.when, QLocale::ShortFormat);
  const QString more =
      copies.size() > 1 ? tr(" So were %n more.", nullptr, int(copies.size()) - 1) : QString();
  banner_.say(Severity::Warning, tr("The program ended before %1 was saved.").arg(nameOf(copy)),
              tr("A copy of it, of %1, was kept.").arg(when) + more,
              {{tr("Open the copy"), [this, copy] { open(copy); }},
               {tr("Throw it away"), [this, copy] { throwAway(copy); }},
               {tr("Later"), [this] { offering_ = false; }}});
}

void FileNotices::open(const Recovery::Copy& copy) {
  offering_ = false; // while it is being opened
  // Until it is safe in a copy of this program's own, what was left behind stays.
  if (files_.openRecovered(copy)) {
    if (recovery_.writeNow()) recovery_.discard(copy);
    offerRecovered();
    if (!offering_) watch_.look(); // its file may have changed since
  } else if (QFileInfo::exists(copy.file) &&
             std::holds_alternative<Design>(readDesign(copy.file, phrases_))) {
    offerRecovered(); // whoever asked would rather stay
  }
}

void FileNotices::throwAway(const Recovery::Copy& copy) {
  if (files_.asking().mayThrowAway(nameOf(copy))) recovery_.discard(copy);
  offerRecovered();
}

void FileNotices::onDisk(FileWatch::State state) {
  const QString name = QFileInfo(watch_.path()).fileName();
  if (state == FileWatch::State::Same) {
    if (!saidOfDisk_.isEmpty() && banner_.text() == saidOfDisk_) banner_.dismiss();
    return;
  }
  // What is on the screen now stands nowhere else.
  document_.markUnsaved();
  const Banner::Offer other{tr("Save under another name…"), [this] { files_.saveAs(); }};
  if (state == FileWatch::State::Gone)
    banner_.say(Severity::Warning, tr("%1 is no longer there.").arg(name),
                tr("It was moved, renamed or removed; the design is still here."),
                {{tr("Save it again"), [this] { files_.save(); }}, other});
  else
    banner_.say(Severity::Warning, tr("%1 has changed on the disk.").arg(name),
                tr("Another program or window has written it. What is here is as you left it."),
                {{tr("Read the file"), [this] { files_.readOther(); }},
                 {tr("Keep mine"), [this] { files_.keepMine(); }},
                 other});
  saidOfDisk_ = banner_.text();
}

} // namespace scye
