#include "shell/start_page.h"

#include "io/refusal_text.h"
#include "library/style_gallery.h"
#include "look/icons.h"
#include "look/quiet_button.h"
#include "values/field_box.h"
#include "values/taken_on_box.h"

#include <QFileInfo>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

namespace scye {
namespace {

QLabel* heading(const QString& text, double factor, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  QFont font = label->font();
  font.setPointSizeF(factor * font.pointSizeF());
  font.setBold(true);
  label->setFont(font);
  return label;
}

QLabel* aside(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setWordWrap(true);
  label->setForegroundRole(QPalette::PlaceholderText);
  return label;
}

} // namespace

StartPage::StartPage(Settings& settings, QWidget* parent)
    : QWidget(parent), settings_(settings), takenOn_(new TakenOnBox(settings.phrases(), this)),
      draw_(new QPushButton(tr("Draw it"), this)), recent_(new QVBoxLayout),
      recentHead_(heading(tr("Or go on with"), 1.2, this)),
      gallery_(new StyleGallery(settings.phrases(), this)) {
  const int em = fontMetrics().averageCharWidth();
  auto* page = new QHBoxLayout(this);
  page->setContentsMargins(0, 0, 0, 0);
  page->setSpacing(2 * em);
  page->addWidget(makeColumn());
  page->addWidget(makeLibrary(), 1);

  connect(&settings_, &Settings::changed, this, &StartPage::refresh);
  connect(gallery_, &StyleGallery::chosen, this, &StartPage::styleWanted);
  refresh();
}

QWidget* StartPage::makeColumn() {
  const int em = fontMetrics().averageCharWidth();
  auto* content = new QWidget;
  auto* head = new QHBoxLayout;
  auto* sign = new QLabel(content);
  sign->setPixmap(appIcon().pixmap(9 * em, 9 * em));
  head->addWidget(sign);
  head->addSpacing(2 * em);
  auto* words = new QVBoxLayout;
  words->setSpacing(em / 2);
  words->addWidget(heading(QStringLiteral("Scyewright"), 2.2, content));
  auto* job = aside(tr("A workbench for garments with set-in sleeves"), content);
  job->setWordWrap(false);
  words->addWidget(job);
  head->addLayout(words);
  head->addStretch(1);

  auto* column = new QVBoxLayout(content);
  column->setContentsMargins(4 * em, 3 * em, em, 3 * em);
  column->setSpacing(4 * em);
  column->addLayout(head);
  column->addWidget(makeQuestions());
  column->addWidget(makeOthers());
  column->addStretch();

  // In a low window the column scrolls; it never grows narrower than its words.
  auto* scroll = new QScrollArea(this);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setWidget(content);
  scroll->viewport()->setAutoFillBackground(false);
  content->setAutoFillBackground(false);
  scroll->setFixedWidth(content->minimumSizeHint().width() +
                        scroll->verticalScrollBar()->sizeHint().width());
  return scroll;
}

QWidget* StartPage::makeLibrary() {
  auto* area = new QWidget(this);
  const int em = fontMetrics().averageCharWidth();
  auto* column = new QVBoxLayout(area);
  column->setContentsMargins(0, 3 * em, 0, 0);
  column->setSpacing(em);
  auto* head = heading(tr("Or begin with a &style"), 1.4, area);
  head->setBuddy(gallery_);
  head->setIndent(em);
  column->addWidget(head);
  auto* why = aside(tr("Designs of our own, drafted for invented wearers. One opens as a copy: put "
                       "in your own measurements and your own swatch."),
                    area);
  why->setIndent(em);
  column->addWidget(why);
  column->addWidget(gallery_, 1);
  return area;
}

FieldBox* StartPage::addBox(Field field, const QString& name, QLabel* complaint, QLabel* how) {
  auto* box = new FieldBox(info(field).kind, settings_.phrases(), this);
  box->setAccessibleName(QString(name).remove(u'&'));
  const std::size_t at = questions_.size();
  questions_.push_back({field, box, complaint, how});
  connect(box, &FieldBox::entered, this, [this, at](double v) { answer(questions_[at], v); });
  connect(box, &FieldBox::stepped, this, [this, at](double v) { answer(questions_[at], v); });
  connect(box, &FieldBox::unreadable, this, [this, at](const QString&) {
    const Question& q = questions_[at];
    q.complaint->setText(QString::fromStdString(
        refusalText(q.field, Refusal::NotANumber, settings_.phrases(), settings_.unit())));
  });
  return box;
}

QWidget* StartPage::makeQuestions() {
  auto* area = new QWidget(this);
  const int em = fontMetrics().averageCharWidth();
  auto* grid = new QGridLayout(area);
  grid->setContentsMargins({});
  grid->setHorizontalSpacing(2 * em);
  grid->setVerticalSpacing(em);
  grid->addWidget(heading(tr("A new design"), 1.4, area), 0, 0, 1, 3);
  auto* why =
      aside(tr("Three things are enough to begin with. Everything else is filled in from what "
               "bodies like this measure, marked as such, and can be changed at any time."),
            area);
  why->setMinimumWidth(50 * em);
  grid->addWidget(why, 1, 0, 1, 3);

  auto* complaint = new QLabel(area);
  complaint->setWordWrap(true);
  auto* taken = new QLabel(tr("&Measured"), area);
  taken->setBuddy(takenOn_);
  takenOn_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  grid->addWidget(taken, 2, 0);
  grid->addWidget(takenOn_, 2, 1, 1, 2, Qt::AlignLeft);
  connect(takenOn_, &TakenOnBox::chosen, this, &StartPage::refreshHow);
  const auto ask = [&](int line, const QString& name, Field field) {
    auto* label = new QLabel(name, area);
    auto* how = aside({}, area);
    how->setWordWrap(false);
    FieldBox* box = addBox(field, name, complaint, how);
    label->setBuddy(box);
    grid->addWidget(label, line, 0);
    grid->addWidget(box, line, 1);
    grid->addWidget(how, line, 2);
  };
  ask(3, tr("&Bust"), Field::Bust);
  ask(4, tr("&Upper arm"), Field::UpperArm);
  ask(5, tr("&Gauge"), Field::SwatchStitches);
  refreshHow();
  for (const Question& q : questions_)
    q.box->setMinimumWidth(questions_.front().box->sizeHint().width());
  grid->addWidget(complaint, 6, 0, 1, 3);
  grid->setColumnStretch(2, 1);

  draw_->setDefault(true);
  draw_->setAutoDefault(true);
  grid->addWidget(draw_, 7, 1, 1, 1);
  connect(draw_, &QPushButton::clicked, this, &StartPage::draw);
  return area;
}

QWidget* StartPage::makeOthers() {
  auto* area = new QWidget(this);
  const int em = fontMetrics().averageCharWidth();
  auto* column = new QVBoxLayout(area);
  column->setContentsMargins({});
  column->setSpacing(em);
  auto* open = new QPushButton(tr("Open a file…"), area);
  connect(open, &QPushButton::clicked, this, &StartPage::openWanted);
  column->addWidget(recentHead_);
  recent_->setSpacing(0);
  column->addLayout(recent_);
  column->addWidget(open, 0, Qt::AlignLeft);
  return area;
}

void StartPage::refresh() {
  const LengthUnit unit = settings_.unit();
  for (const Question& q : questions_)
    q.box->setValueStyle({unit, true, false});
  while (QLayoutItem* item = recent_->takeAt(0)) {
    item->widget()->deleteLater();
    delete item;
  }
  int shown = 0;
  for (const QString& path : settings_.recentFiles()) {
    if (!QFileInfo::exists(path) || ++shown > 5) continue;
    auto* button = new QuietButton(QuietButton::Looks::Aside, this);
    button->setText(QFileInfo(path).completeBaseName());
    button->setToolTip(path);
    connect(button, &QuietButton::clicked, this, [this, path] { Q_EMIT fileWanted(path); });
    recent_->addWidget(button, 0, Qt::AlignLeft);
  }
  recentHead_->setVisible(shown > 0);
}

Source StartPage::whereOf(Field field) const {
  return canTakeOn(field, takenOn_->where()) ? takenOn_->where() : Source::Body;
}

// How each is measured, which hangs on where.
void StartPage::refreshHow() {
  for (const Question& q : questions_) {
    const bool flat = whereOf(q.field) == Source::Garment;
    if (q.field == Field::Bust)
      q.how->setText(flat ? tr("straight across, laid flat: half the way round")
                          : tr("around the fullest part, on the body"));
    else if (q.field == Field::UpperArm)
      q.how->setText(flat ? tr("across the sleeve at the underarm, laid flat")
                          : tr("around the thickest part, on the body"));
    else
      q.how->setText(tr("stitches in 10 cm (4 in) of the washed swatch"));
  }
}

void StartPage::begin() {
  takenOn_->setWhere(Source::Body);
  refreshHow();
  for (const Question& q : questions_) {
    q.box->forgive();
    q.box->setBlank();
    q.complaint->clear();
  }
  questions_.front().box->setFocus();
}

void StartPage::goToLibrary() {
  gallery_->setFocus(Qt::ShortcutFocusReason);
}

void StartPage::answer(const Question& question, double value) {
  const Source where = whereOf(question.field);
  if (const auto refusal = check(question.field, value, where)) {
    question.complaint->setText(QString::fromStdString(
        refusalText(question.field, *refusal, settings_.phrases(), settings_.unit(), where)));
    question.box->refuse();
    return;
  }
  question.complaint->clear();
  question.box->setValue(value);
}

void StartPage::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) {
    QWidget::keyPressEvent(event);
    return;
  }
  if (auto* button = qobject_cast<QAbstractButton*>(focusWidget())) {
    button->click();
    return;
  }
  // Return goes on to the next question, and after the last one draws.
  for (std::size_t i = 0; i + 1 < questions_.size(); ++i)
    if (questions_[i].box->hasFocus() && questions_[i].box->value()) {
      questions_[i + 1].box->setFocus();
      questions_[i + 1].box->selectAll();
      return;
    }
  draw();
}

void StartPage::draw() {
  Design design;
  design.choose(Choice::TakenOn, int(takenOn_->where()));
  for (const Question& q : questions_) {
    if (!q.box->value() || q.box->isRefused()) {
      if (q.complaint->text().isEmpty())
        q.complaint->setText(tr("%1 is still missing.").arg(q.box->accessibleName()));
      q.box->setFocus();
      return;
    }
    if (check(q.field, *q.box->value(), whereOf(q.field))) {
      answer(q, *q.box->value());
      q.box->setFocus();
      return;
    }
    design.set(q.field, *q.box->value(), whereOf(q.field));
  }
  design.set(Field::SwatchWidth, 10);
  Q_EMIT designed(design);
}

} // namespace scye
