#include "panels/choice_row.h"

#include "values/choice_box.h"

#include <QGridLayout>
#include <QLabel>

namespace scye {

ChoiceRow::ChoiceRow(const PanelContext& context, QGridLayout* grid, Choice choice, QObject* parent)
    : QObject(parent), context_(context), choice_(choice),
      name_(new QLabel(choiceName(context_.phrases(), choice))), box_(new ChoiceBox) {
  const int line = grid->rowCount();
  for (int i = 0; i < int(info(choice).options.size()); ++i)
    box_->addItem(optionName(context_.phrases(), choice, i));
  box_->setAccessibleName(name_->text());
  name_->setBuddy(box_);
  name_->setWordWrap(true);
  grid->addWidget(name_, line, column::kName);
  grid->addWidget(box_, line, column::kFirst, 1, column::kAll - column::kFirst);
  connect(box_, &QComboBox::activated, this, [this](int option) {
    context_.document.edit(choiceName(context_.phrases(), choice_),
                           Design(context_.document.design()).choose(choice_, option));
  });
  refresh();
}

void ChoiceRow::refresh() {
  const Design& design = context_.document.design();
  const bool wanted = matters(choice_, context_.document.draft().sizes.style);
  name_->setVisible(wanted);
  box_->setVisible(wanted);
  box_->setCurrentIndex(design.option(choice_));
}

} // namespace scye
