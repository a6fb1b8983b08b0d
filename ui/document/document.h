// The design that is open: its value, its history, its file, and what follows from it. Views listen
// to one signal and read what they need; nothing here knows of any view.
//
// Redrafting is gathered to the frame: however many changes come, views hear of a new derived state
// at most every kFrameMs, and at once when a gesture ends. Remedies follow when she has paused for
// kPauseMs.
#pragma once

#include "garment/derived.h"

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>
#include <QUndoStack>

namespace scye {

inline constexpr int kFrameMs = 16, kPauseMs = 120;

class Document : public QObject {
  Q_OBJECT
public:
  struct Event {
    bool design = false;   // the value changed; derived() is still to follow
    bool derived = false;  // a new derived state is there
    bool remedies = false; // its findings have their remedies
    bool file = false;     // path, or whether there is something to save
    bool replaced = false; // another design altogether: forget selections and views
  };

  explicit Document(QObject* parent = nullptr);
  ~Document() override;

  [[nodiscard]] const Design& design() const { return design_; }
  // Never stale: computed now if the timer has not come round to it yet.
  [[nodiscard]] const Derived& derived();
  // Whether views are still to hear of the present design.
  [[nodiscard]] bool remediesFound() const { return !stale_ && remediesFound_; }
  [[nodiscard]] bool isStale() const { return stale_ || frame_.isActive() || pause_.isActive(); }

  // The unit that values are typed in, in which slips are made.
  void setTypedUnit(LengthUnit unit);

  // One undo step. Steps of the same run (see newRun) merge; within a gesture everything is one
  // step.
  void edit(const QString& text, const Design& next, int run = 0);
  [[nodiscard]] int newRun() { return ++lastRun_; }

  // From press to release: changes show at once and enter the history as one step at the end.
  void beginGesture(const QString& text);
  void endGesture();
  void cancelGesture();
  [[nodiscard]] bool inGesture() const { return before_.has_value(); }
  // The garment as it was when the gesture began.
  [[nodiscard]] const GarmentDraft* draftBefore() const { return draftBefore_.get(); }

  void undo(); // during a gesture: gives it up
  void redo();
  [[nodiscard]] const QUndoStack& history() const { return history_; }
  [[nodiscard]] std::optional<Design> designBefore() const; // the last change

  // A design from a file (path) or a new one (empty path), with an empty history.
  void replace(const Design& design, const QString& path, bool modified = false);
  void markSaved(const QString& path);
  // Its file no longer holds it: there is something to save, whatever the history says.
  void markUnsaved();
  [[nodiscard]] const QString& path() const { return path_; }
  [[nodiscard]] QString displayName() const;
  // The same as a file may be called.
  [[nodiscard]] QString suggestedName() const;
  [[nodiscard]] bool isModified() const { return unsavedFromStart_ || !history_.isClean(); }

Q_SIGNALS:
  void changed(const scye::Document::Event& event);

private:
  void apply(const Design& next);
  void flush();
  void findRemedies();

  Design design_;
  LengthUnit typed_ = LengthUnit::Centimetre;
  std::unique_ptr<Derived> derived_;
  bool stale_ = true, remediesFound_ = false;
  QTimer frame_;
  QTimer pause_; // runs until she has paused for long enough
  QElapsedTimer sinceFrame_;

  QUndoStack history_;
  int lastRun_ = 0;
  std::optional<Design> before_;
  std::unique_ptr<GarmentDraft> draftBefore_;
  QString gestureText_;

  QString path_;
  bool unsavedFromStart_ = false;
};

} // namespace scye
