#include "core/document/nearest.h"

#include "core/document/read.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

TEST(NearestMember, FindsWhatWasMeant) {
  EXPECT_EQ(detail::nearest_member("memroy"), "memory");
  EXPECT_EQ(detail::nearest_member("machnes"), "machines");
  EXPECT_EQ(detail::nearest_member("adress"), "address");
  EXPECT_EQ(detail::nearest_member("vial"), "via");
  EXPECT_EQ(detail::nearest_member("carry"), "carries");
  EXPECT_EQ(detail::nearest_member("memories"), "memory");
  for (const char* other : {"", "colour", "x", "memory_of_the_ship"})
    EXPECT_EQ(detail::nearest_member(other), "") << other;
}

TEST(NearestMember, NotesSayWhereAndWhat) {
  const auto loaded = read_document("{\"format\": \"snuglab\", \"version\": 1,\n \"machines\": [{\"id\": "
                                    "\"m1\", \"memroy\": 5}],\n \"mine\": 1}",
                                    "a.snuglab");
  ASSERT_TRUE(loaded.has_value());
  ASSERT_EQ(loaded->notes.size(), 2U);
  EXPECT_EQ(english(loaded->notes[0]),
            "line 2, column 28: \"memroy\" in /machines/0 is not known to this version and kept as it is; "
            "perhaps \"memory\" was meant");
  EXPECT_EQ(english(loaded->notes[1]),
            "line 3, column 2: \"mine\" in the document is not known to this version and kept as it is");
}

} // namespace
} // namespace snug
