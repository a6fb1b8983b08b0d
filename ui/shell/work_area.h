// The middle of the window: the drawing, and the pages of the stage the work is at. While drafting
// the drawing has it all; when a page comes forward the drawing stays beside it, to show where on
// the garment one is. A stage of several pages has tabs; a page may also stand alone. Pages are
// made when they are first looked at, so that the first drawing does not wait for them.
#pragma once

#include "shell/stage.h"

#include <QList>
#include <QWidget>

#include <functional>

class QSplitter;
class QStackedWidget;
class QTabBar;
class QToolButton;

namespace scye {

class WorkArea : public QWidget {
  Q_OBJECT
public:
  explicit WorkArea(QWidget* drawing, QWidget* parent = nullptr);

  using MakePage = std::function<QWidget*()>;
  int addPage(Stage stage, const QString& title, MakePage make); // the page's number
  QWidget* madePage(int number);
  void setStage(Stage stage);
  [[nodiscard]] Stage stage() const { return stage_; }
  void showPage(QWidget* page);        // and its stage
  [[nodiscard]] QWidget* page() const; // that is shown; while only the pieces are: nothing
  [[nodiscard]] QByteArray saveState() const;
  bool takeState(const QByteArray& state);
  // The page alone, or the drawing with it, as it is asked for. A page that the drawing leaves
  // hardly any room stands alone by itself, unless both were asked for.
  void setEnlarged(bool enlarged);
  [[nodiscard]] bool isEnlarged() const;

Q_SIGNALS:
  void enlarged(bool enlarged);
  void stageChanged();

protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  struct Page {
    Stage stage;
    QString title;
    MakePage make;
    QWidget* widget; // nothing while it has not been looked at
  };
  void fillTabs();
  void choose(int tab);
  void showChosen();
  void divide();
  void makeRoom();
  [[nodiscard]] bool isCrowded() const;
  void enlarge(bool alone);

  Stage stage_ = Stage::Drafting;
  QWidget* drawing_;
  QSplitter* parts_;
  QWidget* head_;
  QTabBar* tabs_;
  QToolButton* larger_;
  QStackedWidget* pages_;
  QList<Page> all_;
  int chosen_[kStageCount]; // page of each stage; none is only the pieces
  bool placed_ = false;     // the line has been drawn, by us or the last time
  bool byItself_ = false;   // the page stands alone for want of room
  bool bothAsked_ = false;  // in spite of it
};

} // namespace scye
