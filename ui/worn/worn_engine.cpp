#include "worn/worn_engine.h"

#include "paint/picture_painter.h"
#include "worn/worn_measures.h"
#include "worn/worn_side.h"
#include "worn/worn_words.h"

#include <QElapsedTimer>

namespace scye {
namespace {

constexpr int kFrame = 25; // ms of draping between two pictures

} // namespace

WornEngine::WornEngine(const Phrases& phrases, QObject* parent)
    : QThread(parent), phrases_(phrases) {
  for (auto& side : side_)
    side = std::make_unique<WornSide>();
}

WornEngine::~WornEngine() {
  {
    const std::lock_guard lock(mutex_);
    stop_ = true, ++generation_;
  }
  changed_.notify_all();
  wait();
}

void WornEngine::wish(const WornWish& wish) {
  {
    const std::lock_guard lock(mutex_);
    wish_ = wish, ++generation_;
  }
  changed_.notify_all();
  if (wish.visible && !isRunning()) start(QThread::LowPriority);
}

WornWish WornEngine::newest() const {
  const std::lock_guard lock(mutex_);
  return wish_;
}

bool WornEngine::overtaken(const WornWish& served) const {
  const std::lock_guard lock(mutex_);
  return stop_ || !wish_.visible || wish_.garment != served.garment ||
         wish_.beside != served.beside;
}

bool WornEngine::waitForChange(unsigned seen) {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [&] { return stop_ || generation_ != seen; });
  return !stop_;
}

void WornEngine::run() {
  for (;;) {
    unsigned generation = 0;
    WornWish wish;
    {
      const std::lock_guard lock(mutex_);
      if (stop_) return;
      wish = wish_, generation = generation_;
    }
    const bool idle = !wish.visible || !wish.garment || wish.size.isEmpty();
    if (idle || !goOn(wish))
      if (!waitForChange(generation)) return;
  }
}

// A turn of work; false where nothing is left to do for this wish.
bool WornEngine::goOn(const WornWish& wish) {
  QElapsedTimer sinceFrame;
  sinceFrame.start();
  const auto stopped = [&] {
    if (overtaken(wish)) return true;
    if (sinceFrame.elapsed() > kFrame) { // shown while it is put on
      draw(newest(), 1);
      sinceFrame.restart();
    }
    return false;
  };
  const std::shared_ptr<const Derived> worn[2] = {wish.garment, wish.beside};
  for (int i = 0; i < 2; ++i) {
    if (!worn[i] || side_[i]->garment() == worn[i]) continue;
    if (!side_[i]->take(worn[i], stopped)) return true;
  }
  bool moves = false;
  do {
    moves = false;
    for (int i = 0; i < 2; ++i) {
      if (!worn[i]) continue;
      side_[i]->colourPulls(wish.pulls);
      moves = side_[i]->goOn(wish.arm) || moves;
      moves = side_[i]->moveSleeves(wish.sleevesOff) || moves;
    }
  } while (moves && wish.sleevesOff == 0 && sinceFrame.elapsed() < kFrame);
  const bool turned = wish.view != drawnView_ || wish.named != drawnNamed_ ||
                      wish.size != drawnSize_ || wish.dark != drawnDark_;
  const auto isDrawn = [&](int i) { return !worn[i] || !side_[i]->wears() || side_[i]->isLit(); };
  if (moves || turned) {
    draw(wish, 1);
    return true;
  }
  if (!smooth_ || !isDrawn(0) || !isDrawn(1)) {
    for (int i = 0; i < 2; ++i)
      if (worn[i] && side_[i]->wears() && !side_[i]->isLit()) side_[i]->light();
    draw(wish, 2);
    return true;
  }
  if (spoken_ != wish.garment) {
    speak(wish);
    return true;
  }
  return false;
}

void WornEngine::draw(const WornWish& wish, int samples) {
  WornFrame frame[2];
  const std::shared_ptr<const Derived> worn[2] = {wish.garment, wish.beside};
  for (int i = 0; i < 2; ++i) {
    if (!worn[i] || !side_[i]->wears()) continue;
    const WornScene& scene = side_[i]->scene();
    View view = viewOf(wish.named, side_[i]->body(), scene.extent);
    view.turn += wish.view.turn, view.lift += wish.view.lift, view.zoom *= wish.view.zoom;
    view.lift = std::clamp(view.lift, -60.0, 85.0);
    Drawing drawing;
    drawing.width = wish.size.width(), drawing.height = wish.size.height();
    drawing.samples = samples;
    drawing.palette = wish.dark ? darkPalette() : lightPalette();
    frame[i].image = toImage(scye::drawn(scene, view, drawing, &frame[i].numbers));
  }
  drawnView_ = wish.view, drawnNamed_ = wish.named, drawnSize_ = wish.size;
  drawnDark_ = wish.dark;
  smooth_ = samples > 1;
  Q_EMIT drawn(frame[0], frame[1], smooth_);
}

void WornEngine::speak(const WornWish& wish) {
  const auto stop = [&](const DrapeState&, const BodyForm&) { return overtaken(wish); };
  QString words;
  if (side_[0]->wears()) {
    const auto lift = hemLift(side_[0]->worn().garment, side_[0]->body(), stop);
    if (!lift) return; // overtaken
    std::optional<double> usual;
    const Derived other = derive(withUsualCap(wish.garment->draft.design));
    constexpr double kSameCap = 0.3; // cm
    if (std::abs(other.draft.cap.height - wish.garment->draft.cap.height) > kSameCap)
      if (const auto pattern = wornPattern(other)) {
        usual =
            hemLift(std::make_shared<const SewnGarment>(sewn(*pattern)), side_[0]->body(), stop);
        if (!usual) return;
      }
    words = QString::fromStdString(hemLiftText(*lift, usual, phrases_, wish.unit));
  } else {
    words = QString::fromStdString(phrases_.say("worn.none"));
  }
  spoken_ = wish.garment;
  Q_EMIT said(words);
}

} // namespace scye
