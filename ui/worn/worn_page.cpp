#include "worn/worn_page.h"

#include "export/export.h"
#include "knitting/directions_page.h"
#include "knitting/take_out.h"
#include "look/save_dialog.h"
#include "worn/worn_words.h"

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPointer>
#include <QSlider>
#include <QThreadPool>
#include <QToolButton>
#include <QVBoxLayout>

namespace scye {
namespace {

constexpr double kSleevesOff = 13; // cm for an adult

} // namespace

WornPage::WornPage(Document& document, Settings& settings, QWidget* parent)
    : QWidget(parent), document_(document), settings_(settings), view_(new WornView(this)),
      words_(new QLabel(this)), caution_(new QLabel(this)),
      engine_(new WornEngine(settings.phrases(), this)) {
  auto* column = new QVBoxLayout(this);
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
  setFocusProxy(view_);
}

QWidget* WornPage::makeControls() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(6, 2, 6, 0);
  views_ = new QComboBox(row);
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
  beside_ = new QComboBox(row);
  beside_->addItems({tr("Nothing beside it"), tr("Beside a lower cap"), tr("Beside a higher cap"),
                     tr("Beside how it was before")});
  beside_->setAccessibleName(tr("Beside it"));
  save_ = new QToolButton(row);
  save_->setText(tr("Save picture …"));
  line->addWidget(views_);
  line->addWidget(armLabel);
  line->addWidget(arm_, 1);
  line->addWidget(sleeves_);
  line->addWidget(pulls_);
  line->addWidget(beside_);
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
  connect(views_, &QComboBox::activated, this, [this](int i) { view_->look(NamedView(i)); });
  connect(arm_, &QSlider::valueChanged, this, &WornPage::wish);
  connect(sleeves_, &QCheckBox::toggled, this, &WornPage::wish);
  connect(pulls_, &QCheckBox::toggled, this, [this](bool on) {
    view_->setPulls(on);
    wish();
  });
  connect(beside_, &QComboBox::activated, this, [this] {
    other_ = besideGarment();
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
  if (!document_.inGesture() || beside_->currentIndex() == int(Beside::BeforeChange))
    other_ = besideGarment();
  caution_->setText(QString::fromStdString(wornCaution(*garment_, settings_.phrases())));
  caution_->setVisible(!caution_->text().isEmpty());
  words_->clear();
  view_->setMessage({});
  wish();
}

std::shared_ptr<const Derived> WornPage::besideGarment() const {
  if (!garment_) return nullptr;
  const auto rise = [&](CapRise aim) {
    Design design = withUsualCap(garment_->draft.design);
    design.choose(Choice::CapRise, aim);
    return std::make_shared<const Derived>(derive(design));
  };
  switch (Beside(beside_->currentIndex())) {
  case Beside::LowerCap:
    return rise(CapRise::Shallow);
  case Beside::HigherCap:
    return rise(CapRise::High);
  case Beside::BeforeChange:
    return document_.inGesture() ? settledGarment_ : before_ ? before_ : settledGarment_;
  case Beside::Nothing:
    break;
  }
  return nullptr;
}

void WornPage::wish() {
  const bool two = other_ != nullptr;
  const auto height = [this](const std::shared_ptr<const Derived>& d) {
    return QString::fromStdString(settings_.phrases().say(
        "worn.cap", {lengthParam("height", d->draft.cap.height)}, settings_.unit()));
  };
  {
    const QSignalBlocker quiet(view_); // the wish below says it all
    view_->setTwo(two, two ? height(garment_) : QString(), two ? height(other_) : QString());
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
