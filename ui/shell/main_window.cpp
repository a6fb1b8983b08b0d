#include "shell/main_window.h"

#include "canvas/drawing_table.h"
#include "guide/guide_window.h"
#include "look/icons.h"
#include "model/languages.h"
#include "panels/edit_panel.h"
#include "shell/banner.h"
#include "shell/export_strip.h"
#include "shell/file_notices.h"
#include "shell/head_bar.h"
#include "shell/key_list.h"
#include "shell/start_page.h"
#include "shell/work_area.h"
#include "shell/work_notice.h"
#include "shell/workbench.h"
#include "wearers/wearer_menu.h"

#include <QAction>
#include <QCloseEvent>
#include <QFileInfo>
#include <QMenu>
#include <QScreen>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace scye {

MainWindow::MainWindow(const AppPaths& paths, const Phrases& phrases)
    : paths_(paths), settings_(paths.settings, phrases), appearance_(settings_),
      state_(paths.windowState, phrases), wearers_(paths.wearers, phrases),
      actions_(std::make_unique<Actions>(*this, phrases)),
      places_(new PlaceKeeper(document_, watch_, phrases, this)),
      files_(new FileKeeper(document_, watch_, *places_, settings_, this)),
      recovery_(new Recovery(document_, watch_, paths.recovery, phrases, this)),
      head_(new HeadBar(*actions_, document_, settings_)), banner_(new Banner),
      notices_(new FileNotices(document_, watch_, *files_, *recovery_, settings_, *banner_, this)),
      pages_(new QStackedWidget) {
  setWindowIcon(appIcon());
  auto* middle = new QWidget;
  auto* column = new QVBoxLayout(middle);
  column->setContentsMargins({});
  column->setSpacing(0);
  column->addWidget(head_);
  column->addWidget(banner_);
  column->addWidget(pages_, 1);
  setCentralWidget(middle);

  connectActions();
  connectFiles();
  new WorkNotice(
      document_, settings_, *banner_,
      [this] {
        workbench().setStage(Stage::Knitting);
        showPage(workbench().pages().needles);
      },
      this);
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.design || event.file) refreshTitle();
    if (event.derived && actions_->before->isChecked()) refreshBefore();
  });
  connect(&document_.history(), &QUndoStack::indexChanged, this, &MainWindow::refreshHistory);
  connect(&settings_, &Settings::changed, this, &MainWindow::refreshSettings);
  refreshSettings();
  refreshHistory();
  takeState();
  actions_->setWorking(false);
  head_->setWorking(false);
  refreshTitle();
}

MainWindow::~MainWindow() {
  // The history still speaks while it is taken down.
  document_.disconnect(this);
  document_.history().disconnect(this);
  // What stands in the window speaks to the design until it is gone.
  hide();
  delete guide_;
  delete takeCentralWidget();
}

Workbench& MainWindow::workbench() {
  if (!work_) {
    work_ = new Workbench({document_, attention_, settings_, wearers_});
    connect(work_, &Workbench::answersShown, actions_->answers, &QAction::setChecked);
    pages_->addWidget(work_);
    work_->takeState(kept("parts"));
    work_->area().takeState(kept("middle"));
    tellOf(work_->exports().exports());
    tellOf(work_->knitFiles().exports());
    connect(&work_->area(), &WorkArea::enlarged, actions_->enlarge, &QAction::setChecked);
    connect(work_, &Workbench::stageShown, this, [this](Stage stage) {
      QAction* const actions[] = {actions_->drafting, actions_->knitting, actions_->makingUp};
      actions[int(stage)]->setChecked(true);
    });
    connect(&work_->panel(), &EditPanel::howWanted, this, &MainWindow::showGuide);
  }
  return *work_;
}

