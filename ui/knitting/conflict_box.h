// Worked rows that the design would now have otherwise: each told, with what can become of them.
// Nothing happens to them before one of these is chosen; it is worked out beside the window.
#pragma once

#include "document/beside.h"
#include "document/document.h"
#include "settings/settings.h"

#include <QWidget>

class QVBoxLayout;

namespace scye {

class ConflictBox : public QWidget {
  Q_OBJECT
public:
  ConflictBox(Document& document, Settings& settings, QWidget* parent = nullptr);
  void refresh();

private:
  void addRow(const WorkedConflict& conflict);
  void settle(const WorkedConflict& conflict, Settle how);
  void keep(const WorkedConflict& conflict, Settle how, Work next);

  Document& document_;
  Settings& settings_;
  QVBoxLayout* rows_;
  Beside beside_; // last: its thread ends before what it hands over to
};

} // namespace scye
