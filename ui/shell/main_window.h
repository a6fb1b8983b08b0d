// The window: start page or workbench, with the messages above them. It only puts the parts
// together; files, actions and the work itself have classes of their own.
#pragma once

#include "document/attention.h"
#include "document/document.h"
#include "document/recovery.h"
#include "settings/app_paths.h"
#include "settings/preference_store.h"
#include "shell/actions.h"
#include "shell/appearance.h"
#include "shell/file_keeper.h"
#include "shell/stage.h"
#include "wearers/wearer_store.h"

#include <QMainWindow>

class QStackedWidget;

namespace scye {

class Banner;
class ExportQueue;
class FileNotices;
class GuideWindow;
class HeadBar;
class StartPage;
class Workbench;

class MainWindow : public QMainWindow {
  Q_OBJECT
public:
  MainWindow(const AppPaths& paths, const Phrases& phrases);
  ~MainWindow() override;

  void openFile(const QString& path);
  void openStyle(const QString& path); // a copy of it
  void offerRecovered();

  [[nodiscard]] Document& document() { return document_; }
  [[nodiscard]] Settings& settings() { return settings_; }
  [[nodiscard]] WearerStore& wearers() { return wearers_; }
  [[nodiscard]] FileKeeper& files() { return *files_; }
  [[nodiscard]] Actions& actions() { return *actions_; }
  [[nodiscard]] Recovery& recovery() { return *recovery_; }
  [[nodiscard]] Workbench& workbench(); // made when it is first needed
  [[nodiscard]] GuideWindow& guide();   // made when it is first needed
  [[nodiscard]] StartPage& startPage(); // made when it is first needed
  [[nodiscard]] Banner& banner() { return *banner_; }
  [[nodiscard]] HeadBar& head() { return *head_; }

protected:
  void closeEvent(QCloseEvent* event) override;
  void changeEvent(QEvent* event) override;
  void showEvent(QShowEvent* event) override;

private:
  void tellOf(ExportQueue& exports);
  void connectActions();
  void connectFiles();
  void showStart();
  void showWork();
  void showStage(Stage stage);
  void showPage(QWidget* page);
  void refreshTitle();
  void refreshHistory();
  void refreshSettings();
  void refreshBefore();
  void fillRecent();
  void fillLanguages();
  void showGuide(std::optional<Field> measurement); // nothing: where it was left
  void keepState();
  void takeState();
  [[nodiscard]] QByteArray kept(const char* name) const;

  AppPaths paths_;
  Settings settings_;
  Appearance appearance_;
  PreferenceStore state_; // of the window
  Document document_;
  FileWatch watch_;
  Attention attention_;
  WearerStore wearers_;
  std::unique_ptr<Actions> actions_;
  PlaceKeeper* places_;
  FileKeeper* files_;
  Recovery* recovery_;
  HeadBar* head_;
  Banner* banner_;
  FileNotices* notices_;
  QStackedWidget* pages_;
  StartPage* start_ = nullptr;
  Workbench* work_ = nullptr;
  GuideWindow* guide_ = nullptr;
};

} // namespace scye
