// How long the window's thread works at one event, in its own CPU time: what others do on the
// machine does not count.
#pragma once

#include <QApplication>
#include <QString>

#include <array>

namespace scye::test {

class EventClock : public QApplication {
public:
  using QApplication::QApplication;

  bool notify(QObject* receiver, QEvent* event) override;

  struct Longest {
    double ms = 0;
    QString what; // type of the event and of whom it was for
  };
  [[nodiscard]] const Longest& longest() const { return longest_; }
  void forget() { longest_ = {}; }
  [[nodiscard]] static EventClock& instance() { return *static_cast<EventClock*>(qApp); }
  // That the calling thread has worked so far.
  [[nodiscard]] static double workedMs();

private:
  static constexpr int kLoops = 16; // of dialogs over dialogs
  // By depth of event loops: events sent from within another are part of it, those of a dialog's
  // loop are not.
  std::array<bool, kLoops> busy_{};
  std::array<double, kLoops + 1> within_{}; // ms that events of deeper loops took
  Longest longest_;
};

} // namespace scye::test
