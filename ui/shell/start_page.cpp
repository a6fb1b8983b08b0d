#include "shell/start_page.h"

#include "io/refusal_text.h"
#include "library/style_gallery.h"
#include "look/icons.h"
#include "look/quiet_button.h"
#include "values/field_box.h"

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
    : QWidget(parent), settings_(settings), draw_(new QPushButton(tr("Draw it"), this)),
      recent_(new QVBoxLayout), recentHead_(heading(tr("Or go on with"), 1.2, this)),
      gallery_(new StyleGallery(this)) {
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

FieldBox* StartPage::addBox(Field field, const QString& name, QLabel* complaint) {
  auto* box = new FieldBox(info(field).kind, this);
  box->setAccessibleName(QString(name).remove(u'&'));
  const std::size_t at = questions_.size();
  questions_.push_back({field, box, complaint});
  connect(box, &FieldBox::entered, this, [this, at](double v) { answer(questions_[at], v); });
  connect(box, &FieldBox::stepped, this, [this, at](double v) { answer(questions_[at], v); });
  connect(box, &FieldBox::unreadable, this, [this, at](const QString&) {
    const Question& q = questions_[at];
    q.complaint->setText(QString::fromStdString(
        refusalText(q.field, Refusal::NotANumber, builtinPhrases(), settings_.unit())));
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
      aside(tr("Three things are enough to begin with. Everything else is filled in from the "
               "nearest published size, marked as such, and can be changed at any time."),
            area);
  why->setMinimumWidth(50 * em);
  grid->addWidget(why, 1, 0, 1, 3);

  auto* complaint = new QLabel(area);
  complaint->setWordWrap(true);
  const auto ask = [&](int line, const QString& name, const QString& how, Field field) {
    auto* label = new QLabel(name, area);
    FieldBox* box = addBox(field, name, complaint);
    label->setBuddy(box);
    grid->addWidget(label, line, 0);
    grid->addWidget(box, line, 1);
    auto* where = aside(how, area);
    where->setWordWrap(false);
    grid->addWidget(where, line, 2);
  };
  ask(2, tr("&Bust"), tr("around the fullest part, on the body"), Field::Bust);
  ask(3, tr("&Upper arm"), tr("around the thickest part, on the body"), Field::UpperArm);
  ask(4, tr("&Gauge"), tr("stitches in 10 cm (4 in) of the washed swatch"), Field::SwatchStitches);
  for (const Question& q : questions_)
    q.box->setMinimumWidth(questions_.front().box->sizeHint().width());
  grid->addWidget(complaint, 5, 0, 1, 3);
  grid->setColumnStretch(2, 1);

  draw_->setDefault(true);
  draw_->setAutoDefault(true);
  grid->addWidget(draw_, 6, 1, 1, 1);
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

void StartPage::begin() {
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
  if (const auto refusal = check(question.field, value)) {
    question.complaint->setText(QString::fromStdString(
        refusalText(question.field, *refusal, builtinPhrases(), settings_.unit())));
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
  for (const Question& q : questions_) {
    if (!q.box->value() || q.box->isRefused()) {
      if (q.complaint->text().isEmpty())
        q.complaint->setText(tr("%1 is still missing.").arg(q.box->accessibleName()));
      q.box->setFocus();
      return;
    }
    design.set(q.field, *q.box->value());
  }
  design.set(Field::SwatchWidth, 10);
  Q_EMIT designed(design);
}

} // namespace scye
