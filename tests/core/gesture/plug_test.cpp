#include "core/gesture/plug.h"

#include "tests/support/ferries.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct PlugFerries : Ferries {
  const Card& card(std::string_view machine_name, std::string_view segment_name) const {
    const MachineId m = machine(lab, machine_name).id;
    for (const Card& c : lab.cards)
      if (c.machine == m && c.segment == segment(segment_name)) return c;
    ADD_FAILURE() << machine_name << " on " << segment_name;
    return lab.cards.front();
  }
  std::string refusal(const Result<Edit>& e) const { return e ? std::string() : english(e.error().message); }
  const Card& after(const Result<Edit>& edit, CardId id) {
    EXPECT_TRUE(edit) << refusal(edit);
    if (edit) {
      EXPECT_TRUE(apply(lab, *edit));
    }
    return *find<Card>(lab, id);
  }
};

TEST(AddCards, SeveralMachinesAreOneStep) {
  const Lab lab = sample("skerry-ferries");
  const std::vector<MachineId> two{lab.machines[0].id, lab.machines[1].id};
  const SegmentId segment = lab.segments[2].id;
  const auto added = add_cards(lab, two, segment);
  ASSERT_TRUE(added);
  Lab now = lab;
  ASSERT_TRUE(apply(now, added->edit));
  ASSERT_EQ(now.cards.size(), lab.cards.size() + 2);
  for (std::size_t i = 0; i < 2; ++i) {
    const Card& card = now.cards[lab.cards.size() + i];
    EXPECT_EQ(card.machine, two[i]);
    EXPECT_EQ(card.segment, segment);
  }
  EXPECT_EQ(AnyId(now.cards[lab.cards.size()].id), added->id);
  ASSERT_TRUE(apply(now, inverse(added->edit)));
  EXPECT_EQ(now, lab);
}

TEST(AddCard, OfARouterForwards) {
  PlugFerries f;
  for (const auto& [who, forwards] : {std::pair{"gangway", true}, {"beacon", false}}) {
    const auto added = add_card(f.lab, machine(f.lab, who).id, f.segment("Cargo"));
    ASSERT_TRUE(added);
    ASSERT_TRUE(apply(f.lab, added->edit));
    const Card& card = *find<Card>(f.lab, CardId{added->id.number});
    EXPECT_EQ(card.forwards4, forwards) << who;
    EXPECT_EQ(card.forwards6, forwards) << who;
  }
}

TEST(AddCard, SuggestsTheNextFreeAddress) {
  PlugFerries f;
  const auto added = add_card(f.lab, machine(f.lab, "beacon").id, f.segment("Cargo"));
  ASSERT_TRUE(added);
  EXPECT_EQ(english(added->edit.label), "Connect beacon to Cargo");
  ASSERT_TRUE(apply(f.lab, added->edit));
  const Card& card = f.lab.cards.back();
  ASSERT_FALSE(card.addresses.empty());
  const Segment& cargo = *find<Segment>(f.lab, f.segment("Cargo"));
  EXPECT_TRUE(cargo.prefix4->contains(*card.addresses.front().address));
}

TEST(PlugCard, MovesTheCardAndItsAddress) {
  PlugFerries f;
  const CardId id = f.card("gangway", "Crew").id;
  const Card& card = f.after(plug_card(f.lab, id, f.segment("Cargo")), id);
  EXPECT_EQ(card.segment, f.segment("Cargo"));
  ASSERT_FALSE(card.addresses.empty());
  EXPECT_EQ(card.addresses.front().kind, AddressKind::suggested);
  EXPECT_TRUE(f.refusal(plug_card(f.lab, id, f.segment("Cargo"))).ends_with("is plugged into Cargo already"));
}

TEST(SetAddress, ReadsWhatPeopleType) {
  PlugFerries f;
  const CardId id = f.card("beacon", "Steering").id;
  const std::string network = to_text(find<Segment>(f.lab, f.segment("Steering"))->prefix4->network());
  const std::string stem = network.substr(0, network.rfind('.'));
  EXPECT_EQ(to_text(*f.after(set_address(f.lab, id, 0, " .77 "), id).addresses[0].address), stem + ".77");
  EXPECT_EQ(to_text(*f.after(set_address(f.lab, id, 0, stem + ".78/25"), id).addresses[0].address),
            stem + ".78");
  EXPECT_EQ(f.after(set_address(f.lab, id, 0, ""), id).addresses.size(), 0U);
  EXPECT_EQ(f.after(set_address(f.lab, id, 0, "dhcp"), id).addresses[0].kind, AddressKind::dhcp);
  EXPECT_NE(f.refusal(set_address(f.lab, id, 0, "10.0.0.256")), "");
  EXPECT_NE(f.refusal(set_address(f.lab, id, 0, "01.2.3.4")), "") << "leading zeros (RFC 6943 3.1.1)";
}

TEST(Rename, TrimsAndRefusesNothing) {
  PlugFerries f;
  const AnyId id = machine(f.lab, "beacon").id;
  const auto edit = rename(f.lab, id, "  lamp  ");
  ASSERT_TRUE(edit);
  EXPECT_EQ(english(edit->label), "Rename beacon to lamp");
  ASSERT_TRUE(apply(f.lab, *edit));
  EXPECT_EQ(machine(f.lab, "lamp").id, MachineId{id.number});
  EXPECT_EQ(f.refusal(rename(f.lab, id, " ")), "a name has at least one letter");
}

TEST(SetSocket, IsOneStep) {
  PlugFerries f;
  const SegmentId id = f.segment("Cargo");
  const bool before = find<Segment>(f.lab, id)->pc_socket;
  const Edit edit = set_socket(f.lab, id, !before);
  ASSERT_TRUE(apply(f.lab, edit));
  EXPECT_EQ(find<Segment>(f.lab, id)->pc_socket, !before);
  EXPECT_EQ(edit.steps.size(), 1U);
}

TEST(CarryInstead, ChangesWhatAHypervisorsCardCarries) {
  PlugFerries f;
  for (const Card& c : f.lab.cards) {
    if (c.carries.empty()) continue;
    const SegmentId from = c.carries.front().segment;
    const CardId id = c.id;
    const Card& now = f.after(carry_instead(f.lab, id, from, f.segment("Cargo")), id);
    EXPECT_EQ(now.carries.front().segment, f.segment("Cargo"));
    return;
  }
  FAIL() << "the sample has a card that carries";
}

} // namespace
} // namespace snug::test
