#include "worn/worn_page.h"

#include "export/export.h"
#include "garment/verdict.h"
#include "knitting/directions_page.h"
#include "knitting/take_out.h"
#include "look/flow_layout.h"
#include "look/save_dialog.h"
#include "look/scrolled_column.h"
#include "panels/panel_context.h"
#include "values/choice_box.h"
#include "worn/worn_words.h"

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QFileInfo>
#include <QLabel>
#include <QMessageBox>
#include <QPointer>
#include <QSlider>
#include <QStandardItemModel>
#include <QThreadPool>
#include <QToolButton>
#include <QVBoxLayout>

namespace scye {
namespace {

constexpr double kSleevesOff = 13; // cm for an adult

} // namespace

WornPage::WornPage(Document& document, Attention& attention, Settings& settings, QWidget* parent)
    : QWidget(parent), document_(document), settings_(settings), view_(new WornView(this)),
      words_(new QLabel(this)), caution_(new QLabel(this)),
      engine_(new WornEngine(settings.phrases(), this)) {
  QVBoxLayout* column = scrolledColumn(*this);
  column->setContentsMargins({});
  column->setSpacing(2);
  column->addWidget(makeControls());
  column->addWidget(view_, 1);
  for (QLabel* label : {words_, caution_}) {
    label->setWordWrap(true);
    label->setContentsMargins(8, 0, 8, 2);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column->addWidget(label);
  }
  caution_->setForegroundRole(QPalette::PlaceholderText);
  connect(engine_, &WornEngine::drawn, this,
          [this](const WornFrame& garment, const WornFrame& beside, bool) {
            view_->setFrames(garment, beside);
          });
  connect(engine_, &WornEngine::said, this, [this](const QString& words) {
    const bool none = words == QString::fromStdString(settings_.phrases().say("worn.none"));
    view_->setMessage(none ? words : QString());
    words_->setText(none ? QString() : words);
  });
  connect(view_, &WornView::moved, this, &WornPage::wish);
  connect(view_, &WornView::looked, this, [this](NamedView view) {
    const QSignalBlocker quiet(views_);
    views_->setCurrentIndex(int(view));
  });
  connect(&document_, &Document::changed, this, &WornPage::follow);
  connect(&settings_, &Settings::changed, this, &WornPage::wish);
  connect(&attention, &Attention::changed, this,
          [this, &attention] { takeInHand(attention.lit()); });
  takeInHand(attention.lit());
  setFocusProxy(view_);
}

QWidget* WornPage::makeControls() {
  auto* row = new QWidget(this);
  auto* line = new FlowLayout(row);
  line->setContentsMargins(6, 2, 6, 0);
  line->setSpacing(row->fontMetrics().averageCharWidth());
  views_ = new ChoiceBox(row);
  views_->addItems({tr("Front"), tr("Side"), tr("Back"), tr("Armhole")});
  views_->setToolTip(tr("From where it is looked at: keys 1 to 4. Drag the picture or use the "
                        "arrow keys to turn it, the wheel or + and − to come nearer."));
  views_->setAccessibleName(tr("View"));
  auto* armLabel = new QLabel(tr("&Arms"), row);
  arm_ = new QSlider(Qt::Horizontal, row);
  arm_->setRange(0, 90);
  arm_->setPageStep(15);
  arm_->setMinimumWidth(80);
  arm_->setToolTip(tr("From hanging to lifted sideways."));
  armLabel->setBuddy(arm_);
  sleeves_ = new QCheckBox(tr("Sleeves &drawn off"), row);
  sleeves_->setToolTip(tr("Draws the sleeves off along threads that join what is sewn to what; "
                          "the numbers are those of the notches."));
  pulls_ = new QCheckBox(tr("Where it &pulls"), row);
  beside_ = new ChoiceBox(row);
  valueInHand_ = new QLabel(row);
  valueInHand_->setWordWrap(true);
  valueInHand_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  beside_->addItems({tr("Nothing beside it"), tr("Beside a lower cap"), tr("Beside a higher cap"),
                     tr("Beside less of the value"), tr("Beside more of the value"),
                     tr("Beside how it was before")});
  tellInHand();
  beside_->setAccessibleName(tr("Beside it"));
  beside_->setToolTip(tr("Shows a second garment beside this one, turned together with it: with "
                         "another cap, with less or more of the value whose slider was used last, "
                         "or as it was before the last change."));
  save_ = new QToolButton(row);
  save_->setText(tr("Save picture …"));
  line->addWidget(views_);
  line->addTogether({armLabel, arm_});
  line->addWidget(save_);
  line->addWidget(new TakeOut(
      tr("The garment worn"),
      [this] {
        return [garment = garment_, wording = wordingOf(settings_), options = asSeen(),
                name = document_.suggestedName() + u' ' + tr("worn")](const QDir& folder,
                                                                      const GoOn&) {
          if (!garment)
            return TakenOut{{}, {}, QString::fromStdString(wording.phrases.say("worn.none"))};
          return pictureTaken(OutputId::Worn, {*garment, wording, {}, options}, name, folder);
        };
      },
      row));
  line->addWidget(sleeves_);
  line->addWidget(pulls_);
  line->addWidget(beside_);
  line->addWidget(valueInHand_);
  connect(views_, &QComboBox::activated, this, [this](int i) { view_->look(NamedView(i)); });
  connect(arm_, &QSlider::valueChanged, this, &WornPage::wish);
  connect(sleeves_, &QCheckBox::toggled, this, &WornPage::wish);
  connect(pulls_, &QCheckBox::toggled, this, [this](bool on) {
    view_->setPulls(on);
    wish();
  });
  connect(beside_, &QComboBox::activated, this, [this] {
    findBeside();
    wish();
  });
  connect(save_, &QToolButton::clicked, this, &WornPage::savePicture);
  return row;
}

void WornPage::follow(const Document::Event& event) {
  if (event.replaced) settledGarment_.reset(), before_.reset();
  if (!event.derived) return;
  due_ = true;
  if (isVisible()) takeGarment();
}

void WornPage::takeGarment() {
  due_ = false;
  garment_ = std::make_shared<const Derived>(document_.derived());
  // A step of the history is what counts as a change; a drag is one, and under way while it lasts.
  const int step = document_.history().index();
  if (!settledGarment_) {
    settledGarment_ = garment_, step_ = step;
  } else if (step != step_) {
    before_ = settledGarment_;
    settledGarment_ = garment_, step_ = step;
  }
  if (!document_.inGesture() || beside() == ShownBeside::BeforeChange) findBeside();
  QStringList cautions;
  for (const std::string& line : wornCautions(*garment_, settings_.phrases()))
    cautions << QString::fromStdString(line);
  caution_->setText(cautions.join(u'\n'));
  caution_->setVisible(!caution_->text().isEmpty());
  words_->clear();
  view_->setMessage({});
  wish();
}

// What is pointed at stays in hand when the keyboard goes elsewhere, to this page for one.
void WornPage::takeInHand(std::optional<Field> field) {
  if (!field || field == inHand_) return;
  inHand_ = field;
  tellInHand();
  if (beside() != ShownBeside::Less && beside() != ShownBeside::More) return;
  findBeside();
}

// Beside the choices and not in them: a name may be long, and wraps.
void WornPage::tellInHand() {
  valueInHand_->setVisible(inHand_.has_value());
  if (inHand_)
    valueInHand_->setText(tr("Value in hand: %1").arg(fieldName(settings_.phrases(), *inHand_)));
  const auto* items = qobject_cast<QStandardItemModel*>(beside_->model());
  for (const ShownBeside which : {ShownBeside::Less, ShownBeside::More})
    items->item(int(which))->setEnabled(inHand_.has_value());
}

ShownBeside WornPage::beside() const {
  return ShownBeside(beside_->currentIndex());
}

void WornPage::takeBeside(std::shared_ptr<const Derived> other) {
  other_ = std::move(other);
  otherCaption_ = other_ ? caption(*other_, true) : QString();
}

void WornPage::findBeside() {
  const quint64 asked = ++asked_;
  finding_.stop();
  if (!garment_ || beside() == ShownBeside::Nothing) return takeBeside(nullptr);
  if (beside() == ShownBeside::BeforeChange)
    return takeBeside(document_.inGesture() || !before_ ? settledGarment_ : before_);
  const auto design = besideDesign(garment_->draft.design, beside(), inHand_);
  if (!design) return takeBeside(nullptr);
  // What stands there stays, under its own name, until the other one is worked out.
  finding_.start([this, asked, design = *design](const std::stop_token& stop) {
    auto other = std::make_shared<const Derived>(derive(design));
    if (stop.stop_requested()) return;
    QMetaObject::invokeMethod(
        this,
        [this, asked, other] {
          if (asked != asked_) return;
          takeBeside(other);
          wish();
        },
        Qt::QueuedConnection);
  });
}

QString WornPage::caption(const Derived& garment, bool isBeside) const {
  const Phrases& phrases = settings_.phrases();
  switch (beside()) {
  case ShownBeside::BeforeChange:
    return isBeside ? tr("Before the last change") : tr("As it is");
  case ShownBeside::Less:
  case ShownBeside::More: {
    const double value = shownIn(garment.draft.design, garment.draft.sizes, *inHand_);
    return tr("%1: %2").arg(
        fieldName(phrases, *inHand_),
        valueText(phrases, info(*inHand_).kind, value, styleOf(*inHand_, settings_.unit(), true)));
  }
  default:
    return QString::fromStdString(
        phrases.say("worn.cap", {lengthParam("height", toldCapHeight(garment))}, settings_.unit()));
  }
}

void WornPage::wish() {
  const bool two = other_ != nullptr;
  {
    const QSignalBlocker quiet(view_); // the wish below says it all
    view_->setTwo(two, two ? caption(*garment_, false) : QString(), otherCaption_);
  }
  WornWish w;
  w.garment = garment_, w.beside = other_;
  w.arm = arm_->value();
  const double size = garment_ ? garment_->draft.sizes.body(Field::Bust) / 94 : 1;
  w.sleevesOff = sleeves_->isChecked() ? kSleevesOff * size : 0;
  w.pulls = pulls_->isChecked();
  w.view = view_->turned(), w.named = view_->named();
  w.size = view_->pictureSize();
  w.dark = view_->isDark();
  w.visible = isVisible();
  w.unit = settings_.unit();
  engine_->wish(w);
}

void WornPage::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  due_ ? takeGarment() : wish();
}

