// A page to knit from. It is made anew only while it can be seen: during a drag the pages
// behind it cost nothing.
#pragma once

#include "document/attention.h"
#include "document/document.h"
#include "settings/settings.h"

#include <QWidget>

namespace scye {

class KnitPage : public QWidget {
  Q_OBJECT
public:
  KnitPage(Document& document, Settings& settings, QWidget* parent);

protected:
  virtual void refresh() = 0;
  // Of a page that shows what has been knitted too.
  void refreshWithWork();
  // Now if it is seen, else when it comes to be.
  void refreshSoon();
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

  Document& document_;
  Settings& settings_;

private:
  bool due_ = true;
};

} // namespace scye
