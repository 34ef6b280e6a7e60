#include "core/reach/askable.h"

#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace snug::test {
namespace {

std::vector<std::string> names(const Lab& lab) {
  std::vector<std::string> out;
  for (const AskablePlace& p : askable_places(lab)) out.push_back(p.name);
  return out;
}

TEST(AskablePlaces, ArePcOutsideMachinesByNameRoutersAndTranslators) {
  const World w;
  const std::vector<AskablePlace> places = askable_places(w.lab);
  ASSERT_EQ(places.size(), 2 + w.lab.machines.size() + w.lab.lans.size() + 1);
  EXPECT_EQ(places[0].id.kind, Kind::pc);
  EXPECT_EQ(places[1].id.kind, Kind::outside);
  EXPECT_EQ(places.back().id, AnyId(w.crew));
  for (const AskablePlace& p : places) EXPECT_TRUE(is_askable(w.lab, p.id)) << p.name;
  EXPECT_FALSE(is_askable(w.lab, w.deck)); // isolated: no translator that could be asked
  EXPECT_FALSE(is_askable(w.lab, w.pilot_deck));
  EXPECT_FALSE(is_askable(w.lab, MachineId{99999}));
}

TEST(AskablePlaces, OfOneNameAreTold) {
  World w;
  w.machine(w.pilot).name = "Web";
  w.machine(w.desk).name = "Web";
  w.machine(w.guest).name = "app";
  const std::vector<std::string> all = names(w.lab);
  EXPECT_EQ(std::count(all.begin(), all.end(), "Web"), 1);
  EXPECT_EQ(std::count(all.begin(), all.end(), "Web (2)"), 1);
  EXPECT_LT(std::find(all.begin(), all.end(), "app"), std::find(all.begin(), all.end(), "Web"));
}

TEST(AskablePlaces, OfAnEmptyLabArePcAndOutside) { EXPECT_EQ(names(Lab{}).size(), 2U); }

TEST(AskableAddresses, AreThoseOfAMachineWithAChoice) {
  World w;
  EXPECT_TRUE(askable_addresses(Index(w.lab), w.pilot).empty()) << "one address is no choice";
  EXPECT_TRUE(askable_addresses(Index(w.lab), w.crew).empty());
  const auto two = askable_addresses(Index(w.lab), w.router);
  ASSERT_EQ(two.size(), 2U);
  EXPECT_EQ(two[0].name, "172.22.10.1 on Deck");
  EXPECT_EQ(two[1].name, "172.22.50.3 on Crew");
  EXPECT_EQ(two[1].address, address("172.22.50.3"));
}

TEST(AskedEnds, NameACardOrAnAddress) {
  World w;
  w.card(w.router_crew).name = "way out";
  const Analysis a(w.lab);
  const ReachNetwork& n = a.reach({}).network();
  for (const std::string& card : {std::string("way out"), std::string("Crew"), std::string("2"),
                                  std::string("card 2"), to_text(AnyId(w.router_crew))}) {
    const auto at = address_on_card(a.index(), n, w.router, card);
    ASSERT_TRUE(at) << card;
    EXPECT_EQ(*at, address("172.22.50.3")) << card;
  }
  EXPECT_EQ(address_on_card(a.index(), n, w.router, "Hold").error().message.id(), "ask-no-card");
  EXPECT_EQ(address_on_card(a.index(), n, w.rack, "Hold").error().message.id(), "ask-no-address");
  const auto leased = address_on_card(a.index(), n, w.desk, "Lane"); // by the LAN's DHCP
  ASSERT_TRUE(leased);
  EXPECT_EQ(end_at(n, *leased)->node, AnyId(w.desk));
  EXPECT_EQ(end_at(n, address("172.22.50.1"))->node, AnyId(w.crew)) << "the translator";
  EXPECT_EQ(end_at(n, address("10.1.1.1")).error().message.id(), "ask-nobody-has");
}

TEST(Services, AreReadAsTheyAreWritten) {
  for (const char* text : {"ping", "tcp", "udp", "tcp/1", "tcp/443", "udp/65535"}) {
    const auto s = parse_service(text);
    ASSERT_TRUE(s) << text;
    EXPECT_EQ(service_text(*s), text);
  }
  EXPECT_EQ(parse_service(" TCP/443 ")->port, 443);
  EXPECT_EQ(parse_service("icmp")->transport, Transport::icmp);
}

TEST(Services, OtherWordsAreRefused) {
  for (const char* text : {"", "tcp/", "tcp/0", "tcp/65536", "tcp/-1", "tcp/4 4", "tcp/443x", "ping/1",
                           "sctp/9", "443", "tcp/99999999999999999999"})
    EXPECT_FALSE(parse_service(text)) << text;
}

TEST(Services, OffersOfAMachineAndItsRoleStandOnce) {
  World w;
  Role role;
  role.id.number = 900;
  role.offers = {{{}, "portal", Transport::tcp, 443}, {{}, "names", Transport::udp, 53}};
  w.lab.roles.push_back(role);
  w.machine(w.pilot).role = role.id;
  w.machine(w.pilot).offers = {{{}, "web", Transport::tcp, 443}};
  const Index index(w.lab);
  const std::vector<OfferedService> offers = offers_of(index, w.pilot);
  ASSERT_EQ(offers.size(), 2U);
  EXPECT_EQ(offers[0].name, "web");
  EXPECT_EQ(service_text(offers[1].service), "udp/53");
  EXPECT_TRUE(offers_of(index, {Kind::outside, 0}).empty());
}

} // namespace
} // namespace snug::test
