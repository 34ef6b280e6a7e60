#include "core/document/locate.h"

#include <gtest/gtest.h>

namespace snug::detail {
namespace {

TEST(Locate, LineAndColumnCountCharacters) {
  const std::string text = "ab\nc\xC3\xA9"
                           "d\r\ne\rf";
  const auto at = [&text](std::size_t offset) {
    const TextPlace p = place_at(text, offset);
    return std::to_string(p.line) + ":" + std::to_string(p.column);
  };
  EXPECT_EQ(at(0), "1:1");
  EXPECT_EQ(at(1), "1:2");
  EXPECT_EQ(at(3), "2:1");
  EXPECT_EQ(at(6), "2:3"); // behind a character of two octets
  EXPECT_EQ(at(9), "3:1"); // CR LF is one end of line
  EXPECT_EQ(at(11), "4:1");
  EXPECT_EQ(at(text.size() + 5), at(text.size()));
}

TEST(Locate, FindsValuesAndKeysByPointer) {
  const std::string text = R"( {"a": [10, {"b" : true}, []], "~/": -5, "a/b": {"": "x"}, "c": 1, "c": 2})";
  const auto from = [&text](std::string_view pointer, Part part = Part::value, int occurrence = 1) {
    const auto at = find_pointer(text, pointer, part, occurrence);
    return at ? text.substr(*at, 4) : "none";
  };
  EXPECT_EQ(from(""), "{\"a\"");
  EXPECT_EQ(from("/a"), "[10,");
  EXPECT_EQ(from("/a/0"), "10, ");
  EXPECT_EQ(from("/a/1"), "{\"b\"");
  EXPECT_EQ(from("/a/1/b"), "true");
  EXPECT_EQ(from("/a/1/b", Part::key), "\"b\" ");
  EXPECT_EQ(from("/a/2"), "[]],");
  EXPECT_EQ(from("/~0~1"), "-5, ");
  EXPECT_EQ(from("/a~1b/"), "\"x\"}");
  EXPECT_EQ(from("/c", Part::key, 1), "\"c\":");
  EXPECT_EQ(from("/c", Part::value, 1), "1, \"");
  EXPECT_EQ(from("/c", Part::value, 2), "2}");
  EXPECT_EQ(from("/c", Part::value, 3), "none");
  EXPECT_EQ(from("/a/3"), "none");
  EXPECT_EQ(from("/nowhere"), "none");
}

TEST(Locate, FindsWhatStandsBeforeADamage) {
  const std::string text = R"({"a": 1, "b": [2, )";
  EXPECT_EQ(find_pointer(text, "/b/0"), text.find('2'));
  EXPECT_EQ(find_pointer(text, "/c"), std::nullopt);
  EXPECT_EQ(find_pointer("", ""), std::nullopt);
}

} // namespace
} // namespace snug::detail
