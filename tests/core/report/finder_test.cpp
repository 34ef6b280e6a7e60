#include "core/report/finder.h"

#include "tests/support/sample.h"

#include <array>
#include <gtest/gtest.h>

#include <algorithm>

namespace snug {
namespace {

std::string lower(std::string_view s) {
  std::string out(s);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

const std::array<FindAction, 2> kActions{{{"Undo", "Edit  Ctrl+Z"}, {"Deck the hall", "View"}}};

class Find : public ::testing::Test {
 protected:
  const Lab lab = test::sample("skerry-ferries");
  const Analysis analysis{lab};
  const Finder finder{find_items(analysis, kActions), lower};

  std::vector<std::string> titles(std::string_view typed, std::size_t most = 20) const {
    std::vector<std::string> out;
    for (const std::size_t i : finder.find(typed, most)) out.push_back(finder.items()[i].title);
    return out;
  }
  const FindItem& first(std::string_view typed) const {
    const auto found = finder.find(typed, 1);
    EXPECT_EQ(found.size(), 1U) << typed;
    return finder.items()[found.empty() ? 0 : found.front()];
  }
};

TEST_F(Find, TheWholeNameComesFirst) {
  EXPECT_EQ(first("beacon").title, "beacon");
  EXPECT_EQ(first("beacon").kind, Findable::machine);
  EXPECT_EQ(first("BEACON").title, "beacon");
  EXPECT_EQ(first("steering").kind, Findable::segment);
}

TEST_F(Find, BeginningsComeBeforeTheMiddle) {
  const std::vector<std::string> found = titles("deck");
  ASSERT_GE(found.size(), 3U);
  EXPECT_EQ(found[0], "deck-a");
  EXPECT_EQ(found[1], "deck-b");
  EXPECT_EQ(found[2], "Deck the hall");
}

TEST_F(Find, ServicesAndWhoAsksForThem) {
  const std::vector<std::string> found = titles("dhcp");
  EXPECT_EQ(found, (std::vector<std::string>{"DHCP on Crew", "DHCP on Passengers",
                                             "manifest asks DHCP on Crew", "DHCP"}));
  EXPECT_EQ(first("dhcp passengers").kind, Findable::service);
  EXPECT_EQ(first("dhcp passengers").id.kind, Kind::card);
  EXPECT_EQ(first("dhcp crew").id.kind, Kind::segment);
  EXPECT_EQ(finder.items()[finder.find("dhcp", 20).back()].kind, Findable::word)
      << "after what is in the lab";
}

TEST_F(Find, ByRoleAndByTheEndOfAnAddress) {
  EXPECT_EQ(first("directory server").title, "beacon");
  const FindItem& address = first("172.22.10.12");
  EXPECT_EQ(address.kind, Findable::address);
  EXPECT_EQ(address.id.kind, Kind::card);
  EXPECT_NE(address.detail.find("wheelhouse"), std::string::npos);
  const std::vector<std::string> ends = titles("254");
  EXPECT_NE(std::find(ends.begin(), ends.end(), "172.22.10.254"), ends.end());
}

TEST_F(Find, EveryWordMustOccur) {
  EXPECT_EQ(first("wheelhouse steering").title, "172.22.10.12");
  EXPECT_TRUE(titles("beacon nowhere-at-all").empty());
  EXPECT_TRUE(titles("").empty());
  EXPECT_TRUE(titles("   ").empty());
}

TEST_F(Find, ActionsByTheirPlaceInTheList) {
  EXPECT_EQ(first("undo").kind, Findable::action);
  EXPECT_EQ(first("undo").place, 0U);
  EXPECT_EQ(first("deck the hall").place, 1U);
}

TEST_F(Find, FindingsByTheirSentence) {
  const FindItem& twice = first("belongs both deck-a");
  ASSERT_EQ(twice.kind, Findable::finding);
  EXPECT_EQ(analysis.findings()[twice.place].rule->id, "address-twice");
  EXPECT_EQ(twice.id, analysis.findings()[twice.place].places.front());
}

TEST_F(Find, EverythingWithANameIsFoundByIt) {
  for (const FindItem& i : finder.items()) {
    const auto found = finder.find(i.title, finder.items().size());
    EXPECT_TRUE(std::any_of(found.begin(), found.end(), [&](std::size_t f) {
      return finder.items()[f].title == i.title && finder.items()[f].kind == i.kind;
    })) << i.title;
  }
  EXPECT_EQ(titles("e", 5).size(), 5U);
}

} // namespace
} // namespace snug
