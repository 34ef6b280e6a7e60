#include "core/gesture/addresses.h"

#include "tests/support/edited.h"
#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

using Texts = std::vector<std::string>;

std::string first(const Lab& lab, CardId id) {
  const Card& card = *find<Card>(lab, id);
  return card.addresses.empty() || !card.addresses[0].address ? "" : to_text(*card.addresses[0].address);
}

struct Deck : World {
  Deck() {
    for (const char* name : {"one", "two", "three"}) cards.push_back(add_card(add_machine(name), deck));
    for (const CardId c : cards) cells.push_back({c, 0});
  }
  std::vector<CardId> cards;
  std::vector<AddressCell> cells;
};

TEST(Addresses, OfPastedLinesTheColumnWithTheAddressCounts) {
  EXPECT_EQ(pasted_addresses("172.22.10.50\r\n172.22.10.51\n\n"), (Texts{"172.22.10.50", "172.22.10.51"}));
  EXPECT_EQ(pasted_addresses("one\t172.22.10.50/24\tDeck\ntwo;2001:db8::2;x\nthree,.77"),
            (Texts{"172.22.10.50/24", "2001:db8::2", "three,.77"}));
  EXPECT_TRUE(pasted_addresses(" \n \r\n").empty());
}

TEST(Addresses, LinesAreOneStep) {
  const Deck d;
  const Texts typed{"172.22.10.50", ".51", "dhcp"};
  const auto edit = set_addresses(d.lab, d.cells, typed);
  const Lab now = edited(d.lab, edit);
  EXPECT_EQ(first(now, d.cards[0]), "172.22.10.50");
  EXPECT_EQ(first(now, d.cards[1]), "172.22.10.51");
  EXPECT_EQ(find<Card>(now, d.cards[2])->addresses[0].kind, AddressKind::dhcp);
  EXPECT_EQ(english(edit->label), "Set 3 addresses");
}

TEST(Addresses, ALineThatDoesNotFitIsNamed) {
  const Deck d;
  const Texts typed{"172.22.10.50", "172.22.10.300", ".52"};
  const auto edit = set_addresses(d.lab, d.cells, typed);
  ASSERT_FALSE(edit);
  const std::string said = english(edit.error());
  EXPECT_TRUE(said.starts_with("line 2, for two")) << said;
  EXPECT_NE(said.find("300"), std::string::npos) << said;
}

// pilot and desk have .10 and .12; numbers go on around them, never onto the broadcast address.
TEST(Addresses, NumbersGoOnWhereNobodyIs) {
  Deck d;
  d.card(d.cards[0]).addresses = {};
  EXPECT_FALSE(number_on(d.lab, d.cells));
  d.lab = edited(d.lab, set_addresses(d.lab, std::span(d.cells).first(1), Texts{"172.22.10.9"}));
  const Lab now = edited(d.lab, number_on(d.lab, d.cells));
  EXPECT_EQ(first(now, d.cards[0]), "172.22.10.9");
  EXPECT_EQ(first(now, d.cards[1]), "172.22.10.11");
  EXPECT_EQ(first(now, d.cards[2]), "172.22.10.13");
  d.lab = edited(d.lab, set_addresses(d.lab, std::span(d.cells).first(1), Texts{"172.22.10.253"}));
  const auto full = number_on(d.lab, d.cells);
  ASSERT_FALSE(full);
  EXPECT_EQ(english(full.error()),
            "from 172.22.10.253 on only 2 addresses fit into the segment: begin with a lower one");
}

TEST(Addresses, WhatWasTypedGivesWayToSuggestions) {
  Deck d;
  d.lab = edited(d.lab, set_addresses(d.lab, d.cells, Texts{".50", ".51", ".52"}));
  const Lab now = edited(d.lab, suggest_again(d.lab, d.cells));
  for (const CardId c : d.cards) {
    const Card& card = *find<Card>(now, c);
    ASSERT_EQ(card.addresses.size(), 1U);
    EXPECT_EQ(card.addresses[0].kind, AddressKind::suggested);
    EXPECT_NE(first(now, c), first(d.lab, c));
  }
}

} // namespace
} // namespace snug::test
