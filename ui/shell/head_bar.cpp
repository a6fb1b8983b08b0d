#include "shell/head_bar.h"

#include "fit/verdict_line.h"
#include "knitting/directions_page.h"
#include "knitting/take_out.h"
#include "look/icons.h"
#include "paint/picture_colours.h"
#include "shell/actions.h"

#include <QAction>
#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>
#include <QToolBar>
#include <QToolButton>

namespace scye {
namespace {

constexpr int kBesideTools = 60; // letters: with less the answer has a line of its own

// Filled with the accent while its stage is the one in work.
class StageButton : public QToolButton {
public:
  using QToolButton::QToolButton;

  [[nodiscard]] QSize sizeHint() const override {
    const int em = fontMetrics().averageCharWidth();
    return {fontMetrics().horizontalAdvance(text().remove(u'&')) + 4 * em,
            fontMetrics().height() + em};
  }
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPalette& p = palette();
    const bool in = isChecked();
    const QColor ground = p.color(in ? QPalette::Highlight : QPalette::Base),
                 ink = p.color(in ? QPalette::HighlightedText : QPalette::Text);
    painter.setPen(QPen(mixed(ground, ink, hasFocus() ? 1 : 0.3), hasFocus() ? 2 : 1));
    painter.setBrush(underMouse() && !in ? mixed(ground, ink, 0.08) : ground);
    const double round = 0.6 * fontMetrics().averageCharWidth();
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), round, round);
    QFont f = font();
    f.setBold(in);
    painter.setFont(f);
    painter.setPen(ink);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextShowMnemonic, text());
  }
};

} // namespace

HeadBar::HeadBar(Actions& actions, Document& document, Settings& settings, QWidget* parent)
    : QWidget(parent), tools_(actions.makeTools(this)), stages_(new QWidget(this)),
      verdict_(new VerdictLine(document, settings, this)) {
  copy_ = new TakeOut(
      tr("The schematic"),
      [&document, &settings] {
        return [present = document.present(), wording = wordingOf(settings),
                page = settings.exportOptions(),
                name = document.suggestedName()](const QDir& folder, const GoOn& goOn) {
          const auto derived = present();
          OutputJob job{*derived, wording, page, {}, today()};
          job.page.goOn = goOn;
          return pictureTaken(OutputId::Schematic, job, name, folder);
        };
      },
      tools_);
  copy_->setIcon(icon("copy"));
  tools_->addWidget(copy_);
  auto* row = new QHBoxLayout(stages_);
  row->setContentsMargins({});
  row->setSpacing(0);
  for (QAction* action : {actions.drafting, actions.knitting, actions.makingUp}) {
    auto* button = new StageButton(stages_);
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setFocusPolicy(Qt::TabFocus);
    button->setAccessibleName(action->text().remove(u'&'));
    row->addWidget(button);
  }
  stages_->setAccessibleName(tr("What you are doing"));
  // Pressed it shows or hides the answers, as the action does.
  verdict_->setChecked(actions.answers->isChecked());
  connect(verdict_, &VerdictLine::toggled, actions.answers, &QAction::setChecked);
  connect(actions.answers, &QAction::toggled, verdict_, &VerdictLine::setChecked);
  connect(verdict_, &VerdictLine::grown, this, [this] {
    updateGeometry();
    arrange(width(), true);
  });
  QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
}

void HeadBar::setWorking(bool working) {
  stages_->setVisible(working);
  copy_->setEnabled(working);
  verdict_->setVisible(working);
  updateGeometry();
  arrange(width(), true);
}

int HeadBar::arrange(int width, bool place) const {
  const int gap = fontMetrics().averageCharWidth();
  const QSize tools = tools_->sizeHint(), stages = stages_->sizeHint();
  const int high = std::max(tools.height(), stages.height());
  const auto put = [place](QWidget* widget, const QRect& where) {
    if (place) widget->setGeometry(where);
  };
  if (verdict_->isHidden()) {
    put(tools_, {0, 0, width, high});
    return high;
  }
  const int both = tools.width() + stages.width() + 3 * gap;
  const int left = width - both;
  if (left >= kBesideTools * gap) {
    const int all = std::max(high, verdict_->heightForWidth(left) + gap / 2);
    put(tools_, {0, (all - high) / 2, tools.width(), high});
    put(stages_,
        {tools.width() + gap, (all - stages.height()) / 2, stages.width(), stages.height()});
    put(verdict_, {both, gap / 4, left - gap, all - gap / 2});
    return all;
  }
  // The stages come first: of the tools, what there is no room for is behind the arrow.
  const int toolsWide = std::min(tools.width(), width - stages.width() - 2 * gap);
  put(tools_, {0, 0, toolsWide, high});
  put(stages_, {toolsWide + gap, (high - stages.height()) / 2, stages.width(), stages.height()});
  const int answer = verdict_->heightForWidth(width - 2 * gap);
  put(verdict_, {gap, high + gap / 4, width - 2 * gap, answer});
  return high + answer + gap / 2;
}

int HeadBar::heightForWidth(int width) const {
  return arrange(width, false);
}

QSize HeadBar::sizeHint() const {
  const int wide = 160 * fontMetrics().averageCharWidth();
  return {wide, heightForWidth(std::max(wide, width()))};
}

QSize HeadBar::minimumSizeHint() const {
  return {stages_->sizeHint().width() + 12 * fontMetrics().averageCharWidth(),
          tools_->sizeHint().height()};
}

void HeadBar::resizeEvent(QResizeEvent*) {
  arrange(width(), true);
}

void HeadBar::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::FontChange) return;
  updateGeometry();
  arrange(width(), true);
}

} // namespace scye
