#include "knitting/conflict_box.h"

#include "io/outputs.h"
#include "progress/diary.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace scye {

ConflictBox::ConflictBox(Document& document, Settings& settings, QWidget* parent)
    : QWidget(parent), document_(document), settings_(settings), rows_(new QVBoxLayout(this)) {
  rows_->setContentsMargins({});
  hide();
}

void ConflictBox::refresh() {
  while (QLayoutItem* item = rows_->takeAt(0)) {
    item->widget()->hide(); // it may be the one that is being pressed
    item->widget()->deleteLater();
    delete item;
  }
  const std::vector<WorkedConflict>& all = document_.derived().conflicts;
  for (const WorkedConflict& conflict : all)
    addRow(conflict);
  setEnabled(true);
  setVisible(!all.empty());
}

void ConflictBox::addRow(const WorkedConflict& conflict) {
  auto* text = new QLabel(this);
  text->setWordWrap(true);
  text->setTextFormat(Qt::PlainText);
  text->setText(QString::fromStdString(conflictText(conflict, settings_.phrases())));
  QFont bold = text->font();
  bold.setBold(true);
  text->setFont(bold);
  rows_->addWidget(text);
  const auto offer = [&](const QString& name, Settle how) {
    auto* button = new QPushButton(name, this);
    connect(button, &QPushButton::clicked, this, [this, conflict, how] { settle(conflict, how); });
    rows_->addWidget(button, 0, Qt::AlignLeft);
  };
  if (conflict.canKeep) offer(tr("Keep what is worked, plan the rest anew"), Settle::Keep);
  offer(tr("Rip back to %n rows", nullptr, std::max(0, conflict.lines - 1)), Settle::Rip);
  offer(tr("Leave the piece as it was planned"), Settle::AsWas);
}

void ConflictBox::settle(const WorkedConflict& conflict, Settle how) {
  setEnabled(false);
  beside_.start([this, conflict, how, present = document_.present(),
                 work = document_.work()](const std::stop_token& stop) {
    const std::shared_ptr<const Derived> derived = present();
    if (stop.stop_requested()) return;
    Work next = settled(derived->draft, designedIn(*derived), work, conflict.piece, how);
    QMetaObject::invokeMethod(
        this,
        [this, conflict, how, work, next = std::move(next)] {
          // A row may have been worked meanwhile.
          if (document_.work() == work)
            keep(conflict, how, next);
          else
            settle(conflict, how);
        },
        Qt::QueuedConnection);
  });
}

void ConflictBox::keep(const WorkedConflict& conflict, Settle how, Work next) {
  const PieceWork* before = document_.work().find(conflict.piece);
  const auto rowAfter = [&](int lines) {
    return before && lines > 0 ? before->plan.rows[std::size_t(lines) - 1].row.value() : 0;
  };
  const bool rip = how == Settle::Rip;
  writeDown(next, {.on = today(),
                   .kind = rip ? DiaryEntry::Kind::Ripped : DiaryEntry::Kind::Kept,
                   .piece = conflict.piece,
                   .row = rip && before ? rowAfter(before->worked) : conflict.row,
                   .to = rip ? rowAfter(conflict.lines) : 0,
                   .text = conflictText(conflict, settings_.phrases())});
  document_.setWork(next);
}

} // namespace scye
