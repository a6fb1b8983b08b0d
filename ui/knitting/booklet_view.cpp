#include "knitting/booklet_view.h"

#include "export/sheet_painter.h"

#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr int kNeighbours = 1; // pages painted beyond those that are seen
constexpr int kKept = 6;       // pages away from them, of which the picture is kept

QImage imageOf(const Sheet& sheet, const QSize& dots, double ratio) {
  QImage image(dots, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  paintSheet(painter, sheet, dots.width() / sheet.size.x());
  painter.end();
  image.setDevicePixelRatio(ratio);
  return image;
}

} // namespace

BookletView::BookletView(QWidget* parent) : QAbstractScrollArea(parent) {
  setFrameShape(QFrame::NoFrame);
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("Booklet"));
  viewport()->setBackgroundRole(QPalette::Mid);
  viewport()->setAutoFillBackground(true);
}

void BookletView::setPages(Pages pages, const QString& message) {
  const int before = page();
  pages_ = std::move(pages);
  message_ = message;
  arrange();
  if (pageCount() > 0 && page() != before) showPage(std::min(before, pageCount() - 1));
  Q_EMIT pageMoved();
}

// Of a page that stands upright: as wide as on paper, or as there is room.
QSize BookletView::pageSize() const {
  if (pageCount() == 0) return {};
  const Vec2& paper = pages_->front().size;
  const double room = std::max(1, viewport()->width() - 2 * gap());
  const double wide = std::min(room, paper.x() * logicalDpiX() / kMmPerInch);
  return QSize(int(wide), int(std::lround(wide * paper.y() / paper.x())));
}

int BookletView::gap() const {
  return fontMetrics().height() / 2;
}

int BookletView::columns() const {
  const int fit = (viewport()->width() - gap()) / std::max(1, pageSize().width() + gap());
  return std::clamp(fit, 1, std::max(1, pageCount()));
}

// One that lies across is as wide as the others are.
QSize BookletView::sizeOf(int page) const {
  const QSize upright = pageSize();
  const Vec2& paper = (*pages_)[std::size_t(page)].size;
  if (paper.x() <= paper.y()) return upright;
  return {upright.width(), int(std::lround(upright.width() * paper.y() / paper.x()))};
}

QRect BookletView::placeOf(int page) const {
  const QSize size = pageSize();
  const int in = columns(), wide = in * (size.width() + gap()) - gap();
  const int left = std::max(0, (viewport()->width() - wide) / 2);
  return {QPoint(left + page % in * (size.width() + gap()),
                 gap() + page / in * (size.height() + gap()) - verticalScrollBar()->value()),
          sizeOf(page)};
}

// From the first to behind the last.
std::pair<int, int> BookletView::seen() const {
  int first = 0, last = 0;
  for (int i = 0; i < pageCount(); ++i) {
    const QRect place = placeOf(i);
    if (place.bottom() < 0) first = i + 1;
    if (place.top() < viewport()->height()) last = i + 1;
  }
  return {std::min(first, last), last};
}

int BookletView::page() const {
  return seen().first;
}

void BookletView::showPage(int page) {
  verticalScrollBar()->setValue(verticalScrollBar()->value() + placeOf(page).top() - gap());
}

bool BookletView::isPainted() const {
  const auto [first, last] = seen();
  for (int i = first; i < last; ++i)
    if (!images_.contains(i)) return false;
  return true;
}

void BookletView::arrange() {
  ++version_;
  images_.clear();
  QScrollBar& bar = *verticalScrollBar();
  const QSize size = pageSize();
  const int rows = (pageCount() + columns() - 1) / columns();
  const int high = gap() + rows * (size.height() + gap());
  bar.setRange(0, std::max(0, high - viewport()->height()));
  bar.setPageStep(viewport()->height());
  bar.setSingleStep(3 * fontMetrics().height());
  viewport()->update();
  paintSoon();
}

void BookletView::paintSoon() {
  if (!isVisible() || pageCount() == 0) return;
  const auto [first, last] = seen();
  images_.removeIf(
      [&](const auto& kept) { return kept.key() < first - kKept || kept.key() >= last + kKept; });
  std::vector<int> wanted;
  for (int i = first; i < last; ++i)
    if (!images_.contains(i)) wanted.push_back(i);
  for (int i : {first - kNeighbours, last + kNeighbours - 1})
    if (i >= 0 && i < pageCount() && !images_.contains(i)) wanted.push_back(i);
  if (wanted.empty()) return;
  const double ratio = devicePixelRatioF();
  std::vector<std::pair<int, QSize>> dots;
  for (const int page : wanted)
    dots.emplace_back(page, (QSizeF(sizeOf(page)) * ratio).toSize());
  beside_.start(
      [this, pages = pages_, dots, version = version_, ratio](const std::stop_token& stop) {
        for (const auto& [page, size] : dots) {
          if (stop.stop_requested()) return;
          const QImage image = imageOf((*pages)[std::size_t(page)], size, ratio);
          QMetaObject::invokeMethod(
              this, [this, version, page = page, image] { take(version, page, image); },
              Qt::QueuedConnection);
        }
      });
}

void BookletView::take(quint64 version, int page, const QImage& image) {
  if (version != version_) return;
  images_.insert(page, image);
  viewport()->update(placeOf(page));
  Q_EMIT painted();
}

void BookletView::paintEvent(QPaintEvent* event) {
  QPainter painter(viewport());
  if (pageCount() == 0) {
    painter.setPen(palette().color(QPalette::WindowText));
    painter.drawText(viewport()->rect().adjusted(gap(), gap(), -gap(), -gap()),
                     int(Qt::AlignCenter) | int(Qt::TextWordWrap), message_);
    return;
  }
  const auto [first, last] = seen();
  for (int i = first; i < last; ++i) {
    const QRect place = placeOf(i);
    if (!place.intersects(event->rect())) continue;
    const auto image = images_.constFind(i);
    if (image == images_.constEnd())
      painter.fillRect(place, Qt::white);
    else
      painter.drawImage(place.topLeft(), *image);
  }
}

void BookletView::resizeEvent(QResizeEvent* event) {
  QAbstractScrollArea::resizeEvent(event);
  const int before = page();
  arrange();
  if (pageCount() > 0 && page() != before) showPage(before);
}

void BookletView::scrollContentsBy(int, int) {
  viewport()->update();
  paintSoon();
  Q_EMIT pageMoved();
}

void BookletView::showEvent(QShowEvent* event) {
  QAbstractScrollArea::showEvent(event);
  paintSoon();
}

} // namespace scye
