#include "core/base/message.h"

#include "core/base/result.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <limits>

namespace snug {
namespace {

constexpr Template kCards{"cards", "{1} has {0} cards", "{1} has {0} card"};
constexpr Template kBrace{"brace", "{{0} is {0}"};

TEST(Message, FillsArgumentsAndChoosesThePlural) {
  EXPECT_EQ(english(say(kCards, Count{1}, "deck-a")), "deck-a has 1 card");
  EXPECT_EQ(english(say(kCards, Count{2}, "deck-a")), "deck-a has 2 cards");
  EXPECT_EQ(english(say(kBrace, "x")), "{0} is x");
}

TEST(Message, ListsReadAsASentence) {
  EXPECT_EQ(english(Argument(std::vector<std::string>{"a", "b", "c"})), "a, b and c");
  EXPECT_EQ(english(Argument(std::vector<std::string>{"a"})), "a");
}

// IEC 80000-13: 1 GiB = 1024 MiB; DECISIONS 19: below 1 GiB in MiB.
TEST(Message, ShowsMemoryInGibFromOneGibOn) {
  EXPECT_EQ(show_mib(0), "0 MiB");
  EXPECT_EQ(show_mib(1023), "1023 MiB");
  EXPECT_EQ(show_mib(1024), "1.0 GiB");
  EXPECT_EQ(show_mib(1536), "1.5 GiB");
  EXPECT_EQ(show_mib(1587), "1.5 GiB");
  EXPECT_EQ(show_mib(1588), "1.6 GiB");
  EXPECT_EQ(show_mib(-1024), "-1.0 GiB");
  EXPECT_EQ(show_mib(-1), "-1 MiB");
  EXPECT_EQ(show_mib(64LL * 1024 * 1024), "65536.0 GiB");
  EXPECT_FALSE(show_mib(std::numeric_limits<std::int64_t>::min()).empty());
}

TEST(Message, StandsAloneWithACapitalLetterUnlessANameIsFirst) {
  constexpr Template kOwn{"own", "no card is left"}, kNamed{"named", "{0} has no card"};
  EXPECT_EQ(sentence(say(kOwn)), "No card is left");
  EXPECT_EQ(sentence(say(kNamed, "deck-a")), "deck-a has no card");
  EXPECT_EQ(sentence(say(kNamed, "the PC")), "The PC has no card");
  EXPECT_EQ(sentence(say(kNamed, "")), " has no card");
  EXPECT_EQ(sentence(Message{}), "");
}

TEST(Problem, NamesFileLineColumnAndPath) {
  EXPECT_EQ(english(Problem{say(kCards, Count{1}, "m"), "lab.snuglab", 3, 7, "/machines/0"}),
            "lab.snuglab:3:7: /machines/0: m has 1 card");
}

// Acronyms and names as their standards spell them, whatever documents write.
TEST(Message, TermsAreSpeltAsPeopleDo) {
  EXPECT_EQ(english(Argument(Term{"nat"})), "NAT");
  EXPECT_EQ(english(Argument(Term{"iscsi"})), "iSCSI");
  EXPECT_EQ(english(Argument(Term{"isolated"})), "isolated");
}

} // namespace
} // namespace snug
