#include "event_clock.h"

#include <QAbstractButton>
#include <QEvent>
#include <QMetaEnum>
#include <QThread>

#include <ctime>

namespace scye::test {

double EventClock::workedMs() {
  timespec t;
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
  return double(t.tv_sec) * 1e3 + double(t.tv_nsec) / 1e6;
}

bool EventClock::notify(QObject* receiver, QEvent* event) {
  const int loop = thread()->loopLevel();
  if (QThread::currentThread() != thread() || loop >= kLoops || busy_[loop])
    return QApplication::notify(receiver, event);
  const auto type = QMetaEnum::fromType<QEvent::Type>().valueToKey(event->type());
  QString whom = QString::fromLatin1(receiver->metaObject()->className());
  if (const auto* widget = qobject_cast<QWidget*>(receiver))
    if (const QString name = widget->accessibleName(); !name.isEmpty()) whom += u' ' + name;
  if (const auto* button = qobject_cast<QAbstractButton*>(receiver)) whom += u' ' + button->text();
  const int number = event->type();
  busy_[loop] = true;
  within_[loop + 1] = 0;
  const double before = workedMs();
  const bool taken = QApplication::notify(receiver, event);
  const double took = workedMs() - before - within_[loop + 1];
  busy_[loop] = false;
  within_[loop] += took + within_[loop + 1];
  if (took > longest_.ms)
    longest_ = {took, (type ? QString::fromLatin1(type) : QString::number(number)) +
                          QStringLiteral(" for ") + whom};
  return taken;
}

} // namespace scye::test
