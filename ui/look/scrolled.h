// A page that scrolls where it is higher than its room.
#pragma once

class QWidget;

namespace scye {

// `inside` fills the page, which has nothing else.
void fillScrolled(QWidget& page, QWidget* inside);

} // namespace scye
