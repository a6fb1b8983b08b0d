// The one undoable change: from one design to another. Steps of the same run (arrow keys held on
// one value) become one entry; an entry that changes nothing vanishes.
#pragma once

#include "model/design.h"

#include <QUndoCommand>

#include <functional>

namespace scye {

class DesignCommand : public QUndoCommand {
public:
  using Apply = std::function<void(const Design&)>;

  // `run` 0 never merges.
  DesignCommand(const QString& text, Design before, Design after, int run, Apply apply)
      : QUndoCommand(text), before_(std::move(before)), after_(std::move(after)), run_(run),
        apply_(std::move(apply)) {}

  void undo() override { apply_(before_); }
  void redo() override { apply_(after_); }
  [[nodiscard]] int id() const override { return run_ == 0 ? -1 : 1; }
  bool mergeWith(const QUndoCommand* other) override {
    const auto* next = static_cast<const DesignCommand*>(other);
    if (next->run_ != run_) return false;
    after_ = next->after_;
    setObsolete(before_ == after_);
    return true;
  }

  [[nodiscard]] const Design& before() const { return before_; }

private:
  Design before_, after_;
  int run_;
  Apply apply_;
};

} // namespace scye
