#include "export/export_queue.h"

#include <QElapsedTimer>

namespace scye {

void ExportQueue::add(const QString& what, Work work) {
  queue_.push_back({what, std::move(work)});
  if (queue_.size() == 1) begin();
}

void ExportQueue::add(OutputId output, const QString& path, Document& document,
                      const Wording& wording, const ExportOptions& page) {
  add(path, [present = document.present(), output, path, wording, page](const GoOn& goOn) {
    const auto derived = present();
    OutputJob job{*derived, wording, page};
    job.page.goOn = goOn;
    job.date = today();
    return exportOutput(output, job, path);
  });
}

void ExportQueue::cancel() {
  beside_.askToStop();
}

void ExportQueue::begin() {
  beside_.start([this, item = queue_.front()](const std::stop_token& stop) {
    QElapsedTimer since;
    since.start();
    qint64 told = 0;
    const GoOn goOn = [&](double share) {
      if (const qint64 now = since.elapsed(); now - told >= kTellMs) {
        told = now;
        QMetaObject::invokeMethod(
            this, [this, what = item.what, share] { Q_EMIT progressed(what, share); },
            Qt::QueuedConnection);
      }
      return !stop.stop_requested();
    };
    const std::optional<QString> problem = item.work(goOn);
    QMetaObject::invokeMethod(
        this, [this, problem, given = stop.stop_requested()] { end(problem, given); },
        Qt::QueuedConnection);
  });
}

void ExportQueue::end(const std::optional<QString>& problem, bool given) {
  const QString what = queue_.front().what;
  queue_.pop_front();
  if (!queue_.empty()) begin();
  if (!problem)
    Q_EMIT made(what);
  else if (given)
    Q_EMIT cancelled(what);
  else
    Q_EMIT failed(*problem);
}

} // namespace scye