void WornPage::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  wish();
}

void WornPage::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  wish();
}

WornPictureOptions WornPage::asSeen() const {
  WornPictureOptions options;
  options.view = view_->named(), options.turned = view_->turned();
  options.arm = arm_->value(), options.pulls = pulls_->isChecked();
  return options;
}

void WornPage::savePicture() {
  if (!garment_) return;
  const QString ending = QStringLiteral(".png");
  const QString path =
      askWhereToWrite(this, tr("Save the picture"),
                      QDir(settings_.lastFolder()).filePath(tr("worn") + ending), {ending});
  if (path.isEmpty()) return;
  settings_.setLastFolder(QFileInfo(path).path());
  const WornPictureOptions options = asSeen();
  save_->setEnabled(false);
  // Draped afresh, so that a picture does not depend on what was tried before.
  QThreadPool::globalInstance()->start([page = QPointer<WornPage>(this), garment = garment_,
                                        wording = wordingOf(settings_), path, options] {
    const auto problem = exportOutput(OutputId::Worn, {*garment, wording, {}, options}, path);
    QMetaObject::invokeMethod(qApp, [page, problem] {
      if (!page) return;
      page->save_->setEnabled(true);
      if (problem) QMessageBox::warning(page, WornPage::tr("Save the picture"), *problem);
    });
  });
}

} // namespace scye
