// A column of widgets that fills its page and scrolls where it is higher than that.
#pragma once

class QVBoxLayout;
class QWidget;

namespace scye {

// Gives the page, which has no layout yet, a column whose widgets scroll.
[[nodiscard]] QVBoxLayout* scrolledColumn(QWidget& page);

} // namespace scye
