// A heading that opens and closes what stands under it. What is inside is made when it is first
// opened, so that a panel costs nothing until somebody looks at it.
#pragma once

#include <QWidget>

#include <functional>

namespace scye {

class QuietButton;

class Fold : public QWidget {
  Q_OBJECT
public:
  enum class Rank { Section, Rarer };
  using Make = std::function<QWidget*()>;

  Fold(Rank rank, const QString& title, Make make, QWidget* parent = nullptr);

  void setOpen(bool open);
  [[nodiscard]] bool isOpen() const;
  [[nodiscard]] Rank rank() const { return rank_; }
  QWidget* body();      // made now if it is not there yet
  QWidget* firstStop(); // of the keyboard in it; its head where it has none

Q_SIGNALS:
  void opened(bool open);

private:
  Rank rank_;
  QuietButton* head_;
  Make make_;
  QWidget* body_ = nullptr;
};

} // namespace scye
