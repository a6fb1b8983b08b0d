// The garment worn: put on a form with the wearer's measurements, to be turned, its arms lifted,
// its sleeves drawn off, shown beside another. What takes time runs on the engine's thread; nothing
// runs while the page is hidden.
#pragma once

#include "document/beside.h"
#include "document/document.h"
#include "settings/settings.h"
#include "worn/worn_beside.h"
#include "worn/worn_picture.h"
#include "worn/worn_view.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QSlider;
class QToolButton;

namespace scye {

class WornPage : public QWidget {
  Q_OBJECT
public:
  WornPage(Document& document, Attention& attention, Settings& settings, QWidget* parent = nullptr);

protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

private:
  QWidget* makeControls();
  void follow(const Document::Event& event);
  void takeGarment();
  void takeInHand(std::optional<Field> field);
  void tellInHand();
  [[nodiscard]] ShownBeside beside() const;
  void findBeside(); // takes up what is to be shown beside, worked out on a thread of its own
  void takeBeside(std::shared_ptr<const Derived> other);
  [[nodiscard]] QString caption(const Derived& garment, bool isBeside) const;
  void wish();
  [[nodiscard]] WornPictureOptions asSeen() const;
  void savePicture();

  Document& document_;
  Settings& settings_;
  std::optional<Field> inHand_; // the value last pointed at or moved
  WornView* view_;
  QComboBox* views_;
  QSlider* arm_;
  QCheckBox *sleeves_, *pulls_;
  QComboBox* beside_;
  QToolButton* save_;
  QLabel *words_, *caution_, *valueInHand_;
  std::shared_ptr<const Derived> garment_, other_; // now, and beside it
  QString otherCaption_;
  std::shared_ptr<const Derived> settledGarment_, before_; // as of the last step of the history
  int step_ = 0;
  bool due_ = true; // another garment is to be taken up when the page is seen
  WornEngine* engine_;
  quint64 asked_ = 0; // what is to be shown beside: the newest question counts
  Beside finding_;    // last: its thread ends before what it hands over to
};

} // namespace scye
