#pragma once
// The ferry sample with its segments by name.

#include "core/model/store.h"
#include "tests/support/edited.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {

struct Ferries {
  Lab lab = sample("skerry-ferries");
  SegmentId segment(std::string_view name) const {
    for (const Segment& s : lab.segments)
      if (s.name == name) return s.id;
    ADD_FAILURE() << name;
    return {};
  }
  Lab after(const Result<Edit>& edit) const { return edited(lab, edit); }
};

} // namespace snug::test
