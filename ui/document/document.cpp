#include "document/document.h"

#include "document/design_command.h"
#include "model/plain_text.h"

#include <QFileInfo>

namespace scye {

Document::Document(QObject* parent) : QObject(parent) {
  frame_.setSingleShot(true);
  frame_.setTimerType(Qt::PreciseTimer);
  connect(&frame_, &QTimer::timeout, this, &Document::flush);
  pause_.setSingleShot(true);
  pause_.setInterval(kPauseMs);
  connect(&pause_, &QTimer::timeout, this, &Document::findRemedies);
  connect(&history_, &QUndoStack::cleanChanged, this, [this] { Q_EMIT changed({.file = true}); });
}

Document::~Document() {
  history_.disconnect(this);
}

const Derived& Document::derived() {
  if (stale_) {
    derived_ = std::make_unique<Derived>(derive(design_, typed_));
    stale_ = false;
    remediesFound_ = false;
  }
  return *derived_;
}

void Document::setTypedUnit(LengthUnit unit) {
  if (unit == typed_) return;
  typed_ = unit;
  stale_ = true;
  flush();
}

void Document::flush() {
  frame_.stop();
  sinceFrame_.start();
  (void)derived();
  if (!inGesture()) pause_.start();
  Q_EMIT changed({.derived = true});
}

void Document::findRemedies() {
  if (inGesture() || stale_)
    return; // the end of the gesture, or the next frame, starts the pause anew
  deriveRemedies(design_, *derived_);
  remediesFound_ = true;
  Q_EMIT changed({.remedies = true});
}

void Document::apply(const Design& next) {
  if (next == design_) return;
  design_ = next;
  stale_ = true;
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
  draftBefore_ = std::make_unique<GarmentDraft>(derived().draft);
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

void Document::replace(const Design& design, const QString& path, bool modified) {
  before_.reset();
  draftBefore_.reset();
  history_.clear();
  design_ = design;
  path_ = path;
  unsavedFromStart_ = modified;
  stale_ = true;
  frame_.stop();
  sinceFrame_.start();
  (void)derived();
  pause_.start(); // a design is on the drawing table before its remedies are looked for
  Q_EMIT changed({.design = true, .derived = true, .file = true, .replaced = true});
}

void Document::markSaved(const QString& path) {
  path_ = path;
  unsavedFromStart_ = false;
  history_.setClean();
  Q_EMIT changed({.file = true});
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