StartPage& MainWindow::startPage() {
  if (!start_) {
    start_ = new StartPage(settings_);
    pages_->addWidget(start_);
    connect(start_, &StartPage::designed, this, [this](const Design& design) {
      document_.replace(design, {}, true);
      showWork();
      workbench().panel().focusField(Field::Bust, false);
    });
    connect(start_, &StartPage::styleWanted, this, &MainWindow::openStyle);
    connect(start_, &StartPage::openWanted, this, [this] { files_->open(); });
    connect(start_, &StartPage::fileWanted, this, [this](const QString& path) { openFile(path); });
  }
  return *start_;
}

void MainWindow::tellOf(ExportQueue& exports) {
  connect(&exports, &ExportQueue::failed, this, [this](const QString& reason) {
    banner_->say(Severity::Blocking, tr("Not exported."), reason);
  });
  connect(&exports, &ExportQueue::made, this,
          [this](const QString& what) { banner_->say(Severity::Note, tr("Exported."), what); });
  connect(&exports, &ExportQueue::cancelled, this,
          [this](const QString& what) { banner_->say(Severity::Note, tr("Given up."), what); });
  connect(&exports, &ExportQueue::progressed, this,
          [this, &exports](const QString& what, double share) {
            banner_->sayWorking(tr("Exporting (%L1 %).").arg(qRound(100 * share)), what,
                                {tr("Cancel"), [&exports] { exports.cancel(); }});
          });
}

GuideWindow& MainWindow::guide() {
  if (!guide_) {
    guide_ = new GuideWindow(document_, settings_, this);
    tellOf(guide_->exports());
  }
  return *guide_;
}

void MainWindow::showGuide(std::optional<Field> measurement) {
  if (measurement)
    guide().showMeasurement(measurement, document_.design().source(*measurement));
  else
    guide().showPresent();
  guide().show();
  guide().raise();
  guide().activateWindow();
}

