#pragma once
// A lab after an edit that can be taken back exactly.

#include "core/edit/edit.h"

#include <gtest/gtest.h>

namespace snug::test {

inline Lab edited(const Lab& lab, const Result<Edit>& edit) {
  Lab out = lab;
  EXPECT_TRUE(edit) << (edit ? "" : english(edit.error()));
  if (!edit) return out;
  EXPECT_TRUE(apply(out, *edit));
  Lab back = out;
  EXPECT_TRUE(apply(back, inverse(*edit)));
  EXPECT_EQ(back, lab);
  return out;
}

} // namespace snug::test
