#include "core/base/ids.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

TEST(Ids, TextAndBack) {
  EXPECT_EQ(to_text(MachineId{12}), "m12");
  for (const char* text : {"m12", "s3", "c7", "v1", "l2", "p9", "o4", "d5", "h6", "e8", "q10", "a11", "pc",
                           "outside", "m999999999"})
    EXPECT_EQ(to_text(parse_id(text).value()), text);
}

TEST(Ids, RefusesOtherForms) {
  for (const char* text : {"", "m", "m0", "m01", "m-1", "m+1", "m1 ", " m1", "M1", "x1", "m1000000000",
                           "m99999999999999999999", "none", "12"})
    EXPECT_FALSE(parse_id(text).has_value()) << text;
}

} // namespace
} // namespace snug