void MainWindow::connectActions() {
  Actions& a = *actions_;
  connect(a.newDesign, &QAction::triggered, this, [this] {
    if (files_->mayLeave()) showStart();
  });
  connect(a.newFromStyle, &QAction::triggered, this, [this] {
    if (!files_->mayLeave()) return;
    showStart();
    startPage().goToLibrary();
  });
  connect(a.open, &QAction::triggered, this, [this] { files_->open(); });
  connect(a.save, &QAction::triggered, this, [this] { files_->save(); });
  connect(a.saveAs, &QAction::triggered, this, [this] { files_->saveAs(); });
  connect(a.quit, &QAction::triggered, this, &QWidget::close);
  connect(a.undo, &QAction::triggered, this, [this] { document_.undo(); });
  connect(a.redo, &QAction::triggered, this, [this] { document_.redo(); });
  connect(a.fit, &QAction::triggered, this, [this] { workbench().table().fit(); });
  connect(a.zoomIn, &QAction::triggered, this, [this] { workbench().table().zoomIn(); });
  connect(a.zoomOut, &QAction::triggered, this, [this] { workbench().table().zoomOut(); });
  connect(a.grid, &QAction::toggled, &settings_, &Settings::setGridShown);
  connect(a.centimetres, &QAction::triggered, this,
          [this] { settings_.setUnit(LengthUnit::Centimetre); });
  connect(a.inches, &QAction::triggered, this, [this] { settings_.setUnit(LengthUnit::Inch); });
  for (const auto& [format, action] : a.exportSchematic)
    connect(action, &QAction::triggered, this,
            [this, what = format] { workbench().exports().open(what); });
  for (const auto& [output, action] : a.exports)
    connect(action, &QAction::triggered, this,
            [this, what = output] { workbench().knitFiles().ask(what); });
  connect(a.print, &QAction::triggered, this, [this] { workbench().exports().print(); });
  const auto onFiles = [this](QAction* action, void (KnitFiles::*what)()) {
    connect(action, &QAction::triggered, this, [this, what] { (workbench().knitFiles().*what)(); });
  };
  onFiles(a.printDirections, &KnitFiles::printDirections);
  onFiles(a.everything, &KnitFiles::askEverything);
  onFiles(a.wearerTable, &KnitFiles::askSizes);
  onFiles(a.wearerBooklets, &KnitFiles::askBooklets);
  onFiles(a.printChart, &KnitFiles::printChart);
  onFiles(a.printBooklet, &KnitFiles::printBooklet);
  connect(a.wholeStitches, &QAction::toggled, &settings_, &Settings::setStitchesShown);
  connect(a.drafting, &QAction::triggered, this, [this] { showStage(Stage::Drafting); });
  connect(a.knitting, &QAction::triggered, this, [this] { showStage(Stage::Knitting); });
  connect(a.makingUp, &QAction::triggered, this, [this] { showStage(Stage::MakingUp); });
  connect(a.directions, &QAction::triggered, this,
          [this] { showPage(workbench().pages().directions); });
  connect(a.chart, &QAction::triggered, this, [this] { showPage(workbench().pages().chart); });
  connect(a.sizes, &QAction::triggered, this, [this] { showPage(workbench().pages().sizes); });
  connect(a.enlarge, &QAction::triggered, this,
          [this](bool enlarged) { workbench().area().setEnlarged(enlarged); });
  connect(a.answers, &QAction::toggled, this,
          [this](bool shown) { workbench().setAnswersShown(shown); });
  connect(a.guide, &QAction::triggered, this,
          [this] { showGuide(work_ ? work_->panel().measurementInUse() : std::nullopt); });
  connect(a.keys, &QAction::triggered, this, [this] { showKeyList(*this); });
  connect(a.before, &QAction::toggled, this, &MainWindow::refreshBefore);
  connect(a.nextPart, &QAction::triggered, this, [this] { workbench().goToNextPart(1); });
  connect(a.partBefore, &QAction::triggered, this, [this] { workbench().goToNextPart(-1); });
  fillAppearanceMenu(*a.appearance, settings_);
  connect(a.about, &QAction::triggered, this, [this] {
    banner_->say(Severity::Note, tr("Scyewright"),
                 tr("A workbench for hand knitters who design garments with set-in sleeves. "
                    "Free software under the MIT licence."));
  });
  fillWearerMenu(*a.wearer, document_, wearers_, attention_);
  connect(&wearers_, &WearerStore::failed, this,
          [this](const QString& title, const QString& reason) {
            banner_->say(Severity::Blocking, title, reason);
          });
  connect(a.recent, &QMenu::aboutToShow, this, &MainWindow::fillRecent);
  connect(a.language, &QMenu::aboutToShow, this, &MainWindow::fillLanguages);
}

void MainWindow::connectFiles() {
  connect(files_, &FileKeeper::opened, this, &MainWindow::showWork);
  connect(files_, &FileKeeper::refused, this, [this](const QString& title, const QString& reason) {
    banner_->say(Severity::Blocking, title, reason);
  });
}

void MainWindow::openFile(const QString& path) {
  files_->openFile(path);
}

void MainWindow::openStyle(const QString& path) {
  if (files_->mayLeave()) files_->openUntitled(path);
}

void MainWindow::showStart() {
  // What was said of the design that is left; an offer made on the start page itself stays.
  if (work_ && pages_->currentWidget() == work_) banner_->dismiss();
  document_.replace({}, {});
  actions_->setWorking(false);
  head_->setWorking(false);
  pages_->setCurrentWidget(&startPage());
  startPage().begin();
  refreshTitle();
  notices_->offerAgain();
}

void MainWindow::showWork() {
  banner_->dismiss();
  pages_->setCurrentWidget(&workbench());
  actions_->setWorking(true);
  head_->setWorking(true);
  refreshTitle();
  workbench().setStage(Stage::Drafting);
  notices_->offerAgain();
  workbench().table().setFocus();
}

void MainWindow::showStage(Stage stage) {
  workbench().setStage(stage);
  QWidget* page = workbench().area().page();
  (page ? page : &workbench().table())->setFocus();
}

void MainWindow::showPage(QWidget* page) {
  workbench().area().showPage(page);
  page->setFocus();
}

void MainWindow::offerRecovered() {
  notices_->offerRecovered();
}

