// What is asked of every picture and page of the measuring guide.
#pragma once

#include "schematic/picture.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace scye::test {

// No label on another, and no phrase missing.
inline void expectWordsApart(const Picture& picture, const std::string& what) {
  std::vector<const Label*> labels;
  for (const Group& g : picture.groups)
    for (const Label& l : g.labels)
      labels.push_back(&l);
  EXPECT_FALSE(labels.empty()) << what;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    EXPECT_EQ(labels[i]->text.find_first_of("[{"), std::string::npos)
        << what << ": " << labels[i]->text;
    const Box a = labelBox(*labels[i]);
    for (std::size_t j = 0; j < i; ++j) {
      const Box b = labelBox(*labels[j]);
      EXPECT_TRUE(a.low.x() >= b.high.x() || b.low.x() >= a.high.x() || a.low.y() >= b.high.y() ||
                  b.low.y() >= a.high.y())
          << what << ": " << labels[i]->text << " lies on " << labels[j]->text;
    }
  }
}

} // namespace scye::test
