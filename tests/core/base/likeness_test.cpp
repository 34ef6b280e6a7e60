#include "core/base/likeness.h"

#include <gtest/gtest.h>

#include <vector>

namespace snug {
namespace {

TEST(Likeness, CountsLettersPutInLeftOutChangedAndSwapped) {
  EXPECT_EQ(letters_apart("", ""), 0U);
  EXPECT_EQ(letters_apart("ferry", "ferry"), 0U);
  EXPECT_EQ(letters_apart("ferry", ""), 5U);
  EXPECT_EQ(letters_apart("ferry", "fery"), 1U);
  EXPECT_EQ(letters_apart("fery", "ferry"), 1U);
  EXPECT_EQ(letters_apart("ferry", "ferny"), 1U);
  EXPECT_EQ(letters_apart("ferry", "frery"), 1U);
  EXPECT_EQ(letters_apart("kitten", "sitting"), 3U); // common practice, no published source
}

TEST(Likeness, NearestIsTheFirstOfTheNearestWithinWhatIsForgiven) {
  const std::vector<std::string> words{"check", "table", "draw", "new"};
  EXPECT_EQ(nearest_word("chekc", words), "check");
  EXPECT_EQ(nearest_word("tabel", words), "table");
  EXPECT_EQ(nearest_word("nev", words), "new");
  EXPECT_EQ(nearest_word("nevv", words), "") << "two letters of four";
  EXPECT_EQ(nearest_word("zzzzzzz", words), "");
  EXPECT_EQ(nearest_word("check", words), "") << "it is there";
  EXPECT_EQ(nearest_word("", words), "");
  EXPECT_EQ(nearest_word(std::string(1000, 'a'), words), "");
  EXPECT_EQ(nearest_word("drax", std::vector<std::string>{"drab", "draw"}), "drab");
}

} // namespace
} // namespace snug
