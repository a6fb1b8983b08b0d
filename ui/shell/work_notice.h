// Tells of a change of the design that reaches rows which are knitted already, where it is made:
// what differs, and the way back or to what can become of them. Not while a value is still in hand.
#pragma once

#include "document/document.h"
#include "settings/settings.h"

#include <functional>

namespace scye {

class Banner;

class WorkNotice : public QObject {
  Q_OBJECT
public:
  // `settle` goes to where it is settled.
  WorkNotice(Document& document, Settings& settings, Banner& banner, std::function<void()> settle,
             QObject* parent = nullptr);

private:
  void look();

  Document& document_;
  Settings& settings_;
  Banner& banner_;
  std::function<void()> settle_;
  QString said_, bannerText_;
};

} // namespace scye
