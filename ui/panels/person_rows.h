// Title, wearer and notes: the words of a design.
#pragma once

#include "panels/panel_context.h"

#include <QWidget>

namespace scye {

[[nodiscard]] QWidget* makeTextBox(const PanelContext& context, const QString& name,
                                   std::string Design::*member);
[[nodiscard]] QWidget* makeNotes(const PanelContext& context);

} // namespace scye
