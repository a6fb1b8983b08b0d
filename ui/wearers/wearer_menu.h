// What can be done with kept measurements, as a menu: keep those of this design, use or remove
// those of a wearer. Files that cannot be read are named there.
#pragma once

#include "document/attention.h"
#include "document/document.h"
#include "wearers/wearer_store.h"

class QMenu;

namespace scye {

// Both must outlive the menu, which fills itself each time it is about to be shown.
void fillWearerMenu(QMenu& menu, Document& document, WearerStore& store, Attention& attention);

// One undo step: the kept measurements in place of the design's.
void useWearer(Document& document, const WearerStore::Kept& kept);
void keepWearer(Document& document, WearerStore& store);

} // namespace scye
