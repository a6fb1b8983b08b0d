#include "knitting/booklet_page.h"

#include "io/outputs.h"
#include "knitting/booklet_view.h"
#include "knitting/directions_page.h"
#include "look/flow_layout.h"
#include "values/choice_box.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

namespace scye {

BookletPage::BookletPage(Document& document, Settings& settings, QWidget* parent)
    : KnitPage(document, settings, parent), view_(new BookletView(this)),
      paper_(new ChoiceBox(this)), large_(new QCheckBox(tr("&Large print"), this)),
      place_(new QLabel(this)) {
  const int gap = fontMetrics().averageCharWidth();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins({});
  column->setSpacing(0);
  auto* row = new FlowLayout;
  row->setContentsMargins(gap, gap, gap, gap);
  row->setSpacing(gap);
  place_->setAlignment(Qt::AlignCenter);
  place_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  paper_->addItem(tr("A4"), int(Paper::A4));
  paper_->addItem(tr("Letter"), int(Paper::Letter));
  paper_->setAccessibleName(tr("Paper"));
  large_->setToolTip(tr("Letters of 16 points"));
  auto* print = new QToolButton(this);
  print->setText(tr("Print …"));
  auto* write = new QToolButton(this);
  write->setText(tr("Save as a file …"));
  write->setToolTip(tr("As PDF, or as one HTML file"));
  row->addWidget(paper_);
  row->addWidget(large_);
  row->addWidget(place_);
  row->addWidget(print);
  row->addWidget(write);
  column->addLayout(row);
  column->addWidget(view_, 1);

  connect(paper_, &QComboBox::activated, this, [this] {
    ExportOptions options = settings_.exportOptions();
    options.paper = Paper(paper_->currentData().toInt());
    settings_.setExportOptions(options);
  });
  connect(large_, &QCheckBox::toggled, &settings_, &Settings::setLargePrint);
  connect(print, &QToolButton::clicked, this, &BookletPage::printWanted);
  connect(write, &QToolButton::clicked, this, &BookletPage::fileWanted);
  connect(view_, &BookletView::pageMoved, this, &BookletPage::tellPage);
  connect(&settings_, &Settings::changed, this, &BookletPage::refreshChoices);
  setFocusProxy(view_);
  refreshChoices();
}

void BookletPage::refreshChoices() {
  const QSignalBlocker quiet(large_);
  const ExportOptions options = settings_.exportOptions();
  paper_->setCurrentIndex(paper_->findData(int(bookletPaper(options.paper, settings_.unit()))));
  large_->setChecked(options.largePrint);
}

void BookletPage::tellPage() {
  const int pages = view_->pageCount();
  place_->setText(pages > 0 ? tr("Page %L1 of %L2").arg(view_->page() + 1).arg(pages) : QString());
  view_->setAccessibleDescription(place_->text());
}

void BookletPage::refresh() {
  const auto job = [present = document_.present(), wording = wordingOf(settings_),
                    page = settings_.exportOptions()] {
    const auto derived = present();
    const OutputInfo& booklet = info(OutputId::Booklet);
    auto pages = std::make_shared<std::vector<Sheet>>();
    if (booklet.has(*derived))
      *pages = sheetsOf(booklet, {*derived, wording, page, {}, today()}, FileFormat::Pdf);
    return pages;
  };
  beside_.start([this, job, version = ++wanted_](const std::stop_token& stop) {
    BookletView::Pages pages = job();
    if (stop.stop_requested()) return;
    QMetaObject::invokeMethod(
        this,
        [this, pages, version] {
          if (version != wanted_) return;
          shown_ = version;
          view_->setPages(pages, QString::fromStdString(settings_.phrases().say("booklet.none")));
        },
        Qt::QueuedConnection);
  });
}

} // namespace scye