void MainWindow::refreshTitle() {
  const bool working = work_ && pages_->currentWidget() == work_;
  // It ends in the program's name, which Qt would add otherwise.
  setWindowTitle(working ? tr("%1[*] — Scyewright").arg(document_.displayName())
                         : QStringLiteral("Scyewright"));
  setWindowModified(working && document_.isModified());
}

void MainWindow::refreshHistory() {
  const QUndoStack& history = document_.history();
  const auto dress = [](QAction* action, bool can, const QString& plain, const QString& what) {
    action->setEnabled(can);
    action->setText(what.isEmpty() ? plain : QStringLiteral("%1: %2").arg(plain, what));
  };
  dress(actions_->undo, history.canUndo(), tr("&Undo"), history.undoText());
  dress(actions_->redo, history.canRedo(), tr("&Redo"), history.redoText());
}

void MainWindow::refreshSettings() {
  const bool inches = settings_.unit() == LengthUnit::Inch;
  document_.setTypedUnit(settings_.unit());
  (inches ? actions_->inches : actions_->centimetres)->setChecked(true);
  actions_->grid->setChecked(settings_.gridShown());
  actions_->wholeStitches->setChecked(settings_.stitchesShown());
}

void MainWindow::refreshBefore() {
  const bool wanted = actions_->before->isChecked();
  attention_.setPreview(wanted ? document_.designBefore() : std::nullopt);
}

void MainWindow::fillRecent() {
  actions_->recent->clear();
  for (const QString& path : settings_.recentFiles()) {
    QAction* action = actions_->recent->addAction(QFileInfo(path).fileName());
    action->setToolTip(path);
    connect(action, &QAction::triggered, this, [this, path] { openFile(path); });
  }
  if (actions_->recent->isEmpty())
    actions_->recent->addAction(tr("Nothing opened yet"))->setEnabled(false);
}

void MainWindow::fillLanguages() {
  actions_->language->clear();
  const auto add = [this](const QString& name, const std::string& tag) {
    QAction* action = actions_->language->addAction(name);
    action->setCheckable(true);
    action->setChecked(settings_.language().toStdString() == tag);
    connect(action, &QAction::triggered, this, [this, tag] {
      settings_.setLanguage(QString::fromStdString(tag));
      banner_->say(Severity::Note, tr("Language."),
                   tr("It changes when the program is started the next time."));
    });
  };
  add(tr("As the desktop"), {});
  for (const std::string& tag : languagesThere())
    add(QString::fromStdString(phrasesIn(tag).say("language.name")), tag);
}

void MainWindow::keepState() {
  const auto keep = [this](const char* name, const QByteArray& state) {
    state_.put(QLatin1String(name), QString::fromLatin1(state.toBase64()));
  };
  keep("geometry", saveGeometry());
  if (work_) {
    keep("parts", work_->saveState());
    keep("middle", work_->area().saveState());
  }
  state_.flush();
}

QByteArray MainWindow::kept(const char* name) const {
  return QByteArray::fromBase64(state_.text(QLatin1String(name)).toLatin1());
}

void MainWindow::takeState() {
  if (restoreGeometry(kept("geometry"))) return;
  // A small screen is filled.
  constexpr int kSmallScreen = 1366;
  if (screen()->availableSize().width() <= kSmallScreen) setWindowState(Qt::WindowMaximized);
  const int em = fontMetrics().averageCharWidth();
  resize(QSize(260 * em, 165 * em).boundedTo(0.9 * screen()->availableSize()));
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!files_->mayLeave()) {
    event->ignore();
    return;
  }
  keepState();
  event->accept();
}

void MainWindow::showEvent(QShowEvent* event) {
  if (pages_->count() == 0) showStart();
  QMainWindow::showEvent(event);
}

void MainWindow::changeEvent(QEvent* event) {
  QMainWindow::changeEvent(event);
  // Where changes of a file are not told, as on some network disks, they are seen at the latest
  // now.
  if (event->type() == QEvent::ActivationChange && isActiveWindow()) watch_.look();
}

} // namespace scye
