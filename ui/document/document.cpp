#include "document/document.h"

#include "document/design_command.h"
#include "model/plain_text.h"

#include <QFileInfo>

namespace scye {

Document::Document(QObject* parent)
    : QObject(parent), derived_(std::make_shared<Derived>(derive(design_, typed_))),
      bare_(derived_->findings) {
  frame_.setSingleShot(true);
  frame_.setTimerType(Qt::PreciseTimer);
  connect(&frame_, &QTimer::timeout, this, &Document::flush);
  pause_.setSingleShot(true);
  pause_.setInterval(kPauseMs);
  connect(&pause_, &QTimer::timeout, this, &Document::findRemedies);
  found_.setSingleShot(true);
  found_.setInterval(2 * kFrameMs);
  connect(&found_, &QTimer::timeout, this, [this] { Q_EMIT changed({.remedies = true}); });
  connect(&history_, &QUndoStack::cleanChanged, this, [this] { Q_EMIT changed({.file = true}); });
}

Document::~Document() {
  history_.disconnect(this);
}

// A new version, which the derived state lags behind until it is drafted.
void Document::changeTo(const Design& next) {
  stopSearch();
  design_ = next;
  draft_.reset();
  ++version_;
  stale_ = true;
}

void Document::startRedraft() {
  redraft_.start([this, design = design_, typed = typed_, work = work_,
                  version = version_](const std::stop_token&) {
    QElapsedTimer took;
    took.start();
    auto derived = std::make_shared<Derived>(derive(design, typed, work));
    {
      const std::lock_guard lock(ready_.mutex);
      ready_.version = version;
      ready_.derived = std::move(derived);
      ready_.ms = double(took.nsecsElapsed()) / 1e6;
    }
    QMetaObject::invokeMethod(this, &Document::onReady, Qt::QueuedConnection);
  });
}

void Document::take() {
  const std::lock_guard lock(ready_.mutex);
  if (!ready_.derived) return;
  derived_ = std::move(ready_.derived);
  bare_ = derived_->findings;
  shown_ = ready_.version;
  slow_ = ready_.ms > double(patience_.count());
  stale_ = shown_ != version_;
  // Plans follow a change that reaches no worked row; not while it is still in hand.
  if (!stale_ && !inGesture()) work_ = withPlans(std::move(work_), derived_->work);
}

// Once a version only, so that what was asked for stays as it is until the next event.
const Derived& Document::derived() {
  if (stale_ && std::exchange(begun_, version_) != version_) {
    startRedraft();
    // After a slow one nothing is waited for until one is quick again.
    if (!slow_) redraft_.finished(patience_);
    take();
  }
  return *derived_;
}

const GarmentDraft& Document::draft() {
  if (const Derived& d = derived(); !stale_) return d.draft;
  if (!draft_) draft_ = draftGarment(design_);
  return *draft_;
}

Document::Present Document::present() {
  (void)derived();
  if (!stale_) return [ready = std::shared_ptr<const Derived>(derived_)] { return ready; };
  return [design = design_, typed = typed_, work = work_] {
    return std::make_shared<const Derived>(derive(design, typed, work));
  };
}

void Document::setTypedUnit(LengthUnit unit) {
  if (unit == typed_) return;
  typed_ = unit;
  changeTo(design_);
  flush();
}

void Document::flush() {
  frame_.stop();
  sinceFrame_.start();
  (void)derived();
  if (!stale_ || told_ != shown_) tellViews();
}

void Document::tellViews() {
  told_ = shown_;
  if (!inGesture() && !stale_ && search_ == Search::Awaited) pause_.start();
  Q_EMIT changed({.derived = true, .replaced = std::exchange(replacedUntold_, false)});
}

void Document::onReady() {
  take();
  if (told_ != shown_ && !frame_.isActive()) tellViews();
}

void Document::findRemedies() {
  if (inGesture() || stale_)
    return; // the end of the gesture, or the next frame, starts the pause anew
  search_ = Search::Runs;
  remedies_.start([this, design = design_, typed = typed_, sizes = derived_->draft.sizes,
                   findings = bare_, version = version_](const std::stop_token& stop) mutable {
    const auto post = [this](auto what) {
      QMetaObject::invokeMethod(this, std::move(what), Qt::QueuedConnection);
    };
    const RemedyWatch watch{.stop = stop,
                            .seconds = cpuSeconds,
                            .found = [&](std::size_t finding, const std::vector<Remedy>& remedies) {
                              post([=, this] { onRemedies(version, finding, remedies); });
                            }};
    const bool all = addRemedies(design, sizes, remedyChain(design, typed), findings, watch);
    post([=, this] { onSearched(version, all); });
  });
}

void Document::stopSearch() {
  pause_.stop();
  found_.stop();
  remedies_.stop();
  search_ = Search::Awaited;
}

void Document::onRemedies(quint64 version, std::size_t finding,
                          const std::vector<Remedy>& remedies) {
  if (version != version_ || search_ != Search::Runs) return;
  derived_->findings[finding].remedies = remedies;
  if (!found_.isActive()) found_.start();
}

void Document::onSearched(quint64 version, bool all) {
  if (version != version_ || search_ != Search::Runs) return;
  found_.stop();
  search_ = Search::Over;
  givenUp_ = !all;
  Q_EMIT changed({.remedies = true});
}

void Document::apply(const Design& next) {
  if (next == design_) return;
  changeTo(next);
  Q_EMIT changed({.design = true});
  if (frame_.isActive()) return;
  const qint64 since = sinceFrame_.isValid() ? sinceFrame_.elapsed() : kFrameMs;
  frame_.start(int(std::clamp<qint64>(kFrameMs - since, 0, kFrameMs)));
}

void Document::edit(const QString& text, const Design& next, int run) {
  if (next == design_) return;
  if (inGesture()) {
    apply(next);
    return;
  }
  history_.push(new DesignCommand(text, design_, next, run, [this](const Design& d) { apply(d); }));
}

void Document::beginGesture(const QString& text) {
  if (inGesture()) endGesture();
  if (search_ != Search::Over) stopSearch(); // the end of the gesture has it begin anew
  draftBefore_ = std::make_unique<GarmentDraft>(draft());
  before_ = design_;
  gestureText_ = text;
}

void Document::endGesture() {
  if (!inGesture()) return;
  const Design before = *std::exchange(before_, std::nullopt);
  draftBefore_.reset();
  if (before != design_)
    history_.push(
        new DesignCommand(gestureText_, before, design_, 0, [this](const Design& d) { apply(d); }));
  flush();
}

void Document::cancelGesture() {
  if (!inGesture()) return;
  const Design before = *std::exchange(before_, std::nullopt);
  draftBefore_.reset();
  apply(before);
  flush();
}

void Document::undo() {
  if (inGesture()) {
    cancelGesture();
    return;
  }
  history_.undo();
  flush();
}

std::optional<Design> Document::designBefore() const {
  const auto* last =
      static_cast<const DesignCommand*>(history_.command(history_.index() - 1)); // 0: none
  return last ? std::optional(last->before()) : std::nullopt;
}

void Document::redo() {
  endGesture();
  history_.redo();
  flush();
}

void Document::replace(const Design& design, const QString& path, bool modified, const Work& work) {
  before_.reset();
  draftBefore_.reset();
  history_.clear();
  saved_ = design;
  path_ = path;
  unsavedFromStart_ = modified;
  const bool same = !stale_ && design == design_ && work == work_;
  work_ = work;
  if (same)
    stopSearch();
  else
    changeTo(design);
  frame_.stop();
  sinceFrame_.start();
  slow_ = false; // of another design nothing is known
  (void)derived();
  replacedUntold_ = stale_;
  if (!stale_) told_ = shown_, pause_.start(); // it is drawn before its remedies are looked for
  Q_EMIT changed({.design = true, .derived = !stale_, .file = true, .replaced = true});
}

void Document::markSaved(const QString& path) {
  path_ = path;
  saved_ = design_;
  unsavedFromStart_ = false;
  history_.setClean();
  Q_EMIT changed({.file = true});
}

void Document::setWork(const Work& next) {
  if (next == work_) return;
  const bool planned = !samePlans(next, work_) || !derived_->conflicts.empty();
  work_ = next;
  if (path_.isEmpty()) markUnsaved(); // what has a file is kept there at once
  if (planned) changeTo(design_);
  Q_EMIT changed({.work = true});
  if (planned) flush();
}

void Document::markUnsaved() {
  if (unsavedFromStart_) return;
  unsavedFromStart_ = true;
  Q_EMIT changed({.file = true});
}

QString Document::suggestedName() const {
  QString name = QString::fromStdString(plainLine(displayName().toStdString())).simplified();
  name.replace(u'/', u'-').replace(QChar(QChar::ReplacementCharacter), u'-');
  while (name.startsWith(u'.'))
    name.remove(0, 1);
  constexpr qsizetype kLongest = 60; // letters, of at most four bytes
  return name.isEmpty() ? tr("New design") : name.left(kLongest);
}

QString Document::displayName() const {
  if (!path_.isEmpty()) return QFileInfo(path_).completeBaseName();
  if (!design_.title.empty()) return QString::fromStdString(design_.title);
  return tr("New design");
}

} // namespace scye
