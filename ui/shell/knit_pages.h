// The pages to knit and make up from, and what they have in common: the piece that is looked at.
#pragma once

#include "knitting/booklet_page.h"
#include "knitting/came_out_page.h"
#include "knitting/chart_page.h"
#include "knitting/diary_page.h"
#include "knitting/directions_page.h"
#include "knitting/finish_page.h"
#include "knitting/knit_files.h"
#include "knitting/needle_page.h"
#include "knitting/sizes_page.h"
#include "shell/work_area.h"
#include "worn/worn_page.h"

namespace scye {

// A page of the middle area that is made when it is asked for.
template <class Page>
class LatePage {
public:
  LatePage(WorkArea& area, Stage stage, const QString& title, std::function<Page*()> make)
      : area_(area), number_(area.addPage(stage, title, std::move(make))) {}

  operator Page*() const { return static_cast<Page*>(area_.madePage(number_)); }
  Page* operator->() const { return *this; }

private:
  WorkArea& area_;
  int number_;
};

struct KnitPages {
  KnitPages(Document& document, Attention& attention, Settings& settings, WorkArea& area,
            KnitFiles& files);
  KnitPages(const KnitPages&) = delete; // its pages refer to it
  KnitPages& operator=(const KnitPages&) = delete;

  LatePage<DirectionsPage> directions;
  LatePage<ChartPage> chart;
  LatePage<NeedlePage> needles;
  LatePage<CameOutPage> cameOut;
  LatePage<DiaryPage> diary;
  LatePage<BookletPage> booklet;
  LatePage<SizesPage> sizes;
  LatePage<FinishPage> finish;
  LatePage<WornPage> worn;
};

} // namespace scye
