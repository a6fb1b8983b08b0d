// The thread on which the garment is draped and drawn, so that the window never waits. It takes one
// wish at a time, the newest; a newer one stops what is under way. While the page is hidden it
// sleeps. A frame is sent while things move; when they rest, one with smooth edges and the light of
// a room; and last, when nothing is asked for, the words.
#pragma once

#include "garment/derived.h"
#include "worn/raster.h"

#include <QImage>
#include <QString>
#include <QThread>

#include <atomic>
#include <condition_variable>
#include <memory>
#include <mutex>

namespace scye {

struct WornWish {
  // What is worn, and what is shown beside it, if anything.
  std::shared_ptr<const Derived> garment, beside;
  double arm = 0;        // degrees
  double sleevesOff = 0; // cm
  bool pulls = false;
  View view; // as an offset from `named`
  NamedView named = NamedView::Front;
  QSize size; // pixels of each picture
  bool dark = false;
  bool visible = false;
  LengthUnit unit = LengthUnit::Centimetre;
};

struct WornFrame {
  QImage image; // null: nothing can be worn
  std::vector<SeenNumber> numbers;
};

class WornSide;

class WornEngine : public QThread {
  Q_OBJECT
public:
  explicit WornEngine(const Phrases& phrases, QObject* parent = nullptr);
  ~WornEngine() override;

  void wish(const WornWish& wish); // safe on any thread

Q_SIGNALS:
  void drawn(const scye::WornFrame& garment, const scye::WornFrame& beside, bool resting);
  void said(const QString& words);

protected:
  void run() override;

private:
  // A newer wish is there that this work does not serve.
  [[nodiscard]] bool overtaken(const WornWish& served) const;
  [[nodiscard]] WornWish newest() const;
  [[nodiscard]] bool waitForChange(unsigned seen);
  bool goOn(const WornWish& wish);
  void draw(const WornWish& wish, int samples);
  void speak(const WornWish& wish);

  const Phrases& phrases_;
  mutable std::mutex mutex_;
  std::condition_variable changed_;
  WornWish wish_;
  unsigned generation_ = 0;
  bool stop_ = false;

  std::unique_ptr<WornSide> side_[2]; // of the thread
  std::shared_ptr<const Derived> spoken_;
  View drawnView_;
  NamedView drawnNamed_ = NamedView::Front;
  QSize drawnSize_;
  bool drawnDark_ = false, smooth_ = false;
};

} // namespace scye
