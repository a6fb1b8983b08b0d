// The pages to knit and make up from, and what they have in common: the piece that is looked at.
#pragma once

#include "knitting/came_out_page.h"
#include "knitting/chart_page.h"
#include "knitting/directions_page.h"
#include "knitting/finish_page.h"
#include "knitting/needle_page.h"
#include "knitting/sizes_page.h"
#include "worn/worn_page.h"

namespace scye {

class WorkArea;

struct KnitPages {
  KnitPages(Document& document, Attention& attention, Settings& settings, WorkArea& area);

  DirectionsPage* directions;
  ChartPage* chart;
  SizesPage* sizes;
  WornPage* worn;
  NeedlePage* needles;
  CameOutPage* cameOut;
  FinishPage* finish;
};

} // namespace scye
