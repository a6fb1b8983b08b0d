#include "document/wait_beside.h"

#include <QEventLoop>

#include <thread>

namespace scye {

void waitBeside(const std::function<void()>& work) {
  QEventLoop loop;
  // A thread of its own: nothing else is to wait for the same disk.
  const std::jthread beside([&] {
    work();
    // Posted: it may come before the loop runs.
    QMetaObject::invokeMethod(&loop, &QEventLoop::quit, Qt::QueuedConnection);
  });
  loop.exec(QEventLoop::ExcludeUserInputEvents);
}

} // namespace scye
