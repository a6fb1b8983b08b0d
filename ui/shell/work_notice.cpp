#include "shell/work_notice.h"

#include "progress/progress_words.h"
#include "shell/banner.h"

namespace scye {

WorkNotice::WorkNotice(Document& document, Settings& settings, Banner& banner,
                       std::function<void()> settle, QObject* parent)
    : QObject(parent), document_(document), settings_(settings), banner_(banner),
      settle_(std::move(settle)) {
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.replaced) {
      // The window that opens it takes down what was said of the one before.
      said_.clear();
      QMetaObject::invokeMethod(this, &WorkNotice::look, Qt::QueuedConnection);
    } else if (event.derived && !document_.inGesture()) {
      look();
    }
  });
}

void WorkNotice::look() {
  QStringList lines;
  for (const WorkedConflict& conflict : document_.derived().conflicts)
    lines.append(QString::fromStdString(conflictText(conflict, settings_.phrases())));
  const QString text = lines.join(u' ');
  if (text == said_) return;
  said_ = text;
  if (text.isEmpty()) {
    if (!bannerText_.isEmpty() && banner_.text() == bannerText_) banner_.dismiss();
    return;
  }
  QList<Banner::Offer> offers;
  if (document_.history().canUndo())
    offers.append({tr("Take the change back"), [this] { document_.undo(); }});
  offers.append({tr("Keep, or rip back…"), settle_});
  banner_.say(Severity::Warning, tr("This reaches rows that are knitted. They stay as they are."),
              text, offers);
  bannerText_ = banner_.text();
}

} // namespace scye
