// The design that is open: its value, its history, its file, and what follows from it. Views listen
// to one signal and read what they need; nothing here knows of any view.
//
// Redrafting is gathered to the frame: however many changes come, views hear of a new derived state
// at most every kFrameMs, and at once when a gesture ends. It runs on a thread of its own; one that
// is ready within kWaitMs is shown at once, as nearly all are, and while a longer one runs the last
// stays in view. Remedies follow when the editing has paused for kPauseMs, on another thread, told
// as they are found; the next edit stops the search.
#pragma once

#include "document/beside.h"
#include "garment/derived.h"

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>
#include <QUndoStack>

#include <memory>
#include <mutex>

namespace scye {

inline constexpr int kFrameMs = 16, kPauseMs = 120, kWaitMs = 20;

class Document : public QObject {
  Q_OBJECT
public:
  struct Event {
    bool design = false;   // the value changed; derived() is still to follow
    bool derived = false;  // a new derived state is there
    bool remedies = false; // its findings have more remedies, or all of them
    bool file = false;     // path, or whether there is something to save
    bool work = false;     // the place, what was measured, planned, noted
    bool replaced = false; // another design altogether: forget selections and views
  };

  explicit Document(QObject* parent = nullptr);
  ~Document() override;

  [[nodiscard]] const Design& design() const { return design_; }
  // Of the present design; or, while its redraft takes long, of the last that is ready.
  [[nodiscard]] const Derived& derived();
  // How long derived() waits for a redraft: kWaitMs, or longer where nobody watches.
  void setPatience(std::chrono::milliseconds patience) { patience_ = patience; }
  // Of the present design at any time: a draft alone is quick.
  [[nodiscard]] const GarmentDraft& draft();
  // What has been knitted of it; no part of the history.
  [[nodiscard]] const Work& work() const { return work_; }
  void setWork(const Work& next);
  // The design as its file has it.
  [[nodiscard]] const Design& savedDesign() const { return saved_; }
  // For work beside the window: may be called on any thread, there works out what is not ready yet.
  // What it gives is read without its findings, which change as remedies are found.
  using Present = std::function<std::shared_ptr<const Derived>()>;
  [[nodiscard]] Present present();
  // All remedies of the present design are there, as far as they were looked for in the time.
  [[nodiscard]] bool remediesFound() const { return !stale_ && search_ == Search::Over; }
  [[nodiscard]] bool remediesGivenUp() const { return remediesFound() && givenUp_; }
  // Whether views are still to hear of the present design.
  [[nodiscard]] bool isStale() const {
    return stale_ || frame_.isActive() || pause_.isActive() || search_ == Search::Runs;
  }

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
  void replace(const Design& design, const QString& path, bool modified = false,
               const Work& work = {});
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
  enum class Search { Awaited, Runs, Over };
  // What the redrafting thread hands over.
  struct Ready {
    std::mutex mutex;
    quint64 version = 0;
    std::shared_ptr<Derived> derived;
    double ms = 0; // that it took
  };

  void changeTo(const Design& next);
  void apply(const Design& next);
  void flush();
  void startRedraft();
  void take();      // what is ready
  void tellViews(); // of what has been taken
  void onReady();
  void findRemedies();
  void stopSearch();
  void onRemedies(quint64 version, std::size_t finding, const std::vector<Remedy>& remedies);
  void onSearched(quint64 version, bool all);

  Design design_, saved_;
  Work work_;
  LengthUnit typed_ = LengthUnit::Centimetre;
  // Versions of design and unit: the present one, the last that was begun to be drafted, the one in
  // derived_, the one views have heard of.
  quint64 version_ = 0, begun_ = 0, shown_ = 0, told_ = 0;
  std::shared_ptr<Derived> derived_;
  std::optional<GarmentDraft> draft_; // of the present design, while derived_ lags behind
  std::chrono::milliseconds patience_{kWaitMs};
  bool stale_ = false, slow_ = false, replacedUntold_ = false;
  Search search_ = Search::Awaited;
  Findings bare_; // as they were before remedies were looked for
  bool givenUp_ = false;
  Ready ready_;
  QTimer frame_;
  QTimer found_; // gathers remedies that come close on one another
  QTimer pause_; // runs until the editing has paused for long enough
  QElapsedTimer sinceFrame_;

  QUndoStack history_;
  int lastRun_ = 0;
  std::optional<Design> before_;
  std::unique_ptr<GarmentDraft> draftBefore_;
  QString gestureText_;

  QString path_;
  bool unsavedFromStart_ = false;

  Beside redraft_, remedies_; // last: their threads end before what they hand over to
};

} // namespace scye
